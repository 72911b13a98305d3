package measure

import "millside/plan/figure"

// How says how a number was reached, so that a weaver can check it with pencil and paper.
type How struct {
	// Formula is the rule in words: "finished width / (1 - shrinkage)".
	Formula string `json:"formula"`
	// WithNumbers is the same rule with this warp's numbers put in, and the result.
	WithNumbers figure.Cell `json:"with_numbers"`
}

// Row is one line of a result, ready to be shown: the same text on the screen, in print and in JSON.
type Row struct {
	// Name is what the line is about.
	Name string `json:"name"`
	// Value is the amount with its unit.
	Value figure.Cell `json:"value"`
	// How says how the value was reached; it is empty for a value that the weaver gave.
	How How `json:"how"`
	// Usual is the usual range in words; it may be empty.
	Usual string `json:"usual,omitempty"`
	// Warning says what is out of the ordinary; it is empty where nothing is.
	Warning string `json:"warning,omitempty"`
}
