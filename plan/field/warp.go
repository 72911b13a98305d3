package field

import "millside/plan/measure"

// The warp.
var (
	Name = add(Warp, Field{Name: "name", Label: "name", Flag: "name", Value: Text,
		Help: "what you call the warp, 1 to 60 characters"})
	FromCloth = add(Warp, Field{Name: "planned from", Label: "planned from", Flag: "from-cloth", Value: YesNo,
		Words: []string{"ends and length", "the cloth"},
		Help:  "where the ends and the length come from",
		More:  ": from the cloth; it is so by itself where its width or length is given"})
	Ends = add(Warp, Field{Name: "ends", Label: "ends", Flag: "ends", Value: Number, Low: 1, High: measure.MaxEnds,
		Count: 200, Help: "warp threads wanted"})
	Length = add(Warp, Field{Name: "length", Also: []string{"woven length"}, Label: "length", Flag: "length",
		Value: Span, Least: 10 * measure.Centimetre, Most: 1000 * measure.Metre, Length: 5 * measure.Yard,
		Metric: 5 * measure.Metre, Help: `length of the warp, such as "5 yd", "7 1/2 yd" or 6.4m`})
	Units = add(Warp, Field{Name: "units", Label: "units", Flag: "units", Value: Word,
		Words: []string{"imperial", "metric"},
		Help:  "units that lengths are shown in"})
	Dressing = add(Warp, Field{Name: "dressing", Label: "the loom takes", Flag: "dressing", Value: Word,
		Words: []string{"raddle first", "reed first"}, Help: "which end of the warp the loom takes first"})
	Dyed = add(Warp, Field{Name: "dyed", Label: "to be dyed", Flag: "dyed", Value: YesNo, Words: []string{"no", "yes"},
		Help: "the warp will be dyed, so the ties are loose"})
	Painted = add(Warp, Field{Name: "painted sections", Label: "painted", Flag: "painted", Value: "lengths",
		Optional: true,
		Help: `the sections of a painted warp from the lease on, tied at their borders, such as "1 yd indigo, 18 in, ` +
			`1 yd rust" or "12 in x 8"`})
)
