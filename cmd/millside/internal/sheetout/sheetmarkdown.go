package sheetout

import (
	"fmt"
	"io"
	"strings"
	"unicode"

	"millside/cmd/millside/internal/prose"
	"millside/plan/figure"
	"millside/plan/measure"
	"millside/plan/sheet"
)

// sheetMarkdown writes the sheet as Markdown (CommonMark, with pipe tables). Whatever
// could be taken for a mark is escaped.
func sheetMarkdown(w io.Writer, s *sheet.Sheet, how bool) error {
	fmt.Fprintf(w, "# %s\n\n%s\n", escaped(s.Title), cellMarkdown(s.Summary()))
	for _, part := range s.Parts {
		fmt.Fprintf(w, "\n## %s\n", escaped(part.Title))
		if len(part.Rows) > 0 {
			fmt.Fprintln(w)
		}
		for _, r := range part.Rows {
			rowMarkdown(w, r, how)
		}
		if len(part.Picture) > 0 { // letters and signs of our own, in which no fence can stand
			fmt.Fprintf(w, "\n```\n%s\n```\n", strings.Join(part.Picture, "\n"))
		}
		if part.Table != nil {
			fmt.Fprintln(w)
			tableMarkdown(w, part.Table)
		}
		if len(part.Notes) > 0 {
			fmt.Fprintln(w)
		}
		for _, note := range part.Notes {
			fmt.Fprintf(w, "- %s\n", escaped(note))
		}
	}
	return nil
}

func rowMarkdown(w io.Writer, r measure.Row, how bool) {
	fmt.Fprintf(w, "- **%s**: %s\n", escaped(r.Name), cellMarkdown(r.Value))
	if text := cellMarkdown(howOf(r)); how && text != "" {
		fmt.Fprintf(w, "  - %s\n", text)
	}
	if r.Warning != "" {
		fmt.Fprintf(w, "  - **Take care: %s**\n", escaped(r.Warning))
	}
}

func tableMarkdown(w io.Writer, t *sheet.Table) {
	_, numbers := columnWidths(t)
	line := func(cells []string) { fmt.Fprintf(w, "| %s |\n", strings.Join(cells, " | ")) }
	names, rule := make([]string, len(t.Columns)), make([]string, len(t.Columns))
	for i, name := range t.Columns {
		names[i], rule[i] = escaped(name), "---"
		if numbers[i] {
			rule[i] = "---:"
		}
	}
	line(names)
	line(rule)
	for _, cells := range t.Lines {
		texts := make([]string, len(cells))
		for i, cell := range cells {
			texts[i] = cellMarkdown(cell)
		}
		line(texts)
	}
}

// cellMarkdown writes a cell: nothing in it is a mark.
func cellMarkdown(c figure.Cell) string { return escaped(cellText(c)) }

// escaped puts a backslash before every mark of ASCII that could mean something in Markdown (CommonMark
// 0.31, "backslash escapes", lets any of them be escaped), and leaves those that a sheet is full of and
// that mean nothing within a line.
func escaped(s string) string {
	var b strings.Builder
	for i, r := range strings.Join(strings.Fields(prose.Clean(s)), " ") {
		harmless := strings.ContainsRune(`.,:;()/%"'?=^`, r) || r == '-' && i > 0
		if r < unicode.MaxASCII && (unicode.IsPunct(r) || unicode.IsSymbol(r)) && !harmless {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}
