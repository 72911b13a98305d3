package sheet

import (
	"context"
	"slices"
	"strings"
	"testing"
	"time"

	"millside/plan"
	"millside/plan/stripe"
	"millside/plan/stripe/schedule"
	"millside/plan/times"

	"pgregory.net/rapid"
)

// eachColour is the wall sheet of stripes of which each colour is a chain of its own.
func eachColour(t *testing.T, text string, chainEnds int) (*Wall, *plan.Plan) {
	t.Helper()
	s := plan.DefaultSpec()
	s.Stripes, s.Group, s.Positions, s.ChainEnds = text, 1, 8, chainEnds
	made, err := stripe.ForPlan(context.Background(), s, stripe.Ask{Way: schedule.ChainEach,
		Limits: schedule.Limits{Quick: true}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.New(made.Spec)
	if err != nil {
		t.Fatal(err)
	}
	return NewWall(p, times.PublishedPace(), time.Time{}), p
}

// By hand: 8 and 9 four times are 68 ends, and the border makes 76. The 36 white ones take two chains of at most 20.
func TestOrderListIsFolded(t *testing.T) {
	wall, _ := eachColour(t, "4 times (8 black, 9 white), 8 black", 20)
	var got []string
	for _, b := range wall.Picked.Blocks {
		got = append(got, b.Ends()+": "+b.String())
	}
	if want := []string{"ends 1 to 68: 4 times (8 C, 9 D)", "ends 69 to 76: 8 C"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	if wall.Picked.Picks != 9 {
		t.Errorf("%d picks", wall.Picked.Picks)
	}
	of := map[string][]int{}
	for _, c := range wall.Wound {
		colour := c.Ends[strings.LastIndex(c.Ends, " ")+1:]
		of[colour] = append(of[colour], c.Number)
	}
	for colour, chains := range of {
		if want := colour + ": chains " + plan.Listed(chains); !strings.Contains(wall.Picked.String(), want) {
			t.Errorf("%s lacks %q", wall.Picked, want)
		}
	}
	if len(of["white"]) < 2 || len(of) != 2 {
		t.Errorf("chains of %v", of)
	}
}

// Whoever follows the list picks each end of the warp in its colour, and a warp in one chain has no list.
func TestOrderListIsTheOrder(t *testing.T) {
	for _, text := range []string{"3 red, 2 white, 5 blue", "3 times (1 red, 2 white, 1 red)",
		"2 times (2 times (1 red, 1 blue), 6 white), 4 times (1 red, 1 white), 9 blue"} {
		wall, p := eachColour(t, text, 0)
		end := 0
		for _, b := range wall.Picked.Blocks {
			if b.First != end+1 {
				t.Fatalf("%s: %s after end %d", text, b.Ends(), end)
			}
			for range b.Times {
				for _, one := range b.Picks {
					for range one.Ends {
						if end++; p.EndColour(end) != one.Colour {
							t.Fatalf("%s: end %d is %s, the list has %s", text, end, p.ColourText(p.EndColour(end)),
								one.Letter)
						}
					}
				}
			}
			if b.Last != end {
				t.Fatalf("%s: %s, and the list is at end %d", text, b.Ends(), end)
			}
		}
		if end != p.EndsWound() {
			t.Fatalf("%s: the list has %d of %d ends", text, end, p.EndsWound())
		}
	}
	if plain := NewWall(plainPlan(t, func(s *plan.Spec) {}), times.PublishedPace(), time.Time{}); plain.Picked != nil {
		t.Errorf("a plain warp has %s", plain.Picked)
	}
}

// What is drawn together gives the list again.
func TestFoldedIsTheList(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.SliceOfN(rapid.IntRange(1, 3), 0, 60).Draw(t, "list")
		var got []int
		foldAlike(want, func(a, b int) bool { return a == b }, func(times int, part []int) {
			got = append(got, slices.Repeat(part, times)...)
		})
		if !slices.Equal(got, want) {
			t.Fatalf("%v", got)
		}
	})
}
