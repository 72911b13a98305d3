package project

import (
	"fmt"
	"math"
	"math/big"
	"testing"
	"time"

	"millside/plan"
	"millside/plan/cloth"
	"millside/plan/frame"
	"millside/plan/internal/loomtest"
	"millside/plan/internal/measuretest"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/times"
	"millside/plan/wind"

	"pgregory.net/rapid"
)

// odd draws the numbers that sums break on, and ordinary ones.
func odd(t *rapid.T, name string) int {
	return rapid.OneOf(
		rapid.SampledFrom([]int{0, 1, -1, 2, math.MaxInt, math.MinInt, math.MaxInt32, measure.MaxEnds, measure.MaxEnds +
			1, measure.MaxPositions, 1 << 53}),
		rapid.IntRange(0, 500), rapid.Int(),
	).Draw(t, name)
}

// No input makes the engine panic: zero values, negative and huge ones are answered with an error or
// with a bounded result.
func TestNothingPanics(t *testing.T) {
	y := []measure.YarnSize{{}, measuretest.Yarn(t, measure.Cotton, 8, 2), measuretest.Yarn(t, measure.Tex, 100_000, 1)}
	setts := []measure.Sett{{}, measuretest.Sett(t, "20 an inch"), measuretest.Sett(t, "1000 an inch"),
		measuretest.Sett(t, "0.1 an inch"), measuretest.Sett(t, "123456789/1000000007 a cm")}
	reeds := []loom.Reed{{}, loomtest.Reed(t, "10 dents an inch"), loomtest.Reed(t, "0.1 dents an inch"),
		loomtest.Reed(t, "1100 Scotch").WithWidth(measure.Metre)}
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string) int { return odd(t, name) }
		length := func(name string) measure.Length {
			return measure.Length(rapid.OneOf(rapid.Map(rapid.Int64(), func(v int64) int64 { return v }),
				rapid.Int64Range(0, int64(3*measure.Metre))).Draw(t, name))
		}
		share := func(name string) measure.Percent { return measure.Percent(n(name)) }
		yarn, at, r := rapid.SampledFrom(y).Draw(t, "yarn"), rapid.SampledFrom(setts).Draw(t, "sett"),
			rapid.SampledFrom(reeds).Draw(t, "reed")
		units, kind := measure.LengthUnitSystem(n("units")), uint8(n("kind"))

		_, _ = cloth.Width{Finished: length("finished"), Shrinkage: share("a"), DrawIn: share("b"),
			Fibre: cloth.Fibre(kind), Sett: at, Doubled: n("doubled"), Floating: n("floating"), Repeat: n("repeat"),
			Balance: n("balance"), Group: n("group"), Units: units}.Ends()
		_, _ = cloth.Length{Piece: length("piece"), Pieces: n("pieces"), Hem: length("hem"), Fringe: length("fringe"),
			Shrinkage: share("c"), Fibre: cloth.Fibre(kind), TakeUp: share("d"), TakeUpOf: cloth.TakeUpOf(kind),
			Sample: length("sample"), Waste: length("waste"), Knotting: length("knot"), Units: units}.Warp()
		_, _ = cloth.Weft{Width: length("width"), Woven: length("woven"), Picks: at, TakeUp: share("e"), Yarn: yarn,
			Units: units}.Estimate()
		_, _ = measure.HelpSett(yarn, measure.Weave{Name: "", Ends: n("ends"), Intersections: n("over")},
			measure.DiameterFactor{Hundredths: n("factor")}, units)
		_, _ = measure.YarnDiameter(yarn, measure.DiameterFactor{Hundredths: n("factor")})
		_, _ = yarn.LengthOf(measure.Mass(n("mass")))
		_, _ = yarn.MassOf(length("length"))
		_, _ = yarn.In(measure.CountSystem(kind))
		_ = yarn.NumberIn(measure.CountSystem(kind), n("decimals"))
		_, _ = measure.NewYarnSize(measure.CountSystem(kind), measure.YarnNumber(n("number")), n("plies"))
		_ = measure.CountSystem(kind).String() + loom.ReedSystem(kind).String() + measure.SettUnit(kind).String() +
			cloth.Fibre(kind).String() + cloth.TakeUpOf(kind).String() + loom.Side(kind).String()
		if s, err := measure.SettOf(big.NewRat(int64(n("num")), int64(max(n("den"), 1))),
			measure.SettUnit(kind)); err == nil {
			_, _, _ = s.EndsUp(length("width")), s.WidthOf(n("ends")),
				s.In(measure.SettUnit(n("unit"))).Shown(n("decimals"))
		}
		_, _ = loom.Raddle{Space: length("space"),
			Spaces: n("spaces")}.Fill(loom.Raddling{Ends: n("ends"), Sett: at, Groups: []int{n("group")},
			Split: kind%2 == 0, FirstEnd: loom.Side(kind)})
		_, _ = loom.ParseReed(fmt.Sprintf("%d/%d %s", n("num"), n("den"), loom.ReedSystem(kind)))
		_, _ = r.Gives([]int{n("dent"), n("dent")})
		_, _ = r.Order(at, n("longest"))
		_ = r.NearOrders(at, n("longest"), share("within"))
		_ = r.WithWidth(length("width")).Dents(measure.SettUnit(kind)).String()
		if l, err := r.Sley(loom.Sleying{Ends: n("ends"), Order: []int{1, n("dent")}, EdgeDents: n("edge"),
			EdgeEnds: n("edge ends"), FirstEnd: loom.Side(kind)}); err == nil {
			_ = l.DentOf(n("end"))
		}
		_ = loom.RankReeds(reeds, at, n("ends"))
		anyPace := times.Pace{Low: time.Duration(n("low")), Middle: time.Duration(n("middle")),
			High: time.Duration(n("high")), Passes: n("passes")}
		s := plan.DefaultSpec()
		s.Ends, s.Positions, s.Yarn.Packages, s.ReturnOrder, s.ChainEnds = n("ends"), n("positions"), n("packages"),
			wind.ReturnOrder(kind), n("chain")
		s.Loom.Sett, s.Loom.Raddle.Space = at, length("space")
		if p, err := plan.New(s); err == nil && s.Ends <= 5000 {
			choices, _ := Choices(p, anyPace)
			boundedChoices(t, p, choices)
		}
		chains := plan.ChainAsk{Ends: n("ends"), Group: n("group"), LastPass: wind.LastPass(kind),
			Most: n("most"), Sett: at, Raddle: loom.Raddle{Space: length("space"), Spaces: n("spaces")},
			Repeat: n("repeat"), Before: n("before")}
		parts, _ := chains.Split(nil)
		boundedChains(t, chains, parts)
		_, _ = frame.RoomOnPeg(length("peg"), length("thread"), n("layers"), units)
		_, _ = frame.Board{length("one"), length("two")}.Path(length("wanted"), units)
		_, _ = frame.Mill{Circumference: length("round"), PegStep: length("step"), Rise: length("rise"),
			Height: length("high")}.Room(length("wanted"), length("height"), units)
		pace := times.Pace{Low: time.Duration(n("low")), Middle: time.Duration(n("middle")),
			High: time.Duration(n("high")), Passes: n("passes"), Warps: n("warps")}
		_ = times.JoinPaces(pace, pace.At(big.NewRat(int64(n("turns")), 7)), pace.From(nil)).Source()
		_, _ = times.ParseMinutes(length("minutes").String())
		_ = measure.Mass(n("mass")).String() + measure.Mass(n("mass")).In(measure.MassUnit(kind), n("decimals"))
		_ = share("shown").String()
	})
}

// boundedChoices checks that each choice takes the paddle that there is and gives the ends, with fewer spare ones than
// a group has.
func boundedChoices(t *rapid.T, p *plan.Plan, choices []Choice) {
	for _, c := range choices {
		if c.Group < 1 || c.Group > p.Spec.Positions || c.Passes < 1 || c.Passes > p.Spec.Ends || c.Spares < 0 ||
			c.Spares >= c.Group {
			t.Fatalf("%d ends on %d positions: a choice out of its bounds: %+v", p.Spec.Ends, p.Spec.Positions, c)
		}
	}
}

// boundedChains checks that the chains follow on one another from end 1 on, and lay all ends that are wanted and fewer
// than a group more.
func boundedChains(t *rapid.T, a plan.ChainAsk, parts []plan.ChainPart) {
	end := 0
	for _, part := range parts {
		ends := 0
		for _, n := range part.Passes {
			ends += n
		}
		if part.First != end+1 || part.Last-part.First+1 != ends {
			t.Fatalf("%+v: a chain out of its bounds: %+v", a, part)
		}
		end = part.Last
	}
	if len(parts) > 0 && (end < a.Ends || end >= a.Ends+a.Group) {
		t.Fatalf("%+v: %d ends", a, end)
	}
}
