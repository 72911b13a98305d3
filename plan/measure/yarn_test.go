package measure

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// float reads a number that the engine wrote, for comparing with a rounded figure in print.
func float(t interface {
	Helper()
	Fatal(...any)
}, s string) float64 {
	t.Helper()
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// Constants K of ASTM D2260-03(2013), table 1, which agrees with ISO 2947: tex = K / number.
func TestTexOfNumberOne(t *testing.T) {
	for _, c := range []struct {
		system CountSystem
		k      float64
		within float64
	}{
		{Cotton, 590.541, 0.001},
		{Worsted, 885.812, 0.001},
		{LinenLea, 1653.52, 0.01},
		{WoollenRun, 310.034, 0.001},
		{WoollenCut, 1653.52, 0.01},
		{SpunSilk, 590.541, 0.001}, // counted as cotton is: C. P. Brooks, "Cotton Manufacturing", 3rd ed. 1892
		{MetricCount, 1000, 0},
		{Tex, 1, 0},
		{Dtex, 0.1, 0},
		{Denier, 1.0 / 9, 1e-9},
	} {
		if got := float(t, yarn(t, c.system, 1, 1).NumberIn(Tex, 9)); math.Abs(got-c.k) > c.within {
			t.Errorf("number 1 in %v is %v tex, want %v", c.system, got, c.k)
		}
	}
}

// GNU Units, definitions file, "yarn linear density", as a second opinion.
func TestYarnSecondOpinion(t *testing.T) {
	for system, unit := range map[CountSystem]string{
		Cotton: "cottonyarncount", Worsted: "worstedyarncount", LinenLea: "linenyarncount", WoollenRun: "woolyarnrun",
		WoollenCut: "yarncut", MetricCount: "metricyarncount", Tex: "tex^-1", Denier: "denier^-1", Dtex: "drex^-1",
	} {
		got := float(t, yarn(t, system, 1, 1).NumberIn(YardsPerPound, 9))
		want := float(t, gnuUnits(t, unit, "yard/pound"))
		if math.Abs(got/want-1) > 1e-9 {
			t.Errorf("number 1 %v is %v yd/lb here and %v in GNU Units", system, got, want)
		}
	}
}

// The finished yarn in another system, against print.
func TestYarnNumbers(t *testing.T) {
	for _, c := range []struct {
		yarn   string
		system CountSystem
		want   float64
		within float64
	}{
		// ASTM D2260-03(2013).
		{"tex 100", Denier, 900, 0},
		{"cotton 1", Denier, 5314.87, 0.005},
		{"tex 30", Cotton, 19.7, 0.05},
		{"cotton 10", Worsted, 15, 0},
		{"cotton 10", LinenLea, 28, 0},
		{"metric 1", YardsPerPound, 496.055, 0.0005},
		// 20s cotton = 30s worsted = 56s linen; 2/80s = 40s; spun silk 30s/2 is 30s already: C. P. Brooks,
		// "Cotton Manufacturing", 3rd ed. 1892.
		{"cotton 20", Worsted, 30, 0},
		{"cotton 20", LinenLea, 56, 0},
		{"2/80s cotton", Cotton, 40, 0},
		{"30s/2 spun silk", SpunSilk, 30, 0},
		{"30s/2 spun silk", Cotton, 30, 0},
		// S. Ableman 2018, guild page, hmwg.org.
		{"cotton 8/2", YardsPerPound, 3360, 0},
		{"cotton 10/2", YardsPerPound, 4200, 0},
		// B. Elkins, blog.yarn.com.
		{"cotton 3/2", YardsPerPound, 1260, 0},
		{"linen 20/2", YardsPerPound, 3000, 0},
		{"worsted 2/10", YardsPerPound, 2800, 0},
		// M. Petrini 2020. Its spun silk 20/2, 5,000 as sold, is numbered in the metric count: 4,961.
		{"worsted 20/2", YardsPerPound, 5600, 0},
		{"cotton 20/2", YardsPerPound, 8400, 0},
		{"Nm 20/2", YardsPerPound, 5000, 40},
		// mypollywogs.com. 2/28 in the worsted count isn't 2/28 in the metric one, 14,000 m/kg.
		{"cotton 16/2", YardsPerPound, 6720, 0},
		{"worsted 2/24", YardsPerPound, 6720, 0},
		{"worsted 2/28", YardsPerPound, 7840, 0},
		{"worsted 3/15", YardsPerPound, 2800, 0},
		{"Nm 2/28", MetresPerKilogram, 14000, 0},
		// A web table prints 5/2 cotton as 2,400; 840 x 5 / 2 is 2,100.
		{"cotton 5/2", YardsPerPound, 2100, 0},
	} {
		y, err := ParseYarn(c.yarn)
		if err != nil {
			t.Error(err)
			continue
		}
		if got := float(t, y.NumberIn(c.system, 9)); math.Abs(got-c.want) > c.within {
			t.Errorf("%s is %v in %v, want %v within %v", c.yarn, got, c.system, c.want, c.within)
		}
	}
}

func TestLengthAndMassOfYarn(t *testing.T) {
	// 9,240 yd of 44s cotton are 11 hanks, a quarter of a pound (Brooks 1892).
	if m, err := yarn(t, Cotton, 44, 1).MassOf(9240 * Yard); err != nil || m != Pound/4 {
		t.Errorf("9,240 yd of 44s weigh %v, %v; want a quarter of a pound", m, err)
	}
	// 2.5 oz of 3,360 yd/lb are 525 yd (cuponthebus, "Arithmetic", web log 2018).
	if l, err := yarn(t, YardsPerPound, 3360, 1).LengthOf(5 * Ounce / 2); err != nil || l.In(Yards, 3) != "525 yd" {
		t.Errorf("2.5 oz of 3,360 yd/lb are %v, %v; want 525 yd", l, err)
	}
	// 22 in at 24 ends an inch, 4 yd: 2,112 yd of 8/2 cotton, not quite two thirds of a pound, 0.629
	// (Measured Threads, web log, towels).
	if m, err := yarn(t, Cotton, 8, 2).MassOf(2112 * Yard); err != nil || m.In(Pounds, 3) != "0.629 lb" {
		t.Errorf("2,112 yd of 8/2 cotton weigh %v, %v; want 0.629 lb", m, err)
	}
}

func TestYarnOutOfRange(t *testing.T) {
	for _, c := range []struct {
		system CountSystem
		number YarnNumber
		plies  int
	}{
		{CountSystem(99), YarnNumberOne, 1},
		{Cotton, 0, 1},
		{Cotton, -1, 1},
		{Cotton, math.MaxInt64, 1},
		{Cotton, YarnNumberOne, 0},
		{Cotton, YarnNumberOne, 100},
		{YardsPerPound, 1000 * YarnNumberOne, 2},
		{Tex, 1, 1},
		{Tex, 200_000 * YarnNumberOne, 1},
	} {
		if y, err := NewYarnSize(c.system, c.number, c.plies); err == nil || !y.IsZero() {
			t.Errorf("NewYarnSize(%v, %v, %d) = %v, %v; want an error", c.system, c.number, c.plies, y, err)
		}
	}
	var none YarnSize
	if _, err := none.LengthOf(Pound); err == nil {
		t.Error("the zero yarn has a length")
	}
	if _, err := none.MassOf(Yard); err == nil {
		t.Error("the zero yarn has a mass")
	}
	if _, err := none.In(Tex); err == nil || none.NumberIn(Tex, 2) != "" || none.PerMass(Metric) != "" {
		t.Error("the zero yarn has a number")
	}
	fine := yarn(t, Tex, 1, 1)
	if _, err := fine.LengthOf(math.MaxInt64); err == nil {
		t.Error("the longest yarn is no error")
	}
	if _, err := fine.LengthOf(-1); err == nil {
		t.Error("a negative mass is no error")
	}
	if _, err := fine.MassOf(-1); err == nil {
		t.Error("a negative length is no error")
	}
	if _, err := yarn(t, Tex, 100_000, 1).MassOf(math.MaxInt64); err == nil {
		t.Error("the heaviest yarn is no error")
	}
}

// Another system and back loses nothing that shows: at most a millionth of a number in the coarser
// scale of the two. A yarn's length comes back from its mass to within what one nanogram measures.
func TestYarnSystemsThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := anyYarn(t)
		to := CountSystem(rapid.IntRange(0, len(countSystems)-1).Draw(t, "to"))
		over, err := y.In(to)
		if err != nil || over.Number() < YarnNumberOne/10 {
			t.Skip("too fine or too coarse for the other system to show")
		}
		want, _ := strconv.ParseFloat(y.NumberIn(Tex, 9), 64)
		got, _ := strconv.ParseFloat(over.NumberIn(Tex, 9), 64)
		if math.Abs(got/want-1) > 1e-5 {
			t.Fatalf("%v is %v in %v: %v tex against %v", y, over, to, want, got)
		}
		l := Length(rapid.Int64Range(0, int64(MaxLength)).Draw(t, "length"))
		m, err := y.MassOf(l)
		if err != nil {
			t.Fatal(err)
		}
		back, err := y.LengthOf(m)
		if err != nil || back < l || back-l > 10_001 {
			t.Fatalf("%v of %v weigh %v, which measure %v, %v", l, y, m, back, err)
		}
	})
}
