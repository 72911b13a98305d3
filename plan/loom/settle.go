package loom

import (
	"math/big"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// nearEnough is how far the sett that the reed gives may be from the one that was asked for: beyond it the cloth is
// another one. The figure is the project's own judgement; one who weaves with 12.5 ends an inch where 12 were asked for
// puts up with 4 % (P. Osterkamp, "Useful information: more charts", web page).
const nearEnough = 5 * measure.OnePercent

// Settled is what comes of a sett, a reed, and the order of the ends in its dents. There is one rule: the reed and the
// order decide how close the ends lie; where that is not the sett that was asked for, it is said, and where nothing
// comes near to it, the three are refused.
type Settled struct {
	// Asked is the sett that was asked for.
	Asked measure.Sett
	// Order is what the reed gives in its place. It has no dents where the dents were given one by one: its sett is
	// then that on average.
	Order SleyOrder
	// Counted says that the ends follow from the width at the sett that the reed gives, so that the warp is as wide as
	// was asked for.
	Counted bool
	// decides is what decides the sett.
	decides string
}

// What decides.
const (
	reedDecides  = "reed decides"
	dentsDecide  = "dents decide"
	draftDecides = "draft decides"
)

// Settle finds what the reed gives for a sett. The error, a [*measure.FieldError], says that no order comes near to it,
// and what would do; what comes nearest is there all the same, since it shows what was planned before there was the
// rule. Both are nil for the zero reed or sett.
func (r Reed) Settle(sett measure.Sett) (*Settled, error) {
	if r.IsZero() || sett.IsZero() {
		return nil, nil
	}
	order, err := r.Order(sett, longestOrder)
	if err == nil && order.Off <= nearEnough {
		return &Settled{Asked: sett, Order: order, decides: reedDecides}, nil
	}
	list := r.extremes(sett)
	if err != nil {
		if len(list) == 0 {
			return nil, err
		}
		order = list[0]
	}
	return &Settled{Asked: sett, Order: order, decides: reedDecides}, field.SettOf.Wrong(sett.String(),
		"a sett near to one that a reed of "+r.String()+" gives, such as "+settsCell(list).String()+"; or another reed")
}

// extremes is the two orders with which the reed comes nearest to a sett that is too open or too close for it.
func (r Reed) extremes(sett measure.Sett) []SleyOrder {
	share := ratio.Quo(sett.PerNanometre(), r.perNanometre())
	try := []*big.Rat{big.NewRat(1, longestOrder), big.NewRat(1, longestOrder-1)}
	if share.Cmp(ratio.Of(1)) > 0 {
		try = []*big.Rat{ratio.Of(mostInDent), ratio.Of(mostInDent - 1)}
	}
	var list []SleyOrder
	for _, near := range try {
		if o, err := r.orderOf(near, share, sett); err == nil {
			list = append(list, o)
		}
	}
	return list
}

// settsCell names setts with their orders: "18 an inch with 1-2, 20 an inch with 1-2-2".
func settsCell(list []SleyOrder) figure.Cell {
	var cells []figure.Cell
	for _, o := range list {
		cells = append(cells, figure.Say("%s with %s", o.Gives.As(2), o))
	}
	return figure.Join(cells, ", ")
}

// SettleDents is [Reed.Settle] where the ends in each dent are known: in the sections that the weaver gives, or,
// without any, as the widths of the ends in a draft ask for it. Sections will do where their sett on average is near to
// what was asked for, or where that of some of their dents is: of ends that are crammed and spaced, the sett is often
// told of the ground. A draft is never refused.
func (r Reed) SettleDents(sett measure.Sett, dents []int, sections DentSections) (*Settled, error) {
	ends := 0
	for _, n := range dents {
		ends += n
	}
	if r.IsZero() || sett.IsZero() || ends == 0 {
		return nil, nil
	}
	asked := ratio.Quo(sett.PerNanometre(), r.perNanometre())
	s := &Settled{Asked: sett, decides: draftDecides}
	var err error
	if s.Order, err = r.compared(big.NewRat(int64(ends), int64(len(dents))), asked, sett); err != nil {
		return nil, field.Dents.In(err)
	}
	s.Order.How = measure.How{Formula: "ends / dents x dents in a unit of width",
		WithNumbers: figure.Say("%d / %d x %s = %s", ends, len(dents), r.Dents(sett.Unit()).As(2),
			s.Order.Gives.As(2))}
	if len(sections) == 0 {
		return s, nil
	}
	s.decides = dentsDecide
	near := s.Order.Off <= nearEnough
	for _, d := range sections {
		if d.Ends > 0 {
			one, err := r.compared(ratio.Of(d.Ends), asked, sett)
			near = near || err == nil && one.Off <= nearEnough
		}
	}
	if near {
		return s, nil
	}
	gives := s.Order.Gives.As(2).String()
	return s, field.Dents.Wrong(measure.Shortened(sections.String()), "dents that come near to "+sett.As(2).String()+
		" in a reed of "+r.String()+": these give "+gives+" on average; or "+gives+" as the sett, or another reed")
}

// Away says how far the sett is from the one that was asked for: "0.2 % more open"; nothing where it is that.
func (o SleyOrder) Away() figure.Cell {
	if o.Exact {
		return nil
	}
	way := "more open"
	if o.Closer {
		way = "closer"
	}
	if o.Off < measure.OnePercent/20 { // rounded it would be nothing
		return figure.Say("less than %s %s", share(measure.OnePercent/10), way)
	}
	return figure.Say("%s %s", share(o.Off), way)
}

// share writes a share with one decimal, rounded to the nearest.
func share(p measure.Percent) figure.Number {
	return figure.New(ratio.Mul(p.Of(), ratio.Of(100)), 1, "%")
}

// Words says what decides, and what comes of it for a warp of so many ends side by side that is so wide in the reed;
// nothing where the sett is the one that was asked for.
func (s *Settled) Words(width measure.Length, ends int, units measure.LengthUnitSystem) figure.Cell {
	if s == nil || s.Order.Exact || s.Order.Gives.As(2).String() == s.Asked.As(2).String() {
		return nil // what differs in figures that aren't shown, no hand can tell apart
	}
	show := func(l measure.Length) figure.Number { return l.As(units.Short(), 2) }
	what := figure.Say("on average")
	if len(s.Order.Dents) > 0 {
		what = figure.Say("with %s", s.Order)
	}
	said := figure.Say("the %s: %s %s, %s than the %s that was asked for", s.decides, s.Order.Gives.As(2), what,
		s.Order.Away(), s.Asked.As(2))
	if s.Counted {
		return said.And("; the ends of the width are counted at it")
	}
	return said.And("; the warp is %s wide in it, not %s", show(width), show(s.Asked.WidthOf(ends)))
}

// Of says whether the words are about a field: the sett that was asked for, or what decides in its place.
func (s *Settled) Of(f *field.Field) bool {
	decides := field.Reed
	if s.decides == dentsDecide {
		decides = field.Dents
	}
	return f == field.SettOf || f == decides
}

// Row is the sett that the reed gives, with what has to be said of it as its warning.
func (s *Settled) Row(width measure.Length, ends int, units measure.LengthUnitSystem) measure.Row {
	name := "sett in this reed"
	if len(s.Order.Dents) == 0 {
		name = "sett on average"
	}
	return measure.Row{Name: name, Value: figure.Cell{s.Order.Gives.As(2)}, How: s.Order.How,
		Warning: s.Words(width, ends, units).String()}
}
