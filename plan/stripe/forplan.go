package stripe

import (
	"context"
	"fmt"

	"millside/plan"
	"millside/plan/stripe/schedule"
	"millside/plan/times"
	"millside/plan/wind"
)

// Ask is what a weaver asks of the schedule of a striped warp. The zero value asks for the best that is found
// with any number of packages.
type Ask struct {
	// Limits is what the schedule must keep to; positions, return order and foot position are the spec's, and
	// so is how long the work takes.
	Limits schedule.Limits
	// Way is the way to wind; Cheapest says that the cheapest schedule is wanted though it has more kinds of
	// pass than the one that would be taken.
	Way      schedule.Way
	Cheapest bool
}

// Plan is a striped warp ready to be wound, and what it was chosen from.
type Plan struct {
	// Spec is the spec with the stripes, their ends, the group and both schedules filled in.
	Spec plan.Spec
	// Order is the stripe order from end 1 on, Schedule the one to be wound, for the spec's return order.
	Order    Order
	Schedule *schedule.Schedule
	// Way is the way that is wound.
	Way schedule.Way
	// Found is what the search found, whatever the way that is wound.
	Found schedule.Found
	// Ways is what it is compared with.
	Ways Ways
	// Times is what it is judged by.
	Times schedule.Times

	ends   []int           // the colour of each
	limits schedule.Limits // as it was cut
}

// Ways is the ways of a sensible weaver to wind the same stripes, by the same limits and times.
type Ways struct {
	// Other lists them; one that isn't possible has no schedule.
	Other []OtherWay
	// ByColour is a chain for each colour; nil where the limits don't allow it.
	ByColour *schedule.Chains
}

// OtherWay is one way and its schedule, nil where the stripes, the paddle or the limits don't allow it.
type OtherWay struct {
	Way      schedule.Way
	Schedule *schedule.Schedule
}

// ForPlan cuts the stripes of a spec into passes, for its return order and, with less effort, for the other
// one, which the weaver may see at the mill. Progress, unless it is nil, is told each better schedule as it is
// found; where ctx ends first, the best so far is taken. The error is a [*TextError] where the notation can't
// be read, else that of [schedule.Make].
func ForPlan(ctx context.Context, spec plan.Spec, ask Ask, progress func(*schedule.Schedule)) (*Plan, error) {
	written, order, laying, err := lay(spec)
	if err != nil {
		return nil, err
	}
	ends, err := order.Ends()
	if err != nil {
		return nil, err
	}
	l := ask.Limits
	l.Positions, l.ReturnOrder, l.FootLast = spec.Positions, spec.ReturnOrder, spec.Foot == wind.FootLast
	made := &Plan{Order: order, Way: ask.Way, Times: TimesOf(spec), ends: ends, limits: l}
	if made.Schedule, made.Found, err = ask.chosen(ctx, ends, l, made.Times, progress); err != nil {
		return nil, err
	}
	made.Ways = waysOf(ends, l, made.Times)
	l.ReturnOrder, l.Quick = l.ReturnOrder.Other(), true
	other, err := ask.otherOrder(ctx, ends, l, made.Times)
	if err != nil {
		return nil, fmt.Errorf("for the other return order: %w", err)
	}
	spec.Stripes, spec.Ends, spec.LastPass = written.String(), len(ends), wind.ShortLast
	spec.Asked.Laid = laying
	spec.Schedule, spec.Other = forPlan(made.Schedule, order.Colours), forPlan(other, order.Colours)
	if ask.Way == schedule.ChainEach {
		spec.Schedule.Order = colourRuns(ends)
		spec.Other.Order = spec.Schedule.Order
	}
	spec.Group = 1
	for _, s := range []*schedule.Schedule{made.Schedule, other} {
		for _, p := range s.Passes {
			spec.Group = max(spec.Group, p.Carried.Count())
		}
	}
	made.Spec = spec
	return made, nil
}

