package planout

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"millside/cmd/millside/internal/prose"
	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/sheet"
)

// PassesText writes every pass of a plan, at most 80 columns wide.
func PassesText(w io.Writer, p *plan.Plan) {
	for _, c := range p.Chains {
		if len(p.Chains) > 1 {
			fmt.Fprintf(w, "\nPasses of chain %d:\n", c.Number)
		} else {
			fmt.Fprint(w, "\nPasses:\n")
		}
		chainTable(w, p, c)
		pegsText(w, p, c)
		stripedPassesText(w, p, c)
	}
	legend := "First opening: what goes over the first lease peg met; the other opening goes over the second. " +
		"Over: the peg of the counting cross that the group climbs over. Turn: the way round the end peg after the " +
		"pass. " +
		"Tie: a count tie after the pass."
	if !p.Striped() {
		legend += " Short: a pass that carries fewer ends."
	}
	fmt.Fprintf(w, "\n%s\n", prose.Wrap(legend, 0))
	if text := sheet.OwnCount(p); text != "" {
		fmt.Fprintf(w, "\n%s\n", prose.Wrap(text, 0))
	}
}

// pegsText lists the work at the end pegs of a plain warp; that of a striped one stands between its passes.
func pegsText(w io.Writer, p *plan.Plan, c plan.Chain) {
	if p.Striped() {
		return
	}
	rows := [][]any{{"Before pass", "Peg", "Positions"}}
	for k := 1; k <= len(c.Passes)+1; k++ {
		work := p.WorkBefore(c.Number, k)
		if !work.Any() {
			continue
		}
		before := fmt.Sprint(k)
		if work.Ends() {
			before = fmt.Sprintf("after %d", k-1)
		}
		rows = append(rows, []any{before, work.Peg, p.WorkText(work)})
	}
	fmt.Fprint(w, "\nWork at the pegs:\n")
	prose.Table(w, rows)
}

func chainTable(w io.Writer, p *plan.Plan, c plan.Chain) {
	rows := [][]any{{"Pass", "Way", "Ends", "First opening", "Over", "Turn", "Note"}}
	ties := tiePasses(p, c)
	for _, pass := range c.Passes {
		note := ""
		if _, tie := slices.BinarySearch(ties, pass.Number); tie {
			note = "tie"
		}
		if p.LeftOut(pass).Count() > 0 && !p.Striped() { // stripes have a table of positions
			note = "short"
		}
		rows = append(rows, []any{pass.Number, pass.Direction, p.WoundRange(pass.First, pass.Last),
			fmt.Sprintf("%s, %s", pass.FirstOpening, pass.FirstPeg()), pass.CrossOver(), pass.TurnAfter, note})
	}
	prose.Table(w, rows)
}

// FinishingText writes what follows the last pass of each chain, in full.
func FinishingText(w io.Writer, p *plan.Plan) {
	for _, c := range p.Chains {
		if len(p.Chains) > 1 {
			fmt.Fprintf(w, "\nAfter the last pass of chain %d:\n", c.Number)
		} else {
			fmt.Fprint(w, "\nAfter the last pass:\n")
		}
		for i, step := range finishing.Steps(p, c) {
			StepText(w, fmt.Sprintf("%2d", i+1), step)
		}
	}
}

// StepText writes one finishing step after its number or tick.
func StepText(w io.Writer, mark string, step finishing.Step) {
	indent := len(mark) + 4
	below := strings.Repeat(" ", indent)
	fmt.Fprintf(w, "  %s  %s\n%s%s\n", mark, step.Title, below, prose.Wrap(prose.Clean(step.Detail), indent))
	if step.Caution != "" {
		fmt.Fprintf(w, "%s%s\n", below, prose.Wrap("Take care: "+step.Caution, indent))
	}
}
