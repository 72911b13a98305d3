package loom

import (
	"slices"

	"millside/plan/figure"
	"millside/plan/measure"
)

// How far the setts beside the wanted one are looked for. The figures are the project's own judgement: orders of
// at most four dents are those of the printed charts (facts beside the test), and a quarter more or less is another
// cloth.
const (
	nearbyDents  = 4
	nearbyWithin = 25 * measure.OnePercent
	nearbyASide  = 2
)

// Nearby lists the setts that the reed gives beside the one in use: at most two more open and two closer, within a
// quarter of the wanted sett, in orders of at most four dents, the most open first. It is empty for the zero reed or
// sett.
func (r Reed) Nearby(wanted measure.Sett, inUse SleyOrder) []SleyOrder {
	var open, closer []SleyOrder
	for _, o := range r.NearOrders(wanted, nearbyDents, nearbyWithin) {
		way := o.Gives.PerNanometre().Cmp(inUse.Gives.PerNanometre())
		switch {
		case way < 0 && len(open) < nearbyASide:
			open = append(open, o)
		case way > 0 && len(closer) < nearbyASide:
			closer = append(closer, o)
		}
	}
	list := slices.Concat(open, closer)
	slices.SortFunc(list, func(a, b SleyOrder) int { return a.Gives.PerNanometre().Cmp(b.Gives.PerNanometre()) })
	return list
}

// NearbyRow says what Nearby lists; false where that is nothing.
func (r Reed) NearbyRow(wanted measure.Sett, inUse SleyOrder) (measure.Row, bool) {
	list := r.Nearby(wanted, inUse)
	if len(list) == 0 {
		return measure.Row{}, false
	}
	o := list[0]
	ends := 0
	for _, n := range o.Dents {
		ends += n
	}
	return measure.Row{Name: "setts nearby", Value: settsCell(list), How: measure.How{
		Formula: "dents in a unit of width x ends of the order / dents of the order",
		WithNumbers: figure.Say("%s x %d / %d = %s", figure.New(r.Dents(wanted.Unit()).Rat(), 2, ""), ends,
			len(o.Dents), figure.New(o.Gives.Rat(), 2, "")),
	}}, true
}