// chosen is the schedule that is wound, and what the search found; where another way is asked for, the search
// is made as well, so that the weaver sees what it costs.
func (a Ask) chosen(ctx context.Context, ends []int, l schedule.Limits, t schedule.Times,
	progress func(*schedule.Schedule)) (*schedule.Schedule, schedule.Found, error) {
	found, err := lately.search(ctx, ends, l, t, progress)
	if err != nil {
		return nil, found, err
	}
	if a.Way != schedule.Searched {
		s, err := schedule.ByWay(a.Way, ends, l, t)
		if err != nil {
			return nil, found, err
		}
		if a.Way == schedule.ChainEach {
			s.Proof = schedule.Proof{Why: "A chain for each colour was chosen: the order is made at the raddle " +
				"or in the reed."}
			return s, found, nil
		}
		bound := min(found.Taken.Proof.Bound, s.Total)
		s.Proof = schedule.Proof{Bound: bound, Gap: s.Total - bound, Least: bound == s.Total,
			Why: "This way was chosen."}
		return s, found, nil
	}
	if a.Cheapest && found.Cheapest != nil {
		return found.Cheapest, found, nil
	}
	return found.Taken, found, nil
}

// otherOrder is the schedule for the other return order; a way that was chosen needs no search.
func (a Ask) otherOrder(ctx context.Context, ends []int, l schedule.Limits, t schedule.Times) (*schedule.Schedule,
	error) {
	if a.Way != schedule.Searched {
		s, err := schedule.ByWay(a.Way, ends, l, t)
		if err == nil {
			s.Proof.Why = "This way was chosen."
		}
		return s, err
	}
	s, _, err := a.chosen(ctx, ends, l, t, nil)
	return s, err
}

// TimesOf is the times that the schedule of a spec is judged by: what its plan's time is reckoned with.
func TimesOf(spec plan.Spec) schedule.Times {
	h := spec.HandTimesAt(times.Pace{})
	return schedule.Times{Pass: h.Pass, Halt: h.Halt, Cut: h.Cut, Tie: h.Tie, Thread: h.Thread, Far: h.Far}
}

// waysOf works out the ways of a sensible weaver.
func waysOf(ends []int, l schedule.Limits, t schedule.Times) Ways {
	var w Ways
	for _, way := range []schedule.Way{schedule.SideBySide, schedule.Swapped, schedule.OneRepeat} {
		s, err := schedule.ByWay(way, ends, l, t)
		if err != nil {
			s = nil // the limits leave no way to do it
		}
		w.Other = append(w.Other, OtherWay{way, s})
	}
	if chains, err := schedule.ByColour(ends, l, t); err == nil {
		w.ByColour = &chains
	}
	return w
}

// colourRuns draws neighbouring ends of one colour together.
func colourRuns(ends []int) []plan.ColourRun {
	var runs []plan.ColourRun
	for _, c := range ends {
		if last := len(runs) - 1; last >= 0 && runs[last].Colour == c {
			runs[last].Ends++
			continue
		}
		runs = append(runs, plan.ColourRun{Ends: 1, Colour: c})
	}
	return runs
}

// forPlan is a schedule as package plan keeps it.
func forPlan(s *schedule.Schedule, colours []Colour) *plan.Schedule {
	out := &plan.Schedule{Note: s.Proof.Why, Colours: PlanColours(colours)}
	for _, set := range s.SetUps {
		out.SetUps = append(out.SetUps, plan.SetUp(set))
	}
	for _, p := range s.Passes {
		out.Passes = append(out.Passes, plan.ScheduledPass{Carried: p.Carried, SetUp: p.SetUp})
	}
	return out
}

// PlanColours are colours as package plan keeps them: with the shade that is given, or the one that the name stands
// for.
func PlanColours(colours []Colour) []plan.StripeColour {
	var out []plan.StripeColour
	for _, c := range colours {
		shade := ""
		if look, ok := c.Look(); ok {
			shade = look.String()
		}
		out = append(out, plan.StripeColour{Name: c.Name, Shade: shade})
	}
	return out
}
