package frame

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/measure"
)

func TestRoomOnTheMill(t *testing.T) {
	for _, c := range []struct {
		name   string
		mill   Mill
		wanted measure.Length
		height measure.Length
		turns  string
		steps  int
		fits   bool
	}{
		// A mill of two yards round and a seven yard warp: three and a half turns (common practice, no
		// source).
		{"seven yards", Mill{Circumference: 2 * measure.Yard, PegStep: 18 * measure.Inch}, 7 * measure.Yard, 0, "3.5",
			2, true},
		// A reel one yard to a side, four yards round: 10 yards are 2.5 turns (M. Powell 2010,
		// thewefthandedweaver.com).
		{"ten yards", Mill{Circumference: 4 * measure.Yard, PegStep: measure.Yard}, 10 * measure.Yard, 0, "2.5", 2,
			true},
		// Own example: 15 turns that climb 10 cm each don't fit on 1.2 m.
		{"too low", Mill{Circumference: 2 * measure.Metre, PegStep: measure.Metre, Rise: 10 * measure.Centimetre},
			30 * measure.Metre, 120 * measure.Centimetre, "15", 0, false},
		// The same on a mill that is just as high as they climb.
		{"just high enough", Mill{Circumference: 2 * measure.Metre, PegStep: measure.Metre,
			Rise: 10 * measure.Centimetre}, 30 * measure.Metre, 150 * measure.Centimetre, "15", 0, true},
	} {
		r, err := c.mill.Room(c.wanted, c.height, measure.Imperial)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if r.Path.Turns() != c.turns || r.Steps != c.steps || r.Fits != c.fits || (r.Rows[2].Warning == "") != c.fits {
			t.Errorf("%s: %s turns, %d steps, fits %v, %+v", c.name, r.Path.Turns(), r.Steps, r.Fits, r.Rows[2])
		}
	}
	if _, err := (Mill{}).Room(0, -1, measure.Metric); len(measure.FieldErrors(err)) != 4 {
		t.Errorf("nothing given: %v", err)
	}
}

// Where the far end peg goes is told for the real length, rounded up to what the pegs give, and never adds up to
// another: where a turn isn't a whole number of steps, they are counted from the near end peg.
func TestWhereTheFarPegGoes(t *testing.T) {
	yards := Mill{Circumference: 2 * measure.Yard, PegStep: 18 * measure.Inch}
	for _, c := range []struct {
		mill   Mill
		wanted measure.Length
		where  string
		length string
		how    string
	}{
		{yards, 7*measure.Yard + 11*measure.Inch, "3 turns and 3 peg steps", "7.5 yd",
			"7.31 yd / 0.5 yd = 14.61, so 15 steps: 3.75 turns, 7.5 yd"},
		{yards, 8 * measure.Yard, "4 turns", "8 yd", "8 yd / 0.5 yd = 16, so 16 steps: 4 turns, 8 yd"},
		{yards, measure.Yard, "2 peg steps", "1 yd", "1 yd / 0.5 yd = 2, so 2 steps: 0.5 turns, 1 yd"},
		{Mill{Circumference: 250 * measure.Centimetre, PegStep: 30 * measure.Centimetre}, 59 * measure.Metre / 10,
			"20 peg steps, 2.4 turns", "6.56 yd",
			"6.45 yd / 0.3281 yd = 19.67, so 20 steps: 2.4 turns, 6.56 yd"},
		// A turn of 4 m that climbs 3 m is 5 m long: four steps of 1.25 m.
		{Mill{Circumference: 4 * measure.Metre, PegStep: measure.Metre, Rise: 3 * measure.Metre}, 6 * measure.Metre,
			"1 turn and 1 peg step", "6.84 yd",
			"6.56 yd / 1.367 yd = 4.8, so 5 steps: 1.25 turns, 6.84 yd"},
	} {
		r, err := c.mill.Room(c.wanted, 0, measure.Imperial)
		if err != nil {
			t.Fatal(err)
		}
		if r.Where() != c.where || r.Path.Length.In(measure.Yards, 2) != c.length ||
			r.Rows[0].How.WithNumbers.String() != c.how {
			t.Errorf("%v: %s, %s, %s", c.wanted, r.Where(), r.Path.Length.In(measure.Yards, 2),
				r.Rows[0].How.WithNumbers)
		}
		if m := c.mill; m.Circumference.Times(r.Turns)+r.Beyond != m.PegStep.Times(r.Path.Steps) {
			t.Errorf("%v: %d turns and %v are not %d steps", c.wanted, r.Turns, r.Beyond, r.Path.Steps)
		}
	}
}

