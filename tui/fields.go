package tui

import (
	"strconv"
	"strings"
	"time"

	"millside/plan"
)

// field is one line of the new-warp form: how a value is shown, and how typed text becomes one.
type field struct {
	section string
	label   string
	hint    string
	// name is what plan calls the field in its errors.
	name string
	// options are the words to choose between; a field without them takes text.
	options []string
	show    func(plan.Spec) string
	take    func(*plan.Spec, string) error
}

// formFields are the fields in their order.
func formFields() []field {
	return []field{
		textField("warp", "name", "name", "what you call it", func(s *plan.Spec) *string { return &s.Name }),
		countField("warp", "ends", "ends", "warp threads wanted", func(s *plan.Spec) *int { return &s.Ends }),
		lengthField("warp", "length", "length", "such as 7.5 yd, 6.4 m or 250 in", func(s *plan.Spec) *plan.Length { return &s.Length }),
		countField("paddle", "group", "group", "ends carried together on a pass", func(s *plan.Spec) *int { return &s.Group }),
		countField("paddle", "paddle positions", "paddle positions", "holes and slots in the paddle", func(s *plan.Spec) *int { return &s.Positions }),
		choiceField("paddle", "last pass", "last pass", "if the group doesn't divide the ends", func(s *plan.Spec) *plan.LastPass { return &s.LastPass }, "short", "full"),
		choiceField("paddle", "return order", "return order", "how a return pass lies in the lease", func(s *plan.Spec) *plan.ReturnOrder { return &s.ReturnOrder }, "same", "mirrored"),
		lengthField("mill", "circumference", "mill circumference", "once round the mill", func(s *plan.Spec) *plan.Length { return &s.Mill.Circumference }),
		lengthField("mill", "peg step", "peg step", "from one place for the end peg to the next", func(s *plan.Spec) *plan.Length { return &s.Mill.PegStep }),
		lengthField("mill", "rise a turn", "rise a turn", "how far the warp climbs in a turn", func(s *plan.Spec) *plan.Length { return &s.Mill.Rise }),
		choiceField("mill", "layout", "hand", "which hand leads the paddle", func(s *plan.Spec) *plan.Hand { return &s.Hand }, "right", "left"),
		countField("at the mill", "count tie every", "count tie every", "ends; 0 for none", func(s *plan.Spec) *int { return &s.TieEvery }),
		countField("at the mill", "ends in a chain", "ends in a chain", "at most; 0 winds one chain", func(s *plan.Spec) *int { return &s.ChainEnds }),
		guardField(),
		yesField("at the mill", "to be dyed", "ties are then loose", func(s *plan.Spec) *bool { return &s.Dyed }),
		choiceField("at the mill", "the loom takes", "dressing", "which end of the warp comes off the chain first", func(s *plan.Spec) *plan.Dressing { return &s.Dressing }, "raddle first", "reed first"),
		choiceField("at the mill", "units", "units", "imperial: yards, inches; metric: metres, centimetres", func(s *plan.Spec) *plan.LengthUnitSystem { return &s.Units }, "imperial", "metric"),
	}
}

func textField(section, label, name, hint string, at func(*plan.Spec) *string) field {
	return field{section: section, label: label, name: name, hint: hint,
		show: func(s plan.Spec) string { return *at(&s) },
		take: func(s *plan.Spec, text string) error { *at(s) = strings.TrimSpace(text); return nil }}
}

func countField(section, label, name, hint string, at func(*plan.Spec) *int) field {
	return field{section: section, label: label, name: name, hint: hint,
		show: func(s plan.Spec) string { return strconv.Itoa(*at(&s)) },
		take: func(s *plan.Spec, text string) error {
			n, err := strconv.Atoi(strings.TrimSpace(text))
			if err != nil {
				return &plan.FieldError{Field: name, Value: text, Want: "a whole number"}
			}
			*at(s) = n
			return nil
		}}
}

func lengthField(section, label, name, hint string, at func(*plan.Spec) *plan.Length) field {
	return field{section: section, label: label, name: name, hint: hint,
		show: func(s plan.Spec) string { return at(&s).String() },
		take: func(s *plan.Spec, text string) error {
			l, err := plan.ParseLength(text)
			if err != nil {
				return plan.InField(err, name)
			}
			*at(s) = l
			return nil
		}}
}

// named is a small enumeration of plan's.
type named[T any] interface {
	*T
	UnmarshalText([]byte) error
	String() string
}

func choiceField[T any, P named[T]](section, label, name, hint string, at func(*plan.Spec) P, options ...string) field {
	return field{section: section, label: label, name: name, hint: hint, options: options,
		show: func(s plan.Spec) string { return at(&s).String() },
		take: func(s *plan.Spec, text string) error { return plan.InField(at(s).UnmarshalText([]byte(text)), name) }}
}

func yesField(section, label, hint string, at func(*plan.Spec) *bool) field {
	return field{section: section, label: label, hint: hint, name: label, options: []string{"no", "yes"},
		show: func(s plan.Spec) string {
			if *at(&s) {
				return "yes"
			}
			return "no"
		},
		take: func(s *plan.Spec, text string) error { *at(s) = text == "yes"; return nil }}
}

// guardField takes seconds, since a weaver counts in those.
func guardField() field {
	return field{section: "at the mill", label: "guard, seconds", name: "guard", hint: "presses sooner than this are not counted; 0 turns it off",
		show: func(s plan.Spec) string {
			return strconv.FormatFloat((time.Duration(s.GuardMillis) * time.Millisecond).Seconds(), 'f', -1, 64)
		},
		take: func(s *plan.Spec, text string) error {
			d, err := time.ParseDuration(strings.TrimSpace(text) + "s")
			if err != nil {
				return &plan.FieldError{Field: "guard", Value: text, Want: "seconds, such as 2 or 1.5"}
			}
			s.GuardMillis = int(d.Milliseconds())
			return nil
		}}
}
