package measure

import (
	"errors"
	"testing"

	"pgregory.net/rapid"
)

// yarn makes a yarn size for a test.
func yarn(t interface {
	Helper()
	Fatal(...any)
}, system CountSystem, number, plies int) YarnSize {
	t.Helper()
	y, err := NewYarnSize(system, YarnNumber(number)*YarnNumberOne, plies)
	if err != nil {
		t.Fatal(err)
	}
	return y
}

func TestParseYarn(t *testing.T) {
	for _, c := range []struct {
		in, want string
	}{
		{"cotton 8/2", "cotton 8, 2 plies"},
		{"8/2 cotton", "cotton 8, 2 plies"},
		{"8/2 Ne", "cotton 8, 2 plies"},
		{"cotton 8, 2 plies", "cotton 8, 2 plies"},
		{"cotton 8 2-ply", "cotton 8, 2 plies"},
		{"2-ply 8s cotton", "cotton 8, 2 plies"},
		{"3/2 cotton", "cotton 3, 2 plies"},
		{"2/24 cotton", "cotton 24, 2 plies"}, // 24 plies of number 2 are no yarn in this notation
		{"30s cotton", "cotton 30"},
		{"cotton number 36.5", "cotton 36.5"},
		{"worsted 2/28", "worsted 28, 2 plies"},
		{"20/2 worsted", "worsted 20, 2 plies"},
		{"3/15 worsted", "worsted 15, 3 plies"},
		{"linen 20/2", "linen lea 20, 2 plies"},
		{"lea 40", "linen lea 40"},
		{"2/28 nm", "metric 28, 2 plies"},
		{"Nm 28/2", "metric 28, 2 plies"},
		{"30s/2 spun silk", "spun silk 30, 2 plies"},
		{"2 1/2 run", "woollen run 2.5"},
		{"8 cut", "woollen cut 8"},
		{"25 tex", "tex 25"},
		{"tex 25 x 2", "tex 25, 2 plies"},
		{"330 dtex", "dtex 330"},
		{"20 den", "denier 20"},
		{"3360 yd/lb", "3360 yd/lb"},
		{"3360 yards a pound", "3360 yd/lb"},
		{"1500 m/kg", "1500 m/kg"},
		{"1500 metres per kilogram", "1500 m/kg"},
		{"400 m / 100 g", "4000 m/kg"},
		{"200 yd / 50 g", "1814.36948 yd/lb"}, // 200 x 453.59237 / 50
	} {
		got, err := ParseYarn(c.in)
		if err != nil || got.String() != c.want {
			t.Errorf("ParseYarn(%q) = %q, %v; want %q", c.in, got, err, c.want)
		}
	}
}

func TestParseYarnAsks(t *testing.T) {
	for _, c := range []struct {
		in   string
		want []string
	}{
		// Number first is the habit with cotton, and 2/8 is sold all the same: which is meant?
		{"2/8 cotton", []string{"cotton 8, 2 plies", "cotton 2, 8 plies"}},
		{"10/2 worsted", []string{"worsted 10, 2 plies", "worsted 2, 10 plies"}},
		// Spun silk sold to hand weavers is mostly numbered in the metric count; see TestPublishedYarns.
		{"20/2 silk", []string{"spun silk 20, 2 plies", "metric 20, 2 plies"}},
		{"20/2", []string{"cotton 20, 2 plies", "worsted 20, 2 plies", "linen lea 20, 2 plies", "metric 20, 2 plies"}},
	} {
		_, err := ParseYarn(c.in)
		var ask *AmbiguousYarn
		if !errors.As(err, &ask) {
			t.Errorf("ParseYarn(%q): %v; want a question with readings", c.in, err)
			continue
		}
		var got []string
		for _, y := range ask.Readings {
			got = append(got, y.String())
		}
		if len(got) != len(c.want) {
			t.Errorf("ParseYarn(%q) reads %q, want %q", c.in, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("ParseYarn(%q) reads %q, want %q", c.in, got, c.want)
			}
		}
		if fields := FieldErrors(InField(err, "yarn")); len(fields) != 1 || fields[0].Field != "yarn" {
			t.Errorf("the question about %q is no field error: %v", c.in, err)
		}
	}
}

