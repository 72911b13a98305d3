package form

import (
	"testing"

	"github.com/charmbracelet/x/exp/golden"
	"github.com/muesli/termenv"

	"millside/plan"
	"millside/plan/measure"
	"millside/tui/internal/hand"
	"millside/tui/look"
)

// The golden screens are in testdata. After a change that is meant, write them anew with
// go test ./tui/... -run TestGolden -update, and look at the difference.

// pages are the screens that the goldens show.
var pages = []struct {
	name string
	make func(*bench) Model
}{
	{"form", func(b *bench) Model { return b.press(New(b.deps, hand.Towels()), "tab") }},
	{"form-wrong", func(b *bench) Model {
		return b.typed(b.press(New(b.deps, hand.Towels()), "tab", "tab", "ctrl+u"), "0")
	}},
	{"striped-form", func(b *bench) Model {
		spec := hand.Towels()
		spec.Stripes = "mirror (3 cream, 2 moss, 1 plum), 2 cream where cream is #f2ead7, moss is #5b7a3a, plum is #6a2c55"
		return b.press(New(b.deps, spec), "pgdown")
	}},
	{"striped-form-wrong", func(b *bench) Model {
		spec := hand.Towels()
		spec.Stripes = "8 white, 21 times (4 red; 14 white"
		return b.press(New(b.deps, spec), "pgdown")
	}},
	{"form-cloth", func(b *bench) Model { return b.press(New(b.deps, fourTowels(b.t)), "pgdown", "pgdown") }},
	{"form-cloth-how", func(b *bench) Model { return b.press(New(b.deps, fourTowels(b.t)), "pgdown", "pgdown", "ctrl+o") }},
	{"form-yarn", func(b *bench) Model { return b.press(New(b.deps, fourTowels(b.t)), "pgdown", "pgdown", "pgdown") }},
	{"form-paddle", func(b *bench) Model {
		return b.press(New(b.deps, fourTowels(b.t)), "pgdown", "pgdown", "pgdown", "pgdown")
	}},
	{"form-mill", func(b *bench) Model {
		return b.press(New(b.deps, fourTowels(b.t)), "pgup", "pgup", "pgup", "pgup")
	}},
	{"form-chains", func(b *bench) Model { return b.press(New(b.deps, fourTowels(b.t)), "pgup", "pgup", "pgup") }},
	{"form-loom", func(b *bench) Model { return b.press(New(b.deps, fourTowels(b.t)), "pgup", "pgup") }},
}

// yarnPages show yarns, which have their own colours where the terminal can show them.
var yarnPages = map[string]bool{"striped-form": true, "striped-form-wrong": true}

// fourTowels is a whole plan: four towels of 20 by 28 inches at 20 ends an inch.
func fourTowels(t *testing.T) plan.Spec {
	s := withClothDefaults(hand.Towels())
	s.Cloth.Used, s.Cloth.Length.Pieces, s.Cloth.Length.Hem = true, 4, measure.Inch
	s.ChainEnds, s.Pegs = 250, plan.Pegs{Length: 6 * measure.Inch, Layers: 3}
	hand.Read(t, map[interface{ UnmarshalText([]byte) error }]string{
		&s.Loom.Sett: "20 per inch", &s.Cloth.Picks: "18 per inch", &s.Yarn.Size: "8/2 cotton",
		&s.Yarn.Cones: "120 g, 200 g", &s.Yarn.Tube: "30 g", &s.Loom.Reed: "10 dents an inch",
	})
	s.Loom.Raddle.Space = measure.Inch / 2
	s.Mill.Height = 60 * measure.Inch
	return s
}

func TestGolden(t *testing.T) {
	for _, page := range pages {
		shown := page.make(newBench(t, termenv.Ascii))
		for _, size := range append(hand.Sizes, hand.Extremes...) {
			t.Run(size.String()+"/"+page.name, func(t *testing.T) {
				view := shown.View(size.W, size.H)
				hand.Fits(t, view, size)
				golden.RequireEqual(t, []byte(view))
			})
		}
	}
}

// Yarns have colours of their own, more than the sixteen that all the rest is drawn with.
func TestGoldenYarns(t *testing.T) {
	for _, page := range pages {
		if !yarnPages[page.name] {
			continue
		}
		shown := page.make(newBench(t, termenv.TrueColor))
		for _, size := range hand.Sizes {
			t.Run(size.String()+"/"+page.name, func(t *testing.T) {
				golden.RequireEqual(t, []byte(shown.View(size.W, size.H)))
			})
		}
	}
}

// Colour only repeats what is written: a page without its colours is the plain page.
func TestColourRepeatsThePlainPage(t *testing.T) {
	for _, page := range pages {
		if yarnPages[page.name] {
			continue // a stripe in its own colour needs its letter only once
		}
		plain := page.make(newBench(t, termenv.Ascii))
		for _, profile := range []termenv.Profile{termenv.ANSI, termenv.TrueColor} {
			shown := page.make(newBench(t, profile))
			for _, size := range hand.Sizes {
				view := shown.View(size.W, size.H)
				if hand.Bare(view) != plain.View(size.W, size.H) {
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
					hand.Fits(t, s.View(w, h), hand.Size{W: w, H: h})
				}
			}
			hand.Fits(t, s.View(look.MinWidth, look.MinHeight), hand.Size{W: look.MinWidth, H: look.MinHeight})
		})
	}
}
