package pair_test

import (
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/plan"
	"millside/plan/field"
	"millside/plan/internal/measuretest"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/pair"
	"millside/plan/project"
	"millside/plan/times"
)

// fatal is a test or a property.
type fatal interface {
	Helper()
	Fatal(...any)
}

// warp works out a warp of so many ends in groups, at a sett, with what else is said of it.
func warp(t fatal, name string, ends, group int, sett string, also func(*plan.Spec)) *project.Project {
	t.Helper()
	s := plan.DefaultSpec()
	s.Name, s.Ends, s.Group, s.Positions = name, ends, group, max(group, s.Positions)
	got, err := measure.ParseSett(sett)
	if err != nil {
		t.Fatal(err)
	}
	s.Loom.Sett = got
	s.Loom.Raddle = loom.Raddle{Space: measure.Inch}
	if also != nil {
		also(&s)
	}
	pr, err := project.New(s, times.Pace{})
	if err != nil {
		t.Fatal(err)
	}
	return pr
}

func reed(t fatal, text string) loom.Reed {
	t.Helper()
	r, err := loom.ParseReed(text)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Worked by hand (common practice, no source): a pile of one end to two of the ground. 300 ends at 30 an inch and 150
// at 15 an inch are both 10 in wide; in a reed of 15 dents an inch each dent holds two ends of the ground and one of
// the pile, and each inch of the raddle 30 and 15.
func TestPile(t *testing.T) {
	r := reed(t, "15 dents an inch")
	with := func(s *plan.Spec) { s.Loom.Reed = r }
	j, err := pair.New(warp(t, "ground cloth", 300, 10, "30 an inch", with),
		warp(t, "pile", 150, 5, "15 an inch", with),
		pair.Ask{Order: "2 ground, 1 second"})
	if err != nil {
		t.Fatal(err)
	}
	if j.Width != 10*measure.Inch || j.Sett != measuretest.Sett(t, "45 an inch") || len(j.Dents) != 150 {
		t.Errorf("%v wide, %v, %d dents", j.Width, j.Sett, len(j.Dents))
	}
	for i, d := range j.Dents {
		if d.Ends != [2]int{2, 1} || d.First != [2]int{2*i + 1, i + 1} || d.Last != [2]int{2*i + 2, i + 1} {
			t.Fatalf("dent %d: %+v", i+1, d)
		}
	}
	if len(j.Raddled.Sections) != 10 || j.Raddled.MiddleSpace {
		t.Fatalf("%d sections", len(j.Raddled.Sections))
	}
	for i, s := range j.Raddled.Sections {
		if s[pair.Ground].Ends != 30 || s[pair.Second].Ends != 15 || s[pair.Ground].First != 30*i+1 ||
			s[pair.Second].Last != 15*i+15 || s[pair.Ground].Cut+s[pair.Second].Cut != 0 {
			t.Errorf("section %d: %+v", i+1, s)
		}
	}
	if got := j.With(pair.Second, []int{40}); got.Rows[5].Name != "end 40" ||
		got.Rows[5].Value.String() != "raddle section 3 left, dent 40 of both from the "+
			"left" || len(got.Table.Lines) != 10 {
		t.Errorf("the second's own sheet: %+v", got)
	}
	if part, ok := j.Sheet().Part("heddles"); !ok || part.Rows[2].Value.String() != "450" {
		t.Errorf("heddles: %+v", part.Rows)
	}
}

// Worked by hand (common practice, no source): a seersucker of stripes of 12 ends, tight at 24 an inch and slack at 20.
// 120 and 108 ends are 5 in and 5.4 in, 10.4 in together; the outer stripes are tight.
func TestSeersucker(t *testing.T) {
	j, err := pair.New(warp(t, "tight", 120, 12, "24 an inch", nil), warp(t, "slack", 108, 12, "20 an inch", nil),
		pair.Ask{Order: "12 tight, 12 slack", Beside: true, Held: pair.OwnBeam})
	if err != nil {
		t.Fatal(err)
	}
	if off := j.Width - 104*measure.Inch/10; off > measure.Millimetre || off < -measure.Millimetre {
		t.Errorf("%v wide", j.Width)
	}
	if p := j.Places; p.Times != 9 || p.Over != 12 || p.Order[0] != pair.Ground || p.Order[227] != pair.Ground {
		t.Errorf("%d times and %d", j.Places.Times, j.Places.Over)
	}
}

// A double weave end by end takes both layers' setts together (common practice, no source).
func TestDoubleWeave(t *testing.T) {
	r := reed(t, "10 dents an inch")
	with := func(s *plan.Spec) { s.Loom.Reed = r }
	j, err := pair.New(warp(t, "upper", 150, 10, "15 an inch", with), warp(t, "lower", 150, 10, "15 an inch", nil),
		pair.Ask{})
	if err != nil {
		t.Fatal(err)
	}
	if j.Places.Text != "1 ground, 1 second" || !slices.Equal(j.Sley.Dents[:4], []int{3, 3, 3, 3}) ||
		j.DentOf(pair.Second, 150) != 100 || j.DentOf(pair.Ground, 2) != 1 || j.DentOf(pair.Second, 2) != 2 {
		t.Errorf("%s, %v", j.Places.Text, j.Sley.Dents[:4])
	}
}

// 10 yd of cloth (shrunk by nothing) take 10 / (1 - 0.1) = 11 1/9 yd of ground and 10 / (1 - 0.6) = 25 yd of pile, with
// one yard of waste each; by hand.
func TestLengths(t *testing.T) {
	ground := warp(t, "ground", 300, 10, "30 an inch", func(s *plan.Spec) {
		s.Cloth.Used = true
		s.Cloth.Width.Finished = 10 * measure.Inch
		c := &s.Cloth.Length
		c.Piece, c.Pieces, c.TakeUp, c.Waste = 10*measure.Yard, 1, 10*measure.OnePercent, measure.Yard
	})
	long, err := pair.SecondLength(ground.Plan.Spec, pair.Ask{TakeUp: 60 * measure.OnePercent, TakeUpSaid: true})
	if err != nil || long != 26*measure.Yard {
		t.Fatalf("%v (%v)", long, err)
	}
	second := warp(t, "pile", ground.Plan.EndsWound()/2, 5, "15 an inch", func(s *plan.Spec) {
		s.Length = 20 * measure.Yard
	})
	j, err := pair.New(ground, second, pair.Ask{Order: "2 ground, 1 second", TakeUp: 60 * measure.OnePercent,
		TakeUpSaid: true, Held: pair.OneBeam})
	if err != nil {
		t.Fatal(err)
	}
	if l := j.Lengths; l.Woven != 10*measure.Yard || l.Needed[pair.Second] != 26*measure.Yard ||
		(l.Needed[pair.Ground]-109*measure.Yard/9)/measure.Millimetre != 0 {
		t.Errorf("%+v", l)
	}
	parts := j.Sheet().Parts
	if !strings.Contains(parts[1].Rows[2].Warning, "6 yd") && !strings.Contains(parts[1].Rows[2].Warning, "216 in") {
		t.Errorf("no warning: %+v", parts[1].Rows)
	}
	if parts[2].Rows[1].Warning == "" {
		t.Errorf("one beam is let pass: %+v", parts[2])
	}
	if _, err := pair.SecondLength(second.Plan.Spec, pair.Ask{}); len(measure.FieldErrors(err)) != 1 {
		t.Errorf("a ground without a cloth: %v", err)
	}
}

func TestRefused(t *testing.T) {
	ground := warp(t, "ground", 300, 10, "30 an inch", func(s *plan.Spec) { s.Loom.Reed = reed(t, "15 dents an inch") })
	doubled := warp(t, "doubled", 300, 10, "30 an inch", func(s *plan.Spec) {
		s.Cloth.Used, s.Cloth.Width.Finished, s.Cloth.Width.Doubled = true, 10*measure.Inch, 2
		s.Cloth.Length.Piece, s.Cloth.Length.Pieces = measure.Yard, 1
	})
	for _, c := range []struct {
		name           string
		ground, second *project.Project
		ask            pair.Ask
		want           string
	}{
		{"ends over", ground, warp(t, "pile", 140, 5, "14 an inch", nil), pair.Ask{Order: "2 ground, 1 second"},
			"all 140 of the second lie, and 18 ends of the ground are left over"},
		{"ends of the second over", ground, warp(t, "pile", 155, 5, "15.5 an inch", nil),
			pair.Ask{Order: "2 ground, 1 second"}, "all 300 of the ground lie, and 5 ends of the second are left over"},
		{"widths", ground, warp(t, "pile", 150, 5, "12 an inch", nil), pair.Ask{Order: "2 ground, 1 second"},
			"which takes about 120 ends of the second"},
		{"no order", ground, warp(t, "pile", 131, 5, "13.1 an inch", nil), pair.Ask{}, "such as 2 ground, 1 second"},
		{"a word", ground, warp(t, "pile", 150, 5, "15 an inch", nil), pair.Ask{Order: "2 ground, 1 blue"},
			"ground or second"},
		{"one warp only", ground, warp(t, "pile", 150, 5, "15 an inch", nil), pair.Ask{Order: "2 ground"},
			"it has both warps in it"},
		{"reeds", ground, warp(t, "pile", 150, 5, "15 an inch", func(s *plan.Spec) {
			s.Loom.Reed = reed(t, "10 dents an inch")
		}), pair.Ask{}, "one reed for both"},
		{"selvedges", doubled, warp(t, "pile", doubled.Plan.EndsWound()/2, 5, "15 an inch", nil), pair.Ask{},
			"begins with 4 ends of the ground"},
	} {
		_, err := pair.New(c.ground, c.second, c.ask)
		if len(measure.FieldErrors(err)) != 1 || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// Doubled ends of the ground are its outer ones (from memory): four ends of it at each edge take two places, a dent of
// two, and two heddles each. By hand: 304 ends of it and 148 of the second are 448 places, in heddles too.
func TestDoubledGround(t *testing.T) {
	ground := warp(t, "ground", 300, 10, "30 an inch", func(s *plan.Spec) {
		s.Cloth.Used, s.Cloth.Width.Finished, s.Cloth.Width.Doubled = true, 10*measure.Inch, 2
		s.Cloth.Length.Piece, s.Cloth.Length.Pieces = measure.Yard, 1
		s.Loom.Reed = reed(t, "15 dents an inch")
	})
	second := warp(t, "pile", 148, 4, "15 an inch", nil)
	if ground.Plan.EndsWound() != 304 {
		t.Fatalf("%d ends", ground.Plan.EndsWound())
	}
	j, err := pair.New(ground, second, pair.Ask{Order: "4 ground, 148 times (2 ground, 1 second), 4 ground"})
	if err != nil {
		t.Fatal(err)
	}
	if part, ok := j.Sheet().Part("heddles"); !ok || part.Rows[0].Value.String() != "300" ||
		part.Rows[2].Value.String() != "448" || len(part.Notes) != 1 {
		t.Errorf("heddles: %+v", part)
	}
	if first := j.Dents[0].Ends; first != [2]int{5, 0} {
		t.Errorf("the first dent holds %v: two doubled pairs and one more", first)
	}
}

// What a record keeps is read again as it was said, and nothing else is.
func TestKept(t *testing.T) {
	said := map[*field.Field]string{pair.OrderField: "2 ground, 1 second", pair.TakeUpField: "40%",
		pair.HeldField: "weights", pair.LieField: "between"}
	kept, err := pair.Keeps([2]string{`a "fine" ground; in, all`, "pile"},
		[2]string{"ground.millside", "pile.millside"}, said)
	if err != nil {
		t.Fatal(err)
	}
	if got := kept[pair.Ground].String(); got != `the second "pile", in pile.millside; order: 2 ground, 1 second; `+
		`second lies: between; its take-up: 40%; second is on: weights` {
		t.Error(got)
	}
	for w, k := range kept {
		back, err := pair.ParseKept(k.String())
		if err != nil || back.With != pair.Which(w).Other() || !maps.Equal(back.Said, said) ||
			back.String() != k.String() {
			t.Errorf("%s: %+v (%v)", k, back, err)
		}
		ask, err := back.Ask()
		if err != nil || ask.Order != "2 ground, 1 second" || ask.TakeUp != 40*measure.OnePercent ||
			ask.Held != pair.Weights {
			t.Errorf("%+v (%v)", ask, err)
		}
	}
	for _, bad := range []string{"", "pile", `the second pile, in x`, `the second "pile"`, `the third "pile", in x`,
		`the second "pile", in x; colour: red`, `the second "pile", in x; its take-up: 900%`} {
		if k, err := pair.ParseKept(bad); len(measure.FieldErrors(err)) != 1 {
			t.Errorf("%q: %+v (%v)", bad, k, err)
		}
	}
	said[pair.OrderField] = strings.Repeat("2 ground, 1 second, ", 40) + "1 ground"
	if _, err := pair.Keeps([2]string{"a", "b"}, [2]string{"a.millside", "b.millside"}, said); err == nil {
		t.Error("an order too long for a record is kept")
	}
}

// Each end of each warp lies in exactly one section and one dent, the sums are equal, and the numbers rise as the warp
// lies.
func TestEachEndOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.IntRange(1, 6).Draw(t, "ground"), rapid.IntRange(1, 6).Draw(t, "second")
		times := rapid.IntRange(2, 40).Draw(t, "times")
		r := reed(t, rapid.SampledFrom([]string{"8 dents an inch", "12 dents an inch", "50 in 10 cm"}).Draw(t, "reed"))
		var warps [2]*project.Project
		for w, n := range []int{a * times, b * times} {
			warps[w] = warp(t, "warp", n, rapid.IntRange(1, 12).Draw(t, "group"), "10 an inch", func(s *plan.Spec) {
				s.LastPass = 0
				s.Loom.FirstEnd = loom.Side(rapid.IntRange(0, 1).Draw(t, "side"))
				s.Loom.SplitGroups = rapid.Bool().Draw(t, "split")
			})
		}
		ask := pair.Ask{Beside: true, Reed: r}
		if rapid.Bool().Draw(t, "given") {
			ask = pair.Ask{Sett: measuretest.Sett(t, "20 an inch"), Reed: r}
		}
		ask.Order = strings.NewReplacer("A", strconv.Itoa(a), "B", strconv.Itoa(b)).Replace("A ground, B second")
		j, err := pair.New(warps[0], warps[1], ask)
		if err != nil {
			t.Fatal(err)
		}
		for w, pr := range warps {
			inRaddle, inReed := map[int]int{}, map[int]int{}
			for _, s := range j.Raddled.Sections {
				for e := s[w].First; s[w].Ends > 0 && e <= s[w].Last; e++ {
					inRaddle[e]++
				}
			}
			for i, d := range j.Dents {
				for e := d.First[w]; d.Ends[w] > 0 && e <= d.Last[w]; e++ {
					inReed[e]++
					if got := j.DentOf(pair.Which(w), e); got != i+1 {
						t.Fatalf("end %d: dent %d or %d", e, got, i+1)
					}
				}
			}
			for e := 1; e <= pr.Plan.EndsWound(); e++ {
				if inRaddle[e] != 1 || inReed[e] != 1 {
					t.Fatalf("end %d of %d is %d times in the raddle, %d in the reed", e, w, inRaddle[e], inReed[e])
				}
			}
			if len(inRaddle) != pr.Plan.EndsWound() || len(inReed) != pr.Plan.EndsWound() {
				t.Fatalf("%d and %d of %d ends", len(inRaddle), len(inReed), pr.Plan.EndsWound())
			}
		}
	})
}
