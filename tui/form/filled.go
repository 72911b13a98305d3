package form

import (
	"maps"

	"millside/plan"
	"millside/tui/look"
)

// Filled is what a weaver has put into the form, right or wrong, so that it can be offered again as it was left.
type Filled struct {
	// Spec is what the fields come to, as far as they can be read; it also holds what has no field. A schedule is not
	// in it: it is worked out anew.
	Spec plan.Spec
	// At is the name of the field that is being filled in, Texts what stands in each, by its name in the table of
	// fields.
	At    string
	Texts map[string]string
}

// Filled is what stands in the form now.
func (m Model) Filled() Filled {
	f := Filled{Spec: m.spec, At: m.fields[m.at].Name, Texts: map[string]string{}}
	f.Spec.Schedule, f.Spec.Other = nil, nil
	for i, l := range m.fields {
		f.Texts[l.Name] = m.text(i)
	}
	return f
}

// Refilled is the form as it was left. Fields of which nothing is known show what the spec has.
func Refilled(d Deps, f Filled) Model {
	m := New(d, f.Spec)
	m.own = maps.Clone(m.own)
	for i, l := range m.fields {
		if text, ok := f.Texts[l.Name]; ok && text != m.text(i) {
			m = m.setField(i, text)
			m.own[i] = true
		}
		if l.Name == f.At {
			m = m.focus(i)
		}
	}
	return m.compute()
}

// Told is the form with something to tell at its foot until the next key.
func (m Model) Told(problem string) Model {
	m.failed = problem
	return m
}

// whatFor says whose plan is changed; empty for a new warp.
func (m Model) whatFor(w int) string {
	if m.Of == "" {
		return ""
	}
	return look.Fit("  "+m.Styles.Dim.Render("changes the plan of "+m.Of+", of which nothing is wound"), w)
}
