package planout

import (
	"fmt"
	"io"
	"math/big"
	"strings"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/plan/draft"
	"millside/plan/stripe"
)

// DraftText writes what a draft says.
func DraftText(w io.Writer, d *asked.DraftFile) {
	title := d.Title
	if title == "" {
		title = "without a title"
	}
	fmt.Fprintf(w, "Draft \"%s\"\n\n", prose.Clean(title))
	prose.PathRow(w, "File", d.Path)
	prose.Row(w, "Threads", "%d in the warp", d.Threads)
	if d.Shafts > 0 || d.Treadles > 0 {
		prose.Row(w, "Shafts", "%s, %s", said(d.Shafts, "shaft"), said(d.Treadles, "treadle"))
	}
	prose.Row(w, "Sett", "%s", settOffered(d))
	draftStripes(w, d)
	if len(d.Warnings) > 0 {
		fmt.Fprint(w, "\nNot as the standard has it:\n")
	}
	for _, warning := range d.Warnings {
		fmt.Fprintf(w, "  %s\n", prose.Wrap(prose.Clean(warning.String()), 6))
	}
}

// said writes a count that the draft may not have given.
func said(n int, noun string) string {
	if n == 0 {
		return "no word on " + noun + "s"
	}
	return prose.Count(n, noun)
}

// draftStripes writes the stripes and the colours. These have no letters here: which one is A depends on
// the side of thread 1.
func draftStripes(w io.Writer, d *asked.DraftFile) {
	if !d.Coloured {
		prose.Row(w, "Stripes", "none: the draft gives no thread a colour")
		return
	}
	var last stripe.Order
	for _, side := range d.Sides() {
		order, err := d.Stripes(side)
		if err != nil {
			prose.Row(w, "Stripes", "%v", err)
			return
		}
		prose.Row(w, "Stripes", "from left to right, %s: %s", sideText(d, side), order)
		last = order
	}
	ends, err := last.Ends()
	if err != nil {
		return // the stripes are then not worth counting, and their notation was shown
	}
	uses := make([]int, len(last.Colours)+1)
	for _, c := range ends {
		uses[c]++
	}
	fmt.Fprint(w, "\nColours:\n")
	var rows [][]any
	for i, c := range last.Colours {
		rows = append(rows, []any{"  " + prose.Clean(c.Name), shadeText(c), prose.Count(uses[i+1], "end")})
	}
	prose.Table(w, rows)
}

func sideText(d *asked.DraftFile, side draft.Side) string {
	switch {
	case d.SideGiven:
		return "thread 1 on the " + side.String()
	case d.Symmetric():
		return "the same from both sides"
	}
	return "if thread 1 is on the " + side.String()
}

func shadeText(c stripe.Colour) string {
	if !c.Known {
		return "no shade given"
	}
	return c.Shade.String()
}

// settOffered says what sett a draft gives, and that it isn't taken over.
func settOffered(d *asked.DraftFile) string {
	if d.Sett == nil {
		return "the draft doesn't say"
	}
	text := fmt.Sprintf("the draft's spacing comes to %s ends an inch, %s in 10 cm", decimals(d.Sett.PerInch(), 2), decimals(d.Sett.Per10cm(), 1))
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
	return about + text
}
