package plan_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"millside/plan"
	"millside/plan/frame"
	"millside/plan/measure"
	"millside/plan/times"
	"millside/plan/wind"
)

// Every field out of its range is refused by name, with the value and the range.
func TestSpecRefuses(t *testing.T) {
	for _, tt := range []struct {
		field, value, want string
		set                func(*plan.Spec)
	}{
		{"name", "", "1 to 60 printable", func(s *plan.Spec) { s.Name = "" }},
		{"name", "   ", "1 to 60 printable", func(s *plan.Spec) { s.Name = "   " }},
		{"name", strings.Repeat("é", 61), "1 to 60 printable", func(s *plan.Spec) { s.Name = strings.Repeat("é", 61) }},
		{"name", "a\nb", "1 to 60 printable", func(s *plan.Spec) { s.Name = "a\nb" }},
		{"name", "\x1b[31mred", "1 to 60 printable", func(s *plan.Spec) { s.Name = "\x1b[31mred" }},
		{"name", "\xff", "1 to 60 printable", func(s *plan.Spec) { s.Name = "\xff" }},
		{"name", "back\u202ewards", "1 to 60 printable", func(s *plan.Spec) { s.Name = "back\u202ewards" }},
		{"ends", "0", "1 to 100000", func(s *plan.Spec) { s.Ends = 0 }},
		{"ends", "-5", "1 to 100000", func(s *plan.Spec) { s.Ends = -5 }},
		{"ends", "100001", "1 to 100000", func(s *plan.Spec) { s.Ends = 100001 }},
		{"paddle positions", "0", "1 to 60", func(s *plan.Spec) { s.Positions = 0 }},
		{"paddle positions", "61", "1 to 60", func(s *plan.Spec) { s.Positions = 61 }},
		{"group", "0", "1 to 12", func(s *plan.Spec) { s.Group = 0 }},
		{"group", "13", "1 to 12 (the positions of the paddle)", func(s *plan.Spec) { s.Group = 13 }},
		{"length", "99 mm", "10 cm to 1000 m", func(s *plan.Spec) { s.Length = 99 * measure.Millimetre }},
		{"length", "0 m", "10 cm to 1000 m", func(s *plan.Spec) { s.Length = 0 }},
		{"length", "-1 yd", "10 cm to 1000 m", func(s *plan.Spec) { s.Length = -measure.Yard }},
		{"length", "1001 m", "10 cm to 1000 m", func(s *plan.Spec) { s.Length = 1001 * measure.Metre }},
		{"mill circumference", "21 m", "20 m", func(s *plan.Spec) { s.Mill.Circumference = 21 * measure.Metre }},
		{"peg step", "0 m", "1 cm to 2 yd", func(s *plan.Spec) { s.Mill.PegStep = 0 }},
		{"peg step", "3 yd", "1 cm to 2 yd", func(s *plan.Spec) { s.Mill.PegStep = 3 * measure.Yard }},
		{"rise a turn", "-1 in", "0 to 2 yd", func(s *plan.Spec) { s.Mill.Rise = -measure.Inch }},
		{"rise a turn", "3 yd", "0 to 2 yd", func(s *plan.Spec) { s.Mill.Rise = 3 * measure.Yard }},
		{"ends in a chain", "9", "10 to 100000", func(s *plan.Spec) { s.ChainEnds = 9 }},
		{"ends in a chain", "-1", "or 0 for one chain", func(s *plan.Spec) { s.ChainEnds = -1 }},
		{"count tie every", "-1", "1 to 100000, or 0 for none", func(s *plan.Spec) { s.TieEvery = -1 }},
		{"guard", "-1ms", "0 to 60 s", func(s *plan.Spec) { s.Guard = -times.Guard(time.Millisecond) }},
		{"rest every", "-1", "1 to 240, or 0 for none", func(s *plan.Spec) { s.RestMinutes = -1 }},
		{"rest every", "241", "1 to 240, or 0 for none", func(s *plan.Spec) { s.RestMinutes = 241 }},
		{"guard", "1m0.001s", "0 to 60 s", func(s *plan.Spec) { s.Guard = times.Guard(60_001 * time.Millisecond) }},
		{"units", "2", "one of imperial, metric", func(s *plan.Spec) { s.Units = 2 }},
		{"hand", "2", "one of right, left", func(s *plan.Spec) { s.Hand = 2 }},
		{"return order", "2", "one of same, mirrored", func(s *plan.Spec) { s.ReturnOrder = 2 }},
		{"last pass", "2", "one of short, full", func(s *plan.Spec) { s.LastPass = 2 }},
		{"dressing", "255", "one of raddle first, reed first", func(s *plan.Spec) { s.Dressing = 255 }},
	} {
		t.Run(tt.field+" "+tt.value, func(t *testing.T) {
			s := plan.DefaultSpec()
			tt.set(&s)
			p, err := plan.New(s)
			list := measure.FieldErrors(err)
			if p != nil || len(list) != 1 {
				t.Fatalf("New gave %v and %d errors: %v", p, len(list), err)
			}
			if fe := list[0]; fe.Field != tt.field || fe.Value != tt.value || !strings.Contains(fe.Want, tt.want) {
				t.Errorf("%q, want field %q, value %q, range %q", fe, tt.field, tt.value, tt.want)
			}
			for _, r := range err.Error() {
				if r < ' ' {
					t.Errorf("the message holds a control character: %q", err)
				}
			}
		})
	}
}

