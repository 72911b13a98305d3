package project

import (
	"fmt"
	"slices"

	"millside/plan/cloth"
	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/loom"
	"millside/plan/measure"
)

// SettRows is the sett that the reed gives, with what has to be said of it where that isn't the one that was asked for;
// nothing where the sett or the reed isn't known.
func (pr *Project) SettRows() []measure.Row {
	if pr.Settled == nil || pr.Sley == nil {
		return nil
	}
	return []measure.Row{pr.Settled.Row(pr.Sley.Width, pr.SideBySide(), pr.Plan.Spec.Units)}
}

// Settles says in a field's place what the reed makes of the sett, and whether the sett suits what is to show in the
// cloth; "" where there is nothing to say of the field.
func (pr *Project) Settles(f *field.Field) string {
	if pr == nil {
		return ""
	}
	var said []figure.Cell
	if pr.Settled != nil && pr.Sley != nil && pr.Settled.Of(f) {
		said = append(said, pr.Settled.Words(pr.Sley.Width, pr.SideBySide(), pr.Plan.Spec.Units))
	}
	if rows := pr.FacedRows(); f == field.SettOf && len(rows) > 0 {
		said = append(said, figure.Say("%s", rows[len(rows)-1].Warning))
	}
	said = slices.DeleteFunc(said, func(c figure.Cell) bool { return len(c) == 0 })
	return figure.Join(said, "; ").String()
}

// SideBySide is how many ends lie beside one another in the width, without the second ends of doubled pairs and
// without floating selvedges.
func (pr *Project) SideBySide() int {
	c := pr.Plan.Spec.Cloth.Width
	return pr.Plan.EndsWound() - 2*c.Doubled - c.FloatingIn()
}

// settGiven is the sett that the warp really has: what the reed gives, where it is known, else what was asked for.
func (pr *Project) settGiven() measure.Sett {
	if pr.Settled != nil {
		return pr.Settled.Order.Gives
	}
	return pr.SettInReed()
}

// beam lays the warp on a sectional beam, as wide as it is in the reed.
func (pr *Project) beam() (err error) {
	l := pr.Plan.Spec.Loom
	if l.BeamSection != 0 && !l.Sett.IsZero() {
		pr.Beam, err = loom.FillBeam(pr.SideBySide(), pr.settGiven(), l.BeamSection, pr.Plan.Spec.Units)
	}
	return err
}

// BeamRows is the sections of the beam, and how the groups of the paddle suit them.
func (pr *Project) BeamRows() []measure.Row {
	if pr.Beam == nil {
		return nil
	}
	rows := pr.Beam.Rows
	if beside := pr.Plan.EndsWound() - pr.SideBySide(); beside > 0 {
		rows = append(rows, measure.Row{Name: "in the outer sections",
			Value: figure.Say("%s more, doubled or floating", figure.Counted(beside, "end", "ends"))})
	}
	group, in := pr.Plan.Spec.Group, pr.Beam.Ends[0]
	if pr.Plan.Striped() || len(pr.Beam.Ends) == 1 {
		return rows
	}
	row := measure.Row{Name: "passes for a section", How: measure.How{Formula: "ends in a section / group",
		WithNumbers: figure.Say("%d / %d", in, group)}}
	switch {
	case in%group == 0:
		row.Value = figure.Say("%d of %s", in/group, figure.Counted(group, "end", "ends"))
		return append(rows, row)
	case in < group:
		row.Value = figure.Say("a part of one")
	default:
		row.Value = figure.Say("%d, and %s of one more", in/group, figure.Counted(in%group, "end", "ends"))
	}
	row.Warning = fmt.Sprintf("groups of %d don't fill a section, so some are parted at its edge", group)
	return append(rows, row)
}

// faced finds a sett to begin with for a cloth in which the warp or the weft shows.
func (pr *Project) faced() (err error) {
	s := pr.Plan.Spec
	if s.Loom.Face == cloth.Balanced || s.Yarn.Size.IsZero() {
		return nil
	}
	pr.Faced, err = s.Loom.Face.Sett(s.Yarn.Size, s.Cloth.Weft, measure.DiameterFactors()[0], s.Units)
	return err
}

// FacedRows is that sett step by step, with what is wrong with the sett of the plan.
func (pr *Project) FacedRows() []measure.Row {
	if pr.Faced == nil {
		return nil
	}
	rows := append([]measure.Row{}, pr.Faced.Rows...)
	if sett := pr.Plan.Spec.Loom.Sett; !sett.IsZero() {
		rows[len(rows)-1].Warning = pr.Plan.Spec.Loom.Face.Suits(sett, pr.Faced).String()
	}
	return rows
}
