package sheet

import (
	"encoding/json"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/plan"
	"millside/plan/athand"
	"millside/plan/cloth"
	"millside/plan/figure"
	"millside/plan/frame"
	"millside/plan/internal/loomtest"
	"millside/plan/internal/measuretest"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/times"
	"millside/plan/wind"
)

// plainPlan is a plan for a test.
func plainPlan(t testing.TB, change func(*plan.Spec)) *plan.Plan {
	t.Helper()
	s := plan.DefaultSpec()
	change(&s)
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// wholeSheet plans a warp from the cloth to the sheet.
func wholeSheet(t testing.TB, s plan.Spec) (*Sheet, *project.Project) {
	t.Helper()
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	p.Spec.Loom.Reed = loomtest.Reed(t, "10 dents an inch").WithWidth(measure.Metre)
	a := &project.Project{Plan: p}
	o := Options{Reeds: []athand.NamedReed{
		{Name: "eight", Reed: loomtest.Reed(t, "8 dents an inch")},
		{Name: "ten", Reed: loomtest.Reed(t, "10 dents an inch").WithWidth(measure.Metre)},
		{Name: "another eight", Reed: loomtest.Reed(t, "8 dents an inch")}}}
	must := func(err error) {
		if err != nil {
			t.Fatal(err)
		}
	}
	at := measuretest.Sett(t, "20 an inch")
	a.Ends, err = cloth.Width{Finished: 20 * measure.Inch, Shrinkage: 10 * measure.OnePercent,
		DrawIn: 8 * measure.OnePercent, Sett: at, Units: s.Units}.Ends()
	must(err)
	a.Warp, err = cloth.Length{Piece: 28 * measure.Inch, Pieces: 4, Hem: measure.Inch,
		Shrinkage: 10 * measure.OnePercent, TakeUp: 8 * measure.OnePercent, Waste: 30 * measure.Inch,
		Units: s.Units}.Warp()
	must(err)
	a.Room, err = s.Mill.Room(s.Length, 2*measure.Metre, s.Units)
	must(err)
	cones := plan.OneYarn(s.Positions, "white", measuretest.Yarn(t, measure.Cotton, 8, 2))
	for i := range cones {
		cones[i].Gross, cones[i].Tube = measure.Pound, 2*measure.Ounce
	}
	cones[0].Gross = 3 * measure.Ounce
	a.Yarn, err = p.Yarn(cones, plan.DefaultExtras())
	must(err)
	a.Weft, err = cloth.Weft{Width: 24 * measure.Inch, Woven: 4 * measure.Yard, Picks: at,
		Yarn: measuretest.Yarn(t, measure.Cotton, 8, 2)}.Estimate()
	must(err)
	a.Raddle, err = loom.Raddle{Space: measure.Inch / 2}.Fill(loom.Raddling{Ends: p.EndsWound(), Sett: at,
		Groups: p.GroupSizes(), Split: true})
	must(err)
	a.Order, err = p.Spec.Loom.Reed.Order(at, 12)
	must(err)
	a.Sley, err = p.Spec.Loom.Reed.Sley(loom.Sleying{Ends: p.EndsWound(), Order: a.Order.Dents})
	must(err)
	sheet, err := New(a, o)
	must(err)
	return sheet, a
}

func TestSheetHasEveryPart(t *testing.T) {
	s := plan.DefaultSpec()
	s.Ends, s.Dyed, s.ChainEnds = 485, true, 250
	sheet, _ := wholeSheet(t, s)
	for _, id := range []PartID{PartCloth, PartPlan, PartChains, PartPasses, PartTies, PartYarn, PartRaddle, PartReed,
		PartCautions} {
		part, ok := sheet.Part(id)
		if !ok || part.Title == "" {
			t.Errorf("no part %q", id)
			continue
		}
		if part.Table != nil {
			for _, line := range part.Table.Lines {
				if len(line) != len(part.Table.Columns) {
					t.Errorf("%s: a line of %d cells under %d columns", id, len(line), len(part.Table.Columns))
				}
			}
		}
		for _, r := range part.Rows {
			if r.Name == "" || r.Value.String() == "" || (r.How.Formula == "") != (r.How.WithNumbers.String() == "") ||
				strings.Contains(r.How.WithNumbers.String(), "%!") {
				t.Errorf("%s: row %+v", id, r)
			}
		}
	}
	text, err := json.Marshal(sheet)
	var back Sheet
	if err != nil || json.Unmarshal(text, &back) != nil {
		t.Fatalf("the sheet isn't read back from JSON: %v", err)
	}
	if again, err := json.Marshal(back); err != nil || string(again) != string(text) { // its figures come back as words
		t.Errorf("the sheet says something else once it is read back: %v", err)
	}
	yarns, _ := sheet.Part(PartYarn)
	if !strings.Contains(yarns.Table.Lines[0][6].String(), "runs out on pass") {
		t.Errorf("the light cone: %v", yarns.Table.Lines[0])
	}
}

// The sheet's totals equal the sum of the passes, and of every list on it.
func TestSheetAddsUp(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := plan.DefaultSpec()
		s.Ends = rapid.IntRange(1, 700).Draw(rt, "ends")
		s.Group = rapid.IntRange(1, 12).Draw(rt, "group")
		s.LastPass = wind.LastPass(rapid.IntRange(0, 1).Draw(rt, "last"))
		s.ChainEnds = rapid.SampledFrom([]int{0, 100, 333}).Draw(rt, "chain")
		s.Units = measure.LengthUnitSystem(rapid.IntRange(0, 1).Draw(rt, "units"))
		_, a := wholeSheet(t, s)
		sheet, err := New(a, Options{AllPasses: true})
		if err != nil {
			rt.Fatal(err)
		}
		sum := func(id PartID, column int) (n int) {
			part, _ := sheet.Part(id)
			for _, line := range part.Table.Lines {
				if len(line[column]) == 0 { // a raddle's side that isn't filled
					continue
				}
				count, ok := line[column].Only()
				if !ok {
					rt.Fatalf("%q is no bare number", line[column])
				}
				n += count.N
			}
			return n
		}
		passes, _ := sheet.Part(PartPasses)
		if len(passes.Table.Lines) != sheet.Passes || sum(PartPasses, 3) != sheet.Ends ||
			sum(PartChains, 1) != sheet.Ends || sum(PartChains, 4) != sheet.Passes {
			rt.Fatalf("passes and chains don't add up to %d ends in %d passes", sheet.Ends, sheet.Passes)
		}
		if got := sum(PartRaddle, 1) + sum(PartRaddle, 4); got != sheet.Ends {
			rt.Fatalf("the raddle holds %d of %d ends", got, sheet.Ends)
		}
		cones, _ := sheet.Part(PartYarn)
		fed := 0
		for _, line := range cones.Table.Lines {
			each, _, _ := strings.Cut(line[3].String(), " ")
			fed += len(unlisted(rt, line[0].String())) * unlisted(rt, each)[0]
		}
		if fed != sheet.Ends {
			rt.Fatalf("the cones feed %d of %d ends", fed, sheet.Ends)
		}
		drawn := 0
		for _, d := range sheet.Drawings.Raddle.Sections {
			drawn += d.Ends
		}
		if drawn != sheet.Ends {
			rt.Fatalf("%d of %d ends are drawn", drawn, sheet.Ends)
		}
		x, positions := plan.DefaultExtras(), 0
		for _, c := range a.Plan.Chains {
			positions += c.Passes[0].Ends()
		}
		if want := sheet.Yarn + x.PerPass.Times(sheet.Ends) + x.PerTie.Times(positions); a.Yarn.Length != want {
			rt.Fatalf("the cones give %v, the passes take %v", a.Yarn.Length, want)
		}
		if want := sheet.Length.Times(sheet.Ends); sheet.Yarn != want {
			rt.Fatalf("%v of yarn, want %v", sheet.Yarn, want)
		}
	})
}

