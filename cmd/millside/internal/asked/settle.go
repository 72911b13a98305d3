package asked

import (
	"errors"

	"millside/plan"
	"millside/plan/athand"
	"millside/plan/frame"
	"millside/plan/loom"
	"millside/plan/measure"

	"github.com/spf13/pflag"
)

// Settle makes the spec of what the flags say: what is named is looked up among the things at hand, and a
// figure that is given beside a name goes before the figure of the named thing.
func (ask *SpecAsk) Settle(f *pflag.FlagSet, atHand func() (athand.AtHand, error)) (plan.Spec, error) {
	s := ask.Spec
	var hand athand.AtHand
	if ask.names() {
		var err error
		if hand, err = atHand(); err != nil {
			return s, err
		}
	}
	settleTimes(&s)
	errs := ask.settleCloth(f, &s)
	s.Cloth.Length.Fibre = s.Cloth.Width.Fibre
	errs = append(errs, ask.settleMill(f, &s, hand)...)
	errs = append(errs, ask.settleYarn(f, &s, hand)...)
	errs = append(errs, ask.settleLoom(f, &s, hand)...)
	return s, errors.Join(errs...)
}

// names says whether anything may be the name of a thing at hand.
func (ask *SpecAsk) names() bool {
	return ask.mill+ask.board+ask.paddle+ask.reed+ask.raddle+ask.loom+ask.yarn+ask.weft != ""
}

func (ask *SpecAsk) settleMill(f *pflag.FlagSet, s *plan.Spec, hand athand.AtHand) []error {
	var errs []error
	if ask.paddle != "" {
		p, err := hand.FindPaddle(ask.paddle)
		errs = append(errs, err)
		unlessGiven(f, "positions", &s.Positions, p.Positions)
	}
	if ask.mill != "" {
		m, err := hand.FindMill(ask.mill)
		errs = append(errs, err)
		unlessGiven(f, "circumference", &s.Mill.Circumference, m.Mill.Circumference)
		unlessGiven(f, "peg-step", &s.Mill.PegStep, m.Mill.PegStep)
		unlessGiven(f, "rise", &s.Mill.Rise, m.Mill.Rise)
		unlessGiven(f, "mill-height", &s.Mill.Height, m.Mill.Height)
		unlessGiven(f, "peg-length", &s.Pegs.Length, m.Pegs.Length)
		unlessGiven(f, "layers", &s.Pegs.Layers, m.Pegs.Layers)
	}
	if ask.board != "" {
		var err error
		s.Board, err = nameOr(ask.board, "board",
			func() (frame.Board, error) { b, err := hand.FindBoard(ask.board); return b.Board, err }, frame.ParseBoard)
		errs = append(errs, err)
		if ask.mill != "" {
			errs = append(errs, &measure.FieldError{Field: "--mill", Value: ask.mill, Want: "either a mill or a board"})
		}
	}
	return errs
}

func (ask *SpecAsk) settleYarn(f *pflag.FlagSet, s *plan.Spec, hand athand.AtHand) []error {
	var errs []error
	if ask.yarn != "" {
		y, err := YarnOr(ask.yarn, hand)
		errs = append(errs, measure.InField(err, "yarn"))
		s.Yarn.Size = y.Size
		unlessGiven(f, "colour", &s.Yarn.Colour, y.Colour)
		unlessGiven(f, "tube", &s.Yarn.Tube, y.Tube)
		unlessGiven(f, "packages", &s.Yarn.Packages, y.Packages)
		if !f.Changed("cones") {
			s.Yarn.Cones = y.Cones
		}
	} else {
		errs = append(errs, without(f, aboutYarn, "a --yarn too, such as --yarn \"cotton 8/2\"", "packages")...)
		if f.Changed("peg-length") {
			errs = append(errs, &measure.FieldError{Field: "--peg-length", Value: s.Pegs.Length.String(),
				Want: "a --yarn too: how many ends a peg takes depends on it"})
		}
	}
	if ask.weft != "" {
		y, err := YarnOr(ask.weft, hand)
		errs = append(errs, measure.InField(err, "weft"))
		s.Cloth.Weft = y.Size
	}
	return errs
}

func (ask *SpecAsk) settleLoom(f *pflag.FlagSet, s *plan.Spec, hand athand.AtHand) []error {
	var errs []error
	l := &s.Loom
	if l.Sett.IsZero() {
		errs = without(f, aboutLoom, "a --sett too, such as --sett \"20 an inch\"", "first-end", "threading", "heddles",
			"loom")
	}
	if ask.loom != "" {
		n, err := hand.FindLoom(ask.loom)
		errs = append(errs, err)
		unlessGiven(f, "heddles", &l.Heddles, n.Heddles)
	}
	if ask.raddle != "" {
		r, err := nameOr(ask.raddle, "raddle",
			func() (loom.Raddle, error) { r, err := hand.FindRaddle(ask.raddle); return r.Raddle, err },
			func(text string) (loom.Raddle, error) {
				space, err := measure.ParseLength(text)
				return loom.Raddle{Space: space}, err
			})
		errs = append(errs, err)
		l.Raddle.Space = r.Space
		unlessGiven(f, "raddle-spaces", &l.Raddle.Spaces, r.Spaces)
	}
	if ask.reed != "" {
		r, err := nameOr(ask.reed, "reed",
			func() (loom.Reed, error) { r, err := hand.FindReed(ask.reed); return r.Reed, err }, loom.ParseReed)
		errs = append(errs, err)
		l.Reed = r
		if f.Changed("reed-width") {
			l.Reed = r.WithWidth(ask.reedWidth)
			if l.Reed.Width() != ask.reedWidth {
				errs = append(errs, &measure.FieldError{Field: "--reed-width", Value: ask.reedWidth.String(),
					Want: "0 to 20 m"})
			}
		}
	}
	return errs
}

// unlessGiven takes the figure of a named thing where the flag of the figure wasn't given.
func unlessGiven[T any](f *pflag.FlagSet, flag string, field *T, value T) {
	if !f.Changed(flag) {
		*field = value
	}
}

// nameOr finds a thing by its name, or reads its figures. Where the text is neither, the error says what
// would do of both.
func nameOr[T any](text, field string, find func() (T, error), read func(string) (T, error)) (T, error) {
	thing, unknown := find()
	if unknown == nil {
		return thing, nil
	}
	thing, wrong := read(text)
	if wrong == nil {
		return thing, nil
	}
	wrong = measure.InField(wrong, field)
	if fields, names := measure.FieldErrors(wrong), measure.FieldErrors(unknown); len(fields) == 1 && len(names) == 1 &&
		fields[0].Field == field {
		wrong = &measure.FieldError{Field: field, Value: text, Want: fields[0].Want + "; or " + names[0].Want}
	}
	return thing, wrong
}

// YarnOr is nameOr for a yarn. A size that can be read in several ways is asked about, and nothing else.
func YarnOr(text string, hand athand.AtHand) (plan.WarpYarn, error) {
	var asked *measure.AmbiguousYarn
	y, err := nameOr(text, "", func() (plan.WarpYarn, error) { y, err := hand.FindYarn(text); return y.Yarn, err },
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
