package pair

import (
	"fmt"

	"millside/plan/figure"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/sheet"
)

// The parts of the sheet beside those of the raddle, the reed and the yarn.
const (
	PartBoth    sheet.PartID = "both"
	PartLengths sheet.PartID = "lengths"
	PartBeams   sheet.PartID = "beams"
	PartHeddles sheet.PartID = "heddles"
)

// Sheet tells the joining, for every format.
func (j *Joint) Sheet() *sheet.Sheet {
	g, s := j.Warps[Ground].Plan, j.Warps[Second].Plan
	all := &sheet.Sheet{Title: g.Spec.Name + " and " + s.Spec.Name, About: j.Summary(), Units: g.Spec.Units,
		Ends: len(j.Places.Order), Passes: g.Passes() + s.Passes(), Chains: len(g.Chains) + len(s.Chains),
		Length: max(g.Path.Length, s.Path.Length), Yarn: g.WarpYarn() + s.WarpYarn()}
	for _, part := range []sheet.Part{j.both(), j.lengths(), j.beams(), j.yarn(), j.raddlePart(), j.heddles(),
		j.reedPart()} {
		if len(part.Rows) > 0 || part.Table != nil {
			all.Parts = append(all.Parts, part)
		}
	}
	all.Drawings = j.drawings()
	return all
}

// Summary is the joining in one line.
func (j *Joint) Summary() figure.Cell {
	return figure.Say("%s of two warps in one cloth, %s, %s wide in the reed",
		figure.Counted(len(j.Places.Order), "end", "ends"), j.Sett.As(2), j.Width.As(j.unit(), 2))
}

func (j *Joint) unit() measure.LengthUnit { return j.Warps[Ground].Plan.Spec.Units.Short() }

// number is the cell of a bare number, empty for none.
func number(n int) figure.Cell {
	if n == 0 {
		return nil
	}
	return figure.Cell{figure.Count{N: n}}
}

// word is the cell of a word, empty for none.
func word(text string) figure.Cell {
	if text == "" {
		return nil
	}
	return figure.Say("%s", text)
}

func ends(n int) figure.Count { return figure.Counted(n, "end", "ends") }

// both says which warps they are, in which order they lie and how close.
func (j *Joint) both() sheet.Part {
	part := sheet.Part{ID: PartBoth, Title: "Both warps"}
	for w, pr := range j.Warps {
		p := pr.Plan
		value := figure.Say("%s: %s, %s, %s", p.Spec.Name, ends(p.EndsWound()),
			figure.Counted(p.Passes(), "pass", "passes"), figure.Counted(len(p.Chains), "chain", "chains"))
		if sett := pr.SettInReed(); !sett.IsZero() {
			value = value.And(", %s by itself", sett.As(2))
		}
		part.Rows = append(part.Rows, measure.Row{Name: Which(w).String(), Value: value})
	}
	return sheet.Part{ID: part.ID, Title: part.Title, Rows: append(part.Rows, j.OrderRows()...), Notes: []string{
		"Each warp is wound for itself, by its own plan and its own record. Both go through one raddle and one reed."}}
}

// OrderRows says in which order the ends of both lie, and how close.
func (j *Joint) OrderRows() []measure.Row {
	p := j.Places
	order := figure.Say("%s", p.Text)
	if p.Times > 1 || p.Over > 0 {
		order = order.And(": %s", figure.Counted(p.Times, "time", "times"))
	}
	if p.Over > 0 {
		order = order.And(" and the first %s once more", ends(p.Over))
	}
	how := measure.How{}
	a, b := j.Warps[Ground].SettInReed(), j.Warps[Second].SettInReed()
	switch {
	case !j.Ask.Sett.IsZero() || len(j.Ask.Dents) > 0:
	case j.Beside && len(j.widths) > 0:
		how = measure.How{Formula: "ends / width of all, each end at its own sett",
			WithNumbers: figure.Say("%d / %s = %s", len(p.Order), j.Width.As(j.unit(), 2), j.Sett.As(2))}
	case !j.Beside:
		how = measure.How{Formula: "sett of the ground + sett of the second",
			WithNumbers: figure.Say("%s + %s = %s", a.As(2), b.In(a.Unit()).As(2), j.Sett.As(2))}
	}
	lies := "between the ends of the ground"
	if j.Beside {
		lies = "beside the ground, in stripes of its own"
	}
	care := ""
	if n, of := p.alone(); n > 2*longestRepeat && !j.Beside && len(j.Ask.Dents) == 0 {
		care = fmt.Sprintf("%s of the %s lie alone at the edges, as close as both together in the middle: say with "+
			"dents how they are sleyed if they should lie more open", measure.Counted(n, "end", "ends"), of)
	}
	return []measure.Row{{Name: "order, from the left", Value: order},
		{Name: "the second lies", Value: figure.Say("%s", lies)},
		{Name: "sett of both together", Value: figure.Cell{j.Sett.As(2)}, How: how, Warning: care},
		{Name: "width in the reed", Value: figure.Cell{j.Width.As(j.unit(), 2)}}}
}