func TestSheetRefuses(t *testing.T) {
	if _, err := New(nil, Options{}); err == nil {
		t.Error("a sheet without a plan is no error")
	}
	if _, err := New(&project.Project{Plan: &plan.Plan{}}, Options{}); err == nil {
		t.Error("a sheet of an empty plan is no error")
	}
	_, a := wholeSheet(t, plan.DefaultSpec())
	other := plainPlan(t, func(s *plan.Spec) { s.Ends = 190 })
	for name, ask := range map[string]*project.Project{
		"raddle": {Plan: other, Raddle: a.Raddle}, "reed": {Plan: other, Sley: a.Sley},
		"yarn": {Plan: other, Yarn: a.Yarn},
	} {
		_, err := New(ask, Options{})
		if fields := measure.FieldErrors(err); len(fields) != 1 || fields[0].Field != name {
			t.Errorf("another warp's %s: %v", name, err)
		}
	}
	// A plan alone makes a sheet.
	if sheet, err := New(&project.Project{Plan: other}, Options{}); err != nil || sheet.Ends != 190 {
		t.Errorf("a plan alone: %+v, %v", sheet, err)
	}
}

// The short table of passes says as much as the long one: the passes that it names and their ends add
// up, and so do the count ties.
func TestLikePassesAddUp(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := plan.DefaultSpec()
		s.Ends = rapid.IntRange(1, 2000).Draw(rt, "ends")
		s.Group = rapid.IntRange(1, 12).Draw(rt, "group")
		s.LastPass = wind.LastPass(rapid.IntRange(0, 1).Draw(rt, "last"))
		s.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(rt, "order"))
		s.ChainEnds = rapid.SampledFrom([]int{0, 100, 333}).Draw(rt, "chain")
		p, err := plan.New(s)
		if err != nil {
			rt.Fatal(err)
		}
		short, err1 := New(&project.Project{Plan: p}, Options{})
		long, err2 := New(&project.Project{Plan: p}, Options{AllPasses: true})
		if err1 != nil || err2 != nil {
			rt.Fatal(err1, err2)
		}
		// What each pass is like, by chain and number.
		likes := map[[2]int]string{}
		ends := 0
		for _, line := range partOf(rt, short, PartPasses).Table.Lines {
			each, _, _ := strings.Cut(line[3].String(), " ")
			for _, chain := range unlisted(rt, line[0].String()) {
				for _, pass := range unlisted(rt, line[1].String()) {
					at := [2]int{chain, pass}
					if likes[at] != "" {
						rt.Fatalf("pass %v stands twice", at)
					}
					likes[at] = strings.Join([]string{line[2].String(), each, texts(line[4:7])}, "|")
					ends += unlisted(rt, each)[0]
				}
			}
		}
		for _, line := range partOf(rt, long, PartPasses).Table.Lines {
			at := [2]int{unlisted(rt, line[0].String())[0], unlisted(rt, line[1].String())[0]}
			if want := strings.Join([]string{texts(line[2:4]), texts(line[6:9])}, "|"); likes[at] != want {
				rt.Fatalf("pass %v is %q, want %q", at, likes[at], want)
			}
		}
		if ends != long.Ends || len(likes) != long.Passes {
			rt.Fatalf("%d ends in %d passes, want %d in %d", ends, len(likes), long.Ends, long.Passes)
		}
		ties := 0
		if tied := partOf(rt, short, PartTies).Table; tied != nil {
			for _, line := range tied.Lines {
				ties += len(unlisted(rt, line[0].String())) * len(unlisted(rt, line[1].String()))
			}
		}
		want := 0
		if tied := partOf(rt, long, PartTies).Table; tied != nil {
			want = len(tied.Lines)
		}
		if ties != want {
			rt.Fatalf("%d count ties, want %d", ties, want)
		}
	})
}

