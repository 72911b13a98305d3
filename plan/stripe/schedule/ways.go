package schedule

import (
	"slices"
	"time"

	"millside/plan/field"
	"millside/plan/measure"
)

// Way is a way to wind the stripes.
type Way uint8

// The ways. All but the first are those of a sensible weaver without a search.
const (
	Searched   Way = iota // what [Make] finds
	SideBySide            // stripe by stripe, all colours threaded side by side
	Swapped               // stripe by stripe, the threading swapped
	OneRepeat             // one repeat on each pass
	ChainEach             // a chain for each colour, put in order at the raddle or in the reed
	lastWay    = ChainEach
)

var wayNames = [...]string{"searched", "side-by-side", "swapped", "one-repeat", "chain-each-colour"}

// String gives the name by which the weaver chooses the way, such as "side-by-side".
func (w Way) String() string {
	if w > lastWay {
		return "unknown"
	}
	return wayNames[w]
}

// WayOf finds a way by its name.
func WayOf(name string) (Way, bool) {
	for w := range lastWay + 1 {
		if w.String() == name {
			return w, true
		}
	}
	return 0, false
}

// Words says in words what is done.
func (w Way) Words() string {
	return [...]string{
		"the passes and set-ups that were found to take the least",
		"stripe by stripe, all colours threaded side by side",
		"stripe by stripe, the threading swapped",
		"one repeat on each pass",
		"a chain for each colour, wound plain and put in order at the raddle or in the reed",
	}[min(w, lastWay)]
}

// ByWay winds a warp in one of the ways of a sensible weaver, by the same limits and times as [Make]. The
// error is a [*measure.FieldError] for input out of its range, or where the limits don't allow the way.
func ByWay(w Way, ends []int, l Limits, t Times) (*Schedule, error) {
	p, err := prepare(ends, l, t)
	if err != nil {
		return nil, err
	}
	if w == ChainEach {
		chains, err := ByColour(ends, l, t)
		if err != nil {
			return nil, err
		}
		return chains.together(), nil
	}
	list := p.byWay(w)
	if list == nil {
		return nil, &measure.FieldError{Field: field.Way.Name, Value: w.String(),
			Want: "another way: the stripes, the paddle and the limits don't allow this one"}
	}
	return p.build(list), nil
}

// byWay is the passes of a way, nil where the limits don't allow it.
func (p *problem) byWay(w Way) []pass {
	var list []pass
	switch w {
	case SideBySide:
		list = p.bestSideBySide()
	case Swapped:
		list = p.bestSwapped()
	case OneRepeat:
		list = p.oneRepeat()
	}
	if list == nil || p.mostHalts >= 0 && p.ledger(list, false).sum.Halts > p.mostHalts {
		return nil
	}
	return list
}

// bestSwapped is the cheapest way to lay stripe by stripe with one colour at a time in the paddle.
func (p *problem) bestSwapped() []pass {
	var best []pass
	least := never
	for most := 1; most <= p.maxSize; most++ {
		if list := p.swapped(most); list != nil && p.cost(list) < least {
			best, least = list, p.cost(list)
		}
	}
	return best
}

// oneRepeat threads one repeat, beside it the colours that it hasn't, and winds the whole warp from that
// set-up. It is nil where nothing repeats, or a repeat is too long for the paddle.
func (p *problem) oneRepeat() []pass {
	r := findRepeat(p.ends, 1)
	if r.times < 2 || r.period < 2 || r.period > p.positions {
		return nil
	}
	set := make([]uint8, p.positions)
	held := make([]int, p.colours+1)
	for k := range r.period {
		set[k] = p.ends[r.start+k]
		if held[set[k]]++; held[set[k]] > p.packages[set[k]] {
			return nil
		}
	}
	at := r.period
	for _, c := range p.ends {
		if held[c] == 0 && at < p.positions {
			set[at] = c
			held[c]++
			at++
		}
	}
	looked := 0
	g := p.newProgramme(usualWidth, &looked)
	g.threadThroughout(set)
	return g.passes()
}

// Chains is a warp wound as a chain for each colour, all plain, and put in order at the raddle or in the reed.
type Chains struct {
	// Chain is one chain for each colour, that of colour 1 first.
	Chain []ColourChain
	// Total is the time at the mill for all of them.
	Total time.Duration
}

