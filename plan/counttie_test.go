package plan_test

import (
	"testing"

	"millside/plan"

	"pgregory.net/rapid"
)

// tiesByHand finds the count ties of a chain pass by pass, as hands would: each time the group arrives at
// the counting cross and the number has been reached before it came, the groups up to the one that reached
// it are tied. The last pass needs no tie.
func tiesByHand(c plan.Chain, every int) []plan.Tie {
	var ties []plan.Tie
	stood, lastTied, lastTotal := 0, 0, 0 // before the pass
	reachedAt, reachedTotal := 0, 0       // the pass that reached a number not yet tied, 0 for none
	for i, pass := range c.Passes {
		k := i + 1
		if k%2 == 1 && reachedAt > 0 && k < len(c.Passes) {
			ties = append(ties, plan.Tie{Due: k, From: lastTied + 1, To: reachedAt, Ends: reachedTotal - lastTotal,
				Total: reachedTotal})
			lastTied, lastTotal, reachedAt = reachedAt, reachedTotal, 0
		}
		if every > 0 && stood/every != (stood+pass.Ends())/every {
			reachedAt, reachedTotal = k, stood+pass.Ends()
		}
		stood += pass.Ends()
	}
	return ties
}

func TestTies(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := must(t, drawSpec(t))
		for _, c := range p.Chains {
			ties := tiesByHand(c, p.Spec.TieEvery)
			for k := -1; k <= len(c.Passes)+2; k++ {
				var at, due plan.Tie
				next := 0
				for _, tie := range ties {
					if tie.Due == k {
						at = tie
					}
					if tie.Due <= k {
						due = tie
					}
					if next == 0 && tie.Due >= k {
						next = tie.Due
					}
				}
				if got, ok := p.TieAt(c, k); got != at || ok != (at.Due > 0) {
					t.Fatalf("TieAt(%d) = %+v, want %+v", k, got, at)
				}
				if got, ok := p.TieDue(c, k); got != due || ok != (due.Due > 0) {
					t.Fatalf("TieDue(%d) = %+v, want %+v", k, got, due)
				}
				if got := p.NextTie(c, k); got != next {
					t.Fatalf("NextTie(%d) = %d, want %d", k, got, next)
				}
			}
		}
	})
}

// Worked by hand. With 10 by 10 the number is reached on the return, and the next arrival ties exactly the
// groups before the one just laid. With 20 the hundredth end comes on the way out with pass 5: the tie waits
// for pass 7, and leaves out two groups, so that it holds 100 all the same.
func TestTiesByHand(t *testing.T) {
	for _, tt := range []struct {
		name               string
		ends, group, every int
		want               []plan.Tie
		text               string // of the first
	}{
		{"every 100, 400 by 10", 400, 10, 100,
			[]plan.Tie{{11, 1, 10, 100, 100}, {21, 11, 20, 100, 200}, {31, 21, 30, 100, 300}},
			"count tie at the counting cross round groups 1 to 10, 100 ends so far; not the one just laid"},
		{"every 100, 200 by 20", 200, 20, 100, []plan.Tie{{7, 1, 5, 100, 100}},
			"count tie at the counting cross round groups 1 to 5, 100 ends so far; not the last 2"},
		{"a tie at each group, made bout by bout", 60, 10, 10, []plan.Tie{{3, 1, 2, 20, 20}, {5, 3, 4, 20, 40}},
			"count tie at the counting cross round groups 1 to 2, 20 ends so far; not the one just laid"},
		{"no round number with whole groups", 90, 9, 50, []plan.Tie{{7, 1, 6, 54, 54}},
			"count tie at the counting cross round groups 1 to 6, 54 ends so far; not the one just laid"},
		{"one group in a tie", 60, 12, 12, []plan.Tie{{3, 1, 2, 24, 24}}, ""},
		{"the last pass arrives, and needs no tie", 110, 10, 100, nil, ""},
		{"none asked for", 400, 10, 0, nil, ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s := plan.DefaultSpec()
			s.Ends, s.Group, s.Positions, s.TieEvery = tt.ends, tt.group, 24, tt.every
			p := must(t, s)
			var got []plan.Tie
			for k := range p.Chains[0].Passes {
				if tie, ok := p.TieAt(p.Chains[0], k+1); ok {
					got = append(got, tie)
				}
			}
			if len(got) != len(tt.want) {
				t.Fatalf("got %+v, want %+v", got, tt.want)
			}
			for i := range got {
				if got[i] != tt.want[i] {
					t.Errorf("got %+v, want %+v", got[i], tt.want[i])
				}
			}
			if tt.text != "" && got[0].String() != tt.text {
				t.Errorf("got %q", got[0].String())
			}
		})
	}
}
