package plan

import (
	"errors"
	"fmt"

	"millside/plan/field"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/wind"
)

// ChainAsk is what a split into chains goes by.
type ChainAsk struct {
	// Ends is the ends of the warp, 1 to [measure.MaxEnds]; Group those of a full pass, 1 to [measure.MaxPositions].
	Ends, Group int
	// LastPass is what to do where the group doesn't divide the ends.
	LastPass wind.LastPass
	// Most is the most ends in a chain, at least Group; 0 for one chain.
	Most int
	// Even splits the ends evenly, see [Spec.EvenChains]; Count is then how many chains are asked for, 0 for as few
	// as Most allows.
	Even  bool
	Count int
	// Sett and Raddle, where both are known, let chains end between the sections of the raddle.
	Sett   measure.Sett
	Raddle loom.Raddle
	// Repeat is the ends in a pattern repeat, 0 for none, and Before the ends that lie before the first
	// one, 0 to MaxEnds: chains end between repeats where they can.
	Repeat, Before int
}

// ChainPart is one chain of a split.
type ChainPart struct {
	// Number counts the chains from 1; First and Last are the numbers of its ends in the warp.
	Number, First, Last int
	// Passes is the ends on each of its passes.
	Passes []int
	// OnSection and OnRepeat say that the chain ends between two sections of the raddle and between two
	// repeats; both are true of the last chain, and false where there is no raddle or no repeat.
	OnSection, OnRepeat bool
	// Why says in words why it ends where it does.
	Why string
	// Split says, in the first chain of an even split, why there are so many; "" where there is nothing to say.
	Split string
}

// Ends is how many ends the chain has, spare ends included.
func (c ChainPart) Ends() int { return c.Last - c.First + 1 }

// Finish is where the winding of the chain stops.
func (c ChainPart) Finish() wind.Finish { return wind.FinishAfter(len(c.Passes)) }

// What the split adds up, the least being best: one for each percent that a chain differs from an equal
// share, and these. They are the project's own judgement.
const (
	costOffSection = 30 // a chain ends within a section of the raddle
	costOffRepeat  = 30 // a chain ends within a repeat
	costOddPasses  = 10 // a chain stops at the counting cross
)

// KnownSections keeps what sectionEnds found for so many ends wound, where one raddle is asked again and again; nil
// keeps nothing.
type KnownSections map[int]map[int]bool

// Split parts a warp into as few chains as the most ends in one allow. Splits fall between
// groups, and chains are near equal: no split is moved from the equal share by more than a tenth of a
// chain, or one pass if that is more (nor by more than fifty passes). Within this the split with the
// least cost is found exactly: one for each percent that a chain differs from an equal share, thirty
// where it ends within a section of the raddle and thirty within a repeat, ten where it has an odd
// number of passes and so stops at the counting cross. An even split is told at [Spec.EvenChains]. The error joins
// one [measure.FieldError] for each
// field that is out of its range.
func (a ChainAsk) Split(known KnownSections) ([]ChainPart, error) {
	if err := a.check(); err != nil {
		return nil, err
	}
	s := &chainSplit{ask: a, passes: (a.Ends + a.Group - 1) / a.Group, chains: 1}
	if a.Most > 0 {
		s.most = a.Most / a.Group
		s.chains = (s.passes + s.most - 1) / s.most
	} else {
		s.most = s.passes
	}
	sections, ok := known[s.wound()]
	if !ok {
		var err error
		if sections, err = a.sectionEnds(s.wound()); err != nil {
			return nil, err
		}
		if known != nil {
			known[s.wound()] = sections
		}
	}
	s.sections = sections
	if !a.Even {
		return s.parts(s.cuts()), nil
	}
	cuts, why, err := s.even()
	if err != nil {
		return nil, err
	}
	s.chains = len(cuts) - 1
	parts := s.parts(cuts)
	parts[0].Split = why
	return parts, nil
}

// even is where the chains end if they are split evenly, and why there are so many.
func (s *chainSplit) even() ([]int, string, error) {
	sizes := make([]int, s.passes)
	for k := range sizes {
		sizes[k] = s.endsAfter(k+1) - s.endsAfter(k)
	}
	e := &evenSplit{ends: sizes, word: "pass", words: "passes", most: s.ask.Most, count: s.ask.Count, odd: true,
		place: func(passes int) int { return s.placeCost(passes) * evenOffBoundary / costOffSection }}
	return e.cuts()
}

func (a ChainAsk) check() error {
	errs := measure.Faults{field.Ends.Check(a.Ends), field.Group.Check(a.Group),
		field.LastPass.CheckWord(int(a.LastPass)),
		field.ChainEnds.CheckFrom(a.Most, max(a.Group, 1), measure.MaxEnds, ""), field.ChainCount.Check(a.Count),
		field.Repeat.Check(a.Repeat)}
	errs.Count("ends before the first repeat", a.Before, 0, measure.MaxEnds, "")
	return errors.Join(errs...)
}

