package plan

import (
	"encoding/json"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// wholeSheet plans a warp from the cloth to the sheet.
func wholeSheet(t testing.TB, s Spec) (*Sheet, SheetAsk) {
	t.Helper()
	p, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	a := SheetAsk{Plan: p, Reed: reed(t, "10 dents an inch").WithWidth(Metre)}
	must := func(err error) {
		if err != nil {
			t.Fatal(err)
		}
	}
	at := sett(t, "20 an inch")
	a.Ends, err = ClothWidth{Finished: 20 * Inch, Shrinkage: 10 * OnePercent, DrawIn: 8 * OnePercent, Sett: at, Units: s.Units}.Ends()
	must(err)
	a.Length, err = ClothLength{Piece: 28 * Inch, Pieces: 4, Hem: Inch, Shrinkage: 10 * OnePercent, TakeUp: 8 * OnePercent, Waste: 30 * Inch, Units: s.Units}.Warp()
	must(err)
	a.Room, err = s.Mill.Room(s.Length, 2*Metre, s.Units)
	must(err)
	cones := OneYarn(s.Positions, "white", yarn(t, Cotton, 8, 2))
	for i := range cones {
		cones[i].Gross, cones[i].Tube = Pound, 2*Ounce
	}
	cones[0].Gross = 3 * Ounce
	a.Yarn, err = p.Yarn(cones, DefaultExtras())
	must(err)
	a.Weft, err = Weft{Width: 24 * Inch, Woven: 4 * Yard, Picks: at, Yarn: yarn(t, Cotton, 8, 2)}.Estimate()
	must(err)
	a.Raddle, err = Raddle{Space: Inch / 2}.Fill(Raddling{Ends: p.EndsWound(), Sett: at, Group: s.Group})
	must(err)
	a.Sley, err = a.Reed.Sley(Sleying{Ends: p.EndsWound(), Order: []int{2}})
	must(err)
	sheet, err := NewSheet(a)
	must(err)
	return sheet, a
}

func TestSheetHasEveryPart(t *testing.T) {
	s := DefaultSpec()
	s.Ends, s.Dyed, s.ChainEnds = 485, true, 250
	sheet, _ := wholeSheet(t, s)
	for _, id := range []PartID{PartCloth, PartPlan, PartChains, PartPasses, PartTies, PartYarn, PartRaddle, PartReed, PartCautions} {
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
			if r.Name == "" || r.Value == "" || (r.How.Formula == "") != (r.How.WithNumbers == "") || strings.Contains(r.How.WithNumbers, "%!") {
				t.Errorf("%s: row %+v", id, r)
			}
		}
	}
	text, err := json.Marshal(sheet)
	var back Sheet
	if err != nil || json.Unmarshal(text, &back) != nil || !reflect.DeepEqual(back, *sheet) {
		t.Errorf("the sheet isn't read back from JSON: %v", err)
	}
	yarns, _ := sheet.Part(PartYarn)
	if !strings.Contains(yarns.Table.Lines[0][6], "runs out on pass") {
		t.Errorf("the light cone: %v", yarns.Table.Lines[0])
	}
}

// The sheet's totals equal the sum of the passes, and of every list on it.
func TestSheetAddsUp(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := DefaultSpec()
		s.Ends = rapid.IntRange(1, 700).Draw(rt, "ends")
		s.Group = rapid.IntRange(1, 12).Draw(rt, "group")
		s.LastPass = LastPass(rapid.IntRange(0, 1).Draw(rt, "last"))
		s.ChainEnds = rapid.SampledFrom([]int{0, 100, 333}).Draw(rt, "chain")
		s.Units = LengthUnitSystem(rapid.IntRange(0, 1).Draw(rt, "units"))
		sheet, a := wholeSheet(t, s)
		sum := func(id PartID, column int) (n int) {
			part, _ := sheet.Part(id)
			for _, line := range part.Table.Lines {
				v, err := strconv.Atoi(line[column])
				if err != nil {
					rt.Fatal(err)
				}
				n += v
			}
			return n
		}
		passes, _ := sheet.Part(PartPasses)
		if len(passes.Table.Lines) != sheet.Passes || sum(PartPasses, 3) != sheet.Ends || sum(PartChains, 1) != sheet.Ends || sum(PartChains, 4) != sheet.Passes {
			rt.Fatalf("passes and chains don't add up to %d ends in %d passes", sheet.Ends, sheet.Passes)
		}
		if sum(PartRaddle, 1) != sheet.Ends || sum(PartYarn, 3) != sheet.Ends {
			rt.Fatalf("the raddle or the cones don't add up to %d ends", sheet.Ends)
		}
		x, positions := DefaultExtras(), 0
		for _, c := range a.Plan.Chains {
			positions += c.Passes[0].Ends()
		}
		if want := sheet.Yarn + x.PerPass.Times(sheet.Ends) + x.PerChain.Times(positions); a.Yarn.Length != want {
			rt.Fatalf("the cones give %v, the passes take %v", a.Yarn.Length, want)
		}
		if want := sheet.Length.Times(sheet.Ends); sheet.Yarn != want {
			rt.Fatalf("%v of yarn, want %v", sheet.Yarn, want)
		}
	})
}

func TestSheetRefuses(t *testing.T) {
	if _, err := NewSheet(SheetAsk{}); err == nil {
		t.Error("a sheet without a plan is no error")
	}
	if _, err := NewSheet(SheetAsk{Plan: &Plan{}}); err == nil {
		t.Error("a sheet of an empty plan is no error")
	}
	_, a := wholeSheet(t, DefaultSpec())
	other := plainPlan(t, func(s *Spec) { s.Ends = 190 })
	for name, ask := range map[string]SheetAsk{
		"raddle": {Plan: other, Raddle: a.Raddle}, "reed": {Plan: other, Sley: a.Sley}, "yarn": {Plan: other, Yarn: a.Yarn},
	} {
		_, err := NewSheet(ask)
		if fields := FieldErrors(err); len(fields) != 1 || fields[0].Field != name {
			t.Errorf("another warp's %s: %v", name, err)
		}
	}
	// A plan alone makes a sheet.
	if sheet, err := NewSheet(SheetAsk{Plan: other}); err != nil || sheet.Ends != 190 {
		t.Errorf("a plan alone: %+v, %v", sheet, err)
	}
}
