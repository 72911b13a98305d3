package form

import (
	"testing"

	"github.com/muesli/termenv"

	"millside/plan"
	"millside/plan/measure"
	"millside/tui/internal/hand"
	"millside/tui/look"
)

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
		spec.Stripes = "mirror (3 cream, 2 moss, 1 plum), 2 cream where cream is #f2ead7, moss is #5b7a3a, plum is " +
			"#6a2c55"
		return b.press(New(b.deps, spec), "pgdown")
	}},
	{"striped-form-wrong", func(b *bench) Model {
		spec := hand.Towels()
		spec.Stripes = "8 white, 21 times (4 red; 14 white"
		return b.press(New(b.deps, spec), "pgdown")
	}},
	{"form-cloth", func(b *bench) Model { return b.press(New(b.deps, fourTowels(b.t)), "pgdown", "pgdown") }},
	{"form-cloth-how", func(b *bench) Model {
		return b.press(New(b.deps, fourTowels(b.t)), "pgdown", "pgdown",
			"ctrl+o")
	}},
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

// yarnPages draw stripes, whose letters give way to colours where the terminal can show them.
var yarnPages = map[string]bool{"striped-form": true}

// fourTowels is a whole plan: four towels of 20 by 28 inches at 20 ends an inch.
func fourTowels(t *testing.T) plan.Spec {
	s := withClothDefaults(hand.Towels())
	s.Cloth.Used, s.Cloth.Length.Pieces, s.Cloth.Length.Hem = true, 4, measure.Inch
	s.Cloth.Width.Finished, s.Cloth.Length.Piece = 20*measure.Inch, 28*measure.Inch
	s.ChainEnds, s.Pegs = 250, plan.Pegs{Length: 6 * measure.Inch, Layers: 3}
	hand.Read(t, map[interface{ UnmarshalText([]byte) error }]string{
		&s.Loom.Sett: "20 per inch", &s.Cloth.Picks: "18 per inch", &s.Yarn.Size: "8/2 cotton",
		&s.Yarn.Cones: "120 g, 200 g", &s.Yarn.Tube: "30 g", &s.Loom.Reed: "10 dents an inch",
	})
	s.Loom.Raddle.Space = measure.Inch / 2
	s.Mill.Height = 60 * measure.Inch
	return s
}

// goldens are the pages as golden files show them.
func goldens() []hand.Page {
	var all []hand.Page
	for _, page := range pages {
		all = append(all, hand.Page{Name: page.name, Yarns: yarnPages[page.name],
			Make: func(t *testing.T, p termenv.Profile) func(w, h int) string {
				return page.make(newBench(t, p)).View
			}})
	}
	return all
}

func TestGolden(t *testing.T) { hand.Golden(t, goldens()) }

func TestGoldenYarns(t *testing.T) { hand.GoldenYarns(t, goldens()) }

func TestColourRepeatsThePlainPage(t *testing.T) { hand.ColourRepeats(t, goldens()) }

func TestDecimalComma(t *testing.T) { hand.DecimalComma(t, goldens()) }

func TestPagesFitEverySize(t *testing.T) {
	hand.FitEverySize(t, goldens(), hand.Size{W: 23, H: 9}, hand.Size{W: look.MinWidth, H: look.MinHeight})
}
