package planout

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"millside/cmd/millside/internal/prose"
	"millside/plan"
)

// stripedPassesText writes for every pass of a chain the set-up, the positions that carry an end and the
// colours that they lay, and before a pass what is changed for it. It writes nothing for a plain warp.
func stripedPassesText(w io.Writer, p *plan.Plan, c plan.Chain) {
	if !p.Striped() {
		return
	}
	rows := [][]any{{"Pass", "Ends", "Set-up", "Positions", "Colours in the lease"}}
	for _, pass := range c.Passes {
		rows = append(rows, []any{pass.Number, fmt.Sprintf("%d to %d", pass.First, pass.Last), pass.SetUp, pass.Carried, plan.RunsText(p.PassRuns(pass))})
	}
	var lines bytes.Buffer
	prose.Table(&lines, rows)
	fmt.Fprint(w, "\nPaddle:\n")
	number := 0 // of the pass on the line; the first line is the heading
	for line := range strings.Lines(lines.String()) {
		if number > 0 {
			changesLine(w, p, c, number)
		}
		number++
		stripedLine(w, line)
	}
	if c.Number < len(p.Chains) {
		return
	}
	fmt.Fprintf(w, "\n%s\n", prose.Wrap("Positions: those that carry an end; the others stay parked, threaded. "+
		"Colours: in the order of the ends, by their letters.", 0))
}

// changesLine writes what is done to the paddle before a pass.
func changesLine(w io.Writer, p *plan.Plan, c plan.Chain, number int) {
	text := ""
	if number == 1 && c.Number == 1 {
		text = "Thread positions " + p.SetUpText(p.SetUpOf(c.Passes[0]))
	} else if changes := p.ChangesBefore(c, number); len(changes) > 0 {
		text = "Change " + p.ChangesText(changes)
	} else {
		return
	}
	fmt.Fprintf(w, "  %s\n", prose.Wrap(prose.Clean(text), 6))
}

// stripedLine writes a line of the table, broken under its last column if that is long.
func stripedLine(w io.Writer, line string) {
	line = strings.TrimRight(line, "\n")
	for from := 0; len(line) > prose.TextWidth; from = continued {
		cut := strings.LastIndex(line[:prose.TextWidth+1], " ")
		if cut <= from {
			break
		}
		fmt.Fprintln(w, line[:cut])
		line = strings.Repeat(" ", continued) + line[cut+1:]
	}
	fmt.Fprintln(w, line)
}

// continued is how far a broken line of the table stands in.
const continued = 8
