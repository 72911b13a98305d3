package project

import (
	"fmt"
	"math/big"

	"millside/plan"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// RaddleFit says how groups suit the sections of a raddle.
type RaddleFit uint8

// The ways in which groups suit a raddle, the worst first.
const (
	RaddleUnknown RaddleFit = iota
	RaddleCuts              // the groups don't go into the sections in a short rhythm
	RaddleRhythm            // a few groups fill a few sections
	RaddleFills             // whole groups fill a section, or a group fills whole sections
)

// inSections is how many groups fill how many sections of the raddle, as a fraction in its simplest form;
// both are 0 where the sett or the raddle isn't known.
func inSections(s plan.Spec) (groups, sections int) {
	if s.Loom.Sett.IsZero() || s.Loom.Raddle.Space == 0 {
		return 0, 0
	}
	in := ratio.Quo(SettOf(s).Count(s.Loom.Raddle.Space), ratio.Of(s.Group))
	return measure.SmallCount(ratio.Down, new(big.Rat).SetInt(in.Num())),
		measure.SmallCount(ratio.Down, new(big.Rat).SetInt(in.Denom()))
}

// raddleFit says how the groups of a spec suit its raddle.
func raddleFit(s plan.Spec) RaddleFit {
	const short = 4
	switch groups, sections := inSections(s); {
	case sections == 0:
		return RaddleUnknown
	case sections == 1 || groups == 1:
		return RaddleFills
	case groups <= short && sections <= short:
		return RaddleRhythm
	default:
		return RaddleCuts
	}
}

// raddleReason says how the groups of the choice suit the raddle; "" where that isn't known.
func (c Choice) raddleReason(s plan.Spec) string {
	groups, sections := inSections(c.In(s))
	switch {
	case c.Raddle == RaddleUnknown:
		return ""
	case sections == 1:
		return measure.Counted(groups, "group fills", "groups fill") + " a section of the raddle"
	case groups == 1:
		return fmt.Sprintf("a group fills %d sections of the raddle", sections)
	case c.Raddle == RaddleRhythm:
		return fmt.Sprintf("%d groups fill %d sections of the raddle, so %s", groups, sections, raddleUneven(s))
	default:
		return "the groups don't go into the sections of the raddle, so " + raddleUneven(s)
	}
}

// raddleUneven says what comes of groups that don't fill the sections.
func raddleUneven(s plan.Spec) string {
	if s.Loom.SplitGroups {
		return "its teeth part some"
	}
	return "some hold more ends than others"
}
