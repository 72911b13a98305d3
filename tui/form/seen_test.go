package form

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"millside/plan/field"
	"millside/tui/internal/hand"
	"millside/tui/look"
)

var moreFields = regexp.MustCompile(`… (\d+) more (above|below)(?: ─|  |\n)`)

// Each field of a page is seen, or counted in a sign above or below those that are.
func TestEachFieldIsSeenOrCounted(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := New(b.deps, fourTowels(t))
	for i, f := range m.fields {
		if f.section == secStripes && i == m.boxAt {
			continue
		}
		m := m.focus(i)
		for _, size := range []hand.Size{{W: 60, H: 18}, {W: 80, H: 24}, {W: 120, H: 40}, {W: 40, H: 14}} {
			view := m.View(size.W, size.H)
			seen, all := 0, 0
			for j, other := range m.fields {
				if other.section != f.section || j == m.boxAt {
					continue
				}
				all++
				mark := "    "
				if j == i {
					mark = "  ▸ "
				}
				if strings.Contains(view, mark+look.Pad(other.Label, 17)) {
					seen++
				}
			}
			for _, sign := range moreFields.FindAllStringSubmatch(view, -1) {
				n, err := strconv.Atoi(sign[1])
				if err != nil {
					t.Fatal(err)
				}
				seen += n
			}
			if seen != all {
				t.Errorf("%s at %s: %d of %d fields are seen or counted:\n%s", f.Label, size, seen, all, view)
			}
		}
	}
}

// A label has its column to itself, and the names in the result are wrapped there.
func TestNoLabelIsCut(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := New(b.deps, fourTowels(t))
	for _, f := range m.fields {
		if f.Field != field.StripesOf && look.Wide(f.Label) > 17 {
			t.Errorf("the label %q takes %d cells", f.Label, look.Wide(f.Label))
		}
	}
	cloth := m.turnTo(secCloth).View(80, 24)
	for _, part := range []string{"width wanted in   ", "the reed   "} {
		if !strings.Contains(cloth, part) {
			t.Errorf("%q isn't shown:\n%s", part, cloth)
		}
	}
}
