package planout

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"

	"millside/cmd/millside/internal/prose"
	"millside/plan"
)

// stripedPassesText writes for every pass of a chain the set-up, the positions that carry an end and the
// colours that they lay, and before a pass what is done at the peg for it. It writes nothing for a plain warp.
func stripedPassesText(w io.Writer, p *plan.Plan, c plan.Chain) {
	if !p.Striped() {
		return
	}
	rows := [][]any{{"Pass", "Ends", "Set-up", "Positions", "Colours in the lease"}}
	if p.KindOf(1, 1) != 0 {
		rows[0] = slices.Insert(rows[0], 2, any("Kind"))
	}
	for _, pass := range c.Passes {
		row := []any{pass.Number, p.WoundRange(pass.First, pass.Last), pass.SetUp, pass.Carried,
			plan.RunsText(p.PassRuns(pass))}
		if kind := p.KindOf(c.Number, pass.Number); kind != 0 {
			row = slices.Insert(row, 2, any(plan.KindName(kind)))
		}
		rows = append(rows, row)
	}
	var lines bytes.Buffer
	prose.Table(&lines, rows)
	fmt.Fprint(w, "\nPaddle:\n")
	number := 0 // of the pass on the line; the first line is the heading
	for line := range strings.Lines(lines.String()) {
		if number > 0 {
			workLine(w, p, c, number)
		}
		number++
		stripedLine(w, line)
	}
	workLine(w, p, c, number)
	if c.Number < len(p.Chains) {
		return
	}
	fmt.Fprintf(w, "\n%s\n", prose.Wrap("Positions: those that carry an end; the others stay parked, threaded, and "+
		"are tied on when they carry again. "+
		"Colours: in the order of the ends, by their letters, which begin with C: A and B are the lease pegs.", 0))
}

// workLine writes what is done at the end peg before a pass.
func workLine(w io.Writer, p *plan.Plan, c plan.Chain, number int) {
	work := p.WorkBefore(c.Number, number)
	if !work.Any() {
		return
	}
	fmt.Fprintf(w, "  %s\n", prose.Wrap(prose.Clean(fmt.Sprintf("At the %s: %s", work.Peg, p.WorkText(work))), 6))
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
