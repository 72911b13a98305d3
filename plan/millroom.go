package plan

import (
	"errors"
	"fmt"
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
	Climb Length
	Fits  bool
	// GuideString is the string between its two loops: the length of the warp. Cut is what to cut for
	// it, with the yarn of the loops.
	GuideString, Cut Length
	// Rows shows the result with its formulas and any warning.
	Rows []Row
}

// loopAllowance is the string for the loops at both ends of the guide string together. It is the
// project's own judgement, not a measured value.
const loopAllowance = 12 * Inch

// Room says where a warp of a wanted length ends on the mill, whether it fits its height, and how long
// the guide string is, which is wound along the path that the warp will take. The length is above
// nothing and at most 1,000 m, the height 0, where it isn't known, to 10 m. A mill that is too low is
// no error: Fits says so. The error joins one [FieldError] for each value that is out of its range.
func (m Mill) Room(wanted, height Length, units LengthUnitSystem) (*MillRoom, error) {
	errs := m.check()
	if wanted <= 0 || wanted > 1000*Metre {
		errs = append(errs, &FieldError{Field: "length", Value: wanted.String(), Want: "above 0, at most 1000 m"})
	}
	if height < 0 || height > 10*Metre {
		errs = append(errs, &FieldError{Field: "mill height", Value: height.String(), Want: "0 to 10 m"})
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	r := &MillRoom{Path: m.Path(wanted)}
	r.Turns = smallCount(roundDown, r.Path.turns)
	beyond := quo(mul(sub(r.Path.turns, ratOf(r.Turns)), ratOf(m.Circumference)), ratOf(m.PegStep))
	// The steps are counted from the last peg that lies within the whole turns.
	r.Steps = smallCount(roundUp, beyond)
	if m.Circumference%m.PegStep == 0 {
		r.StepsInTurn = int(m.Circumference / m.PegStep)
	}
	r.Climb, _ = roundUp.length(mul(r.Path.turns, ratOf(m.Rise)))
	r.Fits = height == 0 || r.Climb <= height
	r.GuideString, r.Cut = r.Path.Length, r.Path.Length+loopAllowance
	r.Rows = r.rows(m, wanted, height, units)
	return r, nil
}

func (r *MillRoom) rows(m Mill, wanted, height Length, units LengthUnitSystem) []Row {
	long := func(l Length) string { return l.In(units.Long(), 2) }
	short := func(l Length) string { return l.In(units.Short(), 1) }
	where := Counted(r.Turns, "turn", "turns")
	if r.Steps > 0 {
		where += fmt.Sprintf(" and %s", Counted(r.Steps, "peg step", "peg steps"))
	}
	climb := Row{Name: "climb", Value: short(r.Climb), How: How{"turns x rise", fmt.Sprintf("%s x %s = %s", r.Path.Turns(), short(m.Rise), short(r.Climb))}}
	if !r.Fits {
		climb.Warning = fmt.Sprintf("the mill is %s high: take a smaller rise or a shorter warp", short(height))
	}
	return []Row{
		{Name: "far end peg", Value: where, How: How{"wanted length / length of a peg step, rounded up",
			fmt.Sprintf("%s needs %s of %s, %s turns", long(wanted), Counted(r.Path.Steps, "step", "steps"), short(m.PegStep), r.Path.Turns())}},
		{Name: "real length", Value: long(r.Path.Length), How: How{"turns x root of (circumference squared + rise squared)",
			fmt.Sprintf("%s x root of (%s squared + %s squared) = %s", r.Path.Turns(), short(m.Circumference), short(m.Rise), long(r.Path.Length))}},
		climb,
		{Name: "guide string", Value: long(r.GuideString) + " between its loops", How: How{"the real length; cut more for the loops",
			fmt.Sprintf("%s + %s = %s to cut", long(r.GuideString), short(loopAllowance), long(r.Cut))}},
	}
}
