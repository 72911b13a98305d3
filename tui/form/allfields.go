package form

import (
	"time"

	"millside/plan"
	"millside/plan/cloth"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/times"
	"millside/plan/wind"
)

// formFields are the fields of the form in their order.
func formFields() []field {
	var all []field
	for _, part := range [][]field{warpFields(), stripesFields(), clothFields(), yarnFields(), paddleFields(),
		millFields(), chainFields(), loomFields(), windingFields()} {
		all = append(all, part...)
	}
	return all
}

// fromCloth and byHand tell which fields the weaver fills in.
func fromCloth(s plan.Spec) bool  { return s.Cloth.Used }
func endsByHand(s plan.Spec) bool { return !s.Cloth.Used && plain(s) }
func byHand(s plan.Spec) bool     { return !s.Cloth.Used }

func onlyIf(f field, given func(plan.Spec) bool) field {
	f.given = given
	return f
}

func warpFields() []field {
	return []field{
		textField(secWarp, "name", "name", "what you call it", func(s *plan.Spec) *string { return &s.Name }),
		yesField(secWarp, "planned from", "ends and length", "the cloth", "where the ends and the length come from",
			func(s *plan.Spec) *bool { return &s.Cloth.Used }),
		onlyIf(countField(secWarp, "ends", "ends", "warp threads wanted", func(s *plan.Spec) *int { return &s.Ends }),
			endsByHand),
		onlyIf(valueField(secWarp, "length", "length", "such as 7.5 yd, 6.4 m or 250 in",
			func(s *plan.Spec) *measure.Length { return &s.Length }), byHand),
		choiceField(secWarp, "units", "units", "imperial: yards, inches; metric: metres, centimetres",
			func(s *plan.Spec) *measure.LengthUnitSystem { return &s.Units }, "imperial", "metric"),
		choiceField(secWarp, "the loom takes", "dressing", "which end of the warp comes off the chain first",
			func(s *plan.Spec) *plan.Dressing { return &s.Dressing }, "raddle first", "reed first"),
		yesField(secWarp, "to be dyed", "no", "yes", "ties are then loose",
			func(s *plan.Spec) *bool { return &s.Dyed }),
	}
}

func clothFields() []field {
	width := func(label, name, hint string, at func(*plan.Spec) *int) field {
		return onlyIf(countField(secCloth, label, name, hint, at), fromCloth)
	}
	long := func(label, name, hint string, at func(*plan.Spec) *measure.Length) field {
		return onlyIf(maybeField(secCloth, label, name, hint, at), fromCloth)
	}
	share := func(label, name, hint string, at func(*plan.Spec) *measure.Percent) field {
		return onlyIf(valueField(secCloth, label, name, hint, at), fromCloth)
	}
	return []field{
		maybeField(secCloth, "sett", "sett", "such as 20 per inch, 80 per 10 cm; the raddle and the reed need it too",
			func(s *plan.Spec) *measure.Sett { return &s.Loom.Sett }),
		long("finished width", "finished width", "of the cloth, washed",
			func(s *plan.Spec) *measure.Length { return &s.Cloth.Width.Finished }),
		long("finished length", "finished length", "of one piece, without hems and fringes",
			func(s *plan.Spec) *measure.Length { return &s.Cloth.Length.Piece }),
		width("pieces", "pieces", "how many are woven", func(s *plan.Spec) *int { return &s.Cloth.Length.Pieces }),
		onlyIf(choiceField(secCloth, "fibre", "fibre", "for the usual ranges only",
			func(s *plan.Spec) *cloth.Fibre { return &s.Cloth.Width.Fibre }, "other", "cotton", "wool", "linen",
			"silk"), fromCloth),
		share("shrinks in width", "shrinkage in width", "the share that washing takes",
			func(s *plan.Spec) *measure.Percent { return &s.Cloth.Width.Shrinkage }),
		share("draw-in", "draw-in", "the share that the weft draws in on the loom",
			func(s *plan.Spec) *measure.Percent { return &s.Cloth.Width.DrawIn }),
		share("shrinks in length", "shrinkage in length", "the share that washing takes",
			func(s *plan.Spec) *measure.Percent { return &s.Cloth.Length.Shrinkage }),
		share("take-up", "take-up", "the share that the warp loses by bending round the weft",
			func(s *plan.Spec) *measure.Percent { return &s.Cloth.Length.TakeUp }),
		long("loom waste", "loom waste", "what can't be woven",
			func(s *plan.Spec) *measure.Length { return &s.Cloth.Length.Waste }),
		long("hem", "hem", "turned in at each end of each piece",
			func(s *plan.Spec) *measure.Length { return &s.Cloth.Length.Hem }),
		long("fringe", "fringe", "unwoven at each end of each piece",
			func(s *plan.Spec) *measure.Length { return &s.Cloth.Length.Fringe }),
		long("sample", "sample", "warp for a sample",
			func(s *plan.Spec) *measure.Length { return &s.Cloth.Length.Sample }),
		long("knotting on", "knotting on", "to knot the warp to an old one",
			func(s *plan.Spec) *measure.Length { return &s.Cloth.Length.Knotting }),
		width("pattern repeat", "pattern repeat", "ends; 0 for none",
			func(s *plan.Spec) *int { return &s.Cloth.Width.Repeat }),
		width("balancing part", "balancing part", "ends after the last repeat",
			func(s *plan.Spec) *int { return &s.Cloth.Width.Balance }),
		width("doubled ends", "doubled selvedge ends", "at each edge",
			func(s *plan.Spec) *int { return &s.Cloth.Width.Doubled }),
		width("floating ends", "floating selvedges", "over both edges",
			func(s *plan.Spec) *int { return &s.Cloth.Width.Floating }),
		onlyIf(choiceField(secCloth, "ends to fit", "ends to fit", "which count near the wanted one is taken",
			func(s *plan.Spec) *plan.ClothFit { return &s.Cloth.Fit }, "as wanted", "whole repeats", "full passes",
			"both"), fromCloth),
		onlyIf(maybeField(secCloth, "picks", "picks", "such as 18 per inch; empty leaves the weft out",
			func(s *plan.Spec) *measure.Sett { return &s.Cloth.Picks }), fromCloth),
		share("weft take-up", "weft take-up", "what a pick is longer than the width",
			func(s *plan.Spec) *measure.Percent { return &s.Cloth.WeftTakeUp }),
		onlyIf(maybeField(secCloth, "weft yarn", "weft", "empty: the warp's",
			func(s *plan.Spec) *measure.YarnSize { return &s.Cloth.Weft }), fromCloth),
	}
}

