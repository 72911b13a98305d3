package counter

import (
	"fmt"

	"millside/plan"
	"millside/plan/measure"
)

// NotCounted stands in [Seen] for what the winder did not count.
const NotCounted = -1

// Way is the way that the last group was seen to lie.
type Way uint8

// What can be seen of the last group's way.
const (
	WayUnknown Way = iota
	WayOutward     // it ends at the counting cross
	WayReturn      // it ends at the lease
)

// Seen is what a winder sees at the counting cross. Each count is a number of groups, or [NotCounted].
type Seen struct {
	// OverPeg1 and OverPeg2 are the groups that lie over each peg of the counting cross.
	OverPeg1, OverPeg2 int
	// LastWay is the way of the last group; WayUnknown where no group lies.
	LastWay Way
	// TiedGroups and LooseGroups are the groups within count ties and those after the last tie.
	TiedGroups, LooseGroups int
}

// NothingSeen is a [Seen] in which nothing is counted yet.
func NothingSeen() Seen {
	return Seen{OverPeg1: NotCounted, OverPeg2: NotCounted, TiedGroups: NotCounted, LooseGroups: NotCounted}
}

// Reconciliation is what the counts at the pegs say about the number of passes.
type Reconciliation struct {
	// Fits lists, in order, every number of passes of the chain that agrees with all that was seen. It is
	// empty where something that was seen can't be, and where nothing was.
	Fits []int
	// Best is the one of Fits that is nearest to the number believed, the lower of two; -1 if none fits.
	Best int
	// Sure says that exactly one number fits.
	Sure bool
	// Agrees says that the number believed is among those that fit.
	Agrees bool
	// Disagree says in plain words, one sentence each, what can't be so or doesn't go together.
	Disagree []string
}

// Reconcile works out which number of passes of a chain fits what is seen at the counting cross, where
// the groups lie over peg 1 and peg 2 in turn: after k passes the half of k, rounded up, over peg 1 and
// the other half over peg 2 ([CrossOf]). An odd number of passes ends outward, an even one with a return.
// Tied and loose groups together are all passes; one of them alone is the least that there are.
//
// It invents nothing: where what was seen contradicts itself no number fits, and Disagree says why.
// Believed, the number that the record has, only chooses between numbers that fit.
func Reconcile(c plan.Chain, believed int, seen Seen) Reconciliation {
	r := Reconciliation{Best: -1}
	told := seen.facts()
	fits := span{0, len(c.Passes), 1}
	var so []fact // what goes together so far
	for _, f := range told {
		if both := fits.with(f.fits); both.empty() {
			r.Disagree = append(r.Disagree, disagree(so, fits, f, len(c.Passes)))
		} else {
			fits, so = both, append(so, f)
		}
	}
	if len(told) == 0 || len(r.Disagree) > 0 {
		return r
	}
	for k := fits.low; k <= fits.high; k += fits.step {
		r.Fits = append(r.Fits, k)
		r.Agrees = r.Agrees || k == believed
		if r.Best < 0 || measure.Distance(k, believed) < measure.Distance(r.Best, believed) {
			r.Best = k
		}
	}
	r.Sure = len(r.Fits) == 1
	return r
}

// fact is one thing that was seen, in words, and the numbers of passes that it allows. The hint is for
// the case that it doesn't go with the other facts.
type fact struct {
	text string
	fits span
	hint string
}

// facts lists what was seen. Counts below nil, [NotCounted] among them, are taken as not counted, and
// counts above any warp as [measure.MaxEnds], so that no sum runs over.
func (s Seen) facts() []fact {
	var all []fact
	add := func(text string, fits span) { all = append(all, fact{text: text, fits: fits}) }
	one, two := min(s.OverPeg1, measure.MaxEnds), min(s.OverPeg2, measure.MaxEnds)
	if one >= 0 {
		add(fmt.Sprintf("%s over peg 1", measure.Counted(one, "group", "groups")), span{max(2*one-1, 0), 2 * one, 1})
	}
	if two >= 0 {
		add(fmt.Sprintf("%s over peg 2", measure.Counted(two, "group", "groups")), span{2 * two, 2*two + 1, 1})
		if one >= 0 {
			right := CrossOf(one + two)
			all[1].hint = fmt.Sprintf(" %s in all would lie %d and %d.", measure.Counted(one+two, "group", "groups"),
				right.OverPeg1, right.OverPeg2)
		}
	}
	switch tied, loose := min(s.TiedGroups, measure.MaxEnds), min(s.LooseGroups, measure.MaxEnds); {
	case tied >= 0 && loose >= 0:
		add(fmt.Sprintf("%s in ties and %d loose", measure.Counted(tied, "group", "groups"), loose),
			span{tied + loose, tied + loose, 1})
	case tied >= 0:
		add(fmt.Sprintf("%s in ties", measure.Counted(tied, "group", "groups")), span{tied, measure.MaxEnds, 1})
	case loose >= 0:
		add(fmt.Sprintf("%s after the last tie", measure.Counted(loose, "group", "groups")),
			span{loose, measure.MaxEnds, 1})
	}
	switch s.LastWay {
	case WayOutward:
		add("a last group that goes outward", span{1, measure.MaxEnds - 1, 2})
	case WayReturn:
		add("a last group that returns", span{2, measure.MaxEnds, 2})
	}
	return all
}

// disagree puts into words that a fact doesn't go with those before it, or with the chain.
func disagree(so []fact, fits span, f fact, passes int) string {
	inChain := f.fits.with(span{0, passes, 1})
	if len(so) == 0 || inChain.empty() {
		return fmt.Sprintf("%s can't be: that would be %s, and the chain has %d. Count again, or too much is wound.",
			measure.Capital(f.text), f.fits.words(), passes)
	}
	text := so[0].text
	for i, other := range so[1:] {
		if i == len(so)-2 {
			text += " and " + other.text
		} else {
			text += ", " + other.text
		}
	}
	return fmt.Sprintf("%s and %s can't both be: the first would be %s, the other %s. Count again, or a group lies "+
		"the wrong way.",
		measure.Capital(text), f.text, fits.words(), inChain.words()) + f.hint
}

// span is a run of numbers from low to high, each or every second one; none if low is above high.
type span struct{ low, high, step int }

func (s span) empty() bool { return s.low > s.high }

// with is what two spans have in common.
func (s span) with(o span) span {
	both := span{max(s.low, o.low), min(s.high, o.high), max(s.step, o.step)}
	if both.step == 1 {
		return both
	}
	parity := s.low
	if o.step == 2 {
		parity = o.low
	}
	both.low += (both.low + parity) % 2
	both.high -= (both.high + parity) % 2
	return both
}

// words says which numbers of passes a span holds.
func (s span) words() string {
	switch {
	case s.low == s.high && s.low == 1:
		return "1 pass"
	case s.low == s.high:
		return fmt.Sprintf("%d passes", s.low)
	case s.low+1 == s.high, s.step == 2 && s.low+2 == s.high:
		return fmt.Sprintf("%d or %d passes", s.low, s.high)
	case s.step == 2 && s.low%2 == 1:
		return "an odd number of passes"
	case s.step == 2:
		return "an even number of passes"
	}
	return fmt.Sprintf("at least %d passes", s.low)
}
