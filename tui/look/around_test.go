package look

import (
	"io"
	"strings"
	"testing"

	"github.com/muesli/termenv"
)

// listOf are lines of which each entry has so many, with the entry that each belongs to.
func listOf(heights ...int) (lines []string, of []int) {
	for i, n := range heights {
		for range n {
			lines, of = append(lines, string(rune('a'+i))), append(of, i)
		}
	}
	return lines, of
}

func TestScrolled(t *testing.T) {
	s := NewStyles(io.Discard, termenv.Ascii)
	for _, c := range []struct {
		name    string
		heights []int
		chosen  int
		rows    int
		beside  string // what View shows, its lines parted by |
		over    string // the same above a line
	}{
		{"all find room", []int{1, 1, 1}, 0, 5, "|a|b|c|", "|a|b|c|── ──"},
		{"one too many", []int{1, 1, 1, 1}, 0, 4, "|a|b|2 below", "|a|b|── 2 below"},
		{"the last is chosen", []int{1, 1, 1, 1}, 3, 4, "1 above|b|c|d", "2 above|c|d|── ──"},
		{"one in the middle", []int{1, 1, 1, 1, 1}, 2, 4, "1 above|b|c|2 below", "1 above|b|c|── 2 below"},
		{"the chosen one is high", []int{1, 3, 1}, 1, 5, "1 above|b|b|b|1 below", "1 above|b|b|b|── 1 below"},
		{"no half of another", []int{2, 1, 2}, 1, 4, "1 above|b||1 below", "1 above|b||── 1 below"},
		{"too high even alone", []int{1, 4, 1}, 1, 4, "1 above|b|b|1 below", "1 above|b|b|── 1 below"},
		{"none is chosen", []int{1, 1, 1, 1}, 9, 4, "|a|b|2 below", "|a|b|── 2 below"},
		{"no room at all, none chosen", []int{1, 1}, 9, 1, "", "|── 2 below"},
	} {
		lines, of := listOf(c.heights...)
		if got := plainRows(s.Scrolled(lines, of, c.chosen, c.rows)); got != c.beside {
			t.Errorf("%s: beside: %q, want %q", c.name, got, c.beside)
		}
		if got := plainRows(s.ScrolledOver(lines, of, c.chosen, 30, c.rows)); got != c.over {
			t.Errorf("%s: over: %q, want %q", c.name, got, c.over)
		}
	}
}

// plainRows are rows without what is the same in all signs.
func plainRows(rows []string) string {
	for i, r := range rows {
		r = strings.ReplaceAll(strings.ReplaceAll(r, "… ", ""), " more", "")
		if strings.Contains(r, "──") {
			r = strings.TrimSpace(strings.Trim(strings.TrimSpace(r), "─"))
			r = "── " + r
			if r == "── " {
				r = "── ──"
			}
		}
		rows[i] = strings.TrimSpace(r)
	}
	return strings.Join(rows, "|")
}
