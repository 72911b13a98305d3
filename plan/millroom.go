package plan

import (
	"errors"
	"fmt"

	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// MillRoom is how a warp stands on a mill.
type MillRoom struct {
	Path MillPath
	// Turns is the whole turns, and Steps the peg steps beyond them to the far end peg.
	Turns, Steps int
	// StepsInTurn is the peg steps in a turn, 0 where they aren't a whole number.
	StepsInTurn int
	// Climb is how far the warp climbs, rounded up to a nanometre. Fits says that the mill is high
	// enough, or that its height isn't known.
	Climb measure.Length
	Fits  bool
	// GuideString is the string between its two loops: the length of the warp. Cut is what to cut for
	// it, with the yarn of the loops.
	GuideString, Cut measure.Length
	// Rows shows the result with its formulas and any warning.
	Rows []measure.Row
}

// loopAllowance is the string for the loops at both ends of the guide string together. It is the
// project's own judgement, not a measured value.
const loopAllowance = 12 * measure.Inch

// Room says where a warp of a wanted length ends on the mill, whether it fits its height, and how long
// the guide string is, which is wound along the path that the warp will take. The length is above
// nothing and at most 1,000 m, the height 0, where it isn't known, to 10 m. A mill that is too low is
// no error: Fits says so. The error joins one [measure.FieldError] for each value that is out of its range.
func (m Mill) Room(wanted, height measure.Length, units measure.LengthUnitSystem) (*MillRoom, error) {
	errs := m.Check()
	if wanted <= 0 || wanted > 1000*measure.Metre {
		errs = append(errs, &measure.FieldError{Field: "length", Value: wanted.String(), Want: "above 0, at most 1000 m"})
	}
	if height < 0 || height > 10*measure.Metre {
		errs = append(errs, &measure.FieldError{Field: "mill height", Value: height.String(), Want: "0 to 10 m"})
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	r := &MillRoom{Path: m.Path(wanted)}
	r.Turns = measure.SmallCount(ratio.Down, r.Path.turns)
	beyond := ratio.Quo(ratio.Mul(ratio.Sub(r.Path.turns, ratio.Of(r.Turns)), ratio.Of(m.Circumference)), ratio.Of(m.PegStep))
	// The steps are counted from the last peg that lies within the whole turns.
	r.Steps = measure.SmallCount(ratio.Up, beyond)
	if m.Circumference%m.PegStep == 0 {
		r.StepsInTurn = int(m.Circumference / m.PegStep)
	}
	r.Climb, _ = measure.LengthOf(ratio.Up, ratio.Mul(r.Path.turns, ratio.Of(m.Rise)))
	r.Fits = height == 0 || r.Climb <= height
	r.GuideString, r.Cut = r.Path.Length, r.Path.Length+loopAllowance
	r.Rows = r.rows(m, wanted, height, units)
	return r, nil
}

func (r *MillRoom) rows(m Mill, wanted, height measure.Length, units measure.LengthUnitSystem) []measure.Row {
	long := func(l measure.Length) string { return l.In(units.Long(), 2) }
	short := func(l measure.Length) string { return l.In(units.Short(), 1) }
	where := measure.Counted(r.Turns, "turn", "turns")
	if r.Steps > 0 {
		where += fmt.Sprintf(" and %s", measure.Counted(r.Steps, "peg step", "peg steps"))
	}
	climb := measure.Row{Name: "climb", Value: short(r.Climb), How: measure.How{Formula: "turns x rise", WithNumbers: fmt.Sprintf("%s x %s = %s", r.Path.Turns(), short(m.Rise), short(r.Climb))}}
	if !r.Fits {
		climb.Warning = fmt.Sprintf("the mill is %s high: take a smaller rise or a shorter warp", short(height))
	}
	return []measure.Row{
		{Name: "far end peg", Value: where, How: measure.How{Formula: "wanted length / length of a peg step, rounded up",
			WithNumbers: fmt.Sprintf("%s needs %s of %s, %s turns", long(wanted), measure.Counted(r.Path.Steps, "step", "steps"), short(m.PegStep), r.Path.Turns())}},
		{Name: "real length", Value: long(r.Path.Length), How: measure.How{Formula: "turns x root of (circumference squared + rise squared)",
			WithNumbers: fmt.Sprintf("%s x root of (%s squared + %s squared) = %s", r.Path.Turns(), short(m.Circumference), short(m.Rise), long(r.Path.Length))}},
		climb,
		{Name: "guide string", Value: long(r.GuideString) + " between its loops", How: measure.How{Formula: "the real length; cut more for the loops",
			WithNumbers: fmt.Sprintf("%s + %s = %s to cut", long(r.GuideString), short(loopAllowance), long(r.Cut))}},
	}
}
