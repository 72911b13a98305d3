package stripe

import (
	"fmt"

	"millside/plan"
)

// Plan is a striped warp ready to be wound, and what it was chosen from.
type Plan struct {
	// Spec is the spec with the stripes, their ends, the group and both schedules filled in.
	Spec plan.Spec
	// Order is the stripe order, Schedule the one for the spec's return order, Ways what it is compared
	// with.
	Order    Order
	Schedule *Schedule
	Ways     []Way
}

// ForPlan cuts the stripes of a spec into passes, for its return order and for the other one, which the
// weaver may see at the mill. The spec's Positions and ReturnOrder stand over those of the limits. The
// error is a [*TextError] where the notation can't be read, else that of [Make].
func ForPlan(spec plan.Spec, l Limits, w Weights) (*Plan, error) {
	order, err := Parse(spec.Stripes)
	if err != nil {
		return nil, err
	}
	ends, err := order.Ends()
	if err != nil {
		return nil, err
	}
	l.Positions, l.ReturnOrder = spec.Positions, spec.ReturnOrder
	chosen, err := Make(ends, l, w)
	if err != nil {
		return nil, err
	}
	ways, err := Compare(chosen, ends, l, w)
	if err != nil {
		return nil, err
	}
	l.ReturnOrder = l.ReturnOrder.Other()
	other, err := Make(ends, l, w)
	if err != nil {
		return nil, fmt.Errorf("for the other return order: %w", err)
	}
	spec.Stripes, spec.Ends, spec.LastPass = order.String(), len(ends), plan.ShortLast
	spec.Schedule, spec.Other = chosen.forPlan(order.Colours), other.forPlan(order.Colours)
	spec.Group = 1
	for _, p := range append(chosen.Passes, other.Passes...) {
		spec.Group = max(spec.Group, p.Carried.Count())
	}
	return &Plan{Spec: spec, Order: order, Schedule: chosen, Ways: ways}, nil
}

// forPlan is the schedule as package plan keeps it.
func (s *Schedule) forPlan(colours []Colour) *plan.Schedule {
	out := &plan.Schedule{Note: s.Proof.Why}
	for _, c := range colours {
		shade := ""
		if c.Known {
			shade = c.Shade.String()
		}
		out.Colours = append(out.Colours, plan.StripeColour{Name: c.Name, Shade: shade})
	}
	for _, set := range s.SetUps {
		out.SetUps = append(out.SetUps, plan.SetUp(set.Colours))
	}
	for _, p := range s.Passes {
		out.Passes = append(out.Passes, plan.ScheduledPass{Carried: p.Carried, SetUp: p.SetUp})
	}
	return out
}
