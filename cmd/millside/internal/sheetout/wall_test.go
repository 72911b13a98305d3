package sheetout

import (
	"bytes"
	"context"
	"strings"
	"sync"
	"testing"
	"time"

	"millside/cmd/millside/internal/prose"
	"millside/plan"
	"millside/plan/sheet"
	"millside/plan/stripe"
	"millside/plan/stripe/schedule"
	"millside/plan/times"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"
)

// stripedSpecs are a few striped warps, cut into passes once.
var stripedSpecs = sync.OnceValue(func() []plan.Spec {
	var list []plan.Spec
	for _, stripes := range []string{"8 white, 5 times (4 red, 4 white), 8 red where red is #b03a2e",
		"3 sand, 7 slate, 1 rust, 12 sand",
		"3 times (3 sea blue, 2 grey, 5 white), 3 sea blue"} {
		s := plan.DefaultSpec()
		s.Stripes, s.Positions, s.Group = stripes, 8, 8 // a small paddle, whose search is over at once
		for _, way := range []schedule.Way{schedule.Searched, schedule.ChainEach} {
			made, err := stripe.ForPlan(context.Background(), s, stripe.Ask{Way: way}, nil)
			if err != nil {
				panic(err)
			}
			made.Spec.Schedule.Colours[0].Name = "*a_b* | <c> `d`"
			list = append(list, made.Spec)
		}
	}
	return list
})

// drawWall makes a wall sheet, plain or striped, with names that mean something in every format.
func drawWall(t *rapid.T) *sheet.Wall {
	s := plan.DefaultSpec()
	s.Name = rapid.SampledFrom([]string{"towels", "<b>*towels*</b> | a_b", "リネンの布", "a & b `c`"}).Draw(t, "name")
	s.Ends = rapid.IntRange(1, 900).Draw(t, "ends")
	s.ChainEnds = rapid.SampledFrom([]int{0, 100, 210}).Draw(t, "chain ends")
	if rapid.Bool().Draw(t, "striped") {
		name, chains := s.Name, s.ChainEnds
		s = rapid.SampledFrom(stripedSpecs()).Draw(t, "stripes")
		s.Name, s.ChainEnds = name, chains
	}
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	return sheet.NewWall(p, times.PublishedPace(), time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC))
}

// All that the wall sheet says stands in every format that is read by people.
func TestTheSameWallEverywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wall := drawWall(t)
		for _, format := range SheetFormats {
			var b bytes.Buffer
			if err := WriteWall(&b, wall, format); err != nil {
				t.Fatal(err)
			}
			if format == "json" {
				continue // its structure is tested against its schema
			}
			got := strings.ReplaceAll(oneLine(plainly[format](strings.ReplaceAll(b.String(), "**", ""))), "\u00A0", " ")
			has := func(what, s string) {
				if !strings.Contains(got, oneLine(s)) {
					t.Fatalf("%s lacks the %s %q:\n%s", format, what, s, b.String())
				}
			}
			has("title", wall.Title)
			has("summary", wall.Summary().String())
			has("day", wall.Date)
			has("threading", wall.Thread.Text)
			for _, c := range wall.Colours {
				has("colour", c.String())
			}
			for _, w := range wall.Ways {
				has("way", w.Title()+": "+w.String())
			}
			for _, c := range wall.Wound {
				for _, b := range c.Blocks {
					for _, step := range b.Steps {
						has("work", step.Work)
						has("letters", step.Letters)
					}
				}
				for _, tie := range c.Ties {
					has("count tie", tie.String())
				}
			}
			if wall.Picked != nil {
				has("leases", wall.Picked.String())
				for _, b := range wall.Picked.Blocks {
					has("picks", b.Ends()+": "+b.String())
				}
			}
			for _, e := range wall.After {
				for _, step := range e.Steps {
					has("step", step)
				}
			}
			if strings.Contains(b.String(), "ZgotmplZ") {
				t.Fatalf("a value was refused by the template:\n%s", b.String())
			}
		}
	})
}

// The text is at most 80 cells wide, whatever the warp is called.
func TestWallTextFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var b bytes.Buffer
		if err := WriteWall(&b, drawWall(t), "text"); err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(b.String()) {
			if line = strings.TrimSuffix(line, "\n"); ansi.StringWidth(line) > prose.TextWidth ||
				strings.TrimRight(line, " ") != line {
				t.Fatalf("too long, or ends in blanks: %q", line)
			}
		}
	})
}
