package tui

import (
	"errors"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/charmbracelet/x/exp/golden"
	"github.com/muesli/termenv"

	"millside/counter"
	"millside/plan"
	"millside/plan/stripe"
)

// The golden screens are in testdata. After a change that is meant, write them anew with
// go test ./tui -run TestGolden -update, and look at the difference.

var goldenSizes = []struct{ w, h int }{{60, 18}, {80, 24}, {120, 40}, {200, 60}}

// extremeSizes are the smallest and the largest terminals that are laid out for.
var extremeSizes = []struct{ w, h int }{{40, 12}, {300, 100}}

// pages are the screens that the goldens show. Each is made anew for every picture.
var pages = []struct {
	name string
	make func(*bench) screen
}{
	{"home", homePage},
	{"home-empty", func(b *bench) screen { return newHome(b.deps, nil, nil) }},
	{"form", func(b *bench) screen { return b.press(newForm(b.deps, towels()), "tab") }},
	{"form-wrong", func(b *bench) screen {
		return b.typed(b.press(newForm(b.deps, towels()), "tab", "tab", "ctrl+u"), "0")
	}},
	{"striped-form", func(b *bench) screen {
		spec := towels()
		spec.Stripes = "mirror (3 cream, 2 moss, 1 plum), 2 cream where cream is #f2ead7, moss is #5b7a3a, plum is #6a2c55"
		return b.press(newForm(b.deps, spec), "pgdown")
	}},
	{"striped-form-wrong", func(b *bench) screen {
		spec := towels()
		spec.Stripes = "8 white, 21 times (4 red; 14 white"
		return b.press(newForm(b.deps, spec), "pgdown")
	}},
	{"form-cloth", func(b *bench) screen { return b.press(newForm(b.deps, fourTowels(b.t)), "pgdown", "pgdown") }},
	{"form-cloth-how", func(b *bench) screen { return b.press(newForm(b.deps, fourTowels(b.t)), "pgdown", "pgdown", "ctrl+o") }},
	{"form-yarn", func(b *bench) screen { return b.press(newForm(b.deps, fourTowels(b.t)), "pgdown", "pgdown", "pgdown") }},
	{"form-paddle", func(b *bench) screen {
		return b.press(newForm(b.deps, fourTowels(b.t)), "pgdown", "pgdown", "pgdown", "pgdown")
	}},
	{"form-mill", func(b *bench) screen {
		return b.press(newForm(b.deps, fourTowels(b.t)), "pgup", "pgup", "pgup", "pgup")
	}},
	{"form-chains", func(b *bench) screen { return b.press(newForm(b.deps, fourTowels(b.t)), "pgup", "pgup", "pgup") }},
	{"form-loom", func(b *bench) screen { return b.press(newForm(b.deps, fourTowels(b.t)), "pgup", "pgup") }},
	{"first-pass", func(b *bench) screen { return b.winding(towels(), 0) }},
	{"outward", func(b *bench) screen { return b.winding(towels(), 16) }},
	{"return", func(b *bench) screen { return b.winding(towels(), 17) }},
	{"return-left-handed", func(b *bench) screen {
		s := towels()
		s.Hand, s.ReturnOrder = plan.LeftHanded, plan.MirroredOrder
		return b.winding(s, 17)
	}},
	{"count-tie", func(b *bench) screen { return b.winding(towels(), 11) }},
	{"two-left", func(b *bench) screen { return b.winding(towels(), 38) }},
	{"last-pass", func(b *bench) screen { return b.winding(towels(), 39) }},
	{"ignored", func(b *bench) screen {
		m := b.press(b.winding(towels(), 4), "space")
		return b.send(m, keyMsg("space"))
	}},
	{"far", func(b *bench) screen { return b.press(b.winding(towels(), 16), "f") }},
	{"far-last", func(b *bench) screen { return b.press(b.winding(towels(), 39), "f") }},
	{"chains", func(b *bench) screen {
		s := towels()
		s.ChainEnds = 150
		return b.winding(s, 3)
	}},
	{"lease", func(b *bench) screen { return b.press(b.winding(towels(), 1), "space") }},
	{"lease-mirrored", func(b *bench) screen {
		s := towels()
		s.ReturnOrder = plan.MirroredOrder
		return b.press(b.winding(s, 1), "space")
	}},
	{"paused", func(b *bench) screen { return b.press(b.winding(towels(), 17), "p") }},
	{"resume", func(b *bench) screen {
		m := b.winding(towels(), 18)
		m.mode = modeResume
		return m
	}},
	{"recount", func(b *bench) screen {
		return b.typed(b.press(b.typed(b.press(b.winding(towels(), 17), "c"), "8"), "enter"), "7")
	}},
	{"broken", func(b *bench) screen { return b.typed(b.press(b.winding(towels(), 17), "b"), "4") }},
	{"wrong-turn", func(b *bench) screen { return b.press(b.winding(towels(), 17), "w") }},
	{"note", func(b *bench) screen { return b.typed(b.press(b.winding(towels(), 17), "n"), "thin place, position 4") }},
	{"keys", func(b *bench) screen { return b.press(b.winding(towels(), 17), "?") }},
	{"striped-thread", func(b *bench) screen { return b.winding(plaid(), 0) }},
	{"striped-outward", func(b *bench) screen { return b.press(b.winding(plaid(), 0), "space") }},
	{"striped-lease", func(b *bench) screen { return atMode(b, b.press(b.winding(plaid(), 0), "space"), modeLease) }},
	{"striped-change", func(b *bench) screen { return atChange(b) }},
	{"striped-after-change", func(b *bench) screen { return b.press(atChange(b), "space") }},
	{"settings", func(b *bench) screen {
		b.deps.prefs = &Settings{Keys: []string{"f5"}}
		return b.press(b.winding(towels(), 17), "s")
	}},
	{"finish", func(b *bench) screen { return b.winding(towels(), 40) }},
	{"finish-dyed", func(b *bench) screen {
		s := towels()
		s.Dyed = true
		return b.press(b.winding(s, 40), "space", "space", "space", "space", "space")
	}},
	{"finish-all", func(b *bench) screen { return finished(b, false) }},
	{"done", func(b *bench) screen { return finished(b, true) }},
	{"not-saved", func(b *bench) screen {
		m := b.winding(towels(), 17)
		m.mode, m.broken = modeBroken, errors.New("the record could not be written: no space left on device")
		return m
	}},
}

