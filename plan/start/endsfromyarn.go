package start

import (
	"math/big"
	"slices"
	"strings"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/measure"
)

// ends finds the ends, or the width that they take: from the width, or from the yarn on hand.
func (s *solver) ends() error {
	if !s.HasEnds {
		s.packagesAsked()
		find := s.endsFromYarn
		if s.k.striped() {
			find = s.repeatsFromYarn
		}
		if err := find(); err != nil {
			return err
		}
		if err := s.widths(); err != nil {
			return err
		}
	} else if err := s.checkYarn(); err != nil {
		return err
	}
	s.Answer = ends(s.spec.Ends)
	if s.Find == TheWidth {
		for _, l := range s.Lines {
			if l.Name == field.ReedSpan.Name {
				s.Answer = l.Value.And(" in the reed")
			}
		}
		for _, l := range s.Lines {
			if l.Name == field.FinishedWidth.Name {
				s.Answer = s.Answer.And(", %s finished", l.Value)
			}
		}
	}
	return nil
}

// passesFed is how many passes a length of yarn feeds where it is tied on so often.
func (s *solver) passesFed(holds, way measure.Length, ties int) int {
	x := s.spec.Extras()
	return int(max((holds-x.PerTie.Times(ties))/(way+x.PerPass), 0))
}

// endsFromYarn finds the ends of a plain warp of the known length for which the yarn suffices. What a chain more
// takes in tails is counted on the plan itself.
func (s *solver) endsFromYarn() error {
	way, ok := s.way(s.spec.Length)
	if !ok {
		return field.Length.Wrong(s.spec.Length.String(), "a length that the board gives")
	}
	most, err := s.mostEnds(way)
	if err != nil {
		return err
	}
	n := most
	suffices := func(n int) (feeding, bool, error) {
		p, err := s.planOf(n, s.spec.Length, false)
		if err != nil {
			return feeding{}, false, err
		}
		f, err := s.feed(p)
		if err != nil {
			return f, false, err
		}
		_, ok := f.at(way)
		return f, ok, nil
	}
	low := 0 // suffices
	for step := 1; n > 0; n, step = n-step, step*2 {
		_, ok, err := suffices(n)
		if err != nil {
			return err
		}
		if ok {
			low = n
			break
		}
	}
	for high := most; low < high; { // climb back between the steps
		mid := (low + high + 1) / 2
		_, ok, err := suffices(mid)
		if err != nil {
			return err
		}
		if ok {
			low = mid
		} else {
			high = mid - 1
		}
	}
	if low < 1 || low-s.selvedges() < 1 {
		return s.tooLittle("for a warp so long")
	}
	f, _, err := suffices(low)
	if err != nil {
		return err
	}
	s.take(low)
	s.body = low - s.selvedges()
	s.Packages, _ = f.at(way)
	s.tellEnds(way, low)
	return nil
}

// mostEnds is a number of ends that the yarn doesn't reach beyond: each position lays as many as its package feeds, and
// no position more than one more than another, since all are carried on every pass but the last of a chain. Yarn that
// gives no whole pass is wound over into fewer packages.
func (s *solver) mostEnds(way measure.Length) (int, error) {
	for slots := s.spec.Group; slots > 0; slots-- {
		list, err := s.held("", slots)
		if err != nil { // too little for so many
			continue
		}
		fed := make([]int, len(list))
		for i, p := range list {
			fed[i] = s.passesFed(p.holds, way, 1)
		}
		slices.SortFunc(fed, func(a, b int) int { return b - a })
		fed = fed[:slots]
		least := fed[slots-1]
		n := least * slots
		for _, passes := range fed {
			if passes > least {
				n++
			}
		}
		if slots < s.spec.Group { // more ends would be carried by more positions
			n = min(n, slots)
		}
		if n > 0 {
			return min(n+s.chainSlack(), measure.MaxEnds), nil
		}
	}
	return 0, s.tooLittle("for a warp so long")
}

// chainSlack is added where a warp is wound in chains, each of which may end with a short pass.
func (s *solver) chainSlack() int {
	if s.spec.ChainEnds == 0 {
		return 0
	}
	return s.spec.Group
}

