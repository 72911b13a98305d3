package entry_test

import (
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/entry"
	"millside/plan/field"
	"millside/plan/measure"
)

// samples are values that differ from what a plan begins with, for fields whose words don't tell.
var samples = map[*field.Field]string{
	field.Name: "towels", field.StripesOf: "4 red, 2 white", field.PackagesOf: "red 2", field.GroupSizes: "10, 12",
	field.Way: "swapped", field.YarnOf: "cotton 8/2", field.Weft: "worsted 2/28", field.Colour: "navy",
	field.Cones: "250 g, 180 g",
	field.Tube:  "30 g", field.Board: "36 in x 10, 18 in", field.SettOf: "20 an inch", field.Picks: "18 an inch",
	field.Reed:    "10 dents an inch",
	field.Painted: "1 yd indigo, 18 in", field.ThreadingBegin: "1, 2", field.ThreadingEnd: "1",
	field.Threading: "1, 2, 3, 4", field.Dents: "4 dents of 2, 2 of 4", field.Heddles: "100, 100", field.Guard: "1.5s",
	field.Raddle: "1/2 in", field.PegLength: "12 cm", field.Circumference: "3 m", field.PegStep: "20 cm",
	field.Length: "7 yd", field.DrawIn: "6 %", field.MostHalts: "3",
}

// sample is a value of a field.
func sample(f *field.Field) string {
	switch {
	case samples[f] != "":
		return samples[f]
	case len(f.Words) > 1:
		return f.Words[1]
	}
	return map[string]string{field.Number: "3", field.Span: "31 cm", field.Share: "7.5 %",
		field.Minutes: "0.7"}[f.Value]
}

// leaves lists the leaves of a value in JSON that aren't empty.
func leaves(t *testing.T, s plan.Spec) map[string]string {
	t.Helper()
	data, err := json.Marshal(s)
	if err != nil {
		t.Fatal(err)
	}
	var tree map[string]any
	if err := json.Unmarshal(data, &tree); err != nil {
		t.Fatal(err)
	}
	found := map[string]string{}
	var walk func(path string, v any)
	walk = func(path string, v any) {
		if m, ok := v.(map[string]any); ok {
			for k, below := range m {
				walk(path+"."+k, below)
			}
			return
		}
		text, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		found[strings.TrimPrefix(path, ".")] = string(text)
	}
	walk("", tree)
	return found
}

// notAsked are the parts of a spec that no field gives, and why.
var notAsked = map[string]string{
	"goes_with": "it is said of two plans at once: 'millside together' and its page (plan/pair)",
	"schedule":  "worked out of the stripes", "other_schedule": "worked out of the stripes",
	"cloth.assumed": "what the weaver left out", "cloth.weft_colours": "from a draft", "loom.widths": "from a draft",
	"cloth.width.sett": "the loom's", "cloth.width.group": "the paddle's", "cloth.width.units": "the plan's",
	"cloth.length.units": "the plan's", "yarn.extras.given": "said with the others",
	"loom.whole_groups": "stands in old records", "stripes_asked.laid.written": "follows from the stripes",
	"stripes_asked.laid.wanted": "follows from the cloth",
}

// paths lists where the leaves of a spec stand, by their names in JSON, to the depth to which fields reach.
func paths(t reflect.Type, prefix string) []string {
	var list []string
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if name == "" || name == "-" {
			continue
		}
		path := prefix + name
		inside := f.Type.Kind() == reflect.Struct && f.Type.NumField() > 0 && f.Type.Field(0).Tag.Get("json") != ""
		if inside && notAsked[path] == "" {
			list = append(list, paths(f.Type, path+".")...)
			continue
		}
		list = append(list, path)
	}
	return list
}

// Every part of a plan is given by an entry of the table, or it is said here why not.
func TestEveryPartOfASpecHasItsField(t *testing.T) {
	given := map[string]bool{}
	for _, e := range entry.All() {
		begin := plan.DefaultSpec()
		begin = entry.AssumeAll(begin)
		if e.Field == field.ReedWidth {
			take(t, field.Reed, &begin)
		}
		before := leaves(t, begin)
		after := begin
		text := sample(e.Field)
		if err := e.Take(&after, text); err != nil {
			t.Errorf("%s takes %q: %v", e.Name, text, err)
			continue
		}
		changed := 0
		for path, v := range leaves(t, after) {
			if before[path] != v {
				given[path] = true
				changed++
			}
		}
		if changed == 0 {
			t.Errorf("%s: %q changes nothing", e.Name, text)
		}
	}
	for _, path := range paths(reflect.TypeFor[plan.Spec](), "") {
		has := notAsked[path] != "" || slices.ContainsFunc(slices.Collect(maps.Keys(given)), func(p string) bool {
			return p == path || strings.HasPrefix(p, path+".")
		})
		if !has {
			t.Errorf("no field gives %s", path)
		}
	}
}

