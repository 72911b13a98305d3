package look

import (
	"fmt"
	"strings"
)

// Seen is the part of a list that is seen: its lines from From up to, and without, To, and how many entries have no
// line above it and below it.
type Seen struct{ From, To, Above, Below int }

// Around chooses the part of a list that finds room in so many rows, around the entry that is chosen. Of is the entry
// that each line belongs to. All lines of the chosen entry are seen where they find room; of another entry all are
// seen or none.
func Around(of []int, chosen, room int) Seen {
	room = max(room, 0)
	first, last := -1, 0
	for i, entry := range of {
		if entry == chosen {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	from := 0
	if first >= 0 && last >= room { // not seen from the top on; a third of the room is for what follows then
		from = min(last+1-room+room/3, max(len(of)-room, 0), first)
	}
	to := min(from+room, len(of))
	for from > 0 && from < first && of[from] == of[from-1] {
		from++
	}
	for to < len(of) && to > last+1 && of[to] == of[to-1] {
		to--
	}
	return Seen{from, to, entries(of[:from]), entries(of[to:], of[:to]...)}
}

// entries counts the entries of lines, without those that are seen.
func entries(of []int, seen ...int) int {
	known := map[int]bool{}
	for _, entry := range seen {
		known[entry] = true
	}
	n := 0
	for _, entry := range of {
		if !known[entry] {
			known[entry] = true
			n++
		}
	}
	return n
}

// More is the sign that a list goes on above or below what is seen of it, set in; "" where it doesn't.
func (s Styles) More(n int, where string) string {
	if n == 0 {
		return ""
	}
	return "  " + s.Dim.Render(moreText(n, where))
}

func moreText(n int, where string) string { return fmt.Sprintf("… %d more %s", n, where) }

// Scrolled is the part of a list around the entry that is chosen in exactly so many rows: the first is free for the
// sign that there is more above, and the last holds the sign that there is more below, where there is.
func (s Styles) Scrolled(lines []string, of []int, chosen, rows int) []string {
	seen := Around(of, chosen, rows-1)
	if seen.Below > 0 && rows > 2 {
		seen = Around(of, chosen, rows-2)
	}
	out := append([]string{s.More(seen.Above, "above")}, lines[seen.From:seen.To]...)
	if seen.Below > 0 && rows > 2 {
		for len(out) < rows-1 {
			out = append(out, "")
		}
		return append(out, s.More(seen.Below, "below"))
	}
	return append(out, Blanks(max(rows-len(out), 0))...)[:max(rows, 0)]
}

// ScrolledOver is the same above something else: the last row is a line between them, in which the sign stands that
// there is more below.
func (s Styles) ScrolledOver(lines []string, of []int, chosen, w, rows int) []string {
	seen := Around(of, chosen, rows-2)
	out := append([]string{s.More(seen.Above, "above")}, lines[seen.From:seen.To]...)
	out = append(out, Blanks(max(rows-1-len(out), 0))...)
	sign := "────"
	if seen.Below > 0 {
		sign = "── " + moreText(seen.Below, "below") + " "
	}
	rule := s.Dim.Render("  " + sign + strings.Repeat("─", max(w-2-Wide(sign)-2, 0)))
	return append(out, Fit(rule, w))
}
