package asked

import (
	"encoding"
	"fmt"
	"strconv"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"millside/plan"
	"millside/plan/entry"
	"millside/plan/field"
	"millside/plan/measure"
)

// The flag values read what a weaver types and refuse the rest with a [measure.FieldError], so that a flag
// is refused in the same words as a field on the screen. Type is the word that the help shows for the
// value.

// given is what was typed for the fields of a plan. It is read into a spec when all flags are known, in the order
// of the table, since some things are names and one field may be a part of another.
type given struct {
	texts map[*field.Field]string
	// begin is the values that the help shows for flags that aren't given.
	begin plan.Spec
}

// entryValue is the flag of a field of a plan. What can be read without the things at hand is read at once, so
// that a flag is refused where it stands.
type entryValue struct {
	e     entry.Entry
	given *given
	named bool // it may be the name of a thing at hand
}

// String is what was typed, or what the field begins with, if that is worth telling.
func (v *entryValue) String() string {
	if v.given == nil { // the library asks an empty value for its text
		return ""
	}
	if text, ok := v.given.texts[v.e.Field]; ok {
		return text
	}
	f, text := v.e.Field, v.e.Show(v.given.begin)
	if f.Value == field.YesNo || len(f.Words) == 0 && f.Value != field.Minutes && text == v.e.Show(plan.Spec{}) {
		return ""
	}
	return text
}

// Type is the word for the value; the library knows a flag without a value by "bool".
func (v *entryValue) Type() string {
	if v.e.Value == field.YesNo {
		return "bool"
	}
	return v.e.Value
}

// Set reads the value.
func (v *entryValue) Set(s string) error {
	if !v.named {
		scratch := v.given.begin
		if err := v.e.Take(&scratch, s); err != nil {
			return err
		}
	}
	v.given.texts[v.e.Field] = s
	return nil
}

// nameValue is a name, or what may be one.
type nameValue struct {
	f     *field.Field
	given *given
}

func (v nameValue) String() string {
	if v.given == nil {
		return ""
	}
	return v.given.texts[v.f]
}
func (v nameValue) Type() string { return v.f.Value }
func (v nameValue) Set(s string) error {
	v.given.texts[v.f] = s
	return nil
}

// addFlag adds the flag of a field, under the heading of its part.
func addFlag(cmd *cobra.Command, f *field.Field, value pflag.Value) {
	flag := cmd.Flags().VarPF(value, f.Flag, "", f.Usage())
	flag.Annotations = withHeading(flag.Annotations, f.Part.Heading())
	if f.Value == field.YesNo {
		flag.NoOptDefVal = "true"
	}
	if len(f.Words) > 0 && f.Value != field.YesNo {
		// The error would say that there is no such flag, or that it is completed already.
		_ = cmd.RegisterFlagCompletionFunc(f.Flag, cobra.FixedCompletions(f.Words, cobra.ShellCompDirectiveNoFileComp))
	}
}

// countValue is a whole number that stands in no plan.
type countValue struct{ n *int }

func (v countValue) String() string {
	if v.n == nil {
		return ""
	}
	return strconv.Itoa(*v.n)
}
func (v countValue) Type() string { return field.Number }
func (v countValue) Set(s string) error {
	n, err := strconv.Atoi(s)
	if err != nil {
		return &measure.FieldError{Value: s, Want: "a whole number"}
	}
	*v.n = n
	return nil
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
func (v wordValue) Type() string       { return field.Word }
func (v wordValue) Set(s string) error { return v.of.UnmarshalText([]byte(s)) }

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
