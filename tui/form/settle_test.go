package form

import (
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"millside/plan"
	"millside/plan/athand"
	"millside/plan/field"
	"millside/plan/loom"
	"millside/plan/measure"
)

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
			seen := strings.Join(strings.Fields(columns(b.at(m, f).View(size[0], size[1]), size[0])), " ")
			if len(words) == 0 || !strings.Contains(seen, strings.Join(words, " ")) {
				t.Errorf("%s at %v doesn't say %q:\n%s", f.Name, size, words, b.at(m, f).View(size[0], size[1]))
			}
		}
	}
	m = b.typed(b.at(m, field.Reed), "0.15 dents an inch")
	view := m.View(60, 18)
	if !strings.Contains(strings.Join(strings.Fields(view), " "), "sett, on the page “cloth”: give a sett near to") {
		t.Errorf("the page of the reed doesn't say what is wrong:\n%s", view)
	}
}

// The setts that the reeds give stand beside the field of the reed, and nowhere else, at every size, also while the
// rest of the plan won't do.
func TestSettsOfReedsOnTheForm(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	twelve, _ := loom.ParseReed("12 dents an inch")
	b.deps.AtHand = athand.AtHand{Reeds: []athand.NamedReed{{Name: "wide twelve", Reed: twelve}}}
	spec := plan.DefaultSpec()
	spec.Loom.Sett, _ = measure.ParseSett("18 an inch")
	spec.Loom.Reed, _ = loom.ParseReed("10 dents an inch")
	for _, broken := range []bool{false, true} {
		if spec.Group = 10; broken {
			spec.Group = 99
		}
		m := New(b.deps, spec)
		for _, size := range [][2]int{{60, 18}, {80, 24}, {120, 40}, {200, 60}} {
			seen := ""
			at := b.at(m, field.Reed)
			for range 8 {
				seen += at.View(size[0], size[1]) + "\n"
				at = b.press(at, "ctrl+r")
			}
			for _, want := range []string{"setts near 18 an inch", "10 dents an inch, this plan's", "▸ 18     as asked",
				"wide twelve", "15     -16.7 %", "1-1-1-2"} {
				if !strings.Contains(seen, want) {
					t.Errorf("broken %v, at %v there is no %q:\n%s", broken, size, want, seen)
				}
			}
			if strings.Contains(b.at(m, field.Raddle).View(size[0], size[1]), "setts near 18") {
				t.Errorf("at %v the setts stand beside another field", size)
			}
		}
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
