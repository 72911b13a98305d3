package stripe

import (
	"fmt"

	"millside/plan"
	"millside/plan/field"
	"millside/plan/project"
	"millside/plan/wind"
)

// Turned is the order from its last end to its first. The colours keep their numbers.
func (o Order) Turned() Order {
	if len(o.Parts) == 1 && o.Parts[0].Kind == Back {
		return Order{Colours: o.Colours, Parts: o.Parts[0].Inside}
	}
	return Order{Colours: o.Colours, Parts: []Part{{Kind: Back, Inside: o.Parts}}}
}

// Written reads the stripes of a spec as they are written, and lays them from end 1 to the last: repeated or cut
// where the spec asks for it, and turned where they are written from the other side. The error is that of [Parse],
// or says why the cloth has no width or the stripes can't be laid so.
func Written(s plan.Spec) (written, laid Order, err error) {
	written, laid, _, err = lay(s)
	return written, laid, err
}

// lay is [Written], and says what was made of the stripes.
func lay(s plan.Spec) (written, laid Order, how wind.Laying, err error) {
	if written, err = Parse(s.Stripes); err != nil {
		return Order{}, Order{}, how, err
	}
	if laid, how, err = written.toEnds(s); err != nil {
		return Order{}, Order{}, how, err
	}
	if s.StripesTurned() {
		laid = laid.Turned()
	}
	return written, laid, how, nil
}

// toEnds repeats or cuts the order as the spec asks, from the side that it is written from.
func (o Order) toEnds(s plan.Spec) (Order, wind.Laying, error) {
	l := wind.Laying{How: s.Asked.Laid.How, Written: o.Size(), Wanted: s.Ends}
	switch {
	case s.Cloth.Used:
		s.Schedule, s.Cloth.Fit = nil, plan.FitWanted
		ends, _, err := project.EndsOf(s) // how long it is doesn't matter
		if err != nil && l.How != wind.AsWritten {
			return o, l, err
		}
		if l.Wanted = ends; err != nil {
			l.Wanted = 0 // the plan says what is wrong with the cloth
		}
	case l.How == wind.AsWritten:
		return o, wind.Laying{}, nil
	}
	if l.Wanted == 0 || l.Ends() == l.Written {
		return o, l, nil
	}
	if l.Ends() < 1 {
		return o, l, field.StripesLaid.Wrong(l.How.String(), fmt.Sprintf("%s or %s: the stripes have %d ends, and %d "+
			"are wanted", wind.CutToEnds, wind.AsWritten, l.Written, l.Wanted))
	}
	if l.How == wind.WholeRepeats {
		return Order{Colours: o.Colours, Parts: []Part{{Kind: Repeat, Count: l.Ends() / l.Written, Inside: o.Parts}}},
			l, nil
	}
	once, err := o.Ends()
	if err != nil {
		return o, l, err
	}
	ends := make([]int, l.Ends())
	for i := range ends {
		ends[i] = once[i%len(once)]
	}
	laid, err := FromEnds(o.Colours, ends)
	return laid, l, err
}
