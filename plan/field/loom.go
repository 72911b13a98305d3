package field

import "millside/plan/measure"

// The loom.
var (
	Raddle = add(Loom, Field{Name: "raddle space", Also: []string{"raddle"}, Label: "raddle space", Flag: "raddle",
		Key: "space", Value: "space", Least: measure.Millimetre, Most: 10 * measure.Centimetre, Optional: true,
		Help: `the raddle's space from tooth to tooth, such as "1/2 in"`, More: ", or its name"})
	RaddleSpaces = add(Loom, Field{Name: "raddle spaces", Label: "raddle spaces", Flag: "raddle-spaces", Key: "spaces",
		Value: Number, High: 10_000, Help: "how many spaces the raddle has; 0 if you haven't counted"})
	SplitGroups = add(Loom, Field{Name: "split groups", Label: "split groups", Flag: "split-groups", Value: YesNo,
		Words: []string{"no", "yes"},
		Help:  "let the raddle's teeth part a group, where that spreads the ends more evenly"})
	Reed = add(Loom, Field{Name: "reed", Label: "reed", Flag: "reed", Value: "reed", Optional: true,
		Help: `the reed, such as "10 dents an inch", "40 in 10 cm" or "60 Stockport"; the ends of ` +
			`a width are counted at the sett that it really gives`, More: ", or its name"})
	ReedWidth = add(Loom, Field{Name: "reed width", Label: "reed width", Flag: "reed-width", Key: "width", Value: Span,
		Most: measure.MaxWidth, Optional: true, Help: "the reed's usable width, where it is known"})
	BeamSection = add(Loom, Field{Name: "beam section", Label: "beam section", Flag: "beam-section", Value: Span,
		Least: measure.Centimetre, Most: measure.Metre, Zero: "for none", Optional: true,
		Help: `width of a section of a sectional beam, such as "2 in": the ends in it follow from the sett`})
	Dents = add(Loom, Field{Name: "dents in sections", Label: "dents in sections", Flag: "dents", Value: List,
		Optional: true, Help: `how ends are crammed and spaced in the reed, from end 1 on and over again, such as ` +
			`"20 dents of 2, 4 of 4, 2 empty"`})
	EdgeDents = add(Loom, Field{Name: "selvedge dents", Label: "selvedge dents", Flag: "edge-dents", Value: Number,
		High: 1000, Help: "dents at each edge that hold another number of ends"})
	EdgeEnds = add(Loom, Field{Name: "ends in a selvedge dent", Label: "ends in each", Flag: "edge-ends", Value: Number,
		High: 100, Help: "ends in each dent at the edges"})
	FirstEnd = add(Loom, Field{Name: "side of the first end", Label: "end 1 lies", Flag: "first-end", Value: Word,
		Words: []string{"left", "right"}, Help: "side of the loom on which end 1 lies"})
	LoomName = add(Loom, Field{Name: "loom", Flag: "loom", Value: "name",
		Help: "the name of a loom at hand, in place of --heddles"})
	Threading = add(Loom, Field{Name: "threading", Also: []string{"shaft", "ends in the threading"}, Label: "threading",
		Flag: "threading", Value: "shafts", Optional: true,
		Help: `the shaft of each end from end 1 on, or a repeat of them, such as "1, 2, 3, 4" ` +
			`or "24 times (1, 2, 3, 4), 1"`})
	ThreadingBegin = add(Loom, Field{Name: "beginning of the threading", Label: "before repeats",
		Flag: "threading-begin", Value: "shafts", Optional: true,
		Help: `shafts before the first repeat of the threading, at end 1, such as "1, 2"`})
	ThreadingEnd = add(Loom, Field{Name: "end of the threading", Label: "behind repeats",
		Flag: "threading-end", Value: "shafts", Optional: true,
		Help: `shafts behind the last repeat of the threading, at the last end, such as "1"`})
	Heddles = add(Loom, Field{Name: "shafts with heddles", Label: "heddles", Flag: "heddles", Key: "heddles",
		Value: "numbers", Optional: true,
		Help: `the heddles on each shaft, such as "100, 100, 80, 80" or "100 on 4 shafts"`})
)
