package project

import (
	"math/big"

	"millside/plan"
	"millside/plan/cloth"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// RealSett is the sett at which the ends of a width are counted: that of all layers together which the reed really
// gives with its sley order, or on average with the dents that are said. Those of a warp that is so wide in the reed
// are its width x this sett (common practice, no source), so that the cloth gets the width that was asked for. It is
// the zero value where the sett that was asked for holds: no reed is known, it gives that sett exactly, or nothing near
// to it, which is refused elsewhere.
func RealSett(s plan.Spec, inReed measure.Length) measure.Sett {
	asked := s.Cloth.Width.InReed(s.Loom.Sett)
	r := s.Loom.Reed
	if r.IsZero() || asked.IsZero() || len(s.Loom.Widths) > 0 { // a draft has its own ends
		return measure.Sett{}
	}
	if len(s.Loom.Dents) > 0 {
		return onAverage(s, inReed)
	}
	settled, err := r.Settle(asked)
	if err != nil || settled.Order.Exact {
		return measure.Sett{}
	}
	return settled.Order.Gives
}

// onAverage is the sett of the ends that lie in the dents which a width takes, where these are said.
func onAverage(s plan.Spec, inReed measure.Length) measure.Sett {
	per := s.Loom.Reed.Dents(s.Cloth.Width.InReed(s.Loom.Sett).Unit())
	exact := ratio.Mul(ratio.Of(max(inReed-1, 1)), per.PerNanometre()) // a width is rounded up to a nanometre
	dents := measure.SmallCount(ratio.Up, exact)
	if dents > 10*measure.MaxEnds {
		return measure.Sett{}
	}
	each := big.NewRat(int64(s.Loom.Dents.In(dents)), int64(dents))
	gives, err := measure.SettOf(ratio.Mul(per.Rat(), each), per.Unit())
	if err != nil || gives == s.Cloth.Width.InReed(s.Loom.Sett) {
		return measure.Sett{}
	}
	return gives
}

// countedWidth is the width of the cloth with the sett at which its ends are counted.
func countedWidth(s plan.Spec) cloth.Width {
	width := widthOf(s)
	if plain, err := width.Ends(); err == nil {
		width.RealSett = RealSett(s, plain.InReed)
	}
	return width
}

// plannedWidth is that of a plan that was made: one whose ends were counted at the sett that was asked for, before
// there was the rule, is shown as it was counted.
func plannedWidth(s plan.Spec) cloth.Width {
	width := countedWidth(s)
	if width.RealSett.IsZero() || s.Schedule != nil {
		return width
	}
	if ends, err := width.Ends(); err == nil {
		if n, err := fitted(s, ends); err == nil && n == s.Ends {
			return width
		}
	}
	return widthOf(s)
}
