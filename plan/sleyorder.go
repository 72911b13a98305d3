package plan

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"
)

// SleyOrder is how many ends go into each dent, over and over.
type SleyOrder struct {
	// Dents is the ends in each dent of the repeat: 1, 1, 2.
	Dents []int
	// Gives is the sett that the reed makes with it.
	Gives Sett
	// Exact says that this is the sett that was asked for; else Off is how far from it, rounded to the
	// nearest, and Closer says that the ends lie closer than asked.
	Exact  bool
	Off    Percent
	Closer bool
	// How says how it was reached.
	How How
}

// String writes the order as weavers do: "1-1-2".
func (o SleyOrder) String() string { return orderText(o.Dents) }

// Gives is the sett that a reed makes with a repeating order, exactly. The order has 1 to 1,000 dents
// of 0 to 100 ends, and holds at least one end. The error is a [*FieldError].
func (r Reed) Gives(order []int) (Sett, error) {
	if r.IsZero() {
		return Sett{}, &FieldError{Field: "reed", Value: "", Want: reedWants}
	}
	ends, err := checkOrder(order)
	if err != nil {
		return Sett{}, err
	}
	unit := r.unit()
	return settOf(mul(r.Dents(unit).rat(), big.NewRat(int64(ends), int64(len(order)))), unit)
}

// unit is the unit in which the reed's setts are put.
func (r Reed) unit() SettUnit {
	switch r.system {
	case DentsPerTenCm:
		return PerTenCentimetres
	case DentsPerCm:
		return PerCentimetre
	default:
		return PerInch
	}
}

// widthUnit is the unit in which widths in the reed are put.
func (r Reed) widthUnit() LengthUnit {
	if r.unit() == PerInch {
		return Inches
	}
	return Centimetres
}

// checkOrder gives the ends in an order.
func checkOrder(order []int) (ends int, err error) {
	if len(order) < 1 || len(order) > 1000 {
		return 0, outside("dents in the order", len(order), 1, 1000, "")
	}
	for _, n := range order {
		if n < 0 || n > 100 {
			return 0, outside("ends a dent", n, 0, 100, "")
		}
		ends += n
	}
	if ends == 0 {
		return 0, &FieldError{Field: "order", Value: orderText(order), Want: "at least one end in a dent"}
	}
	return ends, nil
}

// Order finds the order in which a sett goes into the reed: ends over dents, spread as evenly as is
// possible. Where a repeat of at most the given dents (1 to 12) makes the sett exactly that is it;
// otherwise it is the repeat that comes nearest, and the shorter of two that come equally near. The
// error is a [*FieldError]: for the zero reed or sett, a limit out of range, or a sett so far from the
// reed that a dent would hold over 100 ends or the repeat no end at all.
func (r Reed) Order(sett Sett, longest int) (SleyOrder, error) {
	switch {
	case r.IsZero():
		return SleyOrder{}, &FieldError{Field: "reed", Value: "", Want: reedWants}
	case sett.IsZero():
		return SleyOrder{}, &FieldError{Field: "sett", Value: "", Want: settWants}
	case longest < 1 || longest > longestOrder:
		return SleyOrder{}, outside("dents in the order", longest, 1, longestOrder, "")
	}
	ratio := quo(sett.perNanometre(), r.perNanometre())
	near := nearestFraction(ratio, longest)
	if near.Sign() == 0 || near.Cmp(ratOf(100)) > 0 {
		return SleyOrder{}, &FieldError{Field: "sett", Value: sett.String(), Want: "a sett that suits the reed of " + r.String()}
	}
	return r.orderOf(near, ratio, sett)
}

// orderOf makes the order of a number of ends a dent and compares it with what was asked for.
func (r Reed) orderOf(near, asked *big.Rat, sett Sett) (SleyOrder, error) {
	o := SleyOrder{Dents: spread(int(near.Num().Int64()), int(near.Denom().Int64()))}
	var err error
	if o.Gives, err = r.Gives(o.Dents); err != nil {
		return SleyOrder{}, err
	}
	o.Gives = o.Gives.In(sett.Unit())
	off := quo(sub(near, asked), asked)
	o.Exact, o.Closer = off.Sign() == 0, off.Sign() > 0
	parts, _ := roundNearest.whole(mul(off.Abs(off), ratOf(100*OnePercent)))
	o.Off = Percent(parts)
	dents := r.Dents(sett.Unit())
	numbers := fmt.Sprintf("%s / %s = %s", decimal(sett.rat(), 2), decimal(dents.rat(), 2), decimal(asked, 3))
	if o.Exact {
		numbers += fmt.Sprintf(", %d over %d: %s", near.Num(), near.Denom(), o)
	} else {
		numbers += fmt.Sprintf(", nearest %d over %d: %s, which is %s", near.Num(), near.Denom(), o, o.Gives.Shown(2))
	}
	o.How = How{"ends / dents, spread as evenly as is possible", numbers}
	return o, nil
}

// NearOrders lists the orders of at most the given dents (1 to 12) whose sett is within a share of the
// sett asked for, the nearest first and the shorter first of two that are equally near. It is empty for
// the zero reed or sett or a limit out of range.
func (r Reed) NearOrders(sett Sett, longest int, within Percent) []SleyOrder {
	if r.IsZero() || sett.IsZero() || longest < 1 || longest > longestOrder {
		return nil
	}
	ratio := quo(sett.perNanometre(), r.perNanometre())
	var list []SleyOrder
	seen := map[string]bool{}
	for dents := 1; dents <= longest; dents++ {
		at := smallCount(roundDown, mul(ratio, ratOf(dents)))
		for _, ends := range []int{at, at + 1} {
			near := big.NewRat(int64(ends), int64(dents))
			if ends < 1 || near.Cmp(ratOf(100)) > 0 || seen[near.String()] {
				continue
			}
			seen[near.String()] = true
			if o, err := r.orderOf(near, ratio, sett); err == nil && o.Off <= within {
				list = append(list, o)
			}
		}
	}
	slices.SortStableFunc(list, func(a, b SleyOrder) int {
		return cmp.Or(cmp.Compare(a.Off, b.Off), cmp.Compare(len(a.Dents), len(b.Dents)))
	})
	return list
}
