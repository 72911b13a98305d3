package form

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"millside/plan"
	"millside/plan/frame"
	"millside/plan/measure"
	"millside/plan/times"
)

// field is one line of the new-warp form: how a value is shown, and how typed text becomes one.
type field struct {
	section section
	label   string
	hint    string
	// name is what plan calls the field in its errors.
	name string
	// options are the words to choose between; a field without them takes text.
	options []string
	show    func(plan.Spec) string
	take    func(*plan.Spec, string) error
	// given says, where it isn't nil, whether the weaver gives the value; else it follows from others.
	given func(plan.Spec) bool
}

// section is a page of the form.
type section uint8

// The sections, in the order in which a weaver thinks of a warp.
const (
	secWarp section = iota
	secStripes
	secCloth
	secYarn
	secPaddle
	secMill
	secChains
	secLoom
	secWinding
	sections
)

var sectionNames = [sections]string{"warp", "stripes", "cloth", "yarn", "paddle", "mill", "chains", "loom", "winding"}

// textual is a value of plan's that is written and read as text.
type textual[T any] interface {
	*T
	UnmarshalText([]byte) error
	String() string
}

func textField(sec section, label, name, hint string, at func(*plan.Spec) *string) field {
	return field{section: sec, label: label, name: name, hint: hint,
		show: func(s plan.Spec) string { return *at(&s) },
		take: func(s *plan.Spec, text string) error { *at(s) = strings.TrimSpace(text); return nil }}
}

func countField(sec section, label, name, hint string, at func(*plan.Spec) *int) field {
	return field{section: sec, label: label, name: name, hint: hint,
		show: func(s plan.Spec) string { return strconv.Itoa(*at(&s)) },
		take: func(s *plan.Spec, text string) error {
			n, err := strconv.Atoi(strings.TrimSpace(text))
			if err != nil {
				return &measure.FieldError{Field: name, Value: text, Want: "a whole number"}
			}
			*at(s) = n
			return nil
		}}
}

// written is a value as a weaver in these units would write it, and exactly.
func written(value fmt.Stringer, units measure.LengthUnitSystem) string {
	if l, ok := value.(*measure.Length); ok {
		return units.Written(*l)
	}
	return value.String()
}

// valueField takes a value with its unit, which must be given.
func valueField[T any, P textual[T]](sec section, label, name, hint string, at func(*plan.Spec) P) field {
	return field{section: sec, label: label, name: name, hint: hint,
		show: func(s plan.Spec) string { return written(at(&s), s.Units) },
		take: func(s *plan.Spec, text string) error { return measure.InField(at(s).UnmarshalText([]byte(text)), name) }}
}

// maybeField takes a value that may be left out: an empty field is the zero value.
func maybeField[T any, P textual[T]](sec section, label, name, hint string, at func(*plan.Spec) P) field {
	var none T
	empty := P(&none).String()
	f := valueField(sec, label, name, hint, at)
	show, take := f.show, f.take
	f.show = func(s plan.Spec) string {
		if text := show(s); text != empty {
			return text
		}
		return ""
	}
	f.take = func(s *plan.Spec, text string) error {
		if strings.TrimSpace(text) == "" {
			*at(s) = none
			return nil
		}
		return take(s, text)
	}
	return f
}

func choiceField[T any, P textual[T]](sec section, label, name, hint string, at func(*plan.Spec) P,
	options ...string) field {
	f := valueField(sec, label, name, hint, at)
	f.options = options
	return f
}

func yesField(sec section, label, no, yes, hint string, at func(*plan.Spec) *bool) field {
	return field{section: sec, label: label, hint: hint, name: label, options: []string{no, yes},
		show: func(s plan.Spec) string {
			if *at(&s) {
				return yes
			}
			return no
		},
		take: func(s *plan.Spec, text string) error { *at(s) = text == yes; return nil }}
}

// guardField takes seconds, since a weaver counts in those.
func guardField() field {
	return field{section: secWinding, label: "guard, seconds", name: "guard",
		hint: "presses sooner than this are not counted; 0 turns it off",
		show: func(s plan.Spec) string {
			return strconv.FormatFloat((time.Duration(s.GuardMillis) * time.Millisecond).Seconds(), 'f', -1, 64)
		},
		take: func(s *plan.Spec, text string) error {
			d, err := time.ParseDuration(strings.TrimSpace(text) + "s")
			if err != nil {
				return &measure.FieldError{Field: "guard", Value: text, Want: "seconds, such as 2 or 1.5"}
			}
			s.GuardMillis = int(d.Milliseconds())
			return nil
		}}
}

// minutesField takes one of the weaver's times. The usual ones are shown until one is given, and what is given
// makes the others the plan's own too; where all are the usual ones again, the plan has none.
func minutesField(label, name, hint string, at func(*times.HandTimes) *time.Duration) field {
	return field{section: secWinding, label: label, name: name, hint: hint,
		show: func(s plan.Spec) string {
			t := s.HandTimes()
			return times.MinutesText(*at(&t))
		},
		take: func(s *plan.Spec, text string) error {
			d, err := times.ParseMinutes(text)
			if err != nil {
				return measure.InField(err, name)
			}
			t := s.HandTimes()
			if *at(&t) = d; t == times.DefaultHandTimes() {
				t = times.HandTimes{}
			}
			s.Times = t
			return nil
		}}
}

// onlyMinutes lets a time be left out: an empty field is none.
func onlyMinutes(f field) field {
	show, take := f.show, f.take
	f.show = func(s plan.Spec) string {
		if text := show(s); text != "0" {
			return text
		}
		return ""
	}
	f.take = func(s *plan.Spec, text string) error {
		if strings.TrimSpace(text) == "" {
			text = "0"
		}
		return take(s, text)
	}
	return f
}

// reedWidthField is the width of the reed, which is a part of the reed.
func reedWidthField() field {
	const name = "reed width"
	return field{section: secLoom, label: name, name: name, hint: "usable width; empty if you don't know it",
		show: func(s plan.Spec) string {
			if w := s.Loom.Reed.Width(); w != 0 {
				return w.String()
			}
			return ""
		},
		take: func(s *plan.Spec, text string) error {
			var width measure.Length
			if strings.TrimSpace(text) != "" {
				if err := width.UnmarshalText([]byte(text)); err != nil {
					return measure.InField(err, name)
				}
			}
			s.Loom.Reed = s.Loom.Reed.WithWidth(width)
			return nil
		}}
}

// boardField is a warping board in place of the mill.
func boardField() field {
	const name = "board"
	return field{section: secMill, label: name, name: name,
		hint: "a board in place of the mill: peg to peg, such as 30 in x 8, 12 in",
		show: func(s plan.Spec) string { return s.Board.String() },
		take: func(s *plan.Spec, text string) error {
			s.Board = nil
			if strings.TrimSpace(text) == "" {
				return nil
			}
			board, err := frame.ParseBoard(text)
			if err == nil {
				s.Board = board
			}
			return measure.InField(err, name)
		}}
}