func yarnFields() []field {
	return []field{
		maybeField(secYarn, "yarn", "yarn", "size and system, such as 8/2 cotton, 2/28 Nm, 60 tex",
			func(s *plan.Spec) *measure.YarnSize { return &s.Yarn.Size }),
		textField(secYarn, "colour", "colour", "what you call it",
			func(s *plan.Spec) *string { return &s.Yarn.Colour }),
		maybeField(secYarn, "cones weigh", "cones",
			"with their tubes, by position: 250 g, 180 g; the last stands for the rest",
			func(s *plan.Spec) *measure.Masses { return &s.Yarn.Cones }),
		maybeField(secYarn, "empty tube", "tube", "the weight of one",
			func(s *plan.Spec) *measure.Mass { return &s.Yarn.Tube }),
		countField(secYarn, "cones at hand", "cones at hand", "0 if you haven't counted",
			func(s *plan.Spec) *int { return &s.Yarn.Packages }),
	}
}

func paddleFields() []field {
	return []field{
		onlyIf(countField(secPaddle, "group", "group", "ends carried together on a pass",
			func(s *plan.Spec) *int { return &s.Group }), plain),
		countField(secPaddle, "positions", "paddle positions", "holes and slots in the paddle",
			func(s *plan.Spec) *int { return &s.Positions }),
		onlyIf(choiceField(secPaddle, "last pass", "last pass", "if the group doesn't divide the ends",
			func(s *plan.Spec) *wind.LastPass { return &s.LastPass }, "short", "full"), plain),
		choiceField(secPaddle, "return order", "return order",
			"how a return pass lies in the lease; you look at it after pass 2",
			func(s *plan.Spec) *wind.ReturnOrder { return &s.ReturnOrder }, "same", "mirrored"),
		choiceField(secPaddle, "at the foot", "position at the foot",
			"which position lies at the foot of the peg on an outward pass: end 1 is the foot of the first group",
			func(s *plan.Spec) *wind.FootPosition { return &s.Foot }, "first", "last"),
		choiceField(secPaddle, "layout", "hand", "which hand leads the paddle",
			func(s *plan.Spec) *wind.Hand { return &s.Hand }, "right", "left"),
	}
}

