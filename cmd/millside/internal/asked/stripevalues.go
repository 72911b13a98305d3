package asked

import (
	"millside/plan/draft"
	"millside/plan/measure"
)

// textFlag is a text that stands in no plan.
type textFlag struct {
	text *string
	kind string
}

func (v textFlag) String() string {
	if v.text == nil {
		return ""
	}
	return *v.text
}
func (v textFlag) Type() string { return v.kind }
func (v textFlag) Set(s string) error {
	*v.text = s
	return nil
}

// sideValue is the side that thread 1 of a draft is on; given stays false until one is set.
type sideValue struct {
	side  *draft.Side
	given *bool
}

func (v sideValue) String() string {
	if v.given == nil || !*v.given {
		return ""
	}
	return v.side.String()
}
func (v sideValue) Type() string { return "word" }
func (v sideValue) Set(s string) error {
	for _, side := range []draft.Side{draft.FromRight, draft.FromLeft} {
		if s == side.String() {
			*v.side, *v.given = side, true
			return nil
		}
	}
	return &measure.FieldError{Value: s, Want: "one of right, left"}
}
