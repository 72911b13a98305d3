package tui

import (
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/counter/journal"
	"millside/tui/internal/hand"
	"millside/tui/look"
)

// pages are the screens that the goldens show.
var pages = []struct {
	name string
	make func(*bench) screen
}{
	{"home", homePage},
	{"alone", func(b *bench) screen { return alonePage{deps: b.deps, under: homePage(b)} }},
	{"alone-refused", func(b *bench) screen {
		next, _ := alonePage{deps: b.deps,
			under: homePage(b)}.update(tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}, b.clock.T)
		return next
	}},
	{"home-empty", func(b *bench) screen { return newHome(b.deps, listing{}, b.clock.T) }},
}

// homePage has half-wound, finished and damaged records.
func homePage(b *bench) screen {
	now := b.clock.T
	list := []journal.Summary{
		{Path: "a", Name: "Kitchen towels, undyed", Passes: 40, Laid: 17, Begun: true, Ends: 396, Standing: 170,
			Last: now.Add(-time.Hour)},
		{Path: "b", Name: "Wool blanket", Passes: 66, Laid: 66, Begun: true, Ends: 660, Standing: 660, Wound: true,
			Last: now.Add(-24 * time.Hour)},
		{Path: "c", Name: "scarf", Err: &journal.DamageError{Path: "c", Line: 12, Why: "the checksum is wrong"}},
		{Path: "d", Name: "Runner in linen", Passes: 20, Laid: 20, Begun: true, Ends: 200, Standing: 200, Wound: true,
			Finished: true, Last: now.Add(-30 * 24 * time.Hour)},
	}
	return newHome(b.deps, listing{list: list}, now)
}

// goldens are the pages as golden files show them.
func goldens() []hand.Page {
	var all []hand.Page
	for _, page := range pages {
		all = append(all, hand.Page{Name: page.name, Make: func(t *testing.T, p termenv.Profile) func(w, h int) string {
			return page.make(newBench(t, p)).view
		}})
	}
	return all
}

func TestGolden(t *testing.T) { hand.Golden(t, goldens()) }

func TestColourRepeatsThePlainPage(t *testing.T) { hand.ColourRepeats(t, goldens()) }

func TestDecimalComma(t *testing.T) { hand.DecimalComma(t, goldens()) }

func TestPagesFitEverySize(t *testing.T) {
	hand.FitEverySize(t, goldens(), hand.Size{W: 23, H: 9}, hand.Size{W: look.MinWidth, H: look.MinHeight})
}
