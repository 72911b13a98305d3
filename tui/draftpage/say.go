package draftpage

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"millside/plan"
	"millside/plan/draft"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/stripe"
	"millside/tui/keys"
	"millside/tui/look"
)

// saying is what the weaver says of a draft, line by line, and what comes of it.
type saying struct {
	draft   *draft.Draft
	lines   []line
	at      int
	scroll  int            // how many windows of the result have been turned over
	begins  plan.Spec      // what a new warp begins with
	spec    plan.Spec      // the same with the width of the cloth
	names   map[int]string // of the draft's colours
	wanted  string         // how many ends the width takes, "" where none is given
	warp    *draft.Warp
	problem string // why there is no warp yet
	wrong   int    // the line that it lies with, -1 for none
	sided   bool   // the side of thread 1 makes a difference to the stripes
}

// line is one thing that is said of the draft.
type line struct {
	of     *field.Field
	label  string
	hint   string
	colour int             // the colour that it names
	words  []string        // to choose between; the first says that nothing is chosen yet, unless one is assumed
	word   int             // the one that is chosen
	begins bool            // one of the words holds where none is chosen
	chosen bool            // the weaver has chosen
	text   textinput.Model // where there are no words
}

// unsaid stands in a line of words until one is chosen.
const unsaid = "choose"

// textLimit is the longest text of a line, in characters.
const textLimit = 200

// newSaying asks what has to be said of a draft: on which side its thread 1 is, what becomes of threads without a
// shaft, where there are some; and what may be said.
func newSaying(d Deps, of *draft.Draft) saying {
	s := saying{draft: of, begins: d.Spec}
	add := func(l line) {
		l.text = look.NewInput(d.Styles, "", textLimit)
		s.lines = append(s.lines, l)
	}
	add(line{of: field.Thread1, label: "thread 1 is on", hint: "the side that the draft's thread 1 is on, seen by " +
		"the weaver at the loom: a draft doesn't say; the right is the commoner",
		words: []string{unsaid, "the " + draft.FromRight.String(), "the " + draft.FromLeft.String()}})
	if not := of.NotThreadedText(); not != "" {
		add(line{of: field.NotThreaded, label: "not threaded",
			hint:  not + ". Wind them all the same (floating selvedges, say), or leave them out",
			words: []string{unsaid, "wind them", "leave them out"}})
	}
	seen := map[int]bool{draft.NoColour: true}
	name := func(c int, where string) {
		if !seen[c] {
			seen[c] = true
			add(line{of: field.NameColour, colour: c, label: of.NameOf(c, nil),
				hint: "what you call this colour" + where + "; empty: " + of.NameOf(c, nil)})
		}
	}
	for _, c := range of.Colours {
		name(c, "")
	}
	if len(of.Weft) > 1 {
		for _, p := range of.Weft {
			name(p.Colour, ", in the weft")
		}
	}
	add(line{of: field.DraftThreads, label: "threads", hint: "the threads that are taken, such as 1-96; empty: all " +
		strconv.Itoa(of.Threads)})
	add(line{of: field.DraftTimes, label: "times", hint: "how often they are laid side by side; empty: once"})
	add(line{of: field.DraftEdge, label: "edge", hint: field.DraftEdge.Help + "; empty: none"})
	for _, f := range draft.FitFields() {
		add(fitLine(f))
	}
	s.lines[0].text.Focus()
	return s.made()
}

// made makes the warp anew of what is said.
func (s saying) made() saying {
	s.warp, s.problem, s.wrong, s.wanted = nil, "", -1, ""
	use := draft.Use{Names: map[int]string{}}
	for i, l := range s.lines {
		if err := l.into(&use); err != nil {
			s.problem, s.wrong = measure.FieldErrors(err)[0].Want, i
			return s
		}
	}
	if err := s.fit(&use); err != nil {
		return s.lies(err)
	}
	w, err := s.draft.Warp(use)
	if err != nil {
		return s.lies(err)
	}
	s.sided, s.names = !s.draft.Symmetric(use), use.Names
	if s.problem = unfit(w); s.problem == "" {
		s.warp = w
	}
	return s
}

// lies says what is wrong, and in which line.
func (s saying) lies(err error) saying {
	s.problem = measure.Clean(err.Error())
	for _, fe := range measure.FieldErrors(err) {
		if s.wrong = s.lineOf(field.Named(fe.Field)); s.wrong >= 0 {
			s.problem = fe.Want
			break
		}
	}
	return s
}

