package mill

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter/session"
	"millside/tui/keys"
	"millside/tui/look"
)

// prompt asks for a few short answers over the winding screen. What it asks, and what becomes of the
// answers, is the affair of its [session.Ask].
type prompt struct {
	ask     session.Ask
	keys    keys.Map
	fields  []textinput.Model
	at      int
	problem string
	done    bool
	touched bool // something was typed
	// own says of each field that the weaver has worked in it: until then what is typed takes the place of what it
	// began with.
	own []bool
}

// maxNote is the longest note or reason.
const maxNote = 200

// newPrompt asks for something, with the texts that it begins with.
func newPrompt(d Deps, ask session.Ask, s session.Session) prompt {
	p := prompt{ask: ask, keys: d.Keys}
	for _, text := range ask.Begin(s) {
		p.fields = append(p.fields, look.NewInput(d.Styles, text, maxNote))
	}
	p.own = make([]bool, len(p.fields))
	p.fields[0].Focus()
	return p
}

// texts are the answers as they stand.
func (p prompt) texts() []string {
	out := make([]string, len(p.fields))
	for i, f := range p.fields {
		out[i] = strings.TrimSpace(f.Value())
	}
	return out
}

func (p prompt) update(msg tea.Msg, s session.Session) (prompt, tea.Cmd) {
	p.fields = slices.Clone(p.fields)
	if k, ok := msg.(tea.KeyMsg); ok {
		switch {
		case key.Matches(k, p.keys.Keep):
			if p.at == len(p.fields)-1 {
				p.done = true
				return p, nil
			}
			return p.focus(p.at + 1), nil
		case key.Matches(k, p.keys.NextAnswer):
			return p.focus((p.at + 1) % len(p.fields)), nil
		case key.Matches(k, p.keys.PrevAnswer):
			return p.focus((p.at + len(p.fields) - 1) % len(p.fields)), nil
		}
		p.problem = ""
		if p.own = slices.Clone(p.own); !p.own[p.at] && (k.Type == tea.KeyRunes || k.Type == tea.KeySpace) {
			p.fields[p.at].SetValue("")
		}
		p.own[p.at] = true
	}
	var cmd tea.Cmd
	before := p.fields[p.at].Value()
	p.fields[p.at], cmd = p.fields[p.at].Update(msg)
	if p.fields[p.at].Value() == before {
		return p, cmd
	}
	p.touched = true
	for i, text := range p.ask.Changed(s, p.texts(), p.at) {
		if i != p.at && text != p.fields[i].Value() {
			p.fields[i].SetValue(text)
			p.fields[i].CursorEnd()
		}
	}
	return p, cmd
}

func (p prompt) focus(i int) prompt {
	p.fields[p.at].Blur()
	p.at = i
	p.fields[i].Focus()
	return p
}

// answer gives the intent once the last field is entered; a wrong answer is said below the fields.
func (p *prompt) answer(s session.Session) session.Intent {
	if !p.done {
		return nil
	}
	p.done = false
	in, problem := p.ask.Intent(s, p.texts())
	if p.problem = problem; problem != "" {
		return nil
	}
	return in
}

// takes says whether a field has a use for a key: it is text, it moves the cursor, or it goes on to the
// next field.
func (p prompt) takes(msg tea.KeyMsg) bool {
	f := p.fields[p.at]
	switch msg.Type {
	case tea.KeyRunes, tea.KeySpace:
		return true
	case tea.KeyRight:
		return f.Position() < len([]rune(f.Value()))
	case tea.KeyDown:
		return len(p.fields) > 1
	}
	return key.Matches(msg, p.keys.Keep, p.keys.NextAnswer)
}

// lines draws the prompt.
func (p prompt) lines(s look.Styles, now session.Session, w int) []string {
	labels := p.ask.Labels()
	wide := 0
	for _, l := range labels {
		wide = max(wide, look.Wide(l))
	}
	wide = min(wide, max(w/2, 10))
	var out []string
	for i, f := range p.fields {
		mark := "  "
		if i == p.at {
			mark = "▸ "
		}
		f.Width = max(w-wide-10, 6)
		out = append(out, mark+s.Dim.Render(look.Pad(labels[i], wide))+"  "+f.View())
	}
	out = append(out, "")
	if p.problem != "" {
		out = append(out, look.Painted(look.Wrap("! "+p.problem, w-4), s.Alarm)...)
	}
	return look.Indent(append(out, look.Wrap(p.ask.Preview(now, p.texts()), w-4)...), 2)
}
