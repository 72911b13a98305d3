package wind

// Asked is what a weaver asks of the way to wind stripes. The zero value asks for nothing.
type Asked struct {
	// FinishAtLease asks for an even number of passes.
	FinishAtLease bool `json:"finish_at_lease,omitzero"`
	// Packages says how many packages of each colour are at hand, "red 2, white 4"; of the others there are enough.
	Packages string `json:"packages,omitzero"`
	// Sizes lists the ends that a pass may carry, each 1 to MaxPositions; none means any.
	Sizes []int `json:"sizes,omitzero"`
	// MostHalts is the most halts that the weaver puts up with; nil means any number.
	MostHalts *int `json:"most_halts,omitzero"`
	// Effort is how long to search, as a multiple of the usual; 0 is the usual.
	Effort int `json:"effort,omitzero"`
	// Way is the name of the way to wind; "" is the one that is found.
	Way string `json:"way,omitzero"`
	// Laid is how the stripes come to the ends that are wanted.
	Laid Laying `json:"laid,omitzero"`
}