// ColourChain is the chain of one colour.
type ColourChain struct {
	// Colour counts from 1; Ends is its ends in the whole warp, Group how many of them a pass carries.
	Colour, Ends, Group int
	// Schedule is how it is wound, its colour counted as 1.
	Schedule *Schedule
	Sum      Sum
	Total    time.Duration
}

// leastTrouble is the group for a chain of one colour, in the order in which the groups of a plain warp are ranked:
// behind are those that take more than half as long again as the quickest; then comes a finish at the counting cross,
// flicks of the paddle round the near peg, ends cut off before a pass of fewer, and last the time. There are no spare
// ends, and packages that lack are no group's.
func (p *problem) leastTrouble() []pass {
	quickest := p.cost(p.bestSwapped())
	var best []pass
	var least [5]int
	for most := 1; most <= p.maxSize; most++ {
		list := p.swapped(most)
		if list == nil {
			continue
		}
		if trouble := p.trouble(list, quickest); best == nil || slices.Compare(trouble[:], least[:]) < 0 {
			best, least = list, trouble
		}
	}
	return best
}

// trouble is what a chain of one colour asks of the hands, the heaviest first.
func (p *problem) trouble(list []pass, quickest cost) [5]int {
	var slow, flicks, cut int
	total := p.cost(list)
	if total > quickest+quickest/2 {
		slow = 1
	}
	even := true
	for i, ps := range list {
		even = even && (ps.size%2 == 0 || i == len(list)-1)
		if i > 0 {
			cut += max(list[i-1].size-ps.size, 0)
		}
	}
	if !even || p.mirrored {
		flicks = (len(list) - 1) / 2
	}
	return [5]int{slow, len(list) % 2, flicks, cut, int(total)}
}

// ByColour works out a chain for each colour: its group is the one of the least trouble, within the
// packages and sizes. The error is that of [Make].
func ByColour(ends []int, l Limits, t Times) (Chains, error) {
	p, err := prepare(ends, l, t)
	if err != nil {
		return Chains{}, err
	}
	count := make([]int, p.colours+1)
	for _, c := range p.ends {
		count[c]++
	}
	var all Chains
	for c := 1; c <= p.colours; c++ {
		if count[c] == 0 {
			continue
		}
		one := make([]int, count[c])
		for i := range one {
			one[i] = 1
		}
		own := l
		own.Packages, own.MostHalts = []int{p.packages[c]}, nil
		q, err := prepare(one, own, t)
		if err != nil {
			return Chains{}, err
		}
		list := q.leastTrouble()
		if list == nil {
			return Chains{}, &measure.FieldError{Field: field.GroupSizes.Name, Value: p.sizes(),
				Want: "sizes that add up to the ends of each colour"}
		}
		s := q.build(list)
		chain := ColourChain{Colour: c, Ends: count[c], Schedule: s, Sum: s.Sum, Total: s.Total}
		for _, ps := range list {
			chain.Group = max(chain.Group, ps.size)
		}
		all.Chain = append(all.Chain, chain)
		all.Total += s.Total
	}
	return all, nil
}

// together is the chains as one schedule, wound one after the other. Its passes lay the ends in the order of
// winding, not of the warp; only the chains' own sums say how many of them stop at the counting cross.
func (c Chains) together() *Schedule {
	s := &Schedule{Total: c.Total}
	wound := 0
	for _, chain := range c.Chain {
		one := chain.Schedule
		for _, ps := range one.Passes {
			ps.First, ps.Last, ps.SetUp = ps.First+wound, ps.Last+wound, ps.SetUp+len(s.SetUps)
			s.Passes = append(s.Passes, ps)
		}
		for _, set := range one.SetUps {
			own := make([]int, len(set))
			for i, colour := range set {
				own[i] = colour * chain.Colour
			}
			s.SetUps = append(s.SetUps, own)
		}
		s.Kinds += one.Kinds
		s.Sum.add(one.Sum)
		wound += chain.Ends
	}
	return s
}

// add adds the work of another chain.
func (s *Sum) add(o Sum) {
	s.Passes, s.Halts, s.Threads = s.Passes+o.Passes, s.Halts+o.Halts, s.Threads+o.Threads
	s.Cuts, s.Ties, s.Far = s.Cuts+o.Cuts, s.Ties+o.Ties, o.Far
}
