package field_test

import (
	"strings"
	"testing"

	"millside/plan/field"
	"millside/plan/measure"
)

// Each field is found by its name and by its other names, and by these alone; no two share a name or a flag.
func TestNames(t *testing.T) {
	names, flags := map[string]string{}, map[string]string{}
	n := 0
	for f := range field.All() {
		n++
		for _, name := range append([]string{f.Name}, f.Also...) {
			if got := field.Named(name); name == f.Name && got != f {
				t.Errorf("%q finds %v", name, got)
			}
		}
		if names[f.Name] != "" || f.Flag != "" && flags[f.Flag] != "" {
			t.Errorf("%q or --%s stands in the table twice", f.Name, f.Flag)
		}
		names[f.Name], flags[f.Flag] = f.Name, f.Name
		for _, name := range f.Also {
			if names[name] != "" {
				t.Errorf("%q is another field's name too", name)
			}
		}
	}
	if n < 90 {
		t.Errorf("only %d fields", n)
	}
	for name, want := range map[string]*field.Field{"cone 3 weight": field.Cones,
		"distance 12 on the board": field.Board,
		"thread":                   field.YarnOf, "no such thing": nil} {
		if got := field.Named(name); got != want {
			t.Errorf("%q finds %v", name, got)
		}
	}
}

// Each field says what it is, and nothing on the form speaks of flags.
func TestHelp(t *testing.T) {
	for f := range field.All() {
		if f.Help == "" || f.Value == "" || f.Label == "" && f.Flag == "" {
			t.Errorf("%q lacks a help, a value, a label or a flag", f.Name)
		}
		if strings.HasSuffix(f.Help, ".") || f.Label != "" && strings.Contains(f.Help, "--") {
			t.Errorf("%q: %q", f.Name, f.Help)
		}
		if len([]rune(f.Label)) > 17 {
			t.Errorf("the label %q is wider than its column", f.Label)
		}
	}
}

// What a check refuses is told by the field's name and its range, and the bounds themselves will do.
func TestRanges(t *testing.T) {
	counts, lengths, spans := 0, 0, 0
	for f := range field.All() {
		switch {
		case f.High > 0:
			counts++
			if f.Check(f.Low) != nil || f.Check(f.High) != nil || f.Check(f.Count) != nil && f.Count != 0 {
				t.Errorf("%q: a bound, or what it begins with, is refused", f.Name)
			}
			refuses(t, f, f.Check(f.High+1))
			refuses(t, f, f.Check(-1))
		case f.Longest > 0:
			spans++
			if f.CheckTime(0) != nil || f.CheckTime(f.Longest) != nil || f.CheckTime(f.Time) != nil {
				t.Errorf("%q: a bound, or what it begins with, is refused", f.Name)
			}
			refuses(t, f, f.CheckTime(f.Longest+1))
			refuses(t, f, f.CheckTime(-1))
		case f.Most > 0:
			lengths++
			if f.CheckLength(f.Most) != nil || (f.CheckLength(f.Least) != nil) != f.Above {
				t.Errorf("%q: a bound is judged wrongly", f.Name)
			}
			for _, units := range []measure.LengthUnitSystem{measure.Imperial, measure.Metric} {
				if l := f.Start(units); l != 0 && f.CheckLength(l) != nil {
					t.Errorf("%q begins with %s, which it refuses", f.Name, l)
				}
			}
			refuses(t, f, f.CheckLength(f.Most+1))
			refuses(t, f, f.CheckLength(-1))
		case len(f.Words) > 0 && f.Value == field.Word:
			if f.CheckWord(0) != nil || f.CheckWord(len(f.Words)-1) != nil {
				t.Errorf("%q refuses one of its words", f.Name)
			}
			refuses(t, f, f.CheckWord(len(f.Words)))
		}
		if (f.Zero != "") != (f.High > 0 && f.Low > 0 && f.Check(0) == nil || f.Most > 0 && f.Least > 0 &&
			f.CheckLength(0) == nil) {
			t.Errorf("%q: 0 is not judged by what it stands for", f.Name)
		}
	}
	if counts < 17 || lengths < 15 || spans < 1 {
		t.Errorf("%d counts, %d lengths, %d times", counts, lengths, spans)
	}
}

func refuses(t *testing.T, f *field.Field, err error) {
	t.Helper()
	wrong := measure.FieldErrors(err)
	if len(wrong) != 1 || wrong[0].Field != f.Name || wrong[0].Want != f.Range() {
		t.Errorf("%q, %s: %v", f.Name, f.Range(), err)
	}
}
