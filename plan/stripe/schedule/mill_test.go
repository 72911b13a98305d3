package schedule

import (
	"fmt"
	"slices"
	"time"

	"millside/plan/wind"
)

// usual is a practised hand on a mill of three and a half turns a pass: the times of facts.md, "Work at the
// pegs" (from memory).
var usual = Times{
	Pass: 33 * time.Second, Halt: 30 * time.Second, Cut: 12 * time.Second, Tie: 18 * time.Second,
	Thread: time.Minute, Far: 54 * time.Second,
}

// holds lays a schedule on a model mill and says what is wrong with it, "" if nothing is.
func holds(s *Schedule, ends []int, l Limits, t Times) string {
	var laid []int
	paddle := make([]int, l.Positions)
	var before wind.Positions
	var sum Sum
	kinds := map[string]bool{}
	for i, p := range s.Passes {
		if p.SetUp < 1 || p.SetUp > len(s.SetUps) || p.First != len(laid)+1 {
			return fmt.Sprintf("pass %d is %+v", i+1, p)
		}
		set := s.SetUps[p.SetUp-1]
		halt := false
		for pos := 1; pos <= l.Positions; pos++ {
			was, is, had, has := before.Has(pos), p.Carried.Has(pos), paddle[pos-1], set[pos-1]
			stays := was && is && had == has
			if was && !stays {
				sum.Cuts++
				halt = true
			}
			if had != has {
				halt = true
				if has != 0 {
					sum.Threads++
				}
			}
			if is && !stays {
				sum.Ties++
				halt = true
			}
		}
		if halt && i > 0 {
			sum.Halts++
		}
		var word []int
		last := 0
		for pos := range p.Carried.All() {
			if last > 0 && (pos-last)%2 == 0 {
				return fmt.Sprintf("pass %d carries %v", i+1, p.Carried)
			}
			last = pos
			word = append(word, set[pos-1])
		}
		kinds[fmt.Sprint(p.Carried, word)] = true
		if len(l.Sizes) > 0 && !slices.Contains(l.Sizes, len(word)) {
			return fmt.Sprintf("pass %d carries %d ends", i+1, len(word))
		}
		if (i%2 == 1 && l.ReturnOrder == wind.MirroredOrder) != l.FootLast {
			slices.Reverse(word)
		}
		laid = append(laid, word...)
		if p.Last != len(laid) {
			return fmt.Sprintf("pass %d is %+v", i+1, p)
		}
		for c, most := range l.Packages {
			held := 0
			for _, has := range set {
				if has == c+1 {
					held++
				}
			}
			if most > 0 && held > most {
				return fmt.Sprintf("set-up %v holds %d of colour %d", set, held, c+1)
			}
		}
		before = p.Carried
		copy(paddle, set)
	}
	sum.Cuts += before.Count()
	sum.Passes = len(s.Passes)
	sum.Far = len(s.Passes)%2 == 1
	switch {
	case !slices.Equal(laid, ends):
		return fmt.Sprintf("laid %v, not %v", laid, ends)
	case len(kinds) != s.Kinds:
		return fmt.Sprintf("%d kinds of pass, said to be %d", len(kinds), s.Kinds)
	case sum != s.Sum || t.Total(sum) != s.Total:
		return fmt.Sprintf("the work is %v, said to be %v in %v", sum, s.Sum, s.Total)
	case l.FinishAtLease && sum.Far:
		return "it ends at the counting cross"
	case l.MostHalts != nil && sum.Halts > *l.MostHalts:
		return fmt.Sprintf("%d halts", sum.Halts)
	}
	return ""
}
