package loom

import (
	"slices"

	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// GivenSett is a sett that a reed gives near a wanted one.
type GivenSett struct {
	SleyOrder
	// Nearest says that no other of the reed's orders comes nearer: it is the one that a plan takes.
	Nearest bool
	// Width is the width that the warp has in it, rounded to the nearest nanometre, 0 where its ends aren't known;
	// Fits says that it isn't wider than the reed, or that the reed's width isn't known.
	Width measure.Length
	Fits  bool
}

// ReedSetts is what a reed gives near a wanted sett, the most open first: the order that comes nearest, and the simple
// ones of [Reed.Nearby]. There are none where no order comes near.
type ReedSetts struct {
	Reed  Reed
	Setts []GivenSett
}

// SettsOf lists what each of the reeds gives near a sett for a warp of so many ends side by side, 0 where they aren't
// known: those that suit it first, as [RankReeds] has them. It is empty for the zero sett.
func SettsOf(reeds []Reed, wanted measure.Sett, ends int) []ReedSetts {
	if wanted.IsZero() {
		return nil
	}
	var order []Reed
	for _, c := range RankReeds(reeds, wanted, min(max(ends, 1), measure.MaxEnds)) {
		order = append(order, c.Reed)
	}
	for _, r := range reeds {
		if !slices.Contains(order, r) {
			order = append(order, r)
		}
	}
	var list []ReedSetts
	for _, r := range order {
		list = append(list, r.settsNear(wanted, ends))
	}
	return list
}

func (r Reed) settsNear(wanted measure.Sett, ends int) ReedSetts {
	list := ReedSetts{Reed: r}
	near, err := r.Settle(wanted)
	if err != nil || near == nil {
		return list
	}
	give := func(o SleyOrder, nearest bool) {
		g := GivenSett{SleyOrder: o, Nearest: nearest, Width: o.Gives.WidthOf(ends)}
		g.Fits = r.width == 0 || g.Width <= r.width
		list.Setts = append(list.Setts, g)
	}
	give(near.Order, true)
	for _, o := range r.Nearby(wanted, near.Order) {
		give(o, false)
	}
	slices.SortFunc(list.Setts, func(a, b GivenSett) int {
		return a.Gives.PerNanometre().Cmp(b.Gives.PerNanometre())
	})
	return list
}

// GivenColumns heads the columns of [GivenSett.Cells].
func GivenColumns() []string { return []string{"sett", "against it", "width", "order"} }

// GivenNote says how a sett stands against the one asked for.
const GivenNote = "+ closer, - more open"

// Cells is the sett in a line of a table: the sett, how far it is from the one asked for, the width of the warp, and
// the order.
func (g GivenSett) Cells(units measure.LengthUnitSystem) []figure.Cell {
	away := figure.Say("+%s", share(g.Off))
	switch {
	case g.Exact:
		away = figure.Say("as asked")
	case !g.Closer:
		away = figure.Cell{figure.New(ratio.Mul(g.Off.Of(), ratio.Of(-100)), 1, "%")}
	}
	var width figure.Cell
	if g.Width > 0 {
		width = figure.Cell{g.Width.As(units.Short(), 1)}
	}
	order := figure.Say("%s", g.SleyOrder)
	if !g.Fits {
		order = order.And(", too wide")
	}
	return []figure.Cell{{g.Gives.As(2)}, away, width, order}
}
