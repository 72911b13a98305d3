package plan

import (
	"fmt"
	"iter"
	"sort"

	"millside/plan/measure"
	"millside/plan/wind"
)

// Tie is a count tie at the counting cross: a string round groups whose ends are known. It is made where
// the hands are, so it falls due at the first outward pass that arrives there after the number is
// reached, and it leaves out the groups laid since, the one just laid among them. So it holds a round
// number of ends wherever whole groups can.
type Tie struct {
	// Due is the outward pass of the chain after which the tie is made.
	Due int
	// From and To are the first and the last pass whose groups the tie holds.
	From, To int
	// Ends is how many ends it holds, Total how many ends of the chain lie in it and in the ties before.
	Ends, Total int
}

// Groups is how many groups the tie holds.
func (t Tie) Groups() int { return t.To - t.From + 1 }

// LeftOut is how many groups stand on the mill that are not in a tie when this one falls due: the one
// just laid, and the one before it where the number was reached on the way out.
func (t Tie) LeftOut() int { return t.Due - t.To }

// String says which groups the tie takes: "count tie at the counting cross round groups 11 to 20, 200 ends so
// far; not the one just laid". Groups have the numbers of their passes.
func (t Tie) String() string {
	groups := fmt.Sprintf("groups %d to %d", t.From, t.To)
	if t.From == t.To {
		groups = fmt.Sprintf("group %d", t.To)
	}
	out := "not the one just laid"
	if t.LeftOut() > 1 {
		out = fmt.Sprintf("not the last %d", t.LeftOut())
	}
	return fmt.Sprintf("count tie at the counting cross round %s, %s so far; %s", groups,
		measure.Counted(t.Total, "end", "ends"), out)
}

// TieAt is the count tie that falls due after a pass of a chain, counted from 1. The last pass needs
// none, since the whole chain is tied then.
func (p *Plan) TieAt(c Chain, pass int) (Tie, bool) {
	every := p.Spec.TieEvery
	if every == 0 || pass < 3 || pass >= len(c.Passes) || !wind.DirectionOf(pass).Far() {
		return Tie{}, false
	}
	before := c.EndsAfter(pass-3) / every // the number reached when the hands were here last
	if c.EndsAfter(pass-1)/every == before {
		return Tie{}, false
	}
	t := Tie{Due: pass, From: 1, To: pass - 1}
	if c.EndsAfter(pass-1)/every == c.EndsAfter(pass-2)/every {
		t.To = pass - 2
	}
	if before > 0 {
		t.From = c.passReaching(before*every) + 1
	}
	t.Total = c.EndsAfter(t.To)
	t.Ends = t.Total - c.EndsAfter(t.From-1)
	return t, true
}

// TieDue is the last count tie that has fallen due when so many passes of a chain are laid. Whether it
// was made stands in the record, not in the plan.
func (p *Plan) TieDue(c Chain, laid int) (Tie, bool) {
	laid = min(laid, len(c.Passes)-1)
	every := p.Spec.TieEvery
	if every == 0 || laid < 3 {
		return Tie{}, false
	}
	arrived := laid - 1 + laid%2 // the last outward pass
	reached := c.EndsAfter(arrived-1) / every
	if reached == 0 {
		return Tie{}, false
	}
	return p.TieAt(c, dueAfter(c.passReaching(reached*every)))
}

// Ties goes through the count ties of a chain in the order in which they fall due.
func (p *Plan) Ties(c Chain) iter.Seq[Tie] {
	return func(yield func(Tie) bool) {
		for k := p.NextTie(c, 1); k != 0; k = p.NextTie(c, k+1) {
			if t, ok := p.TieAt(c, k); ok && !yield(t) {
				return
			}
		}
	}
}

// NextTie is the number of the first pass at or after a pass that a count tie follows, 0 if none does.
func (p *Plan) NextTie(c Chain, number int) int {
	every := p.Spec.TieEvery
	if every == 0 || len(c.Passes) == 0 {
		return 0
	}
	for reached := c.EndsAfter(number-3)/every + 1; ; reached++ {
		to := c.passReaching(reached * every)
		switch due := dueAfter(to); {
		case due >= len(c.Passes):
			return 0
		case due >= number:
			return due
		}
	}
}

// dueAfter is the outward pass after which the tie is made whose number is reached with a pass.
func dueAfter(pass int) int {
	if wind.DirectionOf(pass).Far() {
		return pass + 2
	}
	return pass + 1
}

// passReaching is the first pass after which so many ends of the chain stand, 0 for none; one more than
// the passes if that many never stand.
func (c Chain) passReaching(ends int) int {
	if ends == 0 {
		return 0
	}
	return 1 + sort.Search(len(c.Passes), func(i int) bool { return c.EndsAfter(i+1) >= ends })
}
