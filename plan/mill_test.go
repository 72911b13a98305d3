package plan_test

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/frame"
	"millside/plan/measure"
)

func drawMill(t *rapid.T) frame.Mill {
	c := rapid.Int64Range(int64(20*measure.Centimetre), int64(20*measure.Metre)).Draw(t, "circumference")
	return frame.Mill{
		Circumference: measure.Length(c),
		PegStep:       measure.Length(rapid.Int64Range(int64(measure.Centimetre), c).Draw(t, "peg step")),
		Rise:          measure.Length(rapid.Int64Range(0, c).Draw(t, "rise")),
	}
}

// reaches says in whole numbers whether n peg steps give the wanted length: n steps climb n x rise x
// step / circumference, so the square of their length is n^2 step^2 (C^2 + R^2) / C^2.
func reaches(m frame.Mill, n int, wanted measure.Length) bool {
	sq := func(x int64) *big.Int { return new(big.Int).Mul(big.NewInt(x), big.NewInt(x)) }
	have := sq(int64(n))
	have.Mul(have, sq(int64(m.PegStep)))
	have.Mul(have, new(big.Int).Add(sq(int64(m.Circumference)), sq(int64(m.Rise))))
	need := new(big.Int).Mul(sq(int64(wanted)), sq(int64(m.Circumference)))
	return have.Cmp(need) >= 0
}

// The path is as long as was wanted, and one peg step less would not be.
func TestPathIsRoundedUpByLessThanAStep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawMill(t)
		wanted := measure.Length(rapid.Int64Range(int64(10*measure.Centimetre), int64(1000*measure.Metre)).Draw(t,
			"wanted"))
		p := m.Path(wanted)
		if p.Length < wanted || !reaches(m, p.Steps, wanted) {
			t.Fatalf("%v on %+v gives %d steps, %v", wanted, m, p.Steps, p.Length)
		}
		if reaches(m, p.Steps-1, wanted) {
			t.Fatalf("%v on %+v: %d steps would do, not %d", wanted, m, p.Steps-1, p.Steps)
		}
		if p.PerTurn < m.Circumference {
			t.Fatalf("a turn of %v is shorter than the circumference %v", p.PerTurn, m.Circumference)
		}
	})
}

// With no rise there are no roots, so the length is exact.
func TestPathWithoutRiseIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawMill(t)
		m.Rise = 0
		wanted := measure.Length(rapid.Int64Range(int64(10*measure.Centimetre), int64(1000*measure.Metre)).Draw(t,
			"wanted"))
		p := m.Path(wanted)
		if p.Length != m.PegStep*measure.Length(p.Steps) || p.PerTurn != m.Circumference {
			t.Fatalf("%d steps of %v give %v", p.Steps, m.PegStep, p.Length)
		}
	})
}

func TestPathOfWhatIsOutOfRange(t *testing.T) {
	good := frame.Mill{Circumference: 2 * measure.Yard, PegStep: 18 * measure.Inch}
	for _, tt := range []struct {
		mill   frame.Mill
		wanted measure.Length
	}{
		{good, 0}, {good, -measure.Yard},
		{frame.Mill{PegStep: measure.Inch}, measure.Yard},
		{frame.Mill{Circumference: measure.Yard}, measure.Yard},
		{frame.Mill{Circumference: -measure.Yard, PegStep: measure.Inch}, measure.Yard},
		{frame.Mill{Circumference: measure.Yard, PegStep: measure.Inch, Rise: -1}, measure.Yard},
	} {
		if p := tt.mill.Path(tt.wanted); p.Steps != 0 || p.Length != 0 || p.Turns() != "0" {
			t.Errorf("%v on %+v gives %+v", tt.wanted, tt.mill, p)
		}
	}
}