// lengths says how long each must be.
func (j *Joint) lengths() sheet.Part {
	part := sheet.Part{ID: PartLengths, Title: "Lengths"}
	units, l := j.Warps[Ground].Plan.Spec.Units, j.Lengths
	show := func(x measure.Length) figure.Number { return x.As(units.Long(), 2) }
	// A difference is in the short unit as long as it is short: a yard too little is not told in inches.
	apart := func(x measure.Length) figure.Number {
		if whole, _ := units.Long().Length(); x < whole {
			return x.As(units.Short(), 1)
		}
		return show(x)
	}
	if !l.Known {
		for w := range j.Warps {
			part.Rows = append(part.Rows, measure.Row{Name: Which(w).String(), Value: figure.Cell{show(l.Planned[w])}})
		}
		part.Notes = []string{"The ground isn't planned from its cloth, so its woven length isn't known, and the " +
			"length that the second needs isn't either."}
		return part
	}
	part.Rows = append(part.Rows, measure.Row{Name: "woven by both", Value: figure.Cell{show(l.Woven)}})
	for w := range j.Warps {
		row := measure.Row{Name: "length of the " + Which(w).String(), Value: figure.Say("%s, with a take-up of %s %s",
			show(l.Needed[w]), l.TakeUp[w].As(), l.TakeUpOf[w]), How: measure.How{
			Formula:     "woven length with the take-up, and fringes, sample and loom waste with it",
			WithNumbers: figure.Say("%s of cloth take %s of warp", show(l.Woven), show(l.Needed[w]))}}
		switch off := l.Planned[w] - l.Needed[w]; {
		case off < -measure.Millimetre:
			row.Warning = fmt.Sprintf("its plan makes it %s, %s too short for this cloth", show(l.Planned[w]),
				apart(-off))
		case off > measure.Millimetre:
			row.Value = row.Value.And("; its plan makes it %s, so %s are left over", show(l.Planned[w]), apart(off))
		}
		part.Rows = append(part.Rows, row)
	}
	if l.Assumed {
		part.Notes = []string{"The take-up of the second isn't known: that of the ground is taken."}
	}
	return part
}

// beams says how each is held.
func (j *Joint) beams() sheet.Part {
	row := measure.Row{Name: "second"}
	l, alike := j.Lengths, j.Lengths.alike()
	switch {
	case j.Held == WhatSuits && alike:
		row.Value = figure.Say("on one beam with the ground: both weave up alike")
	case j.Held == WhatSuits && (l.Assumed || !l.Known):
		row.Value = figure.Say("on one beam with the ground if it weaves up as the ground does, else on a beam of " +
			"its own or on weights behind the loom")
	case j.Held == WhatSuits:
		row.Value = figure.Say("on a beam of its own, or on weights behind the loom: it doesn't weave up as the " +
			"ground does")
	case j.Held == OneBeam:
		row.Value = figure.Say("on one beam with the ground")
		if !alike && l.Known && !l.Assumed {
			row.Warning = "the warps don't weave up alike: on one beam one grows tight and the other slack"
		}
	case j.Held == OwnBeam:
		row.Value = figure.Say("on a beam of its own, with its own tension")
	case j.Held == Weights:
		row.Value = figure.Say("on weights behind the loom, chain by chain")
	}
	return sheet.Part{ID: PartBeams, Title: "Beams and tension",
		Rows: []measure.Row{{Name: "ground", Value: figure.Say("on the warp beam")}, row}}
}