// Helix: length of a turn = sqrt(C^2 + H^2) (sciencing.com, helical length): radius 1 m, rise 2 m, 6.60
// m a turn there with pi as 3.145; exactly 6.5938.
func TestTurnOfAHelix(t *testing.T) {
	m := Mill{Circumference: 6_283_185_307 * measure.Nanometre, PegStep: measure.Metre, Rise: 2 * measure.Metre}
	r, err := m.Room(measure.Metre, 0, measure.Metric)
	if err != nil || r.Path.PerTurn.In(measure.Metres, 4) != "6.5938 m" {
		t.Errorf("a turn is %v, %v; want 6.5938 m", r.Path.PerTurn, err)
	}
}

func TestRoomAgreesWithThePath(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := measure.Length(rapid.Int64Range(int64(measure.Centimetre), int64(measure.Metre)).Draw(t, "step"))
		m := Mill{PegStep: step, Circumference: step.Times(rapid.IntRange(20, 40).Draw(t, "steps")),
			Rise: measure.Length(rapid.Int64Range(0, int64(20*measure.Centimetre)).Draw(t, "rise"))}
		if m.Circumference < 20*measure.Centimetre || m.Circumference > 20*measure.Metre {
			t.Skip("no mill")
		}
		wanted := measure.Length(rapid.Int64Range(1, int64(100*measure.Metre)).Draw(t, "wanted"))
		r, err := m.Room(wanted, 0, measure.Metric)
		if err != nil {
			t.Fatal(err)
		}
		if r.Turns*r.StepsInTurn+r.Steps != r.Path.Steps || r.GuideString < wanted || r.Cut <= r.GuideString {
			t.Fatalf("%d turns and %d steps of %d, %d in all; string %v for %v", r.Turns, r.Steps, r.StepsInTurn,
				r.Path.Steps, r.GuideString, wanted)
		}
	})
}

func TestBoard(t *testing.T) {
	b := Board{measure.Yard, measure.Yard, measure.Yard, measure.Yard / 2}
	for _, c := range []struct {
		wanted    measure.Length
		distances int
		length    measure.Length
		fits      bool
	}{{measure.Yard, 1, measure.Yard, true}, {measure.Yard + 1, 2, 2 * measure.Yard, true},
		{7 * measure.Yard / 2, 4, 7 * measure.Yard / 2, true}, {4 * measure.Yard, 4, 7 * measure.Yard / 2, false}} {
		p, err := b.Path(c.wanted, measure.Imperial)
		if err != nil || p.Distances != c.distances || p.Length != c.length || p.Fits != c.fits ||
			p.Short != max(c.wanted-c.length, 0) {
			t.Errorf("%v: %+v, %v", c.wanted, p, err)
		}
	}
	if _, err := (Board{0, 11 * measure.Metre}).Path(math.MaxInt64,
		measure.Metric); len(measure.FieldErrors(err)) != 3 {
		t.Errorf("a bad board: %v", err)
	}
	if _, err := (Board{}).Path(measure.Metre, measure.Metric); err == nil {
		t.Error("a board without pegs is no error")
	}
	long := make(Board, 30)
	for i := range long {
		long[i] = measure.Metre
	}
	if p, err := long.Path(30*measure.Metre, measure.Metric); err != nil || !p.Fits || len(p.How.WithNumbers) > 200 {
		t.Errorf("a long board: %+v, %v", p, err)
	}
}
