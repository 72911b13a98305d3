package form

import (
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"millside/plan"
	"millside/plan/field"
	"millside/plan/loom"
	"millside/plan/measure"
)

// inHand is the form with the field in hand.
func (b *bench) inHand(m Model, f *field.Field) Model {
	for i, l := range m.fields {
		if l.Field == f {
			return m.focus(i)
		}
	}
	b.t.Fatalf("no field %s", f.Name)
	return m
}

// What the reed makes of the sett stands below both fields, in the words of the sheet; and a sett that no order comes
// near to is told on the page of the reed too, while the reed is in hand.
func TestReedAndSettOnTheForm(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	spec := plan.DefaultSpec()
	spec.Loom.Sett, _ = measure.ParseSett("18.4 an inch")
	spec.Loom.Reed, _ = loom.ParseReed("10 dents an inch")
	m := New(b.deps, spec)
	words := strings.Fields(m.project.SettRows()[0].Warning)
	for _, size := range [][2]int{{60, 18}, {80, 24}, {120, 40}} {
		for _, f := range []*field.Field{field.SettOf, field.Reed} {
			seen := strings.Join(strings.Fields(columns(b.inHand(m, f).View(size[0], size[1]), size[0])), " ")
			if len(words) == 0 || !strings.Contains(seen, strings.Join(words, " ")) {
				t.Errorf("%s at %v doesn't say %q:\n%s", f.Name, size, words, b.inHand(m, f).View(size[0], size[1]))
			}
		}
	}
	m = b.typed(b.inHand(m, field.Reed), "0.15 dents an inch")
	view := m.View(60, 18)
	if !strings.Contains(strings.Join(strings.Fields(view), " "), "sett, on the page “cloth”: give a sett near to") {
		t.Errorf("the page of the reed doesn't say what is wrong:\n%s", view)
	}
}

// columns is the left part of a view, where the fields are.
func columns(view string, w int) string {
	if w < wideForm {
		return view
	}
	var lines []string
	for _, l := range strings.Split(view, "\n") {
		lines = append(lines, string([]rune(l)[:min(46, w/2+3, len([]rune(l)))]))
	}
	return strings.Join(lines, "\n")
}
