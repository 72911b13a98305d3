package stripe

import (
	"time"

	"millside/plan"
)

// Schedule is a stripe order cut into passes and set-ups.
type Schedule struct {
	// Passes lists the passes in order.
	Passes []Pass
	// SetUps lists the set-ups in order; there is at least one.
	SetUps []SetUp
	// Cost is what it costs by kinds, Total the same in time by the weights given to [Make].
	Cost  Cost
	Total time.Duration
	// Proof says how sure it is that nothing better exists.
	Proof Proof
}

// Pass is one pass of a schedule.
type Pass struct {
	// Number counts the passes from 1.
	Number    int
	Direction plan.Direction
	// Carried is the set of positions that carry an end; they are neighbours.
	Carried plan.Positions
	// Mirrored says that the ends lie in the lease from the highest position to the lowest.
	Mirrored bool
	// First and Last are the lowest and the highest end that the pass lays, from 1.
	First, Last int
	// SetUp is the number of the set-up that the pass is laid in, from 1.
	SetUp int
}

// SetUp is the colour in each position of the paddle for a stretch of passes.
type SetUp struct {
	// Number counts the set-ups from 1.
	Number int
	// Before is the number of the pass before which the set-up is made.
	Before int
	// Colours is the colour in each position, that of position 1 first; 0 means none.
	Colours []int
	// Changes lists what is done to get here from the set-up before, by position.
	Changes []Change
}

// Change is another colour for one position.
type Change struct {
	// Position counts from 1.
	Position int
	// From and To are colours from 1. From is 0 if the position was empty; To is 0 if it gives its
	// package up and stays empty.
	From, To int
}

// ChangesBefore lists the changes to be made before a pass, none for most. Numbers count from 1.
func (s *Schedule) ChangesBefore(pass int) []Change {
	if pass < 1 || pass > len(s.Passes) {
		return nil
	}
	if up := s.SetUps[s.Passes[pass-1].SetUp-1]; up.Before == pass {
		return up.Changes
	}
	return nil
}

// ColoursOn is the colour in each position of the paddle on a pass, that of position 1 first, parked
// positions included; 0 means none. It is nil if there is no such pass.
func (s *Schedule) ColoursOn(pass int) []int {
	if pass < 1 || pass > len(s.Passes) {
		return nil
	}
	return s.SetUps[s.Passes[pass-1].SetUp-1].Colours
}

// Proof says how a schedule stands to the best that there can be under the same weights and limits.
type Proof struct {
	// Optimal says that nothing costs less. Bound is then the schedule's own total.
	Optimal bool
	// Bound is a time below which no schedule can be.
	Bound time.Duration
	// Gap is the schedule's total less Bound: the most that a better one could save.
	Gap time.Duration
	// Exhaustive says that every schedule was looked at, or left out because another is provably as
	// good; otherwise Bound comes from counting, or from a search that was not ended.
	Exhaustive bool
	// Looked is how many ways to carry on the search looked at.
	Looked int
	// Why says it in words for the weaver, the gap included, in minutes, rounded up.
	Why string
}

// step is a pass as the search finds it.
type step struct {
	start, base, size int    // the first end from 0, the lowest position from 0, the ends carried
	emptied           uint64 // positions that give their package up before the pass
	stop              bool   // the winding halts before the pass; if not, what changes was changed at the last stop
}

// block is the set of size neighbouring positions from base, counted from 0.
func block(base, size int) uint64 { return (uint64(1)<<size - 1) << base }

// directionOf is the direction of a pass by its number from 0.
func (p *problem) directionOf(number int) plan.Direction {
	if p.oneWay || number%2 == 0 {
		return plan.Outward
	}
	return plan.Return
}

// build makes a schedule of steps. It finds the set-ups and the cost anew from what the passes need,
// not from the search's sums.
func (p *problem) build(steps []step) *Schedule {
	s := &Schedule{SetUps: []SetUp{{Number: 1, Before: 1, Colours: make([]int, p.positions)}}}
	for i, st := range steps {
		if st.stop {
			last := s.SetUps[len(s.SetUps)-1]
			s.SetUps = append(s.SetUps, SetUp{Number: last.Number + 1, Before: i + 1, Colours: append([]int(nil), last.Colours...)})
		}
		up := &s.SetUps[len(s.SetUps)-1]
		pass := Pass{
			Number: i + 1, Direction: p.directionOf(i), Carried: plan.Positions(block(st.base, st.size)),
			First: st.start + 1, Last: st.start + st.size, SetUp: up.Number,
		}
		pass.Mirrored = pass.Direction == plan.Return && p.mirrored
		s.Passes = append(s.Passes, pass)
		for pos := range plan.Positions(st.emptied).All() {
			up.Colours[pos-1] = 0
		}
		for k := range st.size {
			up.Colours[st.base+p.offset(k, st.size, pass.Mirrored)] = int(p.ends[st.start+k])
		}
		if st.size < p.maxSize {
			s.Cost.Short++
		}
	}
	p.sum(s)
	return s
}

// offset is how far above the lowest carried position the k-th end of a pass lies, both from 0.
func (p *problem) offset(k, size int, mirrored bool) int {
	if mirrored {
		return size - 1 - k
	}
	return k
}

// sum fills in the changes of each set-up and the cost.
func (p *problem) sum(s *Schedule) {
	before := make([]int, p.positions)
	for i := range s.SetUps {
		up := &s.SetUps[i]
		got := 0
		for pos, c := range up.Colours {
			if c == before[pos] {
				continue
			}
			up.Changes = append(up.Changes, Change{Position: pos + 1, From: before[pos], To: c})
			if c != 0 {
				got++
			}
		}
		if before = up.Colours; i == 0 {
			s.Cost.Threaded = got
		} else {
			s.Cost.Changes += got
		}
	}
	s.Cost.Passes = len(s.Passes)
	s.Cost.Stops = len(s.SetUps) - 1
	s.Cost.OneDirection = p.oneWay
	if p.oneWay || len(s.Passes)%2 == 1 {
		s.Cost.Finish = plan.AtCountingCross
	}
	s.Total = s.Cost.Total(p.w)
}
