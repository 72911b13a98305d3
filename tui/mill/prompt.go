package mill

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter"
	"millside/counter/session"
	"millside/tui/keys"
	"millside/tui/look"
)

// prompt asks for a few short answers over the winding screen. What it asks, and what becomes of the
// answers, is its question's affair.
type prompt struct {
	question question
	keys     keys.Map
	fields   []textinput.Model
	at       int
	problem  string
	done     bool
	touched  bool // something was typed
}

// question is what a prompt asks.
type question interface {
	title() string
	labels() []string
	// changed may fill in other fields after a key; it gets and gives the texts of all fields.
	changed(st counter.State, texts []string, at int) []string
	// preview says what the answers as they stand would mean.
	preview(st counter.State, texts []string) string
	// intent is what the answers ask for; the problem says what won't do.
	intent(st counter.State, texts []string) (in session.Intent, problem string)
}

// maxNote is the longest note or reason.
const maxNote = 200

// newPrompt asks a question, with the texts to begin with.
func newPrompt(d Deps, q question, texts ...string) prompt {
	p := prompt{question: q, keys: d.Keys}
	for i := range q.labels() {
		text := ""
		if i < len(texts) {
			text = texts[i]
		}
		p.fields = append(p.fields, look.NewInput(d.Styles, text, maxNote))
	}
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

func (p prompt) update(msg tea.Msg, st counter.State) (prompt, tea.Cmd) {
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
	}
	var cmd tea.Cmd
	before := p.fields[p.at].Value()
	p.fields[p.at], cmd = p.fields[p.at].Update(msg)
	if p.fields[p.at].Value() == before {
		return p, cmd
	}
	p.touched = true
	for i, text := range p.question.changed(st, p.texts(), p.at) {
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
func (p *prompt) answer(st counter.State) session.Intent {
	if !p.done {
		return nil
	}
	p.done = false
	in, problem := p.question.intent(st, p.texts())
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
func (p prompt) lines(s look.Styles, st counter.State, w int) []string {
	labels := p.question.labels()
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
	return look.Indent(append(out, look.Wrap(p.question.preview(st, p.texts()), w-4)...), 2)
}
