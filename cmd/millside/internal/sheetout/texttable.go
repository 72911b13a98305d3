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

// leastLast is the least room in which the last column of a table may be broken.
const leastLast = 14

// tableText writes a table at most 80 columns wide: as it is, or with its last column broken, or, where
// that leaves too little room, each line as a block of its own.
func tableText(w io.Writer, t *sheet.Table) {
	widths, numbers := columnWidths(t)
	last := len(widths) - 1
	room := prose.TextWidth
	for _, n := range widths[:last] {
		room -= n + 2
	}
	if room < min(widths[last], max(leastLast, longestWord(t, last))) {
		blocksText(w, t)
		return
	}
	indent := prose.TextWidth - room
	line := func(cells []figure.Cell) {
		var b strings.Builder
		for i, cell := range cells[:last] {
			b.WriteString(padded(cellText(cell), widths[i], numbers[i]) + "  ")
		}
		cell := cellText(cells[last])
		if widths[last] > room {
			cell = prose.Wrap(cell, indent)
		} else {
			cell = padded(cell, widths[last], numbers[last])
		}
		fmt.Fprintln(w, strings.TrimRight(b.String()+cell, " "))
	}
	names, rule := make([]figure.Cell, len(widths)), make([]figure.Cell, len(widths))
	for i, n := range widths {
		if i == last {
			n = min(n, room)
		}
		names[i], rule[i] = figure.Say("%s", t.Columns[i]),
			figure.Say("%s", strings.Repeat("-", min(n, prose.TextWidth)))
	}
	line(names)
	line(rule)
	for _, cells := range t.Lines {
		line(cells)
	}
}

// longestWord is how wide the longest word of a column is: no line is broken within it.
func longestWord(t *sheet.Table, column int) int {
	most := 0
	for _, cells := range t.Lines {
		for _, word := range strings.Fields(cellText(cells[column])) {
			most = max(most, utf8.RuneCountInString(word))
		}
	}
	return most
}

// columnWidths gives the width of each column, and whether it holds nothing but numbers.
func columnWidths(t *sheet.Table) (widths []int, numbers []bool) {
	widths, numbers = make([]int, len(t.Columns)), make([]bool, len(t.Columns))
	for i, name := range t.Columns {
		widths[i], numbers[i] = utf8.RuneCountInString(prose.Clean(name)), true
	}
	for _, cells := range t.Lines {
		for i, cell := range cells {
			widths[i] = max(widths[i], utf8.RuneCountInString(cellText(cell)))
			numbers[i] = numbers[i] && bareNumber(cell)
		}
	}
	return widths, numbers
}

// padded fills a cell up to its column's width; numbers stand to the right.
func padded(cell string, width int, number bool) string {
	fill := strings.Repeat(" ", max(width-utf8.RuneCountInString(cell), 0))
	if number {
		return fill + cell
	}
	return cell + fill
}

// blocksText writes each line of a table as a block: the name of each column and what stands in it.
func blocksText(w io.Writer, t *sheet.Table) {
	for i, cells := range t.Lines {
		if i > 0 {
			fmt.Fprintln(w)
		}
		for k, cell := range cells {
			if len(cell) > 0 {
				RowText(w, measure.Row{Name: t.Columns[k], Value: cell}, false)
			}
		}
	}
}
