package prose

import (
	"bytes"
	"fmt"
	"io"
	"text/tabwriter"
)

// Table writes rows of cells in aligned columns, two spaces apart, with nothing after the last word of a
// line.
func Table(w io.Writer, rows [][]any) {
	var b bytes.Buffer
	tw := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for _, cells := range rows {
		for i, cell := range cells {
			if i > 0 {
				fmt.Fprint(tw, "\t")
			}
			fmt.Fprint(tw, cell)
		}
		fmt.Fprintln(tw)
	}
	_ = tw.Flush() // fails only if what it writes to does, and a buffer doesn't
	for line := range bytes.Lines(b.Bytes()) {
		fmt.Fprintf(w, "%s\n", bytes.TrimRight(line, " \n"))
	}
}
