package tui

import (
	"errors"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"millside/plan"
)

// form is the new-warp page: fields, and beside them what they come to, at each key stroke.
type form struct {
	deps
	fields   []field
	inputs   []textinput.Model
	at       int
	spec     plan.Spec
	plan     *plan.Plan // nil while a field is wrong
	problems map[string]string
	failed   string // why the record could not be made
	busy     bool
}

// formLimit is the longest text of a field.
const formLimit = 60

func newForm(d deps, spec plan.Spec) form {
	m := form{deps: d, fields: formFields(), spec: spec}
	for _, f := range m.fields {
		m.inputs = append(m.inputs, newInput(d, f.show(spec), formLimit))
	}
	m.inputs[0].Focus()
	return m.compute()
}

func (m form) typing() bool { return true }

// compute works out the plan from what stands in the fields.
func (m form) compute() form {
	m.problems = map[string]string{}
	spec := m.spec
	for i, f := range m.fields {
		if err := f.take(&spec, m.inputs[i].Value()); err != nil {
			m.note(f.name, err)
		}
	}
	m.spec = spec
	p, err := plan.New(spec)
	for _, fe := range plan.FieldErrors(err) {
		if _, told := m.problems[fe.Field]; !told {
			m.problems[fe.Field] = "give " + fe.Want
		}
	}
	m.plan = p
	if len(m.problems) > 0 {
		m.plan = nil
	}
	return m
}

func (m form) note(name string, err error) {
	m.problems[name] = err.Error()
	var fe *plan.FieldError
	if errors.As(err, &fe) {
		m.problems[name] = "give " + fe.Want
	}
}

func (m form) update(msg tea.Msg) (screen, tea.Cmd) {
	switch msg := msg.(type) {
	case failedMsg:
		m.failed, m.busy = msg.err.Error(), false
		return m, nil
	case tea.KeyMsg:
		return m.act(msg)
	}
	return m, nil
}

func (m form) act(msg tea.KeyMsg) (screen, tea.Cmd) {
	k, f := m.keys, m.fields[m.at]
	m.failed = ""
	switch {
	case key.Matches(msg, k.Back):
		return m, send(goHomeMsg{})
	case key.Matches(msg, k.Begin):
		return m.begin()
	case key.Matches(msg, k.Choice):
		return m.nextChoice(), nil
	case key.Matches(msg, k.PrevField):
		return m.focus(m.at - 1), nil
	case key.Matches(msg, k.NextField):
		return m.focus(m.at + 1), nil
	case len(f.options) > 0:
		return m.choose(msg), nil
	}
	m.inputs = slices.Clone(m.inputs)
	next, cmd := m.inputs[m.at].Update(msg)
	m.inputs[m.at] = next
	return m.compute(), cmd
}

// focus goes to another field, round at the ends.
func (m form) focus(i int) form {
	m.inputs = slices.Clone(m.inputs)
	m.inputs[m.at].Blur()
	m.at = (i + len(m.fields)) % len(m.fields)
	m.inputs[m.at].Focus()
	return m
}

// choose changes a field that has words to choose between.
func (m form) choose(msg tea.KeyMsg) form {
	options := m.fields[m.at].options
	step := 0
	switch msg.String() {
	case "right", " ":
		step = 1
	case "left":
		step = len(options) - 1
	default:
		return m
	}
	now := max(slices.Index(options, m.inputs[m.at].Value()), 0)
	return m.setField(m.at, options[(now+step)%len(options)]).compute()
}

// setField puts text into a field.
func (m form) setField(i int, text string) form {
	m.inputs = slices.Clone(m.inputs)
	m.inputs[i].SetValue(text)
	m.inputs[i].CursorEnd()
	return m
}

// choices are the ways to wind the ends that stand in the form.
func (m form) choices() []plan.Choice {
	return plan.Choices(m.spec.Ends, m.spec.Group, m.spec.Positions)
}

// current is the index of the choice that the form stands at.
func (m form) current(list []plan.Choice) int {
	return slices.IndexFunc(list, func(c plan.Choice) bool {
		if c.Group != m.spec.Group {
			return false
		}
		return c.Kind == plan.Divides || (c.Kind == plan.SpareEnds) == (m.spec.LastPass == plan.FullLast)
	})
}

