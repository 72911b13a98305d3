package tui

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"millside/counter"
)

// prompt asks for one or two short answers over the winding screen.
type prompt struct {
	kind    counter.Kind // Recounted or Noted
	fields  []textinput.Model
	labels  []string
	at      int
	problem string
	done    bool
}

// maxNote is the longest note or reason.
const maxNote = 200

func newInput(d deps, value string, limit int) textinput.Model {
	in := textinput.New()
	in.Prompt = ""
	in.CharLimit = limit
	in.SetValue(value)
	in.CursorEnd()
	in.Cursor.SetMode(cursor.CursorStatic) // no blinking: nothing moves while nothing happens
	in.TextStyle, in.Cursor.Style, in.Cursor.TextStyle = d.styles.strong, d.styles.plain, d.styles.strong
	return in
}

func newRecountPrompt(d deps, st counter.State) prompt {
	p := prompt{kind: counter.Recounted, labels: []string{"passes that lie on the mill", "why"}}
	p.fields = []textinput.Model{newInput(d, strconv.Itoa(st.Laid()), 6), newInput(d, "counted on the pegs", maxNote)}
	p.fields[0].Focus()
	return p
}

func newNotePrompt(d deps) prompt {
	p := prompt{kind: counter.Noted, labels: []string{"note"}}
	p.fields = []textinput.Model{newInput(d, "", maxNote)}
	p.fields[0].Focus()
	return p
}

func (p prompt) update(msg tea.Msg) (prompt, tea.Cmd) {
	p.fields = append([]textinput.Model(nil), p.fields...)
	if k, ok := msg.(tea.KeyMsg); ok {
		switch k.String() {
		case "enter":
			if p.at == len(p.fields)-1 {
				p.done = true
				return p, nil
			}
			return p.focus(p.at + 1), nil
		case "tab", "down":
			return p.focus((p.at + 1) % len(p.fields)), nil
		case "shift+tab", "up":
			return p.focus((p.at + len(p.fields) - 1) % len(p.fields)), nil
		}
		p.problem = ""
	}
	var cmd tea.Cmd
	p.fields[p.at], cmd = p.fields[p.at].Update(msg)
	return p, cmd
}

func (p prompt) focus(i int) prompt {
	p.fields[p.at].Blur()
	p.at = i
	p.fields[i].Focus()
	return p
}

// answer gives the event once all fields are filled in; a wrong answer is said at the field.
func (p *prompt) answer(st counter.State) (counter.Event, bool) {
	if !p.done {
		return counter.Event{}, false
	}
	p.done = false
	if p.kind == counter.Noted {
		text := strings.TrimSpace(p.fields[0].Value())
		if text == "" {
			p.problem = "write a few words, or press esc"
			return counter.Event{}, false
		}
		return counter.Event{Kind: counter.Noted, Pass: st.Laid(), Text: text}, true
	}
	n, why := p.recount(st)
	switch {
	case n < 0:
		p.problem = why
	case strings.TrimSpace(p.fields[1].Value()) == "":
		p.problem = "say why, so that the record can be read later"
	default:
		return counter.Event{Kind: counter.Recounted, Pass: n, Text: strings.TrimSpace(p.fields[1].Value())}, true
	}
	return counter.Event{}, false
}

// recount reads the number of passes, below nil with a reason if it won't do.
func (p prompt) recount(st counter.State) (int, string) {
	text := strings.TrimSpace(p.fields[0].Value())
	last := len(st.Current().Passes)
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 || n > last {
		return -1, fmt.Sprintf("passes: %q won't do; give 0 to %d", text, last)
	}
	return n, ""
}

// lines draws the prompt.
func (p prompt) lines(s styles, st counter.State, w int) []string {
	var out []string
	for i, f := range p.fields {
		mark := "  "
		if i == p.at {
			mark = "▸ "
		}
		f.Width = max(w-len(p.labels[i])-8, 8)
		out = append(out, mark+s.dim.Render(p.labels[i]+":")+" "+f.View())
	}
	out = append(out, "")
	switch {
	case p.problem != "":
		out = append(out, painted(wrap("! "+p.problem, w-2), s.alarm)...)
	case p.kind == counter.Recounted:
		out = append(out, wrap(p.preview(st), w-2)...)
	}
	return indent(out, 2)
}

// preview says what the count would mean on the pegs.
func (p prompt) preview(st counter.State) string {
	n, why := p.recount(st)
	if n < 0 {
		return why
	}
	c := st.Current()
	return fmt.Sprintf("%d passes: %d over peg 1 and %d over peg 2 of the counting cross, %d ends. Now the count says %d. Nothing is deleted.",
		n, counter.CrossOf(n).OverPeg1, counter.CrossOf(n).OverPeg2, c.EndsAfter(n), st.Laid())
}
