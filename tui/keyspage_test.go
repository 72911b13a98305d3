package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/tui/internal/hand"
)

// A key that finds no room in the line at the foot is on the page of all keys, and the line says which key shows that.
func TestAllKeysAreListed(t *testing.T) {
	for _, c := range []struct {
		name string
		at   func(b *bench) app
		key  string // the key that lists them
		want []string
	}{
		{"home", func(b *bench) app { return homeApp(b) }, "?",
			[]string{"enter", "page down", "two warps in one", "settings", "put aside until fg"}},
		{"the form, where text is typed", func(b *bench) app { return formApp(b) }, "ctrl+l",
			[]string{"shift+tab", "from what I know", "how it is reckoned", "next thing at hand",
				"home; plan is kept"}},
		{"the form, at a number", func(b *bench) app {
			return drive(b, formApp(b), hand.Key("tab"), hand.Key("tab")).(app)
		}, "?", []string{"shift+tab", "next group"}},
		{"what is known", func(b *bench) app { return drive(b, b.app(), hand.Key("f")).(app) }, "?",
			[]string{"shift+tab", "next word", "more of the answer", "home"}},
	} {
		b := newBench(t, termenv.Ascii)
		a := c.at(b)
		a.w, a.h = 60, 18
		before := a.View()
		if !strings.Contains(before, c.key+" keys") {
			t.Errorf("%s: the line at the foot doesn't say that %s lists all keys:\n%s", c.name, c.key, before)
		}
		m := drive(b, a, hand.Key(c.key))
		for _, want := range c.want {
			if !strings.Contains(m.View(), want) {
				t.Errorf("%s: %q isn't listed:\n%s", c.name, want, m.View())
			}
		}
		if strings.Contains(strings.Split(m.View(), "any other key")[0], "…") {
			t.Errorf("%s: something is cut:\n%s", c.name, m.View())
		}
		if m = drive(b, m, hand.Key("x")); m.View() != before {
			t.Errorf("%s: another key doesn't go back to what was there:\n%s", c.name, m.View())
		}
	}
}

// A question mark in a name is text.
func TestQuestionMarkInAName(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, formApp(b), tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'?'}})
	if !strings.Contains(m.View(), "name              ?") {
		t.Errorf("the question mark isn't in the name:\n%s", m.View())
	}
}

func homeApp(b *bench) app {
	a := b.app()
	a.screen = homePage(b)
	return a
}

func formApp(b *bench) app { return drive(b, b.app(), hand.Key("n")).(app) }
