package field

import "millside/plan/measure"

// What a weaver may know of a warp beside the fields of the table: a plan doesn't keep it, it leads to one. These
// fields don't stand in [All].
var (
	Find = &Field{Name: "what is to be found", Label: "find", Flag: "find", Value: Word,
		Words: []string{"what is missing", "length", "ends", "width", "pieces", "yarn"},
		Help:  "the one thing that is to be found out of the others"}
	ReedSpan = &Field{Name: "width in the reed", Label: "width in reed", Flag: "width-in-reed", Value: Span,
		Above: true, Optional: true, Most: measure.MaxWidth,
		Help: "width of the warp in the reed, where it is that which you know"}
	FinishedSett = &Field{Name: "ends counted in the cloth", Label: "counted in cloth", Flag: "finished-sett",
		Value: Sett, Optional: true,
		Help: `ends counted in a finished, washed piece that is to be repeated, such as "24 an inch"`}
	OnHand = &Field{Name: "yarn on hand", Label: "yarn on hand", Flag: "on-hand", Value: List, Optional: true,
		Help: `the packages that you have, by weight or by length, such as "250 g, 3 of 180 g" ` +
			`or "red 250 g, white 400 yd, 90 yd"`}
)

// Known lists these fields.
func Known() []*Field { return []*Field{Find, ReedSpan, FinishedSett, OnHand} }
