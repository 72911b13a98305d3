package plan_test

import (
	"testing"

	"millside/plan"
	"millside/plan/frame"
	"millside/plan/measure"
	"millside/plan/wind"
)

// Passes, bouts and ends against what others have printed or do.
func TestPublishedCounts(t *testing.T) {
	tests := []struct {
		source                 string
		ends, group            int
		passes, bouts, perBout int
	}{
		// A reel: up and down once lays 2 ends a thread carried; 450 ends wound as 2 x 225.
		{"M. Powell 2010, thewefthandedweaver.com: one thread", 2 * 225, 1, 450, 225, 2},
		// Arithmetic, from memory: no printed example was found.
		{"from memory: 40 bobbins, 2,000 ends, 25 bouts", 2000, 40, 50, 25, 80},
		// The mill there has 96 bobbins and makes 52 passes. A paddle here has at most 60 positions, so
		// each of those passes is laid as two halves of 48: twice the passes, the same ends.
		{"humphriesweaving.co.uk, beaming: 4,992 = 96 x 52, by halves", 4992, 48, 2 * 52, 52, 96},
		{"common practice, no source: 400 ends by ten", 400, 10, 40, 20, 20},
		{"common practice, no source: 500 ends by ten", 500, 10, 50, 25, 20},
	}
	for _, tt := range tests {
		t.Run(tt.source, func(t *testing.T) {
			s := plan.DefaultSpec()
			s.Ends, s.Group, s.Positions = tt.ends, tt.group, measure.MaxPositions
			p := must(t, s)
			c := p.Chains[0]
			if p.Passes() != tt.passes || p.EndsWound() != tt.ends || c.EndsAfter(2) != tt.perBout {
				t.Errorf("%d passes, %d ends, %d a bout; want %d, %d, %d",
					p.Passes(), p.EndsWound(), c.EndsAfter(2), tt.passes, tt.ends, tt.perBout)
			}
			returns := 0
			for _, pass := range c.Passes {
				if pass.Direction == wind.Return {
					returns++
				}
			}
			if returns != tt.bouts || c.Finish() != wind.AtLease {
				t.Errorf("%d bouts, finish %v; want %d, at the lease", returns, c.Finish(), tt.bouts)
			}
		})
	}
}

// Chains in use (allfiberarts.com): 650 ends in 3, 450 in 2, 600 in 3. The limit that gives them is the
// test's; that the count of chains is the fewest that keep to it is the plan's.
func TestPublishedChains(t *testing.T) {
	for _, tt := range []struct{ ends, limit, chains int }{{650, 220, 3}, {450, 230, 2}, {600, 200, 3}} {
		s := plan.DefaultSpec()
		s.Ends, s.ChainEnds = tt.ends, tt.limit
		if got := len(must(t, s).Chains); got != tt.chains {
			t.Errorf("%d ends by %d: %d chains, want %d", tt.ends, tt.limit, got, tt.chains)
		}
	}
}

// Turns round a mill against what others have printed or do.
func TestPublishedTurns(t *testing.T) {
	for _, tt := range []struct {
		source        string
		circumference measure.Length
		wanted        measure.Length
		turns         string
	}{
		{"common practice, no source: two yards round, a warp of seven", 2 * measure.Yard, 7 * measure.Yard, "3.5"},
		{"M. Powell 2010, thewefthandedweaver.com: four yards round, ten yards", 4 * measure.Yard, 10 * measure.Yard,
			"2.5"},
	} {
		p := frame.Mill{Circumference: tt.circumference, PegStep: 18 * measure.Inch}.Path(tt.wanted)
		if p.Turns() != tt.turns || p.Length != tt.wanted {
			t.Errorf("%s: %s turns, %v; want %s", tt.source, p.Turns(), p.Length, tt.turns)
		}
	}
}

// A helix of radius 1 m that rises 2 m a turn: sciencing.com, "helical length", N x sqrt(C^2 + H^2),
// which gives 6.60 m there with pi taken as 3.145; with pi itself it is 6.5938 m.
func TestPublishedHelix(t *testing.T) {
	const twoPi = 6_283_185_307 * measure.Nanometre // the way round a circle of radius 1 m
	m := frame.Mill{Circumference: twoPi, PegStep: twoPi, Rise: 2 * measure.Metre}
	if got := m.Path(measure.Metre).PerTurn.In(measure.Metres, 4); got != "6.5938 m" {
		t.Errorf("a turn is %s, want 6.5938 m", got)
	}
	m.Circumference, m.PegStep = 6_290*measure.Millimetre, 6_290*measure.Millimetre
	if got := m.Path(measure.Metre).PerTurn.In(measure.Metres, 2); got != "6.6 m" {
		t.Errorf("with pi as 3.145 a turn is %s, want 6.6 m", got)
	}
}

// Sums of lengths that others have printed.
func TestPublishedLengths(t *testing.T) {
	// International yard and pound agreement, 1959: 1 in = 25.4 mm and 1 yd = 0.9144 m, exactly.
	for text, want := range map[string]int64{"1 in": 25_400_000, "1 yd": 914_400_000, "36 in": 914_400_000,
		"3 ft": 914_400_000} {
		if got, err := measure.ParseLength(text); err != nil || int64(got) != want {
			t.Errorf("%s is %d nm, want %d; %v", text, got, want, err)
		}
	}
	// sparksearcher web log: 8 ends an inch x 7 in = 56 ends; 56 x 90 in = 5,040 in = 140 yd.
	if got := (90 * measure.Inch).Times(8 * 7); got != 5040*measure.Inch || got.In(measure.Yards, 9) != "140 yd" {
		t.Errorf("56 ends of 90 in are %v", got)
	}
	// interweave.com, "Determining warp length": 4 x 34 in + 31 in waste + 13 in take-up = 180 in = 5 yd.
	if got := (34 * measure.Inch).Times(4) + 31*measure.Inch + 13*measure.Inch; got != 180*measure.Inch ||
		got.In(measure.Yards, 9) != "5 yd" {
		t.Errorf("four towels take %v", got)
	}
	// Measured Threads, web log: 22 in at 24 ends an inch are 528 ends; at 4 yd 2,112 yd.
	s := plan.DefaultSpec()
	s.Ends, s.Group, s.Length = 528, 12, 4*measure.Yard
	if got := must(t, s).WarpYarn(); got != 2112*measure.Yard {
		t.Errorf("528 ends of 4 yd take %v", got)
	}
}