// sectionEnds is the set of ends after which a section of the raddle ends, nil where there is no raddle.
func (a ChainAsk) sectionEnds(wound int) (map[int]bool, error) {
	if a.Sett.IsZero() || a.Raddle == (loom.Raddle{}) {
		return nil, nil
	}
	l, err := a.Raddle.Fill(loom.Raddling{Ends: min(wound, measure.MaxEnds), Sett: a.Sett})
	if err != nil {
		return nil, err
	}
	ends := make(map[int]bool, len(l.Sections))
	for _, s := range l.Sections {
		ends[s.Last] = true
	}
	return ends, nil
}

// chainSplit is a split being worked out, in passes.
type chainSplit struct {
	ask                  ChainAsk
	passes, chains, most int
	sections             map[int]bool
}

// wound is the ends of the warp with its spare ends.
func (s *chainSplit) wound() int { return s.endsAfter(s.passes) }

// endsAfter is the ends after so many passes.
func (s *chainSplit) endsAfter(passes int) int {
	if s.ask.LastPass == wind.ShortLast {
		return min(passes*s.ask.Group, s.ask.Ends)
	}
	return passes * s.ask.Group
}

// near lists the places, in passes, where a cut may fall: its equal share and a tenth of a chain, or a
// pass, to both sides. The window is held to fifty passes, so that the search stays short.
func (s *chainSplit) near(cut int) (low, high int) {
	if cut == 0 || cut == s.chains {
		return cut / s.chains * s.passes, cut / s.chains * s.passes
	}
	at := cut * s.passes / s.chains
	reach := min(max(s.passes/(10*s.chains), 1), 50)
	return max(at-reach, 1), min(at+reach, s.passes-1)
}

// cuts finds the cheapest cuts, from 0 to all passes. For each place of each cut it keeps the cheapest
// way to get there; the equal shares themselves are always allowed, so there is always a way.
func (s *chainSplit) cuts() []int {
	type way struct {
		cost, from int
		found      bool
	}
	ways := [][]way{{{found: true}}} // of each cut, by its place less the first one that it may have
	for cut := 1; cut <= s.chains; cut++ {
		low, high := s.near(cut)
		lowBefore, highBefore := s.near(cut - 1)
		reached := make([]way, high-low+1)
		for at := low; at <= high; at++ {
			here, best := s.placeCost(at), &reached[at-low]
			for from := max(lowBefore, at-s.most); from <= min(highBefore, at-1); from++ {
				before := ways[cut-1][from-lowBefore]
				if !before.found {
					continue
				}
				if cost := before.cost + s.lengthCost(at-from) + here; !best.found || cost < best.cost {
					*best = way{cost: cost, from: from, found: true}
				}
			}
		}
		ways = append(ways, reached)
	}
	cuts := make([]int, s.chains+1)
	cuts[s.chains] = s.passes
	for cut := s.chains; cut > 0; cut-- {
		low, _ := s.near(cut)
		cuts[cut-1] = ways[cut][cuts[cut]-low].from
	}
	return cuts
}

// lengthCost is that of a chain of so many passes.
func (s *chainSplit) lengthCost(passes int) int {
	cost := measure.Distance(passes*s.chains, s.passes) * 100 / s.passes
	if passes%2 == 1 {
		cost += costOddPasses
	}
	return cost
}

// placeCost is that of a cut after so many passes.
func (s *chainSplit) placeCost(passes int) int {
	cost := 0
	if passes < s.passes && s.sections != nil && !s.onSection(passes) {
		cost += costOffSection
	}
	if passes < s.passes && s.ask.Repeat > 0 && !s.onRepeat(passes) {
		cost += costOffRepeat
	}
	return cost
}

func (s *chainSplit) onSection(passes int) bool { return s.sections[s.endsAfter(passes)] }

func (s *chainSplit) onRepeat(passes int) bool {
	in := s.endsAfter(passes) - s.ask.Before
	return s.ask.Repeat > 0 && in >= 0 && in%s.ask.Repeat == 0
}

// parts makes the chains.
func (s *chainSplit) parts(cuts []int) []ChainPart {
	parts := make([]ChainPart, s.chains)
	for i := range parts {
		from, to := cuts[i], cuts[i+1]
		c := ChainPart{Number: i + 1, First: s.endsAfter(from) + 1, Last: s.endsAfter(to)}
		for k := from; k < to; k++ {
			c.Passes = append(c.Passes, s.endsAfter(k+1)-s.endsAfter(k))
		}
		last := to == s.passes
		c.OnSection = s.sections != nil && (last || s.onSection(to))
		c.OnRepeat = s.ask.Repeat > 0 && (last || s.onRepeat(to))
		c.Why = s.why(c, last)
		parts[i] = c
	}
	return parts
}

func (s *chainSplit) why(c ChainPart, last bool) string {
	say := fmt.Sprintf("%s in %s", measure.Counted(c.Ends(), "end", "ends"),
		measure.Counted(len(c.Passes), "pass", "passes"))
	if !last {
		switch {
		case c.OnSection && c.OnRepeat:
			say += ", ends between raddle sections and between repeats"
		case c.OnSection:
			say += ", ends between raddle sections"
		case c.OnRepeat:
			say += ", ends between repeats"
		}
	}
	return say + ", stops " + c.Finish().String()
}
