package field

import "millside/plan/measure"

const longest = 1000 * measure.Metre

// The cloth that the warp is planned from.
var (
	SettOf = add(Cloth, Field{Name: "sett", Label: "sett", Flag: "sett", Value: Sett, Optional: true,
		Help: `ends in the reed, such as "20 an inch" or "80 in 10 cm"; the raddle and the reed need it too`})
	Face = add(Cloth, Field{Name: "what shows in the cloth", Label: "the cloth is", Flag: "face", Value: Word,
		Words: []string{"balanced", "warp-faced", "weft-faced"},
		Help:  "which yarns show: both, the warp or the weft; how close to lay the ends follows"})
	FinishedWidth = add(Cloth, Field{Name: "finished width", Also: []string{"width in the reed"},
		Label: "finished width", Flag: "finished-width", Value: Span, Above: true, Optional: true,
		Most: measure.MaxWidth,
		Help: "width of the finished cloth, washed"})
	FinishedLength = add(Cloth, Field{Name: "finished length", Label: "finished length", Flag: "finished-length",
		Value: Span, Above: true, Optional: true, Most: longest,
		Help: "finished length of one piece, without hems and fringes"})
	Pieces = add(Cloth, Field{Name: "pieces", Label: "pieces", Flag: "pieces", Value: Number, Low: 1, High: 1000,
		Count: 1, Help: "how many pieces are woven"})
	Fibre = add(Cloth, Field{Name: "fibre", Label: "fibre", Flag: "fibre", Value: Word,
		Words: []string{"other", "cotton",
			"wool", "linen", "silk", "cottolin", "rayon", "hemp", "mixed"},
		Help: "what the warp is of: the allowances that aren't given are assumed from it"})
	ShrinkageWidth = add(Cloth, Field{Name: "shrinkage in width", Label: "shrinks in width", Flag: "shrinkage-width",
		Value: Share, Assumed: true, Help: "share of the width that washing takes"})
	DrawIn = add(Cloth, Field{Name: "draw-in", Label: "draw-in", Flag: "draw-in", Value: Share, Assumed: true,
		Help: `share of the width in the reed that the weft draws in, such as "8 %"`})
	ShrinkageLength = add(Cloth, Field{Name: "shrinkage in length", Label: "shrinks in length",
		Flag:  "shrinkage-length",
		Value: Share, Assumed: true, Help: "share of the length that washing takes"})
	TakeUp = add(Cloth, Field{Name: "take-up", Label: "take-up", Flag: "take-up", Value: Share, Assumed: true,
		Help: "share of the length that bending round the weft takes"})
	TakeUpOf = add(Cloth, Field{Name: "take-up of", Label: "take-up is", Flag: "take-up-of", Value: Word,
		Words: []string{"of the warp", "of the cloth"}, Help: "what the take-up is a share of"})
	LoomWaste = add(Cloth, Field{Name: "loom waste", Label: "loom waste", Flag: "loom-waste", Value: Span,
		Most:    longest,
		Assumed: true, Help: "warp that can't be woven on the loom"})
	Hem = add(Cloth, Field{Name: "hem", Label: "hem", Flag: "hem", Value: Span, Most: longest, Optional: true,
		Help: "finished length that is turned in at each end of each piece"})
	Fringe = add(Cloth, Field{Name: "fringe", Label: "fringe", Flag: "fringe", Value: Span, Most: longest,
		Optional: true,
		Help:     "unwoven warp at each end of each piece"})
	Sample = add(Cloth, Field{Name: "sample", Label: "sample", Flag: "sample", Value: Span, Most: longest,
		Optional: true,
		Help:     "warp for a sample"})
	Knotting = add(Cloth, Field{Name: "knotting on", Label: "knotting on", Flag: "knotting-on", Value: Span,
		Most:     longest,
		Optional: true, Help: "warp that is used to knot it on to an old one"})
	Repeat = add(Cloth, Field{Name: "pattern repeat", Label: "pattern repeat", Flag: "repeat", Value: Number,
		High: measure.MaxEnds, Help: "ends in a pattern repeat, 0 for none"})
	Balance = add(Cloth, Field{Name: "balancing part", Label: "balancing part", Flag: "balance", Value: Number,
		High: measure.MaxEnds, Help: "ends after the last repeat that end the pattern as it began"})
	Doubled = add(Cloth, Field{Name: "doubled selvedge ends", Also: []string{"ends before the first repeat"},
		Label: "doubled ends", Flag: "doubled", Value: Number, High: measure.MaxEnds / 2,
		Help: "ends at each edge that are drawn double: they add ends and no width"})
	Floating = add(Cloth, Field{Name: "floating selvedges", Label: "floating ends", Flag: "floating", Value: Number,
		High: 4, Help: "floating selvedges, over both edges"})
	FloatingApart = add(Cloth, Field{Name: "floating ends are wound", Label: "floating are", Flag: "floating-apart",
		Value: YesNo, Words: []string{"wound with it", "wound apart"},
		Help: "whether the floating selvedges are wound apart, as a little warp of their own"})
	ClothLayers = add(Cloth, Field{Name: "layers of cloth", Label: "layers", Flag: "cloth-layers", Value: Number,
		Low: 1, High: 4, Zero: "for one", Help: "layers woven over each other; the sett is that of one layer"})
	LayersAre = add(Cloth, Field{Name: "layers are", Label: "layers are", Flag: "layers-are", Value: Word,
		Words: []string{"separate", "double width", "tube"},
		Help:  "how layers are joined; the finished width is that of a double width opened, of a tube lying flat"})
	Fit = add(Cloth, Field{Name: "ends to fit", Label: "ends to fit", Flag: "fit", Value: Word,
		Words: []string{"as wanted", "whole repeats", "full passes", "both"},
		Help:  "which count of ends near the wanted one is taken"})
	Picks = add(Cloth, Field{Name: "picks", Label: "picks", Flag: "picks", Value: Sett, Optional: true,
		Help: `picks on the loom, such as "20 an inch", for an estimate of the weft`})
	WeftTakeUp = add(Cloth, Field{Name: "weft take-up", Label: "weft take-up", Flag: "weft-take-up", Value: Share,
		Assumed: true,
		Help:    "what a pick is longer than the width in the reed, as a share of it"})
	Weft = add(Cloth, Field{Name: "weft", Label: "weft yarn", Flag: "weft", Value: YarnSize, Optional: true,
		Help: "the weft's size; the warp's if not said", More: "; or the name of a yarn at hand"})
)
