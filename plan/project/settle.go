package project

import (
	"millside/plan/field"
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

// Settles says in a field's place what the reed makes of the sett; "" where there is nothing to say of the field.
func (pr *Project) Settles(f *field.Field) string {
	if pr == nil || pr.Settled == nil || pr.Sley == nil || !pr.Settled.Of(f) {
		return ""
	}
	return pr.Settled.Words(pr.Sley.Width, pr.SideBySide(), pr.Plan.Spec.Units).String()
}

// SideBySide is how many ends lie beside one another in the width, without the second ends of doubled pairs and
// without floating selvedges.
func (pr *Project) SideBySide() int {
	c := pr.Plan.Spec.Cloth.Width
	return pr.Plan.EndsWound() - 2*c.Doubled - c.FloatingIn()
}