// nextChoice takes the next of the ranked choices. The list itself depends on the group, so the choices
// are gone through in the order of their cost and begin again after the dearest.
func (m form) nextChoice() form {
	list := m.choices()
	if len(list) == 0 {
		return m
	}
	c := list[(m.current(list)+1)%len(list)]
	for i, f := range m.fields {
		switch {
		case f.name == "group":
			s := m.spec
			s.Group = c.Group
			m = m.setField(i, f.show(s))
		case f.name == "last pass" && c.Kind == plan.SpareEnds:
			m = m.setField(i, plan.FullLast.String())
		case f.name == "last pass" && c.Kind == plan.ShortPass:
			m = m.setField(i, plan.ShortLast.String())
		}
	}
	return m.compute()
}

// begin makes the record, or goes to the first field that is wrong.
func (m form) begin() (screen, tea.Cmd) {
	if m.busy {
		return m, nil
	}
	if m.plan == nil {
		for i, f := range m.fields {
			if m.problems[f.name] != "" {
				return m.focus(i), nil
			}
		}
		return m, nil
	}
	m.busy = true
	return m, send(beginMsg{m.spec})
}

func (m form) view(w, h int) string {
	s := m.styles
	title := "  " + s.title.Render("NEW WARP")
	foot := m.formFoot(w)
	room := max(h-len(foot)-2, 1)
	if w >= 76 {
		left := min(44, w/2-1)
		fields := m.window(m.fieldLines(left), room)
		result := m.resultLines(w-left-4, room)
		return withFoot(append([]string{title, ""}, beside(fields, result, left, 2)...), foot, w, h)
	}
	below := min(max(room/2, 4), 7)
	fields := m.window(m.fieldLines(w-2), room-below)
	lines := append([]string{title, ""}, fields...)
	for len(lines) < room-below+2 {
		lines = append(lines, "")
	}
	lines = append(lines, m.resultLines(w-4, below)...)
	return withFoot(lines, foot, w, h)
}

func (m form) formFoot(w int) []string {
	s, k, f := m.styles, m.keys, m.fields[m.at]
	var out []string
	if m.failed != "" {
		out = append(out, painted(wrap("! "+m.failed, w-2), s.alarm)...)
	}
	other := k.PrevField
	if len(f.options) > 0 {
		other = k.Right
	}
	return append(out, s.keyLine(w, k.Begin, k.NextField, other, k.Choice, k.Back))
}

// formLine is a line of the form, and the field that it belongs to, -1 for none.
type formLine struct {
	text  string
	field int
}

// fieldLines draws all fields under the titles of their sections. What is wrong with a field stands
// below it; what the field is for, only below the one being filled in.
func (m form) fieldLines(w int) []formLine {
	var out []formLine
	section := ""
	for i, f := range m.fields {
		if f.section != section {
			section = f.section
			out = append(out, formLine{"  " + m.styles.dim.Render(section), -1})
		}
		out = append(out, formLine{m.fieldLine(i, f, w), i})
		switch problem := m.problems[f.name]; {
		case problem != "":
			for _, l := range wrap("! "+problem, w-6) {
				out = append(out, formLine{"      " + m.styles.alarm.Render(l), i})
			}
		case i == m.at:
			for _, l := range wrap(f.hint, w-6) {
				out = append(out, formLine{"      " + m.styles.dim.Render(l), i})
			}
		}
	}
	return out
}

func (m form) fieldLine(i int, f field, w int) string {
	s := m.styles
	mark := "    "
	if i == m.at {
		mark = "  ▸ "
	}
	label := pad(f.label, 17)
	in := m.inputs[i]
	value := in.Value()
	switch {
	case len(f.options) > 0 && i == m.at:
		value = s.strong.Render("◀ " + value + " ▶")
	case i == m.at:
		in.Width = max(w-24, 4)
		value = in.View()
	}
	return fit(mark+label+" "+value, w)
}

// window is the part of the form around the field being filled in.
func (m form) window(lines []formLine, room int) []string {
	room = max(room, 0)
	first, last := 0, 0
	for i, l := range lines {
		if l.field == m.at {
			if lines[max(last, 0)].field != m.at {
				first = i
			}
			last = i
		}
	}
	from := min(max(first-room/3, last-room+1, 0), max(len(lines)-room, 0))
	var out []string
	for _, l := range lines[from:min(from+room, len(lines))] {
		out = append(out, l.text)
	}
	return out
}

// wrongFields names the fields that are wrong, in their order.
func (m form) wrongFields() string {
	var names []string
	for _, f := range m.fields {
		if m.problems[f.name] != "" {
			names = append(names, f.label)
		}
	}
	return strings.Join(names, ", ")
}
