package entry

import (
	"strconv"
	"strings"
	"time"

	"millside/plan"
	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/measure"
	"millside/plan/times"
)

// NewSpec is what a new plan begins with in a family of units: a metric one with a mill two metres round. The
// allowances of a cloth are assumed until they are given.
func NewSpec(units measure.LengthUnitSystem) plan.Spec {
	s := AssumeAll(plan.DefaultSpec())
	s.Units, s.Length = units, field.Length.Start(units)
	s.Mill.Circumference, s.Mill.PegStep = field.Circumference.Start(units), field.PegStep.Start(units)
	s.Cloth.Length.Pieces, s.EvenChains = field.Pieces.Count, true
	return s
}

// Entry is a field of the table, and its place in a spec.
type Entry struct {
	*field.Field
	// Show writes the value that a spec has, as Take reads it; "" where it has none.
	Show func(plan.Spec) string
	// Take reads a value into a spec. The error is a [*measure.FieldError] with the field's name; the spec is
	// then as it was.
	Take func(*plan.Spec, string) error
	// Given says whether the weaver gives the value; else it follows from other fields.
	Given func(plan.Spec) bool
}

// textual is a value that is written and read as text.
type textual[T any] interface {
	*T
	UnmarshalText([]byte) error
	String() string
}

func always(plan.Spec) bool { return true }

func text(f *field.Field, at func(*plan.Spec) *string) Entry {
	return Entry{Field: f, Given: always,
		Show: func(s plan.Spec) string { return *at(&s) },
		Take: func(s *plan.Spec, text string) error { *at(s) = strings.TrimSpace(text); return nil }}
}

// count takes a whole number. Whether it is in its range is checked with the whole plan, since the range may
// follow from other fields.
func count(f *field.Field, at func(*plan.Spec) *int) Entry {
	return Entry{Field: f, Given: always,
		Show: func(s plan.Spec) string { return strconv.Itoa(*at(&s)) },
		Take: func(s *plan.Spec, text string) error {
			n, err := strconv.Atoi(strings.TrimSpace(text))
			if err != nil {
				return f.Wrong(text, "a whole number")
			}
			*at(s) = n
			return nil
		}}
}

// value takes a value with its unit, or one of the field's words. Where the field is optional an empty text is
// the zero value, which is shown so.
func value[T any, P textual[T]](f *field.Field, at func(*plan.Spec) P) Entry {
	var none T
	empty := P(&none).String()
	return Entry{Field: f, Given: always,
		Show: func(s plan.Spec) string {
			text := at(&s).String()
			if text == empty && f.Optional {
				return ""
			}
			if l, ok := any(at(&s)).(*measure.Length); ok { // in the plan's own units, where these say it exactly
				return s.Units.Written(*l)
			}
			return text
		},
		Take: func(s *plan.Spec, text string) error {
			got := none
			if strings.TrimSpace(text) != "" || !f.Optional {
				if err := P(&got).UnmarshalText([]byte(text)); err != nil {
					return f.In(err)
				}
			}
			*at(s) = got
			return nil
		}}
}

// yesNo takes the field's two words, or what a flag says.
func yesNo(f *field.Field, at func(*plan.Spec) *bool) Entry {
	return Entry{Field: f, Given: always,
		Show: func(s plan.Spec) string {
			if *at(&s) {
				return f.Words[1]
			}
			return f.Words[0]
		},
		Take: func(s *plan.Spec, text string) error {
			switch strings.ToLower(strings.TrimSpace(text)) {
			case f.Words[1], "true", "yes":
				*at(s) = true
			case f.Words[0], "false", "no":
				*at(s) = false
			default:
				return f.Wrong(text, f.Range())
			}
			return nil
		}}
}

// minutes takes one of the weaver's times. The usual ones are shown until one is given, and what is given makes
// the others the plan's own too; where all are the usual ones again, the plan has none.
func minutes(f *field.Field, at func(*times.HandTimes) *time.Duration) Entry {
	return Entry{Field: f, Given: always,
		Show: func(s plan.Spec) string {
			t := s.HandTimes()
			if d := *at(&t); d != 0 || !f.Optional {
				return times.MinutesText(d)
			}
			return ""
		},
		Take: func(s *plan.Spec, text string) error {
			if f.Optional && strings.TrimSpace(text) == "" {
				text = "0"
			}
			d, err := times.ParseMinutes(text)
			if err != nil {
				return f.In(err)
			}
			t := s.HandTimes()
			if *at(&t) = d; t == times.DefaultHandTimes() {
				t = times.HandTimes{}
			}
			s.Times = t
			return nil
		}}
}

const guardWants = "a time in whole thousandths of a second, such as 2s, 1.5s or 1500ms; 0 for none"

// guard takes seconds, with a unit or without, since a weaver counts in those.
func guard() Entry {
	f := field.Guard
	return Entry{Field: f, Given: always,
		Show: func(s plan.Spec) string { return s.Guard.String() },
		Take: func(s *plan.Spec, text string) error {
			written := strings.ReplaceAll(strings.ReplaceAll(text, " ", ""), ",", ".")
			if strings.Trim(written, "0123456789.") == "" {
				written += "s"
			}
			d, err := time.ParseDuration(written)
			if err != nil || d%time.Millisecond != 0 {
				return f.Wrong(text, figure.Signed(guardWants))
			}
			s.Guard = times.Guard(d)
			return nil
		}}
}

// numbers takes a list of whole numbers from low to high.
func numbers(f *field.Field, low, high int, wants string, at func(*plan.Spec) *[]int) Entry {
	return Entry{Field: f, Given: always,
		Show: func(s plan.Spec) string {
			var list []string
			for _, n := range *at(&s) {
				list = append(list, strconv.Itoa(n))
			}
			return strings.Join(list, ", ")
		},
		Take: func(s *plan.Spec, text string) error {
			var list []int
			for item := range strings.SplitSeq(text, ",") {
				if strings.TrimSpace(text) == "" {
					break
				}
				n, err := strconv.Atoi(strings.TrimSpace(item))
				if err != nil || n < low || n > high {
					return f.Wrong(measure.Shortened(text), wants)
				}
				list = append(list, n)
			}
			*at(s) = list
			return nil
		}}
}

// read takes a value that has a reader of its own; an empty text is the zero value.
func read[T any](f *field.Field, parse func(string) (T, error), show func(T) string, at func(*plan.Spec) *T) Entry {
	return Entry{Field: f, Given: always,
		Show: func(s plan.Spec) string { return show(*at(&s)) },
		Take: func(s *plan.Spec, text string) error {
			var got T
			if strings.TrimSpace(text) != "" {
				var err error
				if got, err = parse(text); err != nil {
					return f.In(err)
				}
			}
			*at(s) = got
			return nil
		}}
}

// when says in which plans the weaver gives the value.
func when(given func(plan.Spec) bool, e Entry) Entry {
	e.Given = given
	return e
}
