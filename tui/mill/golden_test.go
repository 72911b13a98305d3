package mill

import (
	"fmt"
	"testing"
	"time"

	"github.com/muesli/termenv"

	"millside/counter/journal"
	"millside/counter/session"
	"millside/plan/wind"
	"millside/tui/internal/hand"
	"millside/tui/look"
)

// pages are the screens that the goldens show. Each is made anew for every picture.
var pages = []struct {
	name string
	make func(*bench) page
}{
	{"first-pass", func(b *bench) page { return b.winding(hand.Towels(), 0) }},
	{"outward", func(b *bench) page { return b.winding(hand.Towels(), 16) }},
	{"return", func(b *bench) page { return b.winding(hand.Towels(), 17) }},
	{"return-left-handed", func(b *bench) page {
		s := hand.Towels()
		s.Hand, s.ReturnOrder = wind.LeftHanded, wind.MirroredOrder
		return b.winding(s, 17)
	}},
	{"count-tie", func(b *bench) page { return b.winding(hand.Towels(), 11) }},
	{"two-left", func(b *bench) page { return b.winding(hand.Towels(), 38) }},
	{"last-pass", func(b *bench) page { return b.winding(hand.Towels(), 39) }},
	{"ignored", func(b *bench) page {
		m := b.press(b.winding(hand.Towels(), 4), "space")
		return b.send(m, hand.Key("space"))
	}},
	{"far", func(b *bench) page { return b.press(b.winding(hand.Towels(), 16), "f") }},
	{"far-last", func(b *bench) page { return b.press(b.winding(hand.Towels(), 39), "f") }},
	{"chains", func(b *bench) page {
		s := hand.Towels()
		s.ChainEnds = 150
		return b.winding(s, 3)
	}},
	{"lease", func(b *bench) page { return b.press(b.winding(hand.Towels(), 1), "space") }},
	{"lease-mirrored", func(b *bench) page {
		s := hand.Towels()
		s.ReturnOrder = wind.MirroredOrder
		return b.press(b.winding(s, 1), "space")
	}},
	{"paused", func(b *bench) page { return b.press(b.winding(hand.Towels(), 17), "p") }},
	{"resume", func(b *bench) page {
		return b.again(b.winding(hand.Towels(), 18))
	}},
	{"recount", func(b *bench) page {
		return b.typed(b.press(b.typed(b.press(b.winding(hand.Towels(), 17), "c"), "8"), "enter"), "7")
	}},
	{"broken", func(b *bench) page { return b.typed(b.press(b.winding(hand.Towels(), 17), "b"), "4") }},
	{"wrong-turn", func(b *bench) page { return b.press(b.winding(hand.Towels(), 17), "w") }},
	{"note", func(b *bench) page {
		return b.typed(b.press(b.winding(hand.Towels(), 17), "n"), "thin place, position 4")
	}},
	{"keys", func(b *bench) page { return b.press(b.winding(hand.Towels(), 17), "?") }},
	{"striped-thread", func(b *bench) page { return b.winding(hand.Plaid(), 0) }},
	{"striped-outward", func(b *bench) page { return b.press(b.winding(hand.Plaid(), 0), "space") }},
	{"striped-lease", func(b *bench) page { return b.until(b.winding(hand.Plaid(), 0), session.AtQuestion) }},
	{"striped-change", func(b *bench) page { return atChange(b) }},
	{"striped-keys", func(b *bench) page { return b.press(b.press(b.winding(hand.Plaid(), 0), "space"), "?") }},
	{"striped-after-change", func(b *bench) page { return b.press(atChange(b), "space") }},
	{"settings", func(b *bench) page {
		return NewSettingsPage(b.deps.Styles, b.deps.Keys, Settings{Keys: []string{"f5"}}, nil, nil)
	}},
	{"finish", func(b *bench) page { return b.winding(hand.Towels(), 40) }},
	{"finish-dyed", func(b *bench) page {
		s := hand.Towels()
		s.Dyed = true
		return b.press(b.winding(s, 40), "space", "space", "space", "space", "space")
	}},
	{"finish-all", func(b *bench) page { return finished(b, false) }},
	{"done", func(b *bench) page { return finished(b, true) }},
	{"not-saved", func(b *bench) page {
		m := b.winding(hand.Towels(), 17)
		m.s, _ = m.s.Take(session.Press{}, b.clock.T.Add(time.Minute))
		m.s, _ = m.s.NotSaved(fmt.Errorf("%w: no space left on device", journal.ErrFailed))
		return m
	}},
}

// page is what the mill shows: winding or settings.
type page interface{ View(w, h int) string }

// yarnPages draw stripes, whose letters give way to colours where the terminal can show them.
var yarnPages = map[string]bool{"striped-outward": true, "striped-after-change": true}

// atChange winds the fading runner up to its first halt.
func atChange(b *bench) Model {
	return b.until(b.press(b.winding(hand.Fade(), 0), "space"), session.AtPeg)
}

// finished goes through all finishing steps; closed also closes the record.
func finished(b *bench, closed bool) Model {
	m := b.press(b.typed(b.press(b.winding(hand.Towels(), 39), "n"), "knot in position 4"), "enter", "space")
	for range m.s.State().Steps() {
		m = b.press(m, "space")
	}
	if closed {
		m = b.press(m, "space")
	}
	return m
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
	hand.FitEverySize(t, goldens(), hand.Size{W: 50, H: 11}, hand.Size{W: look.MinWidth, H: look.MinHeight})
}
