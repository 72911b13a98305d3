package hand

import (
	"testing"

	"github.com/charmbracelet/x/exp/golden"
	"github.com/muesli/termenv"
)

// Page is a screen that golden files show. The files are in testdata; after a change that is meant, write them anew
// with go test ./tui/... -run TestGolden -update, and look at the difference.
type Page struct {
	Name string
	// Yarns says that it shows yarns, which have their own colours where the terminal can show them.
	Yarns bool
	// Make gives what draws the page in the colours of a terminal.
	Make func(*testing.T, termenv.Profile) func(w, h int) string
}

// Golden compares each page without colour, at every size.
func Golden(t *testing.T, pages []Page) {
	for _, page := range pages {
		view := page.Make(t, termenv.Ascii)
		for _, size := range append(Sizes, Extremes...) {
			t.Run(size.String()+"/"+page.Name, func(t *testing.T) {
				shown := view(size.W, size.H)
				Fits(t, shown, size)
				golden.RequireEqual(t, []byte(shown))
			})
		}
	}
}

// GoldenYarns compares the pages that show yarns in their own colours, more than the sixteen that all the rest is
// drawn with.
func GoldenYarns(t *testing.T, pages []Page) {
	for _, page := range pages {
		if !page.Yarns {
			continue
		}
		view := page.Make(t, termenv.TrueColor)
		for _, size := range Sizes {
			t.Run(size.String()+"/"+page.Name, func(t *testing.T) {
				golden.RequireEqual(t, []byte(view(size.W, size.H)))
			})
		}
	}
}

// ColourRepeats fails where a page without its colours isn't the plain page: colour only repeats what is written. A
// stripe in its own colour needs its letter only once, so pages with yarns are left out.
func ColourRepeats(t *testing.T, pages []Page) {
	for _, page := range pages {
		if page.Yarns {
			continue
		}
		plain := page.Make(t, termenv.Ascii)
		for _, profile := range []termenv.Profile{termenv.ANSI, termenv.TrueColor} {
			view := page.Make(t, profile)
			for _, size := range Sizes {
				shown := view(size.W, size.H)
				if Bare(shown) != plain(size.W, size.H) {
					t.Errorf("%s at %s says something else in colour:\n%s", page.Name, size, shown)
				}
			}
		}
	}
}

// FitEverySize fails where a page is higher or wider than the terminal, since a view that is too high loses its top
// lines: from 1x1 to 301x101 in steps, and at the least size laid out for.
func FitEverySize(t *testing.T, pages []Page, step, least Size) {
	for _, page := range pages {
		t.Run(page.Name, func(t *testing.T) {
			view := page.Make(t, termenv.Ascii)
			for w := 1; w <= 301; w += step.W {
				for h := 1; h <= 101; h += step.H {
					Fits(t, view(w, h), Size{W: w, H: h})
				}
			}
			Fits(t, view(least.W, least.H), least)
		})
	}
}
