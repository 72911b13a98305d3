package planout

import (
	"fmt"
	"io"

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
	if text := d.NotThreadedText(); text != "" {
		prose.Row(w, "Not threaded", "%s", text)
	}
	prose.Row(w, "Sett", "%s", d.SettText())
	if d.Wanted != "" {
		prose.Row(w, "Wanted", "%s", d.Wanted)
	}
	made := draftStripes(w, d)
	if made != nil {
		row(w, "Heddles", made.HeddlesText())
	}
	row(w, "Weft", d.WeftText(d.Use.Names))
	if made != nil && !made.Plain() {
		draftColours(w, made.Order)
	}
	if len(d.Warnings) > 0 {
		fmt.Fprint(w, "\nNot as the standard has it:\n")
	}
	for _, warning := range d.Warnings {
		fmt.Fprintf(w, "  %s\n", prose.Wrap(prose.Clean(warning.String()), 6))
	}
}

// row writes what a draft may not say.
func row(w io.Writer, name, text string) {
	if text != "" {
		prose.Row(w, name, "%s", text)
	}
}

// said writes a count that the draft may not have given.
func said(n int, noun string) string {
	if n == 0 {
		return "no word on " + noun + "s"
	}
	return prose.Count(n, noun)
}

// draftStripes writes the stripes, and gives the warp that the draft makes, nil if it makes none.
func draftStripes(w io.Writer, d *asked.DraftFile) (made *draft.Warp) {
	for i, side := range d.Sides() {
		one, err := d.Warp(side)
		if err != nil {
			prose.Row(w, "Stripes", "%v", err)
			return nil
		}
		made = one
		for _, said := range made.Said {
			if i == 0 {
				prose.Row(w, "Made of it", "%s", said)
			}
		}
		switch {
		case !made.Plain():
			prose.Row(w, "Stripes", "from left to right, %s: %s", sideText(d, side), made.Order)
		case d.Coloured:
			prose.Row(w, "Stripes", "none: %s of one colour make a plain warp", prose.Count(made.Ends, "end"))
		default:
			prose.Row(w, "Stripes", "none: the draft gives no thread a colour, so its %s make a plain warp",
				prose.Count(made.Ends, "end"))
		}
		if text := made.SpacingText(); text != "" {
			prose.Row(w, "Spacing", "from left to right, %s: %s", sideText(d, side), text)
		}
	}
	return made
}

// draftColours lists the colours with their ends. These have no letters here: which one is first depends on
// the side of thread 1.
func draftColours(w io.Writer, last stripe.Order) {
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
	case d.Symmetric(d.Use) && !d.Coloured:
		return "no colours"
	case d.Symmetric(d.Use):
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