// lineOf is the line about a field, -1 where there is none. Too many ends come of laying the threads too often, where
// none are asked for.
func (s saying) lineOf(f *field.Field) int {
	if f == field.Ends && s.textOf(f) == "" {
		f = field.DraftTimes
	}
	return slices.IndexFunc(s.lines, func(l line) bool { return l.of == f })
}

// unfit says why the form can't take the stripes of a warp: they are too long, or two names are too much alike.
func unfit(w *draft.Warp) string {
	if w.Plain() {
		return ""
	}
	text := w.Order.String()
	if len(text) > plan.MaxStripes {
		return fmt.Sprintf("the stripes take %d characters of notation, and a plan takes %d: take fewer threads",
			len(text), plan.MaxStripes)
	}
	if _, err := stripe.Parse(text); err != nil {
		return measure.Clean(err.Error())
	}
	return ""
}

// into puts what a line says into the use of the draft. The error is a [*measure.FieldError].
func (l line) into(use *draft.Use) (err error) {
	text := strings.Join(strings.Fields(l.text.Value()), " ")
	switch l.of {
	case field.Thread1:
		use.Side = draft.FromRight
		if l.word == 2 {
			use.Side = draft.FromLeft
		}
		return nil
	case field.NotThreaded:
		use.LeaveOut = l.word == 2
		return nil
	}
	if text == "" {
		return nil
	}
	switch l.of {
	case field.NameColour:
		use.Names[l.colour] = text
		return stripe.CheckName(text)
	case field.DraftThreads:
		use.First, use.Last, err = draft.ParseThreads(text)
	case field.DraftTimes:
		use.Times, err = count(text)
	case field.DraftEdge:
		use.Edge, use.EdgeRest, err = draft.ParseEdge(text)
	}
	return err
}

// count reads a number of 1 or more.
func count(text string) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > measure.MaxEnds {
		return 0, &measure.FieldError{Value: text, Want: "a whole number from 1 to " + strconv.Itoa(measure.MaxEnds)}
	}
	return n, nil
}

// open is the first line in which the weaver has still to choose, -1 where there is none.
func (s saying) open() int {
	return slices.IndexFunc(s.lines, func(l line) bool {
		return len(l.words) > 0 && l.word == 0 && !l.begins && (l.of != field.Thread1 || s.sided)
	})
}

// to goes to a line.
func (s saying) to(i int) saying {
	s.lines = slices.Clone(s.lines)
	s.lines[s.at].text.Blur()
	s.at = (i + len(s.lines)) % len(s.lines)
	s.lines[s.at].text.Focus()
	return s
}

// say takes a key while the draft is made into a warp.
func (m Model) say(msg tea.KeyMsg) (Model, tea.Cmd) {
	k, s := m.Keys, *m.said
	m.problem = ""
	l := s.lines[s.at]
	switch {
	case keys.Matches(msg, k.Back):
		m.said = nil
		return m, nil
	case keys.Matches(msg, k.Begin):
		return m.done()
	case keys.Matches(msg, k.Rest):
		s.scroll++
	case keys.Matches(msg, k.PrevField):
		s = s.to(s.at - 1)
	case keys.Matches(msg, k.NextField):
		s = s.to(s.at + 1)
	case len(l.words) > 0 && keys.Matches(msg, k.Right):
		s = s.with(func(l *line) { l.choose(1) })
	case len(l.words) > 0 && keys.Matches(msg, k.Left):
		s = s.with(func(l *line) { l.choose(-1) })
	case len(l.words) == 0:
		s = s.with(func(l *line) { l.text, _ = look.TypeInto(l.text, msg) })
	}
	m.said = &s
	return m, nil
}

// with changes the line that is filled in.
func (s saying) with(change func(*line)) saying {
	s.lines = slices.Clone(s.lines)
	change(&s.lines[s.at])
	return s.made()
}

// done gives the warp, or goes to what has to be said first.
func (m Model) done() (Model, tea.Cmd) {
	s := *m.said
	switch open := s.open(); {
	case s.warp == nil:
		m.problem = s.problem
		if s.wrong >= 0 {
			s = s.to(s.wrong)
		}
	case open >= 0:
		s = s.to(open)
		m.problem = s.lines[open].label + ": say which first; " + m.Keys.Right.Help().Key + " changes it"
	default:
		return m, send(MadeMsg{s.warp, s.spec})
	}
	m.said = &s
	return m, nil
}
