package form

import (
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/plan"
	"millside/plan/athand"
	"millside/plan/entry"
	"millside/plan/field"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/tui/internal/hand"
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

// A length that follows from the cloth is shown no more exactly than the shares that it is reckoned with.
func TestLengthFromTheClothIsRounded(t *testing.T) {
	spec := entry.NewSpec(measure.Metric)
	spec.Cloth.Used, spec.Cloth.Width.Finished, spec.Cloth.Length.Piece = true, measure.Metre/2, 80*measure.Centimetre
	if err := spec.Loom.Sett.UnmarshalText([]byte("10 a cm")); err != nil {
		t.Fatal(err)
	}
	m := New(newBench(t, termenv.Ascii).deps, spec)
	i := slices.IndexFunc(m.fields, func(l line) bool { return l.Field == field.Length })
	if got := m.follows(m.fields[i]); got != "1.67 m" {
		t.Errorf("%q", got)
	}
}

// A line that says what is assumed stands once, and no field stands there with nothing behind its name.
func TestAssumedStandsOnceAndNoFieldIsBlank(t *testing.T) {
	h, err := athand.Parse("mill floor: circumference 3 yd, peg step 9 in\npaddle short: positions 8\n")
	if err != nil {
		t.Fatal(err)
	}
	d := newBench(t, termenv.Ascii).deps
	var spec plan.Spec
	d.AtHand = h
	spec, d.Assumed = h.Assume(entry.NewSpec(measure.Imperial), func(*field.Field) bool { return false })
	m := New(d, spec)
	for i := range m.fields {
		m = m.focus(i)
		if n := strings.Count(strings.Join(strings.Fields(m.View(200, 60)), " "), "assumed: the only"); n > 1 {
			t.Errorf("%s: %d times:\n%s", m.fields[i].Name, n, m.View(200, 60))
		}
		for j, f := range m.fields {
			if j != i && j != m.boxAt && strings.TrimSpace(m.fieldLine(j, 60)) == f.Label {
				t.Errorf("%s is blank", f.Name)
			}
		}
	}
}

// The key for the page that starts from what is known stands at the foot of the first page, and asks for that page.
func TestFromTheFormToWhatIsKnown(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := New(b.deps, entry.NewSpec(measure.Imperial))
	for _, w := range []int{60, 80, 120} {
		if v := m.View(w, 18); !strings.Contains(v, "f2 what I know") || !strings.Contains(v, "esc back") {
			t.Errorf("%d columns:\n%s", w, v)
		}
	}
	_, cmd := m.Update(tea.KeyMsg{Type: tea.KeyF2})
	if got := hand.Collect(cmd); len(got) != 1 || got[0] != (KnownMsg{}) {
		t.Errorf("%v", got)
	}
}
