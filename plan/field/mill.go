package field

import (
	"regexp"

	"millside/plan/measure"
)

// The mill or the board.
var (
	MillName = add(Mill, Field{Name: "mill", Flag: "mill", Value: "name",
		Help: "the name of a mill at hand, in place of the figures that follow"})
	Circumference = add(Mill, Field{Name: "mill circumference", Label: "circumference", Flag: "circumference",
		Key: "circumference", Value: Span, Least: 20 * measure.Centimetre, Most: 20 * measure.Metre,
		Length: 2 * measure.Yard, Metric: 2 * measure.Metre, Help: "once round the mill"})
	PegStep = add(Mill, Field{Name: "peg step", Label: "peg step", Flag: "peg-step", Key: "peg step", Value: Span,
		Least: measure.Centimetre, Most: 20 * measure.Metre, Length: 18 * measure.Inch, Metric: 50 * measure.Centimetre,
		Help: "from one place for the end pegs to the next, along the mill's round"})
	Rise = add(Mill, Field{Name: "rise a turn", Label: "rise a turn", Flag: "rise", Key: "rise", Value: Span,
		Most: 20 * measure.Metre, Help: "how far the warp climbs in one turn"})
	MillHeight = add(Mill, Field{Name: "mill height", Label: "height", Flag: "mill-height", Key: "height", Value: Span,
		Most: 10 * measure.Metre, Optional: true, Help: "how far the warp may climb, where it is known"})
	Board = add(Mill, Field{Name: "board", Also: []string{"distances on the board"},
		Parts: regexp.MustCompile(`^distance \d+ on the board$`), Label: "board", Flag: "board", Value: "distances",
		Help: `a board in place of the mill: its distances from peg to peg, such as "36 in x 10, 18 in"`,
		More: ", or its name"})
)

// The chains.
var (
	ChainEnds = add(Chains, Field{Name: "ends in a chain", Label: "ends in a chain", Flag: "chain-ends", Value: Number,
		Low: 1, High: measure.MaxEnds, Zero: "for one chain", Help: "most ends in one chain"})
	ChainCount = add(Chains, Field{Name: "chains", Label: "chains", Flag: "chains", Value: Number, Low: 1,
		High: measure.MaxEnds, Zero: "for as few as hold the ends",
		Help: "how many chains, split evenly in whole passes"})
	PegLength = add(Chains, Field{Name: "peg length", Label: "peg length", Flag: "peg-length", Key: "peg length",
		Value: Span, Most: measure.Metre, Optional: true,
		Help: "how much of a peg the warp may cover: gives a guess at the most ends"})
	Layers = add(Chains, Field{Name: "layers on a peg", Also: []string{"layers"}, Label: "layers on a peg",
		Flag: "layers", Key: "layers", Value: Number, High: 100, Help: "layers of yarn on yarn that a peg may take"})
)
