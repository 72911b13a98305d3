package start

import (
	"errors"
	"strconv"

	"millside/plan/field"
	"millside/plan/measure"
)

// infer is what is to be found: what was asked for, else the one thing that isn't known.
func (k Known) infer() (Find, error) {
	if k.Find != WhatIsMissing {
		return k.Find, nil
	}
	yarn := len(k.OnHand) > 0
	switch ends, length := k.hasEnds(), k.hasLength(); {
	case k.FinishedLength != 0 && k.Pieces == 0 && (k.Length != 0 || ends && yarn):
		return ThePieces, nil
	case ends && length:
		return TheYarn, nil
	case ends && yarn:
		return TheLength, nil
	case length && yarn:
		return TheEnds, nil
	case k.width() && ends:
		return TheEnds, nil
	case ends && k.sett():
		return TheWidth, nil
	case k.pieces():
		return TheLength, nil
	}
	return 0, k.unclear()
}

// UnclearError says that more than one thing is unknown, and what to add.
type UnclearError struct {
	// Nothing says that nothing is known at all.
	Nothing bool
	// Want is what would do, in words.
	Want string
	// Give are the fields of which one or more may be given.
	Give []*field.Field
}

// Error says so in a sentence.
func (e *UnclearError) Error() string {
	if e.Nothing {
		return "nothing is known yet; give " + e.Want
	}
	return "more than one thing is unknown; give " + e.Want
}

// unclear says what to add where more than one thing is unknown.
func (k Known) unclear() error {
	more := func(want string, give ...*field.Field) error { return &UnclearError{Want: want, Give: give} }
	switch {
	case len(k.OnHand) > 0:
		return more("one of the two that are missing, the ends or the length: the ends may be given as ends, or as "+
			"a width and a sett, the length as that of the warp, or as a finished length; yarn alone gives only one "+
			"of them", field.Ends, field.FinishedWidth, field.SettOf, field.Length, field.FinishedLength)
	case k.hasEnds():
		return more("more beside the ends: a sett for the width; the yarn on hand for the length, or for the pieces "+
			"of a finished length; a length for the yarn", field.SettOf, field.OnHand, field.Length)
	case k.width():
		return more("a sett beside the width for the ends, such as 20 an inch", field.SettOf)
	case k.Length != 0:
		return more("more beside the length: a finished length for the pieces, the ends for the yarn, or the yarn "+
			"on hand for the ends", field.FinishedLength, field.Ends, field.OnHand)
	}
	return &UnclearError{Nothing: true, Want: "what you know: ends, a finished width or a width in the reed with a " +
		"sett, a finished piece, a length, or the yarn on hand", Give: []*field.Field{field.Ends, field.FinishedWidth,
		field.ReedSpan, field.SettOf, field.FinishedLength, field.Length, field.OnHand}}
}

// missing reports what is wanted for what is to be found. Each way to know it is named.
func (k Known) missing() error {
	yarn := len(k.OnHand) > 0
	var errs []error
	need := func(have bool, f *field.Field, want string) {
		if !have {
			errs = append(errs, f.Wrong("", want))
		}
	}
	const ends = "the ends, or a width with a sett"
	switch k.Find {
	case TheLength:
		if k.FinishedLength == 0 || k.Pieces == 0 && !(yarn && k.hasEnds()) {
			const or = "; or the finished length and the pieces, for the length of the cloth"
			need(k.hasEnds(), field.Ends, ends+or)
			need(yarn, field.OnHand, "what there is"+or)
		}
	case TheEnds:
		if k.width() {
			need(k.sett(), field.SettOf, "the ends in the reed, such as 20 an inch")
		} else {
			need(k.hasLength(), field.Length, "the length of the warp; or a width and a sett")
			need(yarn, field.OnHand, "what there is; or a width and a sett")
		}
	case TheWidth:
		need(k.sett(), field.SettOf, "the ends in the reed, such as 20 an inch")
		if k.Ends == 0 && !k.striped() {
			need(k.hasLength() && yarn, field.Ends,
				"the ends; or a length and the yarn on hand, from which they follow")
		}
	case ThePieces:
		need(k.FinishedLength != 0, field.FinishedLength, "the finished length of one piece")
		if k.Length == 0 {
			need(k.hasEnds(), field.Ends, ends+"; or the length of the warp")
			need(yarn, field.OnHand, "what there is; or the length of the warp")
		}
	case TheYarn:
		need(k.hasEnds(), field.Ends, ends)
		need(k.hasLength(), field.Length, "the length of the warp; or the finished length and the pieces")
	}
	return errors.Join(errs...)
}

// surplus refuses what is given and is to be found.
func (k Known) surplus() error {
	var errs []error
	refuse := func(given bool, f *field.Field, value string) {
		if given {
			errs = append(errs, f.Wrong(value, "nothing, since it is what is to be found; or find another thing"))
		}
	}
	switch k.Find {
	case TheLength:
		refuse(k.Length != 0, field.Length, k.Length.String())
	case TheEnds:
		refuse(k.Ends != 0, field.Ends, strconv.Itoa(k.Ends))
	case TheWidth:
		refuse(k.FinishedWidth != 0, field.FinishedWidth, k.FinishedWidth.String())
		refuse(k.ReedWidth != 0, field.ReedSpan, k.ReedWidth.String())
	case ThePieces:
		refuse(k.Pieces != 0, field.Pieces, strconv.Itoa(k.Pieces))
	}
	return errors.Join(errs...)
}

// agree refuses a second value for a number of ends that another field gave.
func agree(f *field.Field, value string, have, gives int, from string) error {
	if have == gives {
		return nil
	}
	return &measure.FieldError{Field: f.Name, Value: value, Want: "one that agrees with " + from + ": it takes " +
		measure.Counted(gives, "end", "ends") + ", not " + strconv.Itoa(have) + "; or leave one of the two out"}
}
