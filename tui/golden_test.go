package tui

import (
	"testing"
	"time"

	"github.com/charmbracelet/x/exp/golden"
	"github.com/muesli/termenv"

	"millside/counter"
	"millside/tui/internal/hand"
	"millside/tui/look"
)

// The golden screens are in testdata. After a change that is meant, write them anew with
// go test ./tui/... -run TestGolden -update, and look at the difference.

// pages are the screens that the goldens show.
var pages = []struct {
	name string
	make func(*bench) screen
}{
	{"home", homePage},
	{"home-empty", func(b *bench) screen { return newHome(b.deps, nil, nil, b.clock.T) }},
}

// homePage has half-wound, finished and damaged records.
func homePage(b *bench) screen {
	now := b.clock.T
	list := []counter.Summary{
		{Path: "a", Name: "Kitchen towels, undyed", Passes: 40, Laid: 17, Ends: 396, Standing: 170, Last: now.Add(-time.Hour)},
		{Path: "b", Name: "Wool blanket", Passes: 66, Laid: 66, Ends: 660, Standing: 660, Wound: true, Last: now.Add(-24 * time.Hour)},
		{Path: "c", Name: "scarf", Err: &counter.DamageError{Path: "c", Line: 12, Why: "the checksum is wrong"}},
		{Path: "d", Name: "Runner in linen", Passes: 20, Laid: 20, Ends: 200, Standing: 200, Wound: true, Finished: true, Last: now.Add(-30 * 24 * time.Hour)},
	}
	return newHome(b.deps, list, nil, now)
}

func TestGolden(t *testing.T) {
	for _, page := range pages {
		shown := page.make(newBench(t, termenv.Ascii))
		for _, size := range append(hand.Sizes, hand.Extremes...) {
			t.Run(size.String()+"/"+page.name, func(t *testing.T) {
				view := shown.view(size.W, size.H)
				hand.Fits(t, view, size)
				golden.RequireEqual(t, []byte(view))
			})
		}
	}
}

// Colour only repeats what is written: a page without its colours is the plain page.
func TestColourRepeatsThePlainPage(t *testing.T) {
	for _, page := range pages {
		plain := page.make(newBench(t, termenv.Ascii))
		for _, profile := range []termenv.Profile{termenv.ANSI, termenv.TrueColor} {
			shown := page.make(newBench(t, profile))
			for _, size := range hand.Sizes {
				view := shown.view(size.W, size.H)
				if hand.Bare(view) != plain.view(size.W, size.H) {
					t.Errorf("%s at %s says something else in colour:\n%s", page.name, size, view)
				}
			}
		}
	}
}

// No page may be higher or wider than the terminal, at any size: a view that is too high loses its
// top lines.
func TestPagesFitEverySize(t *testing.T) {
	for _, page := range pages {
		t.Run(page.name, func(t *testing.T) {
			s := page.make(newBench(t, termenv.Ascii))
			for w := 1; w <= 301; w += 23 {
				for h := 1; h <= 101; h += 9 {
					hand.Fits(t, s.view(w, h), hand.Size{W: w, H: h})
				}
			}
			hand.Fits(t, s.view(look.MinWidth, look.MinHeight), hand.Size{W: look.MinWidth, H: look.MinHeight})
		})
	}
}