func take(t *testing.T, f *field.Field, s *plan.Spec) {
	t.Helper()
	e, ok := entry.Of(f)
	if !ok {
		t.Fatalf("%s stands in no spec", f.Name)
	}
	if err := e.Take(s, sample(f)); err != nil {
		t.Fatal(err)
	}
}

// What is shown is read as the same value; each of the words will do; each label of the table has its entry; what
// can't be read is refused by the field's name and leaves the spec as it was.
func TestShownAndRead(t *testing.T) {
	entries := map[*field.Field]bool{}
	for _, e := range entry.All() {
		entries[e.Field] = true
		s := plan.DefaultSpec()
		if e.Field == field.ReedWidth {
			take(t, field.Reed, &s)
		}
		texts := append(slices.Clone(e.Words), sample(e.Field))
		for _, text := range texts {
			if err := e.Take(&s, text); err != nil {
				t.Errorf("%s: %v", e.Name, err)
				continue
			}
			shown, again := e.Show(s), s
			if err := e.Take(&again, shown); err != nil || e.Show(again) != shown || !reflect.DeepEqual(again, s) {
				t.Errorf("%s shows %q of %q, which is read as %q (%v)", e.Name, shown, text, e.Show(again), err)
			}
			if slices.Contains(e.Words, text) && shown != text {
				t.Errorf("%s shows %q of %q", e.Name, shown, text)
			}
		}
		before := s
		if err := e.Take(&s, "\x01 no such value"); err != nil {
			if wrong := measure.FieldErrors(err); len(wrong) != 1 || wrong[0].Field != e.Name {
				t.Errorf("%s is refused as %v", e.Name, err)
			}
			if !reflect.DeepEqual(before, s) {
				t.Errorf("%s changed what it refused", e.Name)
			}
		}
	}
	for f := range field.All() {
		if f.Label != "" && !entries[f] {
			t.Errorf("the form has no way to show %q", f.Name)
		}
	}
}

// What isn't given is the usual of the fibre and the units, whichever is said first, and 0 is 0.
func TestAllowancesAreAssumed(t *testing.T) {
	s := plan.DefaultSpec()
	s = entry.AssumeAll(s)
	set := func(f *field.Field, text string) {
		t.Helper()
		e, _ := entry.Of(f)
		if err := e.Take(&s, text); err != nil {
			t.Fatal(err)
		}
	}
	set(field.TakeUp, "0 %")
	set(field.Fibre, "wool")
	set(field.Units, "metric")
	c := entry.WithAssumed(s).Cloth
	if c.Width.Shrinkage != 15*measure.OnePercent || c.Length.Shrinkage != 15*measure.OnePercent ||
		c.Length.TakeUp != 0 ||
		c.Length.Waste != 70*measure.Centimetre {
		t.Errorf("assumed: %+v", c)
	}
	if got := entry.AssumedText(entry.WithAssumed(s)); strings.Contains(got, "take-up") ||
		!strings.Contains(got, "draw-in 8 %") {
		t.Errorf("told: %q", got)
	}
	set(field.TakeUp, "")
	if c := entry.WithAssumed(s).Cloth; c.Length.TakeUp != 10*measure.OnePercent {
		t.Errorf("an empty field leaves %s", c.Length.TakeUp)
	}
}

// A length stands in the form in the plan's own units, wherever it came from, if they say it exactly.
func TestLengthInTheUnitsOfThePlan(t *testing.T) {
	e, _ := entry.Of(field.Length)
	for _, c := range []struct {
		units measure.LengthUnitSystem
		l     measure.Length
		want  string
	}{
		{measure.Imperial, 630 * measure.Inch, "17.5 yd"}, {measure.Imperial, 54 * measure.Inch, "54 in"},
		{measure.Metric, 630 * measure.Inch, "17.5 yd"}, {measure.Metric, 6400 * measure.Millimetre, "6.4 m"},
	} {
		s := entry.NewSpec(c.units)
		s.Length = c.l
		if got := e.Show(s); got != c.want {
			t.Errorf("%v in a plan in %v is shown as %q, want %q", c.l, c.units, got, c.want)
		}
	}
}
