package beside

import (
	"fmt"

	"millside/plan"
	"millside/plan/cloth"
	"millside/plan/figure"
	"millside/plan/measure"
)

// width is the cloth's width; the zero value where the warp isn't planned from a cloth.
func width(p *plan.Plan) cloth.Width {
	if !p.Spec.Cloth.Used {
		return cloth.Width{}
	}
	return p.Spec.Cloth.Width
}

// Selvedges says where the doubled and the floating selvedges are, and what they take: doubled ends lie two in a
// heddle and two in a dent; floating ones go through no heddle, and have a dent each (all from memory). It is empty
// for a warp without them.
func Selvedges(p *plan.Plan) []measure.Row {
	w, n := width(p), p.EndsWound()
	var rows []measure.Row
	if w.Doubled > 0 {
		rows = append(rows, measure.Row{Name: "doubled", Value: figure.Say("%s at each edge, wound with the warp: "+
			"two in a heddle and two in a dent, so they add %s and no width", figure.Counted(w.Doubled, "end", "ends"),
			figure.Counted(2*w.Doubled, "end", "ends")),
			How: measure.How{Formula: "doubled ends x 2 edges",
				WithNumbers: figure.Say("%d x 2 = %d", w.Doubled, 2*w.Doubled)}})
		if l := p.Spec.Loom; len(l.ThreadingBegin)+len(l.Threading)+len(l.ThreadingEnd) == 0 {
			rows = append(rows, heddlesFor(n, w))
		}
	}
	left, right := onSides(w.Floating)
	floating := figure.Counted(w.Floating, "end", "ends")
	sides := figure.Say("%d on the left and %d on the right", left, right)
	switch {
	case w.Floating == 0:
	case w.FloatingApart:
		rows = append(rows, measure.Row{Name: "floating", Value: figure.Say("%s, wound apart and not among the %s: %s",
			floating, figure.Counted(n, "end", "ends"), sides)},
			measure.Row{Name: "their own little warp", Value: figure.Say("%s on a pass of their own, cut at "+
				"both pegs: no lease, no counting cross, a chain for each side", floating)},
			yarnApart(p, w.Floating),
			measure.Row{Name: "on the loom", Value: figure.Say("in no heddle and not in the raddle, each in the next " +
				"dent outside the warp; a weight on each behind the loom")})
	default:
		rows = append(rows, measure.Row{Name: "floating", Value: figure.Say("%s of the warp, wound with it: %s, in no "+
			"heddle, each in a dent of its own", floating, sides)})
	}
	return rows
}

// heddlesFor counts the heddles of a warp whose threading isn't known: none for floating ends, one for each pair.
func heddlesFor(n int, w cloth.Width) measure.Row {
	inside := n - w.FloatingIn()
	return measure.Row{Name: "heddles in all", Value: figure.Say("%s: two ends that are worked as one are counted once",
		figure.Count{N: inside - 2*w.Doubled}),
		How: measure.How{Formula: "ends in heddles - doubled pairs",
			WithNumbers: figure.Say("%d - %d = %d", inside, 2*w.Doubled, inside-2*w.Doubled)}}
}

// onSides parts floating selvedges: of an odd number, one more is on the left.
func onSides(floating int) (left, right int) { return (floating + 1) / 2, floating / 2 }

// yarnApart is the yarn of floating selvedges that are wound apart: it isn't in the yarn of the warp.
func yarnApart(p *plan.Plan, ends int) measure.Row {
	long := p.Path.Length + p.Spec.Extras().PerPass + p.Spec.Extras().PerTie
	units := p.Spec.Units
	all := long.Times(ends)
	row := measure.Row{Name: "their yarn, beside the warp's", Value: figure.Cell{all.As(units.Long(), 1)},
		How: measure.How{Formula: "ends x (warp + extra a pass + tails)",
			WithNumbers: figure.Say("%d x %s = %s", ends, long.As(units.Long(), 2), all.As(units.Long(), 1))}}
	if !p.Spec.Yarn.Size.IsZero() {
		if mass, err := p.Spec.Yarn.Size.MassOf(all); err == nil {
			row.Value = row.Value.And(", %s", mass.AtLeast(units.Light(), 1))
		}
	}
	return row
}

// AtTheMill lists what is to be done at the mill beside the passes.
func AtTheMill(p *plan.Plan) []string {
	var list []string
	if w := width(p); w.FloatingApart && w.Floating > 0 {
		list = append(list, fmt.Sprintf("Wind apart: %s, as long as the warp.",
			measure.Counted(w.Floating, "floating selvedge", "floating selvedges")))
	}
	if ties := BorderTies(p); ties != "" {
		list = append(list, "Ties at the borders of the sections, from the near end peg: "+ties+".")
	}
	return list
}
