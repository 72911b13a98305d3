package asked

import (
	"errors"
	"fmt"

	"millside/plan"
	"millside/plan/athand"
	"millside/plan/cloth"
	"millside/plan/entry"
	"millside/plan/field"
	"millside/plan/frame"
	"millside/plan/loom"
	"millside/plan/measure"

	"github.com/spf13/pflag"
)

// Settle makes the spec of what the flags say: what is named is looked up among the things at hand, and a
// figure that is given beside a name goes before the figure of the named thing. The errors name fields.
func (ask *SpecAsk) Settle(f *pflag.FlagSet, atHand func() (athand.AtHand, error)) (plan.Spec, error) {
	s := ask.begin()
	hand, err := atHand()
	if err != nil {
		return s, err
	}
	errs := ask.take(f, &s, hand)
	errs = append(errs, ask.settleCloth(f, &s)...)
	errs = append(errs, ask.belonging(f, s)...)
	if !s.Cloth.Used && len(without(f, field.Cloth, "", field.SettOf, field.Face)) == 0 {
		s.Cloth = plan.Cloth{}
	}
	return s, errors.Join(errs...)
}

// begin is the spec before anything is said, in the units that are asked for.
func (ask *SpecAsk) begin() plan.Spec {
	units := plan.Spec{Units: ask.Units}
	if e, ok := entry.Of(field.Units); ok && ask.given.texts[field.Units] != "" {
		_ = e.Take(&units, ask.given.texts[field.Units]) // it was read already
	}
	return entry.NewSpec(units.Units)
}

// take takes over what was given, and what there is only one of at hand where nothing was.
func (ask *SpecAsk) take(f *pflag.FlagSet, s *plan.Spec, hand athand.AtHand) []error {
	errs := ask.things(f, s, hand)
	for _, e := range entry.All() {
		text, ok := ask.given.texts[e.Field]
		if ok && !mayBeNamed[e.Field] {
			errs = append(errs, e.Take(s, text))
		}
	}
	*s, ask.Assumed = hand.Assume(*s, func(fd *field.Field) bool { return ask.given.texts[fd] != "" })
	return errs
}

// things takes over the things at hand that are named, and the figures that stand where a name may.
func (ask *SpecAsk) things(f *pflag.FlagSet, s *plan.Spec, hand athand.AtHand) []error {
	var errs []error
	named := func(fd *field.Field, take func(text string) error) {
		if text := ask.given.texts[fd]; text != "" {
			errs = append(errs, take(text))
		}
	}
	named(field.PaddleName, func(text string) error {
		p, err := hand.FindPaddle(text)
		s.Positions = p.Positions
		return orFigure(err, field.Positions, "12")
	})
	named(field.MillName, func(text string) error {
		m, err := hand.FindMill(text)
		s.Mill, s.Pegs = m.Mill, m.Pegs
		return orFigure(err, field.Circumference, "2 yd")
	})
	named(field.Board, func(text string) (err error) {
		s.Board, err = nameOr(text, field.Board,
			func() (frame.Board, error) { b, err := hand.FindBoard(text); return b.Board, err }, frame.ParseBoard)
		if f.Changed(field.MillName.Flag) {
			err = errors.Join(err, field.MillName.Wrong(ask.given.texts[field.MillName], "either a mill or a board"))
		}
		return err
	})
	named(field.YarnOf, func(text string) error {
		y, err := YarnOr(text, hand)
		s.Yarn = y
		return field.YarnOf.In(err)
	})
	named(field.Weft, func(text string) error {
		y, err := YarnOr(text, hand)
		s.Cloth.Weft = y.Size
		return field.Weft.In(err)
	})
	named(field.LoomName, func(text string) error {
		n, err := hand.FindLoom(text)
		s.Loom.Heddles = n.Heddles
		return err
	})
	named(field.Raddle, func(text string) (err error) {
		s.Loom.Raddle, err = nameOr(text, field.Raddle,
			func() (loom.Raddle, error) { r, err := hand.FindRaddle(text); return r.Raddle, err },
			func(text string) (loom.Raddle, error) {
				space, err := measure.ParseLength(text)
				return loom.Raddle{Space: space}, err
			})
		return err
	})
	named(field.Reed, func(text string) (err error) {
		s.Loom.Reed, err = nameOr(text, field.Reed,
			func() (loom.Reed, error) { r, err := hand.FindReed(text); return r.Reed, err }, loom.ParseReed)
		return err
	})
	return errs
}

// belonging refuses flags that mean nothing without another.
func (ask *SpecAsk) belonging(f *pflag.FlagSet, s plan.Spec) []error {
	var errs []error
	if ask.given.texts[field.YarnOf] == "" {
		errs = append(errs, without(f, field.Yarn, "a --yarn too, such as --yarn \"cotton 8/2\"", field.Packages)...)
		if f.Changed(field.Face.Flag) && s.Loom.Face != cloth.Balanced {
			errs = append(errs, field.Face.Wrong(s.Loom.Face.String(),
				"a --yarn too: how close the ends lie depends on it"))
		}
		if f.Changed(field.PegLength.Flag) {
			errs = append(errs, field.PegLength.Wrong(s.Pegs.Length.String(),
				"a --yarn too: how many ends a peg takes depends on it"))
		}
	}
	if s.Loom.Sett.IsZero() {
		errs = append(errs, without(f, field.Loom, "a --sett too, such as --sett \"20 an inch\"",
			field.FirstEnd, field.Threading, field.ThreadingBegin, field.ThreadingEnd,
			field.Heddles, field.LoomName)...)
	}
	return errs
}

// nameOr finds a thing by its name, or reads its figures. Where the text is neither, the error says what
// would do of both.
func nameOr[T any](text string, f *field.Field, find func() (T, error), read func(string) (T, error)) (T, error) {
	thing, unknown := find()
	if unknown == nil {
		return thing, nil
	}
	thing, wrong := read(text)
	if wrong == nil {
		return thing, nil
	}
	name := ""
	if f != nil {
		name = f.Name
	}
	wrong = measure.InField(wrong, name)
	if fields, names := measure.FieldErrors(wrong), measure.FieldErrors(unknown); len(fields) == 1 && len(names) == 1 &&
		fields[0].Field == name {
		wrong = &measure.FieldError{Field: name, Value: text, Want: fields[0].Want + "; or " + names[0].Want}
	}
	return thing, wrong
}

// YarnOr is nameOr for a yarn. A size that can be read in several ways is asked about, and nothing else.
func YarnOr(text string, hand athand.AtHand) (plan.WarpYarn, error) {
	var asked *measure.AmbiguousYarn
	y, err := nameOr(text, nil, func() (plan.WarpYarn, error) { y, err := hand.FindYarn(text); return y.Yarn, err },
		func(text string) (plan.WarpYarn, error) {
			size, err := measure.ParseYarn(text)
			errors.As(err, &asked)
			return plan.WarpYarn{Size: size}, err
		})
	if asked != nil {
		return y, asked
	}
	return y, err
}

// orFigure adds to a name that isn't at hand that the figure alone will do.
func orFigure(err error, f *field.Field, such string) error {
	if wrong := new(measure.FieldError); errors.As(err, &wrong) {
		wrong.Want += fmt.Sprintf("; or give --%s alone, such as --%s %q", f.Flag, f.Flag, such)
	}
	return err
}
