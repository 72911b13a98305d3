package stripe

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/stripe/schedule"
)

// Alternative is another way to wind the stripes, beside the one of the plan.
type Alternative struct {
	// Choose is the name by which the weaver chooses it; empty where it is one of comparison only.
	Choose string
	// Words says what is done, Work the work that it takes. Loom says what it costs at the loom, where it is
	// more than the plan's own does.
	Words, Work, Loom string
	// Possible says whether the stripes, the paddle and the limits allow it; if not, the times are nil.
	Possible bool
	// Total is the time at the mill, Saved how much less the plan takes; it is below nil if the plan takes more.
	Total, Saved time.Duration
}

// CheapestWay is the name by which the cheapest schedule is chosen where another with fewer kinds of pass is
// taken.
const CheapestWay = "cheapest"

const cheapestWords = "the cheapest that was found, with more kinds of pass to learn"

// Alternatives lists the other ways: what the search found, if another way is wound, the cheapest schedule,
// if one with fewer kinds of pass is wound, and the ways of a sensible weaver.
func (p *Plan) Alternatives() []Alternative {
	var list []Alternative
	add := func(choose, words string, s *schedule.Schedule) {
		if s == p.Schedule {
			return
		}
		a := Alternative{Choose: choose, Words: words}
		if s != nil {
			a.Possible, a.Work, a.Total, a.Saved = true, WorkWords(s), s.Total, s.Total-p.Schedule.Total
		}
		list = append(list, a)
	}
	add(schedule.Searched.String(), schedule.Searched.Words(), p.Found.Taken)
	if p.Found.Cheapest != nil {
		add(CheapestWay, cheapestWords, p.Found.Cheapest)
	}
	for _, o := range p.Ways.Other {
		if o.Way != p.Way {
			add(o.Way.String(), o.Way.Words(), o.Schedule)
		}
	}
	if len(p.Order.Colours) > 1 && p.Way != schedule.ChainEach {
		list = append(list, p.byColour())
	}
	return list
}

// Choices lists all ways, that of the plan among them, in the order of the table of fields, and says which one is the
// plan's.
func (p *Plan) Choices() (list []Alternative, taken int) {
	own := Alternative{Choose: p.Way.String(), Words: p.Way.Words(), Work: WorkWords(p.Schedule), Possible: true,
		Total: p.Schedule.Total}
	if p.Schedule == p.Found.Cheapest {
		own.Choose, own.Words = CheapestWay, cheapestWords
	}
	list = append(p.Alternatives(), own)
	place := func(a Alternative) int { return slices.Index(field.Way.Words, a.Choose) }
	slices.SortStableFunc(list, func(a, b Alternative) int { return place(a) - place(b) })
	return list, slices.IndexFunc(list, func(a Alternative) bool { return a.Choose == own.Choose })
}

// byColour is the chain for each colour among the other ways.
func (p *Plan) byColour() Alternative {
	a := Alternative{Choose: schedule.ChainEach.String(), Words: schedule.ChainEach.Words()}
	c := p.Ways.ByColour
	if c == nil {
		return a
	}
	var work []string
	for _, chain := range c.Chain {
		work = append(work, fmt.Sprintf("%s %d by %d", p.Order.Colours[chain.Colour-1].Name, chain.Ends, chain.Group))
	}
	a.Possible, a.Total, a.Saved = true, c.Total, c.Total-p.Schedule.Total
	a.Work = strings.Join(work, ", ")
	a.Loom = fmt.Sprintf("at the loom the ends are picked from %s in turn, by the order list",
		measure.Counted(len(c.Chain), "lease", "leases"))
	return a
}

// WorkWords says in words what a schedule takes: "46 passes of 2 kinds, 1 halt, 8 ends tied on and cut off, 8
// packages threaded, ends at the lease".
func WorkWords(s *schedule.Schedule) string {
	end := "ends at the lease"
	if s.Sum.Far {
		end = "ends at the counting cross"
	}
	return fmt.Sprintf("%s of %s, %s, %s tied on and cut off, %s threaded, %s",
		measure.Counted(s.Sum.Passes, "pass", "passes"),
		measure.Counted(s.Kinds, "kind", "kinds"), measure.Counted(s.Sum.Halts, "halt", "halts"),
		measure.Counted(s.Sum.Ties, "end", "ends"),
		measure.Counted(s.Sum.Threads, "package", "packages"), end)
}
