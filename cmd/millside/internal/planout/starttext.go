package planout

import (
	"cmp"
	"fmt"
	"io"

	"millside/cmd/millside/internal/prose"
	"millside/plan/figure"
	"millside/plan/start"
)

// StartText prints what was found, how, and what each package gives. The command that plans the warp is "" where there
// is none.
func StartText(w io.Writer, r *start.Result, command string) {
	prose.Row(w, r.Find.String(), "%s", r.Answer)
	if r.Short {
		prose.Row(w, "", "the yarn on hand doesn't suffice")
	}
	fmt.Fprintln(w)
	for _, line := range r.Lines {
		fmt.Fprintf(w, "%s: %s\n", line.Name, line.Value)
		if how := line.How; how.Formula != "" {
			fmt.Fprintf(w, "    %s\n", prose.Wrap(how.Formula, 4))
		}
		if numbers := line.How.WithNumbers.String(); numbers != "" {
			fmt.Fprintf(w, "    %s\n", prose.Wrap(numbers, 4))
		}
	}
	packagesText(w, r)
	for _, n := range r.Notes {
		fmt.Fprintf(w, "\n%s\n", prose.Wrap(n, 0))
	}
	if command != "" {
		fmt.Fprintf(w, "\nPlan it:\n  %s\n", command)
	}
}

// packagesText is a line for each package.
func packagesText(w io.Writer, r *start.Result) {
	if len(r.Packages) == 0 {
		return
	}
	long, light := r.Spec.Units.Long(), r.Spec.Units.Light()
	head := []any{"package", "passes", "tied on", "used", "left"}
	if !r.OnHand() {
		head = []any{"package", "passes", "tied on", "must hold"}
	}
	rows := [][]any{head}
	for i, u := range r.Packages {
		name := fmt.Sprint(cmp.Or(u.Number, i+1))
		if u.Package.Colour != "" {
			name += " " + prose.Clean(u.Package.Colour)
		}
		row := []any{name, u.Passes, u.Ties, amount(u.Used.As(long, 1), u.UsedMass != 0, u.UsedMass.AtLeast(light, 2))}
		if r.OnHand() {
			left := amount(u.Left.As(long, 1), u.LeftMass != 0, u.LeftMass.AtMost(light, 2))
			if u.Short != 0 {
				left = u.Short.As(long, 1).String() + " too little"
			}
			row = append(row, left)
		}
		rows = append(rows, row)
	}
	fmt.Fprintln(w)
	prose.Table(w, rows)
}

// amount is a length of yarn and its weight, where that is known.
func amount(length figure.Number, weighed bool, weight figure.Number) string {
	if !weighed {
		return length.String()
	}
	return length.String() + ", " + weight.String()
}
