package start

import (
	"fmt"
	"slices"
	"strings"

	"millside/plan"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/stripe"
)

// repeated is an order laid so many times side by side.
func repeated(o stripe.Order, times int) stripe.Order {
	if times > 1 {
		o.Parts = []stripe.Part{{Kind: stripe.Repeat, Count: times, Inside: o.Parts}}
	}
	return o
}

// planOf works the warp out as far as its passes go: a striped one is cut into passes as its plan will be, or by a
// short search where rough says so.
func (s *solver) planOf(ends int, length measure.Length, rough bool) (*plan.Plan, error) {
	spec := s.spec
	spec.Ends, spec.Length, spec.Cloth.Used = ends, length, false
	if !s.k.striped() {
		return plan.New(spec)
	}
	ask, err := stripe.AskOf(spec, s.order.Colours)
	if err != nil {
		return nil, err
	}
	ask.Limits.Figure = rough
	made, err := stripe.ForPlan(s.ctx, spec, ask, nil)
	if err != nil {
		return nil, err
	}
	return plan.New(made.Spec)
}

// packagesAsked limits the packages that are threaded at once to those on hand, unless the weaver says how many
// there will be once they are wound over.
func (s *solver) packagesAsked() {
	if !s.k.striped() || len(s.k.OnHand) == 0 || s.spec.Asked.Packages != "" {
		return
	}
	var parts []string
	for _, c := range s.order.Colours {
		n := 0
		for _, p := range s.k.OnHand {
			if strings.EqualFold(p.Colour, c.Name) {
				n++
			}
		}
		parts = append(parts, fmt.Sprintf("%s %d", quoted(c.Name), n))
	}
	s.spec.Asked.Packages = strings.Join(parts, ", ")
}

// feed gives the slots of a plan their packages. Where there are fewer packages of a colour than slots, they are
// wound over into equal ones.
func (s *solver) feed(p *plan.Plan) (feeding, error) {
	slots, err := slotsOf(p)
	if err != nil {
		return feeding{}, err
	}
	f := feeding{slots: slots, extras: p.Spec.Extras()}
	wanted := map[string]int{}
	var colours []string
	for i := range slots {
		if !s.k.striped() {
			slots[i].colour = ""
		}
		if wanted[slots[i].colour]++; wanted[slots[i].colour] == 1 {
			colours = append(colours, slots[i].colour)
		}
	}
	for _, colour := range colours {
		list, err := s.held(colour, wanted[colour])
		if err != nil {
			return f, err
		}
		f.packages = append(f.packages, list...)
	}
	slices.SortStableFunc(f.packages, func(a, b held) int { return a.number - b.number })
	return f, nil
}

// held is the packages of a colour, for so many slots.
func (s *solver) held(colour string, slots int) ([]held, error) {
	var list []held
	for i, p := range s.k.OnHand {
		if colour != "" && !strings.EqualFold(p.Colour, colour) {
			continue
		}
		holds, err := p.holds(s.spec.Yarn)
		if err != nil {
			return nil, err
		}
		list = append(list, held{p, i + 1, holds})
	}
	if len(list) >= slots {
		return list, nil
	}
	return s.woundOver(list, slots)
}

// woundOver is equal packages made of fewer, rounded down to what can be weighed or measured off.
func (s *solver) woundOver(list []held, slots int) ([]held, error) {
	weighed, metric := true, s.spec.Units == measure.Metric
	var mass measure.Mass
	var length measure.Length
	for _, p := range list {
		weighed = weighed && p.Gross != 0
		mass += p.net(s.spec.Yarn)
		length += p.holds
	}
	one := held{number: list[0].number}
	one.Colour = list[0].Colour
	if weighed {
		step := measure.Ounce / 100
		if metric {
			step = measure.Gram / 10
		}
		net := mass / measure.Mass(slots) / step * step
		one.Gross = net + s.spec.Yarn.Tube
		if net > 0 {
			one.holds, _ = one.Package.holds(s.spec.Yarn)
		}
	} else {
		step := measure.Inch
		if metric {
			step = measure.Centimetre
		}
		one.Package.Length = length / measure.Length(slots) / step * step
		one.holds = one.Package.Length
	}
	if one.holds == 0 {
		return nil, field.OnHand.Wrong(OnHandText(s.k.OnHand), "more yarn")
	}
	wound := make([]held, slots)
	for i := range wound {
		wound[i] = one
	}
	return wound, nil
}

// wound is how many packages those in hand are wound over into in a plain warp; 0 where they are used as they are.
func (s *solver) wound() int {
	if len(s.k.OnHand) == 0 || len(s.k.OnHand) >= s.spec.Group || s.k.striped() {
		return 0
	}
	return s.spec.Group
}