// The limits themselves are taken.
func TestSpecTakesItsLimits(t *testing.T) {
	for name, set := range map[string]func(*plan.Spec){
		"one end":   func(s *plan.Spec) { s.Ends, s.Group, s.Positions = 1, 1, 1 },
		"most ends": func(s *plan.Spec) { s.Ends, s.Group, s.Positions = measure.MaxEnds, 60, 60 },
		"shortest":  func(s *plan.Spec) { s.Length = 10 * measure.Centimetre },
		"longest":   func(s *plan.Spec) { s.Length = 1000 * measure.Metre },
		"smallest mill": func(s *plan.Spec) {
			s.Mill = frame.Mill{Circumference: 20 * measure.Centimetre, PegStep: measure.Centimetre}
		},
		"largest mill": func(s *plan.Spec) {
			s.Mill = frame.Mill{Circumference: 20 * measure.Metre, PegStep: 20 * measure.Metre,
				Rise:   20 * measure.Metre,
				Height: 10 * measure.Metre}
		},
		"longest name":     func(s *plan.Spec) { s.Name = strings.Repeat("é", 60) },
		"chain of a group": func(s *plan.Spec) { s.ChainEnds = s.Group },
		"no ties":          func(s *plan.Spec) { s.TieEvery = 0 },
		"no guard":         func(s *plan.Spec) { s.Guard = 0 },
	} {
		s := plan.DefaultSpec()
		set(&s)
		if _, err := plan.New(s); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// All errors are told at once, even through another error that wraps them.
func TestFieldErrorsAreAllTold(t *testing.T) {
	s := plan.DefaultSpec()
	s.Ends, s.Group, s.Length = 0, 99, 0
	err := fmt.Errorf("can't plan: %w", s.Check())
	var fields []string
	for _, fe := range measure.FieldErrors(err) {
		fields = append(fields, fe.Field)
	}
	if got := strings.Join(fields, ", "); got != "ends, group, length" {
		t.Errorf("fields told: %q", got)
	}
	if measure.FieldErrors(nil) != nil || measure.FieldErrors(errors.New("other")) != nil {
		t.Error("field errors where there are none")
	}
}

func TestInFieldNamesOnlyTheNameless(t *testing.T) {
	_, err := measure.ParseLength("three")
	named := measure.InField(err, "length")
	if got := named.Error(); !strings.HasPrefix(got, `length: "three" won't do; give `) {
		t.Errorf("named: %s", got)
	}
	if got := measure.InField(named, "rise").Error(); !strings.HasPrefix(got, "length:") {
		t.Errorf("named twice: %s", got)
	}
	if got := err.Error(); !strings.HasPrefix(got, `"three" won't do`) {
		t.Errorf("the first error was changed: %s", got)
	}
	other := errors.New("other")
	if measure.InField(other, "length") != other || measure.InField(nil, "length") != nil {
		t.Error("an error that is no FieldError was changed")
	}
}

// A spec kept as JSON is read back the same, lengths to the nanometre.
func TestSpecJSONRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpec(t)
		s.Mill = drawMill(t)
		s.Length = measure.Length(rapid.Int64Range(int64(10*measure.Centimetre), int64(1000*measure.Metre)).Draw(t,
			"length"))
		s.Units = rapid.SampledFrom([]measure.LengthUnitSystem{measure.Imperial, measure.Metric}).Draw(t, "units")
		s.Dressing = rapid.SampledFrom([]plan.Dressing{plan.RaddleFirst, plan.ReedFirst}).Draw(t, "dressing")
		s.Dyed = rapid.Bool().Draw(t, "dyed")
		s.Guard = times.Guard(rapid.IntRange(0, 60_000).Draw(t, "guard")) * times.Guard(time.Millisecond)
		s.RestMinutes = rapid.IntRange(0, 240).Draw(t, "rest")
		text, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		var back plan.Spec
		if err := json.Unmarshal(text, &back); err != nil || !reflect.DeepEqual(back, s) {
			t.Fatalf("%s is read as %+v, %v", text, back, err)
		}
	})
}

// The words of the small choices are read back, in any case, and others refused with the list.
func TestWordsAreReadBack(t *testing.T) {
	type word interface{ UnmarshalText([]byte) error }
	for _, tt := range []struct {
		into  func() word
		words string
	}{
		{func() word { return new(wind.Hand) }, "right, left"},
		{func() word { return new(wind.ReturnOrder) }, "same, mirrored"},
		{func() word { return new(wind.LastPass) }, "short, full"},
		{func() word { return new(plan.Dressing) }, "raddle first, reed first"},
		{func() word { return new(measure.LengthUnitSystem) }, "imperial, metric"},
	} {
		for _, w := range strings.Split(tt.words, ", ") {
			v := tt.into()
			if err := v.UnmarshalText([]byte(" " + strings.ToUpper(w))); err != nil {
				t.Errorf("%q: %v", w, err)
			}
			if got := fmt.Sprint(v); got != w {
				t.Errorf("%q is read as %q", w, got)
			}
		}
		err := tt.into().UnmarshalText([]byte("sideways"))
		if err == nil || !strings.Contains(err.Error(), tt.words) {
			t.Errorf("the refusal doesn't list %q: %v", tt.words, err)
		}
	}
}