// yarn says what each is wound of.
func (j *Joint) yarn() sheet.Part {
	part := sheet.Part{ID: sheet.PartYarn, Title: "Yarn"}
	for w, pr := range j.Warps {
		p := pr.Plan
		value := figure.Say("%s", p.WarpYarn().As(p.Spec.Units.Long(), 1))
		if !p.Spec.Yarn.Size.IsZero() {
			value = value.And(" of %s", p.Spec.Yarn.Size.Shown())
		}
		if c := p.Spec.Yarn.Colour; c != "" && !p.Striped() {
			value = value.And(", %s", c)
		}
		part.Rows = append(part.Rows, measure.Row{Name: Which(w).String(), Value: value, How: measure.How{
			Formula: "ends x length of the warp", WithNumbers: figure.Say("%s x %s = %s", ends(p.EndsWound()),
				p.Path.Length.As(p.Spec.Units.Long(), 2), p.WarpYarn().As(p.Spec.Units.Long(), 1))}})
	}
	return part
}

// raddlePart lists the sections from left to right, with the ends of each warp.
func (j *Joint) raddlePart() sheet.Part {
	part := sheet.Part{ID: sheet.PartRaddle, Title: "Raddle, from left to right"}
	if j.Raddled == nil {
		return part
	}
	centre := "centred on a tooth"
	if j.Raddled.MiddleSpace {
		centre = "centred on a space"
	}
	filled := measure.Row{Name: "sections filled", Value: figure.Say("%s of %s, %s", number(len(j.Raddled.Sections)),
		j.Raddle.Space, centre)}
	if !j.Raddled.Fits {
		filled.Warning = fmt.Sprintf("the raddle has %d", j.Raddle.Spaces)
	}
	part.Picture = j.RaddlePicture(sheet.PictureWidth)
	t := &sheet.Table{Columns: []string{"section", "ground", "numbers", "groups", "second", "numbers", "groups",
		"together"}}
	for _, s := range j.Raddled.Sections {
		line := []figure.Cell{figure.Say("%s", s[Ground].FromMiddle())}
		for w, in := range s {
			line = append(line, number(in.Ends), numbers(in.Ends, in.First, in.Last),
				word(sheet.GroupSpan(j.Warps[w].Plan, in)))
		}
		t.Lines = append(t.Lines, append(line, number(s[Ground].Ends+s[Second].Ends)))
	}
	part.Rows, part.Table = []measure.Row{filled}, t
	part.Notes = []string{"Section: counted from the middle. Numbers: which ends of that warp they are. Groups: " +
		"the passes that laid them, 2:4 is group 4 of chain 2; ~ before one that a tooth parts. Each warp is laid in " +
		"from its own counting cross, whole groups as far as its plan keeps them."}
	return part
}

// numbers are those of ends, empty for none.
func numbers(n, first, last int) figure.Cell {
	if n == 0 {
		return nil
	}
	return figure.Cell{figure.Range{First: first, Last: last}}
}

// heddles counts the heddles of each warp, by shaft where both threadings are known.
func (j *Joint) heddles() sheet.Part {
	part := sheet.Part{ID: PartHeddles, Title: "Heddles"}
	var need [2][]int
	all := 0
	doubled := false
	for w, pr := range j.Warps {
		t, ok := pr.Threaded()
		n := t.Places()
		if ok {
			need[w] = t.Heddles()
			n = sum(need[w])
		}
		doubled = doubled || t.Doubled > 0
		all += n
		part.Rows = append(part.Rows, measure.Row{Name: Which(w).String(), Value: number(n)})
	}
	part.Rows = append(part.Rows, measure.Row{Name: "in all", Value: number(all)})
	if doubled {
		part.Notes = []string{loom.DoubledRule}
	}
	if len(need[Ground])+len(need[Second]) == 0 {
		return part
	}
	t := &sheet.Table{Columns: []string{"shaft", "ground", "second", "together"}}
	var both []int
	for i := range max(len(need[Ground]), len(need[Second])) {
		a, b := at(need[Ground], i), at(need[Second], i)
		both = append(both, a+b)
		t.Lines = append(t.Lines, []figure.Cell{number(i + 1), number(a), number(b), number(a + b)})
	}
	part.Table = t
	have := j.Warps[Ground].Plan.Spec.Loom.Heddles
	if len(have) == 0 {
		have = j.Warps[Second].Plan.Spec.Loom.Heddles
	}
	part.Rows = append(part.Rows, project.HeddleRows(both, have)...)
	for w, list := range need {
		if len(list) == 0 {
			part.Notes = append(part.Notes, "The threading of the "+Which(w).String()+" isn't known: its heddles "+
				"are in no line of the table.")
		}
	}
	return part
}

func at(list []int, i int) int {
	if i < len(list) {
		return list[i]
	}
	return 0
}

func sum(list []int) (n int) {
	for _, one := range list {
		n += one
	}
	return n
}
