package asked

import (
	"encoding"
	"fmt"
	"strconv"
	"time"

	"github.com/spf13/pflag"

	"millside/plan/measure"
)

// The flag values read what a weaver types and refuse the rest with a [measure.FieldError], so that a flag
// is refused in the same words as a field on the screen. Type is the word that the help shows for the
// value.

// countValue is a whole number.
type countValue struct{ n *int }

func (v countValue) String() string {
	if v.n == nil {
		return ""
	}
	return strconv.Itoa(*v.n)
}
func (v countValue) Type() string { return "number" }
func (v countValue) Set(s string) error {
	n, err := strconv.Atoi(s)
	if err != nil {
		return &measure.FieldError{Value: s, Want: "a whole number"}
	}
	*v.n = n
	return nil
}

// lengthValue is a length with its unit.
type lengthValue struct{ l *measure.Length }

func (v lengthValue) String() string {
	if v.l == nil {
		return ""
	}
	return v.l.String()
}
func (v lengthValue) Type() string { return "length" }
func (v lengthValue) Set(s string) error {
	l, err := measure.ParseLength(s)
	if err == nil {
		*v.l = l
	}
	return err
}

// textValue is a value of a plan that is one of a few words.
type textValue interface {
	encoding.TextUnmarshaler
	fmt.Stringer
}

// wordValue is one of a few words.
type wordValue struct{ of textValue }

func (v wordValue) String() string {
	if v.of == nil {
		return ""
	}
	return v.of.String()
}
func (v wordValue) Type() string       { return "word" }
func (v wordValue) Set(s string) error { return v.of.UnmarshalText([]byte(s)) }

// guardValue is a time in whole thousandths of a second, which is how a plan keeps it.
type guardValue struct{ millis *int }

const guardWants = "a time in whole thousandths of a second, such as 2s, 1.5s or 1500ms; 0 for none"

func (v guardValue) String() string {
	if v.millis == nil {
		return ""
	}
	return (time.Duration(*v.millis) * time.Millisecond).String()
}
func (v guardValue) Type() string { return "time" }
func (v guardValue) Set(s string) error {
	d, err := time.ParseDuration(s)
	if err != nil || d%time.Millisecond != 0 {
		return &measure.FieldError{Value: s, Want: guardWants}
	}
	*v.millis = int(d.Milliseconds())
	return nil
}

// quantityValue is a value of a plan that is a quantity with its unit. Kind is the help's word for it.
type quantityValue struct {
	of   textValue
	kind string
}

func (v quantityValue) String() string {
	if v.of == nil {
		return ""
	}
	return v.of.String()
}
func (v quantityValue) Type() string       { return v.kind }
func (v quantityValue) Set(s string) error { return v.of.UnmarshalText([]byte(s)) }

// unset makes a value that the help shows no default for. What was given stands in it as it was written.
func unset(v pflag.Value) pflag.Value { return &unsetValue{Value: v} }

type unsetValue struct {
	pflag.Value
	given string
}

func (v *unsetValue) String() string { return v.given }
func (v *unsetValue) Set(s string) error {
	v.given = s
	return v.Value.Set(s)
}
