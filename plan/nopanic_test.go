package plan

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// odd draws the numbers that sums break on, and ordinary ones.
func odd(t *rapid.T, name string) int {
	return rapid.OneOf(
		rapid.SampledFrom([]int{0, 1, -1, 2, math.MaxInt, math.MinInt, math.MaxInt32, MaxEnds, MaxEnds + 1, MaxPositions, 1 << 53}),
		rapid.IntRange(0, 500), rapid.Int(),
	).Draw(t, name)
}

// No input makes the engine panic: zero values, negative and huge ones are answered with an error or
// with a bounded result.
func TestNothingPanics(t *testing.T) {
	y := []YarnSize{{}, yarn(t, Cotton, 8, 2), yarn(t, Tex, 100_000, 1)}
	setts := []Sett{{}, sett(t, "20 an inch"), sett(t, "1000 an inch"), sett(t, "0.1 an inch"), sett(t, "123456789/1000000007 a cm")}
	reeds := []Reed{{}, reed(t, "10 dents an inch"), reed(t, "0.1 dents an inch"), reed(t, "1100 Scotch").WithWidth(Metre)}
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string) int { return odd(t, name) }
		length := func(name string) Length {
			return Length(rapid.OneOf(rapid.Map(rapid.Int64(), func(v int64) int64 { return v }), rapid.Int64Range(0, int64(3*Metre))).Draw(t, name))
		}
		share := func(name string) Percent { return Percent(n(name)) }
		yarn, at, r := rapid.SampledFrom(y).Draw(t, "yarn"), rapid.SampledFrom(setts).Draw(t, "sett"), rapid.SampledFrom(reeds).Draw(t, "reed")
		units, kind := LengthUnitSystem(n("units")), uint8(n("kind"))

		_, _ = ClothWidth{length("finished"), share("a"), share("b"), Fibre(kind), at, n("doubled"), n("floating"), n("repeat"), n("balance"), n("group"), units}.Ends()
		_, _ = ClothLength{length("piece"), n("pieces"), length("hem"), length("fringe"), share("c"), Fibre(kind), share("d"), TakeUpOf(kind), length("sample"), length("waste"), length("knot"), units}.Warp()
		_, _ = Weft{length("width"), length("woven"), at, share("e"), yarn, units}.Estimate()
		_, _ = HelpSett(yarn, Weave{"", n("ends"), n("over")}, DiameterFactor{Hundredths: n("factor")}, units)
		_, _ = YarnDiameter(yarn, DiameterFactor{Hundredths: n("factor")})
		_, _ = yarn.LengthOf(Mass(n("mass")))
		_, _ = yarn.MassOf(length("length"))
		_, _ = yarn.In(CountSystem(kind))
		_ = yarn.NumberIn(CountSystem(kind), n("decimals"))
		_, _ = FoldYarns(yarn, yarn)
		_, _ = NewYarnSize(CountSystem(kind), YarnNumber(n("number")), n("plies"))
		_ = YarnSize{CountSystem(kind), YarnNumber(n("number")), n("plies")}.Notation()
		_ = CountSystem(kind).String() + ReedSystem(kind).String() + SettUnit(kind).String() + Fibre(kind).String() + TakeUpOf(kind).String() + Side(kind).String()
		if s, err := NewSett(n("num"), n("den"), SettUnit(kind)); err == nil {
			_, _, _ = s.EndsUp(length("width")), s.WidthOf(n("ends")), s.In(SettUnit(n("unit"))).Shown(n("decimals"))
		}
		_, _ = Raddle{length("space"), n("spaces")}.Fill(Raddling{n("ends"), at, n("group"), kind%2 == 0, Side(kind)})
		_, _ = NewReed(n("num"), n("den"), ReedSystem(kind), length("width"))
		_, _ = r.Gives([]int{n("dent"), n("dent")})
		_, _ = r.Order(at, n("longest"))
		_ = r.NearOrders(at, n("longest"), share("within"))
		_ = r.WithWidth(length("width")).Dents(SettUnit(kind)).String()
		if l, err := r.Sley(Sleying{n("ends"), []int{1, n("dent")}, n("edge"), n("edge ends"), Side(kind)}); err == nil {
			_ = l.DentOf(n("end"))
		}
		_ = RankReeds(reeds, at, n("ends"))
		s := DefaultSpec()
		s.Ends, s.Positions, s.Yarn.Packages, s.ReturnOrder, s.ChainEnds = n("ends"), n("positions"), n("packages"), ReturnOrder(kind), n("chain")
		s.Loom.Sett, s.Loom.Raddle.Space = at, length("space")
		if p, err := New(s); err == nil && s.Ends <= 5000 {
			_, _ = p.Choices(Pace{time.Duration(n("low")), time.Duration(n("middle")), time.Duration(n("high")), n("passes")})
		}
		_, _ = SplitChains(ChainAsk{n("ends"), n("group"), LastPass(kind), n("most"), at, Raddle{length("space"), n("spaces")}, n("repeat"), n("before")})
		_, _ = RoomOnPeg(length("peg"), length("thread"), n("layers"), units)
		_, _ = Board{length("one"), length("two")}.Path(length("wanted"), units)
		_, _ = Mill{length("round"), length("step"), length("rise"), length("high")}.Room(length("wanted"), length("height"), units)
		_, _ = PaceOf([]time.Duration{time.Duration(n("low")), time.Duration(n("high"))})
		_ = Pace{time.Duration(n("low")), time.Duration(n("middle")), time.Duration(n("high")), n("passes")}.For(n("passes")).String()
		_ = Mass(n("mass")).String() + Mass(n("mass")).In(MassUnit(kind), n("decimals"))
		_ = share("shown").String()
	})
}
