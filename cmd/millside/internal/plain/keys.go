package plain

import (
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"millside/counter/session"
)

// asking is something that takes a few answers, one after the other.
type asking struct {
	ask   session.Ask
	texts []string
	at    int
}

// Key acts on a single key, by the name that the screen has for it, with the time at which it came. What is to be shown
// of what is typed comes from [Talk.Echo].
func (t *Talk) Key(name string, at time.Time) (session.Reply, error) {
	if t.line != nil {
		return t.typing(name, at)
	}
	if t.isPass(name) {
		return t.do(session.Press{}, at)
	}
	if name == ":" {
		t.line = &strings.Builder{}
		return session.Reply{Said: []string{"Type a word, then Enter; Esc gives it up."}}, nil
	}
	for _, m := range t.meanings() {
		switch {
		case !slices.Contains(m.key.Keys(), name) && !slices.Contains(m.key.Keys(), strings.ToLower(name)):
		case m.ask != nil:
			return t.begin(m.ask), nil
		case m.word != "":
			return t.Line(m.word, at)
		default:
			return t.keyHelp(), nil
		}
	}
	return refused(fmt.Sprintf("The key %s means nothing here; a question mark lists the keys.", shorten(name))), nil
}

// Piece acts on letters that came in one piece: an answer or a word, whole if a line end came with it.
func (t *Talk) Piece(text string, ended bool, at time.Time) (session.Reply, error) {
	if t.line == nil {
		if ended {
			return t.Line(text, at)
		}
		t.line = &strings.Builder{}
	}
	t.line.WriteString(shortenTo(text, maxTyped-t.line.Len()))
	if ended {
		return t.entered(at)
	}
	return session.Reply{}, nil
}

// shortenTo cuts a text to so many bytes at most.
func shortenTo(text string, most int) string { return text[:min(len(text), max(most, 0))] }

// Echo is what is being typed, after what it answers; empty if nothing is.
func (t *Talk) Echo() string {
	switch {
	case t.line == nil:
		return ""
	case t.asking != nil:
		return t.asking.label() + " " + t.line.String()
	}
	return ": " + t.line.String()
}

// typing takes a key while a word or an answer is typed.
func (t *Talk) typing(name string, at time.Time) (session.Reply, error) {
	const most = 400
	switch {
	case name == "esc":
		t.line, t.asking = nil, nil
		return refused("Given up; nothing was done."), nil
	case name == "enter":
		return t.entered(at)
	case name == "backspace":
		text := t.line.String()
		_, n := utf8.DecodeLastRuneInString(text)
		t.line.Reset()
		t.line.WriteString(text[:len(text)-n])
	case utf8.RuneCountInString(name) == 1 && t.line.Len() < most:
		t.line.WriteString(name)
	default:
		return refused("Finish what you are typing with Enter, or give it up with Esc."), nil
	}
	return session.Reply{}, nil
}

// entered takes what was typed.
func (t *Talk) entered(at time.Time) (session.Reply, error) {
	text := strings.TrimSpace(t.line.String())
	t.line = nil
	if t.asking == nil {
		if text == "" { // the Enter that ends an empty word is no pass key
			return refused("No word was typed; nothing was done."), nil
		}
		return t.Line(text, at)
	}
	a := t.asking
	if text != "" {
		a.texts[a.at] = text
		a.texts = a.ask.Changed(t.s, a.texts, a.at)
	}
	if a.at++; a.at < len(a.texts) {
		return t.next(), nil
	}
	t.asking = nil
	in, problem := a.ask.Intent(t.s, a.texts)
	if problem != "" {
		return refused("Nothing was noted: " + problem + "."), nil
	}
	return t.do(in, at)
}

// begin asks for something.
func (t *Talk) begin(ask session.Ask) session.Reply {
	t.asking = &asking{ask: ask, texts: ask.Begin(t.s)}
	r := t.next()
	r.Said = append([]string{ask.Title() + ". Enter keeps what stands there, Esc gives it up."}, r.Said...)
	r.Short = strings.ToLower(ask.Title()) + ": " + r.Short
	return r
}

// next asks for the next answer.
func (t *Talk) next() session.Reply {
	a := t.asking
	t.line = &strings.Builder{}
	r := session.Reply{Short: a.label(), Cue: session.CueLook}
	if preview := a.ask.Preview(t.s, a.texts); preview != "" {
		r.Said = []string{preview}
	}
	return r
}

// label is what is asked for now, with what stands there already.
func (a *asking) label() string {
	label := a.ask.Labels()[a.at] + "?"
	if have := a.texts[a.at]; have != "" {
		label += " (" + have + ")"
	}
	return label
}

// keyHelp lists the keys.
func (t *Talk) keyHelp() session.Reply {
	said := []string{"Space, Enter, Right, Down or Page Down: the pass is laid, or what the page asks for is done."}
	for _, m := range t.meanings() {
		h := m.key.Help()
		said = append(said, h.Key+": "+h.Desc+".")
	}
	r := told(append(said, "A colon begins a word; help lists the words.")...)
	r.Short = "The keys are listed."
	return r
}
