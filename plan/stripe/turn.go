package stripe

import "millside/plan"

// Turned is the order from its last end to its first. The colours keep their numbers.
func (o Order) Turned() Order {
	if len(o.Parts) == 1 && o.Parts[0].Kind == Back {
		return Order{Colours: o.Colours, Parts: o.Parts[0].Inside}
	}
	return Order{Colours: o.Colours, Parts: []Part{{Kind: Back, Inside: o.Parts}}}
}

// Written reads the stripes of a spec as they are written, and turns them so that they run from end 1 to
// the last, as they are laid. The error is that of [Parse].
func Written(s plan.Spec) (written, laid Order, err error) {
	if written, err = Parse(s.Stripes); err != nil {
		return Order{}, Order{}, err
	}
	if s.StripesTurned() {
		return written, written.Turned(), nil
	}
	return written, written, nil
}
