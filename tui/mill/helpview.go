package mill

import (
	"fmt"
	"slices"

	"github.com/charmbracelet/bubbles/key"

	"millside/tui/keys"
	"millside/tui/look"
)

// viewPrompt asks for a text.
func (m Model) viewPrompt(w, h int) string {
	s, k := m.Styles, m.Keys
	line := []key.Binding{k.Keep, k.Back, k.NextAnswer}
	switch fields := len(m.prompt.fields); {
	case fields == 1:
		line = line[:2]
	case m.prompt.at < fields-1: // the key keeps nothing there yet
		line = []key.Binding{keys.Bind(k.Keep.Help().Key+"/"+k.NextAnswer.Help().Key, k.NextAnswer.Help().Desc,
			slices.Concat(k.Keep.Keys(), k.NextAnswer.Keys())...), k.Back}
	}
	lines := []string{m.header("", w)}
	lines = append(lines, look.Filled([]string{"", "  " + m.prompt.ask.Title(), ""}, s.Warn, w)...)
	lines = append(lines, "")
	lines = append(lines, m.prompt.lines(s, m.s, w)...)
	var foot []string
	if m.word.Text != "" {
		foot = m.messageRows(m.word, w)
	}
	foot = append(foot, look.Indent(look.Painted(look.Wrap(m.promptPass(), w-4), s.Dim), 2)...)
	return look.WithFoot(lines, append(foot, s.KeyLine(w, line...)), w, h)
}

// promptPass says what a pass key does here that no field takes for its own.
func (m Model) promptPass() string {
	if m.prompt.touched {
		return "A clicker or a click counts nothing until this page is left."
	}
	return "A clicker or a click leaves this page and does what it did before."
}

// millWords explains words that a newcomer may not know.
var millWords = []string{
	"opening: one half of the ends up, the other half down, as the paddle is raised or lowered",
	"flick: change from one opening to the other between the two lease pegs",
	"bout: an outward pass and the return pass after it",
	"counting cross: whole groups alternate there, so they can be counted",
}

// viewHelp lists the keys that work at the mill, made from the keys themselves.
func (m Model) viewHelp(w, h int) string {
	s := m.Styles
	lines := []string{m.header("", w), "  " + s.Title.Render("Keys while winding")}
	bindings := m.Keys.MillKeys()
	guard := m.s.State().Plan.Spec.Guard
	about := fmt.Sprintf("A press sooner than %s after the last is not counted.", guard)
	if guard == 0 {
		about = "The guard is off: only a key held down is not counted."
	}
	foot := []string{look.Fit("  "+about, w),
		s.KeyLine(w, keys.As(m.Keys.Laid, "counts as before, and back"), m.Keys.AnyBack)}
	room := h - len(lines) - len(foot)
	lines = append(lines, s.KeyTable(w, room, helpName, bindings)...)
	lines = append(lines, m.kindRows(w, h-len(lines)-len(foot))...)
	for _, word := range millWords {
		if len(lines)+len(foot) < h {
			lines = append(lines, look.Fit("  "+s.Dim.Render(word), w))
		}
	}
	return look.WithFoot(lines, foot, w, h)
}

// helpName is what a key is called: all its names where there is room for them.
func helpName(b key.Binding, narrow bool) string {
	if narrow {
		return b.Help().Key
	}
	return keys.Names(b)
}
