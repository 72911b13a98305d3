package draft

import (
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"millside/plan/figure"
	"millside/plan/measure"
)

// Symmetric says whether the colours of the warp, and the widths of its ends, are the same from both sides, so that it
// doesn't matter for the stripes and the reed on which one thread 1 is.
func (d *Draft) Symmetric(u Use) bool {
	u.Side = FromRight
	right, err1 := d.Warp(u)
	u.Side = FromLeft
	left, err2 := d.Warp(u)
	return err1 == nil && err2 == nil && right.Order.String() == left.Order.String() &&
		slices.Equal(right.Widths, left.Widths)
}

// NotThreadedText says how many of the draft's threads go through no shaft, "" if all do or if the draft has
// no threading.
func (d *Draft) NotThreadedText() string {
	atEnd, before := d.NotThreaded()
	if atEnd+before == 0 {
		return ""
	}
	verb := "are"
	if atEnd+before == 1 {
		verb = "is"
	}
	text := fmt.Sprintf("%d of the draft's %d threads are threaded, %d %s not", d.Threads-atEnd-before, d.Threads,
		atEnd+before, verb)
	switch {
	case before == 0 && atEnd == 1:
		return text + ": the last one"
	case before == 0:
		return text + ": those at the end"
	case atEnd == 0:
		return text
	default:
		return text + fmt.Sprintf(", %d of them at the end", atEnd)
	}
}

// SettText says what sett the draft gives, and that it isn't taken over.
func (d *Draft) SettText() string {
	if d.Sett == nil {
		return "the draft doesn't say"
	}
	text := fmt.Sprintf("the draft's spacing comes to %s ends an inch, %s in 10 cm", decimals(d.Sett.PerInch(), 2),
		decimals(d.Sett.Per10cm(), 1))
	if d.Sett.Absurd {
		return text + ", which can hardly be meant"
	}
	return text + "; an offer only: nothing is planned from it"
}

// decimals writes a number rounded to so many decimals, the nearest, and says so if that isn't exact.
func decimals(r *big.Rat, n int) string {
	text := r.FloatString(n)
	about := ""
	if exact, ok := new(big.Rat).SetString(text); !ok || exact.Cmp(r) != 0 {
		about = "about "
	}
	if strings.Contains(text, ".") {
		text = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
	}
	return about + figure.Signed(text)
}

// ParseThreads reads the first and the last thread that are taken, such as "1-96". The error is a
// [*measure.FieldError].
func ParseThreads(text string) (first, last int, err error) {
	from, to, ok := strings.Cut(text, "-")
	first, err1 := strconv.Atoi(strings.TrimSpace(from))
	last, err2 := strconv.Atoi(strings.TrimSpace(to))
	if !ok || err1 != nil || err2 != nil || first < 1 || last < first {
		return 0, 0, &measure.FieldError{Value: text, Want: "the first and the last thread, such as 1-96"}
	}
	return first, last, nil
}

// HeddlesText says how many heddles each shaft needs, "" where the draft has no threading.
func (w *Warp) HeddlesText() string {
	if len(w.Threading) == 0 {
		return ""
	}
	var list []string
	for i, n := range w.Threading.Heddles(w.Ends) {
		list = append(list, fmt.Sprintf("%d on shaft %d", n, i+1))
	}
	if n := w.Threading.Unthreaded(w.Ends); n > 0 {
		list = append(list, "none for "+measure.Counted(n, "end", "ends"))
	}
	return strings.Join(list, ", ")
}

// WeftText says how many picks of the draft are of each colour, "" where the draft doesn't say.
func (d *Draft) WeftText(names map[int]string) string {
	if len(d.Weft) == 0 {
		return ""
	}
	var list []string
	for _, p := range d.Weft {
		list = append(list, fmt.Sprintf("%d %s", p.Picks, d.NameOf(p.Colour, names)))
	}
	return "picks in the draft: " + strings.Join(list, ", ")
}

// mostWidths is how many stretches of ends of one width are listed.
const mostWidths = 8

// SpacingText says how wide the draft has its ends, from left to right, "" where they are all alike.
func (w *Warp) SpacingText() string {
	if len(w.Widths) == 0 {
		return ""
	}
	var list []string
	at := 0
	for at < len(w.Widths) && len(list) < mostWidths {
		to := at
		for to < len(w.Widths) && w.Widths[to] == w.Widths[at] {
			to++
		}
		list = append(list, fmt.Sprintf("%s of %s", measure.Counted(to-at, "end", "ends"), w.Widths[at]))
		at = to
	}
	text := "crammed and spaced: " + strings.Join(list, ", ")
	if at < len(w.Widths) {
		text += fmt.Sprintf(" and so on, %s in all", measure.Counted(len(w.Widths), "end", "ends"))
	}
	return text + "; the reed takes them so"
}
