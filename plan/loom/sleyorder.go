package loom

import (
	"cmp"
	"math/big"
	"slices"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// SleyOrder is how many ends go into each dent, over and over.
type SleyOrder struct {
	// Dents is the ends in each dent of the repeat: 1, 1, 2.
	Dents []int
	// Gives is the sett that the reed makes with it.
	Gives measure.Sett
	// Exact says that this is the sett that was asked for; else Off is how far from it, rounded to the
	// nearest, and Closer says that the ends lie closer than asked.
	Exact  bool
	Off    measure.Percent
	Closer bool
	// How says how it was reached.
	How measure.How
}

// String writes the order as weavers do: "1-1-2".
func (o SleyOrder) String() string { return orderText(o.Dents) }

// Gives is the sett that a reed makes with a repeating order, exactly. The order has 1 to 1,000 dents
// of 0 to 100 ends, and holds at least one end. The error is a [*measure.FieldError].
func (r Reed) Gives(order []int) (measure.Sett, error) {
	if r.IsZero() {
		return measure.Sett{}, &measure.FieldError{Field: field.Reed.Name, Value: "", Want: reedWants}
	}
	ends, err := checkOrder(order)
	if err != nil {
		return measure.Sett{}, err
	}
	unit := r.unit()
	return measure.SettOf(ratio.Mul(r.Dents(unit).Rat(), big.NewRat(int64(ends), int64(len(order)))), unit)
}

// unit is the unit in which the reed's setts are put.
func (r Reed) unit() measure.SettUnit {
	switch r.system {
	case DentsPerTenCm:
		return measure.PerTenCentimetres
	case DentsPerCm:
		return measure.PerCentimetre
	default:
		return measure.PerInch
	}
}

// widthUnit is the unit in which widths in the reed are put.
func (r Reed) widthUnit() measure.LengthUnit {
	if r.unit() == measure.PerInch {
		return measure.Inches
	}
	return measure.Centimetres
}

// mostInDent is the most ends that a dent may hold.
const mostInDent = 100

// checkOrder gives the ends in an order.
func checkOrder(order []int) (ends int, err error) {
	if len(order) < 1 || len(order) > 1000 {
		return 0, measure.Outside("dents in the order", len(order), 1, 1000, "")
	}
	for _, n := range order {
		if n < 0 || n > mostInDent {
			return 0, measure.Outside("ends a dent", n, 0, mostInDent, "")
		}
		ends += n
	}
	if ends == 0 {
		return 0, &measure.FieldError{Field: "order", Value: orderText(order), Want: "at least one end in a dent"}
	}
	return ends, nil
}

// Order finds the order in which a sett goes into the reed: ends over dents, spread as evenly as is
// possible. Where a repeat of at most the given dents (1 to 12) makes the sett exactly that is it;
// otherwise it is the repeat that comes nearest, and the shorter of two that come equally near. The
// error is a [*measure.FieldError]: for the zero reed or sett, a limit out of range, or a sett so far from the
// reed that a dent would hold over 100 ends or the repeat no end at all.
func (r Reed) Order(sett measure.Sett, longest int) (SleyOrder, error) {
	switch {
	case r.IsZero():
		return SleyOrder{}, &measure.FieldError{Field: field.Reed.Name, Value: "", Want: reedWants}
	case sett.IsZero():
		return SleyOrder{}, &measure.FieldError{Field: field.SettOf.Name, Value: "", Want: measure.SettWants}
	case longest < 1 || longest > longestOrder:
		return SleyOrder{}, measure.Outside("dents in the order", longest, 1, longestOrder, "")
	}
	share := ratio.Quo(sett.PerNanometre(), r.perNanometre())
	near := nearestFraction(share, longest)
	if near.Sign() == 0 || near.Cmp(ratio.Of(mostInDent)) > 0 {
		return SleyOrder{}, &measure.FieldError{Field: field.SettOf.Name, Value: sett.String(),
			Want: "a sett that suits the reed of " + r.String()}
	}
	return r.orderOf(near, share, sett)
}

// orderOf makes the order of a number of ends a dent and compares it with what was asked for.
func (r Reed) orderOf(near, asked *big.Rat, sett measure.Sett) (SleyOrder, error) {
	o, err := r.compared(near, asked, sett)
	if err != nil {
		return SleyOrder{}, err
	}
	o.Dents = spread(int(near.Num().Int64()), int(near.Denom().Int64()))
	dents := r.Dents(sett.Unit())
	numbers := figure.Say("%s / %s = %s", figure.New(sett.Rat(), 2, ""), figure.New(dents.Rat(), 2, ""),
		figure.New(asked, 3, ""))
	if o.Exact {
		numbers = numbers.And(", %d over %d: %s", near.Num(), near.Denom(), o)
	} else {
		numbers = numbers.And(", nearest %d over %d: %s, which is %s", near.Num(), near.Denom(), o, o.Gives.As(2))
	}
	o.How = measure.How{Formula: "ends / dents, spread as evenly as is possible", WithNumbers: numbers}
	return o, nil
}

// compared is the sett of so many ends a dent beside the one that was asked for, without an order.
func (r Reed) compared(near, asked *big.Rat, sett measure.Sett) (SleyOrder, error) {
	gives, err := measure.SettOf(ratio.Mul(r.Dents(r.unit()).Rat(), near), r.unit())
	if err != nil {
		return SleyOrder{}, err
	}
	off := ratio.Quo(ratio.Sub(near, asked), asked)
	o := SleyOrder{Gives: gives.In(sett.Unit()), Exact: off.Sign() == 0, Closer: off.Sign() > 0}
	parts, _ := ratio.Nearest.Whole(ratio.Mul(off.Abs(off), ratio.Of(100*measure.OnePercent)))
	o.Off = measure.Percent(parts)
	return o, nil
}

// NearOrders lists the orders of at most the given dents (1 to 12) whose sett is within a share of the
// sett asked for, the nearest first and the shorter first of two that are equally near. It is empty for
// the zero reed or sett or a limit out of range.
func (r Reed) NearOrders(sett measure.Sett, longest int, within measure.Percent) []SleyOrder {
	if r.IsZero() || sett.IsZero() || longest < 1 || longest > longestOrder {
		return nil
	}
	share := ratio.Quo(sett.PerNanometre(), r.perNanometre())
	var list []SleyOrder
	seen := map[string]bool{}
	for dents := 1; dents <= longest; dents++ {
		at := measure.SmallCount(ratio.Down, ratio.Mul(share, ratio.Of(dents)))
		for _, way := range []struct{ from, step int }{{at, -1}, {at + 1, 1}} {
			for ends := way.from; ends >= 1 && ends <= mostInDent*dents; ends += way.step {
				near := big.NewRat(int64(ends), int64(dents))
				o, err := r.orderOf(near, share, sett)
				if err != nil || o.Off > within {
					break
				}
				if !seen[near.String()] {
					seen[near.String()] = true
					list = append(list, o)
				}
			}
		}
	}
	slices.SortStableFunc(list, func(a, b SleyOrder) int {
		return cmp.Or(cmp.Compare(a.Off, b.Off), cmp.Compare(len(a.Dents), len(b.Dents)))
	})
	return list
}