func millFields() []field {
	return []field{
		valueField(secMill, "circumference", "mill circumference", "once round the mill",
			func(s *plan.Spec) *measure.Length { return &s.Mill.Circumference }),
		valueField(secMill, "peg step", "peg step", "from one place for the end peg to the next",
			func(s *plan.Spec) *measure.Length { return &s.Mill.PegStep }),
		valueField(secMill, "rise a turn", "rise a turn", "how far the warp climbs in a turn",
			func(s *plan.Spec) *measure.Length { return &s.Mill.Rise }),
		maybeField(secMill, "height", "mill height", "how far it may climb; empty if you don't know it",
			func(s *plan.Spec) *measure.Length { return &s.Mill.Height }),
		boardField(),
	}
}

func chainFields() []field {
	return []field{
		countField(secChains, "ends in a chain", "ends in a chain", "at most; 0 winds one chain",
			func(s *plan.Spec) *int { return &s.ChainEnds }),
		maybeField(secChains, "peg length", "peg length",
			"how much of a peg the warp may cover: gives a guess at the most ends",
			func(s *plan.Spec) *measure.Length { return &s.Pegs.Length }),
		countField(secChains, "layers on a peg", "layers on a peg", "of yarn on yarn",
			func(s *plan.Spec) *int { return &s.Pegs.Layers }),
	}
}

func loomFields() []field {
	return []field{
		maybeField(secLoom, "raddle space", "raddle space", "from tooth to tooth: 1/2 in, 1 cm",
			func(s *plan.Spec) *measure.Length { return &s.Loom.Raddle.Space }),
		countField(secLoom, "raddle spaces", "raddle spaces", "0 if you haven't counted",
			func(s *plan.Spec) *int { return &s.Loom.Raddle.Spaces }),
		yesField(secLoom, "split groups", "no", "yes", "let the raddle's teeth part a group",
			func(s *plan.Spec) *bool { return &s.Loom.SplitGroups }),
		maybeField(secLoom, "reed", "reed", "such as 10 dents an inch, 40 in 10 cm, 60 Stockport",
			func(s *plan.Spec) *loom.Reed { return &s.Loom.Reed }),
		reedWidthField(),
		countField(secLoom, "selvedge dents", "selvedge dents", "at each edge",
			func(s *plan.Spec) *int { return &s.Loom.EdgeDents }),
		countField(secLoom, "ends in each", "ends in a selvedge dent", "in a selvedge dent",
			func(s *plan.Spec) *int { return &s.Loom.EdgeEnds }),
		choiceField(secLoom, "end 1 lies", "side of the first end", "on which side of the loom",
			func(s *plan.Spec) *loom.Side { return &s.Loom.FirstEnd }, "left", "right"),
	}
}

func windingFields() []field {
	return []field{
		countField(secWinding, "count tie every", "count tie every", "ends; 0 for none",
			func(s *plan.Spec) *int { return &s.TieEvery }),
		guardField(),
		countField(secWinding, "rest, minutes", "rest every", "a quiet reminder to rest; 0 for none",
			func(s *plan.Spec) *int { return &s.RestMinutes }),
		onlyMinutes(minutesField("minutes a pass", "minutes a pass",
			"whatever the turns; empty goes by the two below and your own pace",
			func(t *times.HandTimes) *time.Duration { return &t.Pass })),
		minutesField("handling, min", "minutes of handling", "what a pass takes at its two ends",
			func(t *times.HandTimes) *time.Duration { return &t.Handling }),
		minutesField("a turn, min", "minutes a turn", "what a turn of the mill takes",
			func(t *times.HandTimes) *time.Duration { return &t.Turn }),
		minutesField("a halt, min", "minutes a halt", "to halt at a peg, however much is done there",
			func(t *times.HandTimes) *time.Duration { return &t.Halt }),
		minutesField("cut off, min", "minutes to cut off an end", "to cut off an end",
			func(t *times.HandTimes) *time.Duration { return &t.Cut }),
		minutesField("tie on, min", "minutes to tie on an end", "to tie on an end",
			func(t *times.HandTimes) *time.Duration { return &t.Tie }),
		minutesField("thread, min", "minutes to thread a package", "to thread a package",
			func(t *times.HandTimes) *time.Duration { return &t.Thread }),
		minutesField("far finish, min", "minutes more to finish at the far end",
			"more to finish a chain at the counting cross", func(t *times.HandTimes) *time.Duration { return &t.Far }),
	}
}
