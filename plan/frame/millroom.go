package frame

import (
	"errors"
	"fmt"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// MillRoom is how a warp stands on a mill.
type MillRoom struct {
	Path MillPath
	// Turns is the whole turns of the real length, and Beyond how far past them the far end peg stands, along
	// the circumference.
	Turns  int
	Beyond measure.Length
	// StepsInTurn is the peg steps in a turn, and Steps those in Beyond; both are 0 where a turn isn't a whole
	// number of steps: then only the steps from the near end peg can be counted.
	StepsInTurn, Steps int
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
		errs = append(errs, &measure.FieldError{Field: field.Length.Name, Value: wanted.String(),
			Want: "above 0, at most 1000 m"})
	}
	if height < 0 || height > 10*measure.Metre {
		errs = append(errs, &measure.FieldError{Field: field.MillHeight.Name, Value: height.String(),
			Want: "0 to 10 m"})
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	r := &MillRoom{Path: m.Path(wanted)}
	r.Turns = measure.SmallCount(ratio.Down, r.Path.turns)
	r.Beyond = m.PegStep.Times(r.Path.Steps) - m.Circumference.Times(r.Turns)
	if m.Circumference%m.PegStep == 0 {
		r.StepsInTurn, r.Steps = int(m.Circumference/m.PegStep), int(r.Beyond/m.PegStep)
	}
	r.Climb, _ = measure.LengthOf(ratio.Up, ratio.Mul(r.Path.turns, ratio.Of(m.Rise)))
	r.Fits = height == 0 || r.Climb <= height
	r.GuideString, r.Cut = r.Path.Length, r.Path.Length+loopAllowance
	r.Rows = r.rows(m, wanted, height, units)
	return r, nil
}

// Where says where the far end peg goes, for the real length: "3 turns and 2 peg steps", or, where a turn isn't
// a whole number of steps, "20 peg steps, 2.4 turns".
func (r *MillRoom) Where() string { return r.where().String() }

func (r *MillRoom) where() figure.Cell {
	text := figure.Cell{figure.Counted(r.Turns, "turn", "turns")}
	steps := figure.Counted(r.Steps, "peg step", "peg steps")
	switch {
	case r.StepsInTurn == 0:
		return figure.Say("%s, %s", figure.Counted(r.Path.Steps, "peg step", "peg steps"), r.Path.InTurns())
	case r.Steps == 0:
		return text
	case r.Turns == 0:
		return figure.Cell{steps}
	default:
		return text.And(" and %s", steps)
	}
}

// stepLength is the length of the warp on one peg step, its climb included, rounded to the nearest nanometre.
func (m Mill) stepLength() measure.Length { return m.Path(1).Length }

func (r *MillRoom) rows(m Mill, wanted, height measure.Length, units measure.LengthUnitSystem) []measure.Row {
	long := func(l measure.Length) figure.Number { return l.As(units.Long(), 2) }
	short := func(l measure.Length) figure.Number { return l.As(units.Short(), 1) }
	climb := measure.Row{Name: "climb", Value: figure.Cell{short(r.Climb)},
		How: measure.How{Formula: "turns x rise",
			WithNumbers: figure.Say("%s x %s = %s", figure.Signed(r.Path.Turns()), short(m.Rise), short(r.Climb))}}
	if !r.Fits {
		climb.Warning = fmt.Sprintf("the mill is %s high: take a smaller rise or a shorter warp", short(height))
	}
	return []measure.Row{
		{Name: "far end peg", Value: r.where(),
			How: measure.How{Formula: "wanted length / length of a peg step, rounded up",
				WithNumbers: figure.Say("%s / %s = %s, so %s: %s, %s", long(wanted),
					m.stepLength().As(units.Long(), 4),
					figure.New(ratio.Quo(ratio.Of(wanted), ratio.Of(m.stepLength())), 2, ""),
					figure.Counted(r.Path.Steps, "step", "steps"), r.Path.InTurns(), long(r.Path.Length))}},
		{Name: "real length", Value: figure.Cell{long(r.Path.Length)},
			How: measure.How{Formula: "turns x root of (circumference squared + rise squared)",
				WithNumbers: figure.Say("%s x root of (%s squared + %s squared) = %s", figure.Signed(r.Path.Turns()),
					short(m.Circumference), short(m.Rise), long(r.Path.Length))}},
		climb,
		{Name: "guide string", Value: figure.Say("%s between its loops", long(r.GuideString)),
			How: measure.How{Formula: "the real length; cut more for the loops",
				WithNumbers: figure.Say("%s + %s = %s to cut", long(r.GuideString), short(loopAllowance),
					long(r.Cut))}},
	}
}