func TestParseYarnRefuses(t *testing.T) {
	for _, in := range []string{"", "yarn", "cotton", "cotton 8/2/2", "cotton 0", "cotton 8/0", "cotton -8", "8/2 hair",
		"cotton 1,200",
		"cotton 8 0-ply", "8 yd/0 lb", "0 yd/lb", "m/kg", "cotton 8/2 3 plies", "cotton 0.0000001", "2/8 yd/lb",
		"999999999999999999 tex", "cotton 8 ply 2 ply 3"} {
		got, err := ParseYarn(in)
		var fe *FieldError
		if !errors.As(err, &fe) || fe.Want == "" {
			t.Errorf("ParseYarn(%q) = %q, %v; want a FieldError", in, got, err)
		}
	}
}

// anyYarn draws a yarn that NewYarnSize takes.
func anyYarn(t *rapid.T) YarnSize {
	for {
		system := CountSystem(rapid.IntRange(0, len(countSystems)-1).Draw(t, "system"))
		y, err := NewYarnSize(system, YarnNumber(rapid.Int64Range(1, int64(maxYarnNumber)).Draw(t, "number")),
			rapid.IntRange(1, maxPlies).Draw(t, "plies"))
		if err == nil {
			return y
		}
		if countSystems[system].never {
			if y, err := NewYarnSize(system, 3360*YarnNumberOne, 1); err == nil {
				return y
			}
		}
		y, err = NewYarnSize(system, YarnNumber(rapid.Int64Range(1, 2000).Draw(t, "small"))*YarnNumberOne/8,
			rapid.IntRange(1, 4).Draw(t, "few"))
		if err == nil {
			return y
		}
	}
}

func TestYarnThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := anyYarn(t)
		if got, err := ParseYarn(y.String()); err != nil || got != y {
			t.Fatalf("%#v written as %q is read back as %#v, %v", y, y, got, err)
		}
		// The trade's own notation is read back, or is asked about, or has too many plies for a slash.
		got, err := ParseYarn(y.Notation())
		var ask *AmbiguousYarn
		if countSystems[y.System()].never { // rounded to whole yards or metres, as a label is
			if off := got.Number() - y.Number(); err == nil && (off > YarnNumberOne/2 || off < -YarnNumberOne/2) {
				t.Fatalf("%q written as %q is read back as %q", y, y.Notation(), got)
			}
			return
		}
		if err == nil && got != y && y.Plies() <= mostReadPlies {
			t.Fatalf("%q written as %q is read back as %q", y, y.Notation(), got)
		}
		if err != nil && !errors.As(err, &ask) && y.Plies() <= mostReadPlies {
			t.Fatalf("%q written as %q is refused: %v", y, y.Notation(), err)
		}
	})
}

func FuzzParseYarn(f *testing.F) {
	for _, s := range []string{"cotton 8/2", "2/28 worsted", "2 1/2 run", "200 yd / 50 g", "25 tex x 2",
		"cotton 8, 2 plies", "/", "8/", "1,2/3"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		y, err := ParseYarn(s)
		if err != nil {
			var ask *AmbiguousYarn
			if errors.As(err, &ask) && len(ask.Readings) < 2 {
				t.Fatalf("%q is asked about with readings %v", s, ask.Readings)
			}
			return
		}
		if back, err := ParseYarn(y.String()); err != nil || back != y {
			t.Fatalf("%q gives %q, read back as %q, %v", s, y, back, err)
		}
	})
}

// A yarn size that no one could have read is written without a panic.
func TestNotationOfAnyYarn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_ = YarnSize{CountSystem(rapid.Uint8().Draw(t, "system")), YarnNumber(rapid.Int64().Draw(t, "number")),
			rapid.Int().Draw(t, "plies")}.Notation()
	})
}
