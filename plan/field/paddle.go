package field

import "millside/plan/measure"

// The paddle and the order of its ends.
var (
	Group = add(Paddle, Field{Name: "group", Label: "group", Flag: "group", Value: Number, Low: 1,
		High: measure.MaxPositions, Count: 10, Help: "ends carried together by the paddle on a pass"})
	Positions = add(Paddle, Field{Name: "paddle positions", Label: "positions", Flag: "positions", Key: "positions",
		Value: Number, Low: 1, High: measure.MaxPositions, Count: 12, Help: "holes and slots in the paddle"})
	PaddleName = add(Paddle, Field{Name: "paddle", Flag: "paddle", Value: "name",
		Help: "the name of a paddle at hand, in place of --positions"})
	LastPass = add(Paddle, Field{Name: "last pass", Label: "last pass", Flag: "last-pass", Value: Word,
		Words: []string{"short", "full"},
		Help:  "the last pass where the group doesn't divide the ends; a full one lays spare ends"})
	ReturnOrder = add(Paddle, Field{Name: "return order", Label: "return order", Flag: "return-order", Value: Word,
		Words: []string{"same", "mirrored"},
		Help:  "how a return pass lies in the lease; you are asked after the first that shows it"})
	Foot = add(Paddle, Field{Name: "position at the foot", Label: "at the foot", Flag: "foot", Value: Word,
		Words: []string{"first", "last"},
		Help:  "which position lies at the foot of the peg on an outward pass: end 1 is the foot of the first group"})
	Hand = add(Paddle, Field{Name: "hand", Label: "layout", Flag: "hand", Value: Word, Words: []string{"right", "left"},
		Help: "which hand leads the paddle"})
)