func partOf(t *rapid.T, s *Sheet, id PartID) Part {
	part, ok := s.Part(id)
	if !ok {
		t.Fatalf("no part %s", id)
	}
	return part
}

// unlisted reads what listed writes.
func unlisted(t *rapid.T, s string) []int {
	number := func(s string) int {
		n, err := strconv.Atoi(s)
		if err != nil {
			t.Fatalf("%q: %v", s, err)
		}
		return n
	}
	var list []int
	if from, to, ok := strings.Cut(s, " to "); ok {
		for n := number(from); n <= number(to); n++ {
			list = append(list, n)
		}
		return list
	}
	begun, to, more := strings.Cut(s, " ... ")
	for one := range strings.SplitSeq(begun, ", ") {
		list = append(list, number(one))
	}
	if more {
		step := list[1] - list[0]
		for n := list[len(list)-1] + step; n <= number(to); n += step {
			list = append(list, n)
		}
	}
	return list
}

func TestListed(t *testing.T) {
	for want, n := range map[string][]int{
		"": nil, "3": {3}, "3, 4": {3, 4}, "3 to 5": {3, 4, 5}, "1, 3, 5": {1, 3, 5},
		"1, 3, 5 ... 11":    {1, 3, 5, 7, 9, 11},
		"1, 3, 5, 7, 9, 12": {1, 3, 5, 7, 9, 12}, "10, 20, 30 ... 60": {10, 20, 30, 40, 50, 60},
	} {
		if got := plan.Listed(n); got != want {
			t.Errorf("%v is listed as %q, want %q", n, got, want)
		}
	}
}

// What the wall needs is there: the board's path, spare ends, the label, the reasons of chains, the reeds
// at hand, room on the pegs, and warnings where something is out of the ordinary.
func TestSheetSays(t *testing.T) {
	s := plan.DefaultSpec()
	s.Ends, s.ChainEnds, s.LastPass = 395, 200, wind.FullLast
	s.Board = frame.Board{measure.Yard, measure.Yard, measure.Yard, measure.Yard, measure.Yard, measure.Yard}
	s.Yarn = plan.WarpYarn{Size: measuretest.Yarn(t, measure.Cotton, 8, 2)}
	s.Pegs = plan.Pegs{Length: 2 * measure.Inch, Layers: 1}
	s.Loom = plan.Loom{Sett: measuretest.Sett(t, "21 an inch"), Reed: loomtest.Reed(t, "10 dents an inch"),
		EdgeDents: 2, EdgeEnds: 3}
	pr, err := project.New(s, times.Pace{})
	if err != nil {
		t.Fatal(err)
	}
	sheet, err := New(pr, Options{Reeds: []athand.NamedReed{{Name: "twelve",
		Reed: loomtest.Reed(t, "12 dents an inch")}}})
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(sheet)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"round 6 pegs, 5 distances", "5, the last: numbers 396 to 400", "On the label: Warp",
		"chain 2 of 2", "Chain 1: 200 ends in 20 passes",
		"twelve", "room on a peg", "wind smaller chains", `"board":["1 yd","1 yd","1 yd","1 yd","1 yd"]`, `"edge":2`,
		"1, 3, 5 ... 19", "keeps its opening"} {
		if !strings.Contains(string(text), want) {
			t.Errorf("no %q on the sheet: %s", want, text)
		}
	}
	// Without reeds at hand the setts that they give are left out.
	if plain, err := New(pr, Options{}); err != nil || len(plain.Parts)+1 != len(sheet.Parts) {
		t.Errorf("%v", err)
	}
}

// texts joins what stands in cells.
func texts(cells []figure.Cell) string { return figure.Join(cells, "|").String() }
