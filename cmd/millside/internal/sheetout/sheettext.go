package sheetout

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"millside/cmd/millside/internal/prose"
	"millside/plan/figure"
	"millside/plan/measure"
	"millside/plan/sheet"
)

// nameWidth is how far the values stand in on a text sheet.
const nameWidth = 28

// sheetText writes the sheet for a wall or a terminal, at most 80 columns wide. With how, each figure has
// its formula below it.
func sheetText(w io.Writer, s *sheet.Sheet, how bool) error {
	title := prose.Wrap(prose.Clean(s.Title), 0)
	fmt.Fprintf(w, "%s\n%s\n%s\n", title, strings.Repeat("=", min(utf8.RuneCountInString(title), prose.TextWidth)),
		cellText(s.Summary()))
	for _, part := range s.Parts {
		PartText(w, part, how)
	}
	return nil
}

// PartText writes one part of a sheet.
func PartText(w io.Writer, part sheet.Part, how bool) {
	title := strings.ToUpper(part.Title)
	fmt.Fprintf(w, "\n%s\n%s\n", title, strings.Repeat("-", utf8.RuneCountInString(title)))
	for _, r := range part.Rows {
		RowText(w, r, how)
	}
	if len(part.Picture) > 0 {
		fmt.Fprintf(w, "\n%s\n", strings.Join(part.Picture, "\n"))
	}
	if part.Table != nil {
		if len(part.Rows) > 0 || len(part.Picture) > 0 {
			fmt.Fprintln(w)
		}
		tableText(w, part.Table)
	}
	if len(part.Notes) > 0 && (part.Table != nil || len(part.Rows) > 0) {
		fmt.Fprintln(w)
	}
	for _, note := range part.Notes {
		fmt.Fprintf(w, "- %s\n", prose.Wrap(prose.Clean(note), 2))
	}
}

// RowText writes a figure; a long name has a line of its own.
func RowText(w io.Writer, r measure.Row, how bool) {
	name := prose.Clean(r.Name)
	gap := nameWidth - utf8.RuneCountInString(name)
	if gap < 2 {
		name, gap = prose.Wrap(name, 0)+"\n", nameWidth
	}
	fmt.Fprintf(w, "%s%s%s\n", name, strings.Repeat(" ", gap), prose.Wrap(cellText(r.Value), nameWidth))
	const indent = 4
	below := func(text string) {
		if text != "" {
			fmt.Fprintf(w, "%s%s\n", strings.Repeat(" ", indent), prose.Wrap(prose.Clean(text), indent))
		}
	}
	if how {
		below(cellText(howOf(r)))
	}
	if r.Warning != "" {
		below("TAKE CARE: " + r.Warning)
	}
}

// howOf says in one line how a figure was reached, and what is usual.
func howOf(r measure.Row) figure.Cell {
	var parts []figure.Cell
	if r.How.Formula != "" {
		parts = append(parts, figure.Say("%s: %s", r.How.Formula, r.How.WithNumbers))
	}
	if r.Usual != "" {
		parts = append(parts, figure.Say("usual: %s", r.Usual))
	}
	return figure.Join(parts, "; ")
}

// cellText writes a cell as text.
func cellText(c figure.Cell) string { return prose.Clean(c.String()) }

// bareNumber says whether a cell may stand in a column of numbers: it holds a bare number, or nothing.
func bareNumber(c figure.Cell) bool {
	if len(c) == 0 {
		return true
	}
	_, ok := c.Only()
	return ok
}