// fourTowels is a whole plan: four towels of 20 by 28 inches at 20 ends an inch.
func fourTowels(t *testing.T) plan.Spec {
	s := withClothDefaults(towels())
	s.Cloth.Used, s.Cloth.Length.Pieces, s.Cloth.Length.Hem = true, 4, plan.Inch
	s.ChainEnds, s.Pegs = 250, plan.Pegs{Length: 6 * plan.Inch, Layers: 3}
	for v, text := range map[interface{ UnmarshalText([]byte) error }]string{
		&s.Loom.Sett: "20 per inch", &s.Cloth.Picks: "18 per inch", &s.Yarn.Size: "8/2 cotton",
		&s.Yarn.Cones: "120 g, 200 g", &s.Yarn.Tube: "30 g", &s.Loom.Reed: "10 dents an inch",
	} {
		if err := v.UnmarshalText([]byte(text)); err != nil {
			t.Fatal(err)
		}
	}
	s.Loom.Raddle.Space = plan.Inch / 2
	s.Mill.Height = 60 * plan.Inch
	return s
}

// striped makes the spec of a striped warp.
func striped(name, stripes string, positions int) func() plan.Spec {
	return sync.OnceValue(func() plan.Spec {
		s := towels()
		s.Name, s.Positions, s.Group, s.Stripes = name, positions, 1, stripes
		made, err := stripe.ForPlan(s, stripe.Limits{}, stripe.DefaultWeights())
		if err != nil {
			panic(err)
		}
		return made.Spec
	})
}

