package field

import (
	"regexp"

	"millside/plan/measure"
)

// The yarn of the warp.
var (
	YarnOf = add(Yarn, Field{Name: "yarn", Also: []string{"thread"}, Parts: regexp.MustCompile(`^cone \d+ yarn$`),
		Label: "yarn", Flag: "yarn", Value: YarnSize, Optional: true,
		Help: `the yarn's size, such as "cotton 8/2", "worsted 2/28" or "3360 yd/lb"`,
		More: ", or the name of a yarn at hand"})
	Colour = add(Yarn, Field{Name: "colour", Parts: regexp.MustCompile(`^cone \d+ colour$`), Label: "colour",
		Flag: "colour", Key: "colour", Value: Text, Help: "what you call its colour, up to 60 characters"})
	Cones = add(Yarn, Field{Name: "cones", Parts: regexp.MustCompile(`^cone \d+ weight$`), Label: "cones weigh",
		Flag: "cones", Key: "cones", Value: "weights", Optional: true,
		Help: `what each cone weighs with its tube, by position, such as "250 g, 200 g"; the last stands for the rest`})
	Tube = add(Yarn, Field{Name: "tube", Parts: regexp.MustCompile(`^cone \d+ empty tube$`), Label: "empty tube",
		Flag: "tube", Key: "tube", Value: "weight", Optional: true, Help: "what an empty tube weighs"})
	Packages = add(Yarn, Field{Name: "cones at hand", Label: "cones at hand", Flag: "packages",
		Key: "packages", Value: Number, High: measure.MaxEnds, Help: "cones at hand; 0 if you haven't counted"})
	PegYarn = add(Yarn, Field{Name: "extra yarn a pass", Label: "yarn at pegs", Flag: "peg-yarn", Value: Span,
		Most: 100 * measure.Metre, Length: 2 * measure.Inch,
		Help: "yarn that each end takes at the end pegs on a pass; 0 in adds nothing"})
	Tails = add(Yarn, Field{Name: "extra yarn an end tied on", Label: "tails", Flag: "tails", Value: Span,
		Most: 100 * measure.Metre, Length: 18 * measure.Inch,
		Help: "yarn in the tails of each end that is tied on and cut off again; 0 in adds nothing"})
)