// tellEnds shows how the ends follow from the yarn.
func (s *solver) tellEnds(way measure.Length, n int) {
	long, short, x := s.spec.Units.Long(), s.spec.Units.Short(), s.spec.Extras()
	s.tellWarp(s.spec.Length, "rounded up to what the pegs give")
	u, ok := limiting(s.Packages, func(u Use) *big.Rat {
		return big.NewRat(int64(s.passesFed(u.Holds, way, u.Ties)), 1)
	})
	if ok {
		s.tellHeld(u)
		exact := big.NewRat(int64(u.Holds-x.PerTie.Times(u.Ties)), int64(way+x.PerPass))
		s.step("passes that it feeds", cell(figure.Counted(s.passesFed(u.Holds, way, u.Ties), "pass", "passes")),
			"(yarn - times tied on x tails) / (warp + extra a pass), rounded down",
			figure.Say("(%s - %d x %s) / (%s + %s) = %s", atMost(u.Holds, long), u.Ties, x.PerTie.As(short, 1),
				way.As(long, 2), x.PerPass.As(short, 1), figure.AtMost(exact, 2, "")))
	}
	var parts []figure.Cell
	for _, u := range s.Packages {
		if u.Passes > 0 {
			parts = append(parts, figure.Say("%d", u.Passes))
		}
	}
	s.step("ends", ends(n), "the passes that each package feeds, added",
		figure.Say("%s = %s", figure.Join(parts, " + "), ends(n)))
}

// repeatsFromYarn finds how many repeats of the stripes the yarn suffices for: the colour that runs out first says.
func (s *solver) repeatsFromYarn() error {
	way, ok := s.way(s.spec.Length)
	if !ok {
		return field.Length.Wrong(s.spec.Length.String(), "a length that the board gives")
	}
	most, err := s.mostRepeats(way)
	if err != nil {
		return err
	}
	written := s.spec
	for n := most; n >= 1; n-- {
		s.repeat(n)
		p, err := s.planOf(n*s.order.Size(), s.spec.Length, false)
		if err == nil {
			var f feeding
			if f, err = s.feed(p); err == nil {
				if s.Packages, ok = f.at(way); ok {
					s.take(n * s.order.Size())
					s.step("ends", ends(s.spec.Ends), "repeats x ends of a repeat; what is tied on takes its tails too",
						figure.Say("%d x %d = %s", n, s.order.Size(), ends(s.spec.Ends)))
					return nil
				}
			}
		}
		if err != nil {
			return err
		}
		s.spec = written
	}
	return s.tooLittle("for one repeat of the stripes")
}

// mostRepeats is the repeats that no colour reaches beyond, tails left out of account.
func (s *solver) mostRepeats(way measure.Length) (int, error) {
	colours, err := s.order.Ends()
	if err != nil {
		return 0, err
	}
	x, long := s.spec.Extras(), s.spec.Units.Long()
	s.tellWarp(s.spec.Length, "rounded up to what the pegs give")
	most := measure.MaxEnds / s.order.Size()
	for i, c := range s.order.Colours {
		per := 0
		for _, at := range colours {
			if at == i+1 {
				per++
			}
		}
		var have measure.Length
		for _, p := range s.k.OnHand {
			if strings.EqualFold(p.Colour, c.Name) {
				holds, err := p.holds(s.spec.Yarn)
				if err != nil {
					return 0, err
				}
				have += holds
			}
		}
		each := (way + x.PerPass).Times(per)
		exact := big.NewRat(int64(have), int64(each))
		s.step("repeats of "+c.Name, cell(figure.AtMost(exact, 2, "repeats")),
			"yarn of the colour / (its ends in a repeat x (warp + extra a pass)), rounded down",
			figure.Say("%s / (%d x (%s + %s)) = %s", atMost(have, long), per, way.As(long, 2),
				x.PerPass.As(s.spec.Units.Short(), 1), figure.AtMost(exact, 2, "")))
		most = min(most, int(have/each))
	}
	return most, nil
}
