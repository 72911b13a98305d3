package tui

import (
	"fmt"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/counter/journal"
	"millside/tui/internal/hand"
)

// sixty is home with twenty half-wound warps, twenty that are not begun and twenty finished ones.
func sixty(b *bench) app {
	var list []journal.Summary
	for i := range 60 {
		sum := journal.Summary{Path: fmt.Sprint(i), Name: fmt.Sprintf("Warp %02d", i), Passes: 40, Ends: 400}
		switch i / 20 {
		case 0:
			sum.Laid, sum.Started = 3, b.clock.T.Add(-time.Hour)
		case 2:
			sum.Finished, sum.Wound, sum.Laid, sum.Started = true, true, 40, b.clock.T.Add(-time.Hour)
		}
		list = append(list, sum)
	}
	a := b.app()
	a.screen = newHome(b.deps, list, nil, b.clock.T)
	return a
}

// What is half-wound, not begun and finished stand apart, each with its number.
func TestHomePartsAndCounts(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	v := sixty(b).screen.view(120, 200)
	for _, want := range []string{"half-wound (20)", "not begun (20)", "finished (20)"} {
		if !strings.Contains(v, want) {
			t.Errorf("no %q:\n%s", want, v)
		}
	}
}

// Sixty warps are not sixty presses: the ends of the list are one key away, a page is several warps, and a part of
// a name finds one.
func TestHomeIsQuicklyGoneThrough(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	press := func(m tea.Model, types ...tea.KeyType) tea.Model {
		for _, k := range types {
			m = drive(b, m, tea.KeyMsg{Type: k})
		}
		return m
	}
	chosen := func(m tea.Model) string {
		h := m.(app).screen.(home)
		e := h.entries()[h.chosen]
		if e.summary == nil {
			return e.word
		}
		return e.summary.Name
	}
	if got := chosen(press(sixty(b), tea.KeyEnd)); got != "Warp 59" {
		t.Errorf("end: %s", got)
	}
	if got := chosen(press(sixty(b), tea.KeyEnd, tea.KeyHome)); got != "Warp 00" {
		t.Errorf("home: %s", got)
	}
	down := press(sixty(b), tea.KeyPgDown)
	if got := chosen(down); got < "Warp 04" || got > "Warp 15" {
		t.Errorf("page down: %s", got)
	}
	if got := chosen(press(down, tea.KeyPgUp)); got != "Warp 00" {
		t.Errorf("page up: %s", got)
	}
	found := drive(b, sixty(b), hand.Key("/"), tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("rp 4")})
	if v := found.View(); !strings.Contains(v, "Warp 47") || strings.Contains(v, "Warp 07") {
		t.Errorf("found:\n%s", v)
	}
	found = drive(b, found, hand.Key("7"))
	if got := chosen(found); got != "Warp 47" {
		t.Errorf("found %s", got)
	}
	if all := drive(b, found, hand.Key("esc")); !strings.Contains(all.View(), "Warp 00") {
		t.Errorf("esc doesn't bring the others back:\n%s", all.View())
	}
	none := drive(b, found, hand.Key("q"), hand.Key("enter"), hand.Key("enter"), hand.Key("c"))
	if v := none.View(); !strings.Contains(v, "no warp has that in its name") {
		t.Errorf("q left, or nothing is said:\n%s", v)
	}
}

// The wheel goes through the list, a click chooses the warp under it.
func TestHomeMouse(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, sixty(b), tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown},
		tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown})
	if got := m.(app).screen.(home).chosen; got != 2 {
		t.Errorf("the wheel goes to %d", got)
	}
	for y, line := range strings.Split(m.View(), "\n") {
		if strings.Contains(line, "Warp 05") {
			m = drive(b, m, tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonLeft, Y: y, X: 8})
			break
		}
	}
	if got := m.(app).screen.(home).chosen; got != 5 {
		t.Errorf("the click chooses %d", got)
	}
}
