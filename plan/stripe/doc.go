// Package stripe knows the colours of a warp: the order in which they lie, and the passes and set-ups
// of the paddle that lay them in that order. Like package plan it has no clock, opens no file and
// draws nothing.
//
// # The notation
//
// A stripe order is written as a weaver would say it, from end 1 to the last, the parts parted by
// commas or by new lines:
//
//	8 white, 21 times (4 red, 14 white), 20 red where red is #b03a2e, white is #f4f1e8
//
//	12 red                       twelve ends of red; red alone is one end
//	3 times (...)                what stands in the brackets, three times
//	3 times balanced (...)       the same, then the first part in the brackets once more, so that
//	                             the stripes end as they began
//	mirror (...)                 what stands in the brackets, then the same backwards
//	point (...)                  as mirror, but the last part in the brackets is laid once only: it
//	                             is the middle
//	back (...)                   what stands in the brackets, backwards
//	where red is #b03a2e, ...    at the very end: how a colour looks, as red, green and blue
//
// Brackets may stand in brackets, [MaxDepth] deep. A colour's name is one word or several, each
// beginning with a letter, or anything in quotation marks ("8/2 navy"); capitals don't matter. A plain
// list of ends is a stripe order too: "red, red, blue". What could be another warp is not read but asked
// about, with the text as it is likely to be meant and its number of ends: letters and figures in one word
// (K4), numbers in words, words that speak of winding (4 ends red, 2x red, etc), and a name that another
// is likely to be a slip of (white, whit), unless it stands in quotation marks. An order may be written
// from either side of the warp: see [Written]. [Parse] reads the notation, [Order.String] writes it in its
// plainest form, and [Order.Ends] gives the colour of every end.
//
// # The schedule
//
// [ForPlan] makes a plan of a striped warp: package schedule cuts the stripes into passes and set-ups by the
// work at the pegs, and the ways of a sensible weaver stand beside it.
package stripe