// plaid needs no change of the paddle, fade some.
var (
	plaid = striped("Plaid scarf", "6 cream, 3 times (8 moss, 2 ochre, 14 cream, 3 plum, 1 ochre), 16 sky where "+
		"cream is #f2ead7, moss is #5b7a3a, ochre is #d9962b, plum is #6a2c55, sky is #4f8fc0", 10)
	fade = striped("Fading runner", "20 cream, 20 moss, 18 ochre, 24 plum where cream is #f2ead7, moss is #5b7a3a, ochre is #d9962b, plum is #6a2c55", 6)
)

// atMode winds on until a page comes up.
func atMode(b *bench, s screen, want mode) screen {
	for range 60 {
		if s.(winding).mode == want {
			return s
		}
		s = b.press(s, "space")
	}
	b.t.Fatal("the page never came")
	return nil
}

// atChange winds the fading runner up to its first change of the paddle.
func atChange(b *bench) screen {
	return atMode(b, b.press(b.winding(fade(), 0), "space"), modeChange)
}

// homePage has half-wound, finished and damaged records.
func homePage(b *bench) screen {
	now := b.clock.now()
	list := []counter.Summary{
		{Path: "a", Name: "Kitchen towels, undyed", Passes: 40, Laid: 17, Ends: 396, Standing: 170, Last: now.Add(-time.Hour)},
		{Path: "b", Name: "Wool blanket", Passes: 66, Laid: 66, Ends: 660, Standing: 660, Wound: true, Last: now.Add(-24 * time.Hour)},
		{Path: "c", Name: "scarf", Err: &counter.DamageError{Path: "c", Line: 12, Why: "the checksum is wrong"}},
		{Path: "d", Name: "Runner in linen", Passes: 20, Laid: 20, Ends: 200, Standing: 200, Wound: true, Finished: true, Last: now.Add(-30 * 24 * time.Hour)},
	}
	return newHome(b.deps, list, nil)
}

// finished goes through all finishing steps; closed also closes the record.
func finished(b *bench, closed bool) screen {
	m := b.winding(towels(), 39)
	b.append(m.rec, counter.Event{Kind: counter.Noted, Chain: 1, Pass: 39, Text: "knot in position 4"})
	m.st = m.rec.State()
	s := b.press(m, "space")
	for range m.st.Plan.Finishing(m.st.Current()) {
		s = b.press(s, "space")
	}
	if closed {
		s = b.press(s, "space")
	}
	return s
}

func TestGolden(t *testing.T) {
	for _, colour := range []struct {
		name    string
		profile termenv.Profile
	}{{"plain", termenv.Ascii}, {"colour", termenv.ANSI}, {"truecolor", termenv.TrueColor}} {
		for _, size := range goldenSizes {
			for _, page := range pages {
				if colour.profile == termenv.TrueColor && !strings.HasPrefix(page.name, "striped") {
					continue // nothing but yarn has more than sixteen colours
				}
				t.Run(colour.name+"/"+sizeName(size.w, size.h)+"/"+page.name, func(t *testing.T) {
					view := page.make(newBench(t, colour.profile)).view(size.w, size.h)
					fits(t, view, size.w, size.h)
					golden.RequireEqual(t, []byte(view))
				})
			}
		}
	}
}

func TestGoldenExtremes(t *testing.T) {
	for _, size := range extremeSizes {
		for _, page := range pages {
			t.Run(sizeName(size.w, size.h)+"/"+page.name, func(t *testing.T) {
				view := page.make(newBench(t, termenv.Ascii)).view(size.w, size.h)
				fits(t, view, size.w, size.h)
				golden.RequireEqual(t, []byte(view))
			})
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
					fits(t, s.view(w, h), w, h)
				}
			}
			fits(t, s.view(minWidth, minHeight), minWidth, minHeight)
		})
	}
}
