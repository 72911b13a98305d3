package sheet

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/plan"
	"millside/plan/internal/loomtest"
	"millside/plan/internal/measuretest"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/times"
	"millside/plan/wind"
)

// anyProject draws a warp with a cloth, a yarn, a raddle and a reed.
func anyProject(t *rapid.T) plan.Spec {
	s := plan.DefaultSpec()
	s.Units = measure.LengthUnitSystem(rapid.IntRange(0, 1).Draw(t, "units"))
	s.Group = rapid.IntRange(1, 12).Draw(t, "group")
	s.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(t, "order"))
	s.ChainEnds = rapid.SampledFrom([]int{0, 90, 200}).Draw(t, "chain")
	s.Yarn = plan.WarpYarn{Size: measuretest.Yarn(t, measure.Cotton, rapid.IntRange(2, 30).Draw(t, "number"), 2)}
	if rapid.Bool().Draw(t, "extras") {
		s.Yarn.Extras = plan.Extras{Given: true,
			PerPass: measure.Length(rapid.IntRange(0, 3).Draw(t, "pegs")) * measure.Inch}
	}
	setts := rapid.SampledFrom([]string{"20 an inch", "13 an inch", "60 in 10 cm"})
	s.Loom.Sett = measuretest.Sett(t, setts.Draw(t, "sett"))
	spaces := rapid.SampledFrom([]measure.Length{measure.Inch / 2, 2 * measure.Centimetre})
	s.Loom.Raddle.Space = spaces.Draw(t, "raddle")
	reeds := rapid.SampledFrom([]string{"10 dents an inch", "8 dents an inch", "40 in 10 cm"})
	s.Loom.Reed = loomtest.Reed(t, reeds.Draw(t, "reed"))
	s.Cloth.Used = true
	w := &s.Cloth.Width
	w.Finished = measure.Length(rapid.Int64Range(20, 120).Draw(t, "width")) * measure.Centimetre
	w.Shrinkage = measure.Percent(rapid.Int64Range(0, 20).Draw(t, "shrinkage")) * measure.OnePercent
	w.DrawIn = measure.Percent(rapid.Int64Range(0, 12).Draw(t, "draw-in")) * measure.OnePercent
	w.Doubled = rapid.IntRange(0, 4).Draw(t, "doubled")
	w.Floating = rapid.IntRange(0, 2).Draw(t, "floating")
	s.Cloth.Length.Piece = measure.Length(rapid.Int64Range(50, 300).Draw(t, "piece")) * measure.Centimetre
	s.Cloth.Length.Pieces = rapid.IntRange(1, 4).Draw(t, "pieces")
	s.Cloth.Picks = s.Loom.Sett
	return s
}

// A sheet gives one answer to one question: no row stands on it twice with another value, and no group is parted by
// the raddle unless the weaver lets it.
func TestOneAnswer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyProject(t)
		s.Loom.SplitGroups = rapid.Bool().Draw(t, "split")
		pr, err := project.New(s, times.Pace{})
		if err != nil {
			t.Fatal(err)
		}
		sheet, err := New(pr, Options{})
		if err != nil {
			t.Fatal(err)
		}
		said := map[string]string{}
		for _, part := range sheet.Parts {
			for _, r := range part.Rows {
				if before, twice := said[r.Name]; twice && before != r.Value.String() && part.ID != PartWork {
					t.Fatalf("%s is %s and %s", r.Name, before, r.Value)
				}
				said[r.Name] = r.Value.String()
			}
		}
		inches, cm := pr.Sley.Width.As(measure.Inches, 2).String(), pr.Sley.Width.As(measure.Centimetres, 2).String()
		if got := said["width in the reed"]; got != inches && got != cm {
			t.Fatalf("width in the reed is %s, not %s or %s", got, inches, cm)
		}
		for _, r := range pr.Raddle.Sections {
			if r.Cut > 0 && !s.Loom.SplitGroups {
				t.Fatalf("section %d parts a group", r.FromCentre)
			}
		}
		for _, line := range partOf(t, sheet, PartRaddle).Table.Lines {
			for _, cell := range []string{line[3].String(), line[6].String()} {
				if strings.Contains(cell, "part") && !s.Loom.SplitGroups {
					t.Fatalf("the raddle says %q", cell)
				}
			}
		}
	})
}

// The cones that a sheet asks for, weighed as it says and given back as the cones at hand, suffice.
func TestConesAskedForSuffice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyProject(t)
		pr, err := project.New(s, times.Pace{})
		if err != nil {
			t.Fatal(err)
		}
		sheet, err := New(pr, Options{})
		if err != nil {
			t.Fatal(err)
		}
		weights := map[int]measure.Mass{}
		most := 0
		for _, line := range partOf(t, sheet, PartYarn).Table.Lines {
			weight, err := measure.ParseMass(line[5].String())
			if err != nil {
				t.Fatal(err)
			}
			for _, position := range unlisted(t, line[0].String()) {
				weights[position] = weight
				most = max(most, position)
			}
		}
		s.Yarn.Packages = most
		for position := range most {
			s.Yarn.Cones = append(s.Yarn.Cones, weights[position+1])
		}
		again, err := project.New(s, times.Pace{})
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range again.Yarn.Cones {
			if c.RunsOut != nil {
				t.Fatalf("the cone of position %d, %s, runs out: %s short", c.Cone.Position, weights[c.Cone.Position],
					c.Short)
			}
		}
		for _, c := range again.Choices {
			if c.Taken(again.Plan.Spec) && c.Lacking > 0 {
				t.Fatalf("%d cones are lacking", c.Lacking)
			}
		}
	})
}
