package form

import (
	"context"
	"errors"
	"slices"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"millside/plan"
	"millside/plan/athand"
	"millside/plan/entry"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/stripe"
	"millside/plan/times"
	"millside/tui/keys"
	"millside/tui/look"
)

// Model is the new-warp page: fields in sections, and beside them what they come to, at each key stroke.
type Model struct {
	Deps
	fields   []line
	inputs   []textinput.Model
	box      look.TextBox // the text of the stripes, in the place of its input
	boxAt    int          // which field that is
	w        int          // the width of the terminal
	at       int
	spec     plan.Spec
	project  *project.Project // nil while a field is wrong
	problems map[string]string
	how      bool   // show how each number was reached
	scroll   int    // how many windows of the result have been turned over
	failed   string // why the record could not be made
	busy     bool

	offered int    // how many things at hand have been tried
	offer   string // the one that was taken last

	written   stripe.Order // the stripes as typed; none in a plain warp
	order     stripe.Order // the same from end 1 on
	stripesAt error        // where the stripes can't be read
	made      stripesMsg   // the last schedule that came
	known     schedules    // those that were worked out to the end
	asked     stripeKey    // the schedule that is being worked out; none where none is
	run       int          // counts the works, to tell them apart
	stop      func()       // ends that work
	beside    besides      // what else the stripes could be wound with
	own       map[int]bool // the fields in which the weaver has typed
	begun     plan.Spec    // what the form began with
}

// Deps is what the form may use.
type Deps struct {
	Styles look.Styles
	Keys   keys.Map
	// AtHand is what the weaver has at hand, offered field by field.
	AtHand athand.AtHand
	// Assumed is what the plan takes because there is only one of it at hand.
	Assumed []athand.Assumed
	// Pace is the weaver's own, or zero for the published range.
	Pace times.Pace
	// Of is the name of the warp whose plan the form changes; "" for a new warp.
	Of string
	// Search cuts stripes into passes; nil is [Search].
	Search func(context.Context, plan.Spec, stripe.Ask) (*stripe.Plan, error)
	// Beside looks for what another paddle would give, with the names of those at hand, and for a small change of
	// the order that winds far faster; nil is [Beside].
	Beside func(context.Context, *stripe.Plan, map[int]string) ([]stripe.OtherPaddle, *stripe.Change)
}

// Messages from the form to whoever shows it.
type (
	// BackMsg leaves the form without a warp.
	BackMsg struct{}
	// KnownMsg asks for the page that finds a warp from what is known.
	KnownMsg struct{}
	// BeginMsg asks for a record of this warp.
	BeginMsg struct{ Spec plan.Spec }
)

// FailedMsg tells the form why the record that it asked for could not be made.
type FailedMsg struct{ Err error }

func send(m tea.Msg) tea.Cmd { return func() tea.Msg { return m } }

// formLimit is the longest text of a field.
const formLimit = 10_000

// New is the form filled with the values of a spec.
func New(d Deps, spec plan.Spec) Model {
	if d.Search == nil {
		d.Search = Search
	}
	if d.Beside == nil {
		d.Beside = Beside
	}
	m := Model{Deps: d, fields: formLines(), spec: withClothDefaults(spec), begun: spec, own: map[int]bool{},
		w: usualWidth}
	for i, f := range m.fields {
		m.inputs = append(m.inputs, look.NewInput(d.Styles, f.Show(m.spec), formLimit))
		if f.Field == field.StripesOf {
			m.boxAt, m.box = i, look.NewTextBox(d.Styles, f.Show(m.spec), plan.MaxStripes)
		}
	}
	m.inputs[0].Focus()
	return m.compute()
}

// withClothDefaults leaves the allowances of a cloth that hasn't been described to what is usual.
func withClothDefaults(s plan.Spec) plan.Spec {
	if s.Cloth.Used || s.Cloth.Length.Pieces > 0 {
		return s
	}
	s = entry.AssumeAll(s)
	s.Cloth.Length.Pieces = field.Pieces.Count
	return s
}

// Init asks for the schedule of stripes that the form begins with, if it does.
func (m Model) Init() (Model, tea.Cmd) { return m.schedule() }

// section is the page that is shown: that of the field being filled in.
func (m Model) section() section { return m.fields[m.at].section }

// given says whether the weaver fills in a field.
func (m Model) given(i int) bool { return m.fields[i].Given(m.spec) }

// compute works out the plan from what stands in the fields.
func (m Model) compute() Model {
	m.problems = map[string]string{}
	for i, f := range m.fields {
		if err := f.Take(&m.spec, m.text(i)); err != nil && m.given(i) {
			m.note(err, f.Name)
		}
	}
	m = m.stripes()
	if m.waits() {
		m.project = nil
		return m
	}
	spec := m.wanted()
	if spec.Schedule == nil && len(m.problems) > 0 { // what keeps the stripes from being laid is told of its own field
		spec.Stripes, spec.Other = "", nil
	}
	project, err := project.New(spec, m.Pace)
	for _, fe := range measure.FieldErrors(err) {
		m.note(fe, fe.Field)
	}
	m.project = project
	if len(m.problems) > 0 {
		m.project = nil
	}
	return m
}

// wanted is the spec without what it doesn't use.
func (m Model) wanted() plan.Spec {
	spec := m.spec
	if !spec.Cloth.Used {
		spec.Cloth = plan.Cloth{}
	}
	if len(m.written.Parts) > 0 { // typed in several lines, and kept in one
		spec.Stripes = m.written.String()
	}
	return spec
}

// note keeps the first thing that is wrong with a field.
func (m Model) note(err error, name string) {
	if _, told := m.problems[name]; told {
		return
	}
	m.problems[name] = err.Error()
	var ask *measure.AmbiguousYarn
	var fe *measure.FieldError
	switch {
	case errors.As(err, &ask):
		m.problems[name] = ask.Error()
	case errors.As(err, &fe):
		m.problems[name] = "give " + fe.Want
	}
}

// Update takes a key, what has been worked out beside the keys, or a failure.
func (m Model) Update(msg tea.Msg) (Model, tea.Cmd) {
	switch msg := msg.(type) {
	case FailedMsg:
		m.failed, m.busy = measure.Clean(msg.Err.Error()), false
		return m, nil
	case stripesMsg:
		return m.scheduled(msg)
	case besidesMsg:
		return m.besidesCame(msg), nil
	case tea.KeyMsg:
		next, cmd := m.act(msg)
		m, more := next.schedule()
		return m, tea.Batch(cmd, more)
	}
	return m, nil
}

func (m Model) act(msg tea.KeyMsg) (Model, tea.Cmd) {
	k, f := m.Keys, m.fields[m.at]
	m.failed = ""
	switch {
	case keys.Matches(msg, k.Back):
		return m, send(BackMsg{})
	case keys.Matches(msg, k.Begin):
		return m.begin()
	case keys.Matches(msg, k.FormKnown):
		return m, send(KnownMsg{})
	case keys.Matches(msg, k.Choice):
		return m.nextChoice(), nil
	case keys.Matches(msg, k.How):
		m.how = !m.how
		return m, nil
	case keys.Matches(msg, k.AtHand):
		return m.takeOffer(), nil
	case keys.Matches(msg, k.Rest):
		m.scroll++
		return m, nil
	case keys.Matches(msg, k.NextPage):
		return m.turnTo(m.section() + 1), nil
	case keys.Matches(msg, k.PrevPage):
		return m.turnTo(m.section() + sections - 1), nil
	case m.inBox() && m.keptIn(msg):
		return m.typed(msg)
	case m.section() == secStripes && keys.Matches(msg, k.Take):
		return m.take(), nil
	case keys.Matches(msg, k.PrevField):
		return m.step(-1), nil
	case keys.Matches(msg, k.NextField):
		return m.step(1), nil
	case !m.given(m.at):
		return m, nil
	case len(f.options) > 0:
		return m.choose(msg), nil
	}
	return m.typed(msg)
}

// step goes to the next field that the weaver fills in, or the one before, round at the ends.
func (m Model) step(by int) Model {
	for i, n := m.at, len(m.fields); ; {
		i = (i + by + n) % n
		if m.given(i) {
			return m.focus(i)
		}
	}
}

// turnTo goes to the first field of a section.
func (m Model) turnTo(sec section) Model {
	i := slices.IndexFunc(m.fields, func(f line) bool { return f.section == sec%sections })
	return m.focus(i)
}

func (m Model) focus(i int) Model {
	m.inputs = slices.Clone(m.inputs)
	m.inputs[m.at].Blur()
	if m.fields[i].section != m.section() {
		m.scroll, m.offered, m.offer = 0, 0, ""
	}
	m.at = i
	m.inputs[m.at].Focus()
	return m
}

// choose changes a field that has words to choose between.
func (m Model) choose(msg tea.KeyMsg) Model {
	options := m.fields[m.at].options
	step := 0
	switch {
	case keys.Matches(msg, m.Keys.Right):
		step = 1
	case keys.Matches(msg, m.Keys.Left):
		step = len(options) - 1
	default:
		return m
	}
	now := max(slices.Index(options, m.inputs[m.at].Value()), 0)
	was := m.spec.Units
	m = m.setField(m.at, options[(now+step)%len(options)]).compute()
	if m.spec.Units == was {
		return m
	}
	return m.inUnits(was)
}

// inUnits puts what a new plan begins with in the other units in place of what it began with in these, where the
// weaver has changed nothing.
func (m Model) inUnits(was measure.LengthUnitSystem) Model {
	before, after := entry.NewSpec(was), entry.NewSpec(m.spec.Units)
	for i, f := range m.fields {
		if text := f.Show(before); f.Field != field.Units && text != f.Show(after) && m.text(i) == text {
			m = m.setField(i, f.Show(after))
		}
	}
	return m.compute()
}

// setField puts text into a field.
func (m Model) setField(i int, text string) Model {
	if i == m.boxAt {
		m.box = m.box.With(text)
		return m
	}
	m.inputs = slices.Clone(m.inputs)
	m.inputs[i].SetValue(text)
	m.inputs[i].CursorEnd()
	return m
}

// choices are the ways to group the ends, the least trouble first.
func (m Model) choices() []project.Choice {
	if m.project == nil {
		return nil
	}
	return m.project.Choices
}

// current is the index of the choice that the form stands at.
func (m Model) current(list []project.Choice) int {
	return slices.IndexFunc(list, func(c project.Choice) bool { return c.Taken(m.spec) })
}

// nextChoice takes the next of the ranked choices, round after the last.
func (m Model) nextChoice() Model {
	list := m.choices()
	if !plain(m.spec) {
		return m.nextWay()
	}
	if len(list) == 0 {
		return m
	}
	next := list[(m.current(list)+1)%len(list)]
	return m.setFields(next.In(m.spec), "group", "last pass")
}

// setFields shows the values of a spec in the named fields.
func (m Model) setFields(spec plan.Spec, names ...string) Model {
	for i, f := range m.fields {
		if slices.Contains(names, f.Name) {
			m = m.setField(i, f.Show(spec))
		}
	}
	return m.compute()
}

// begin makes the record, or goes to the first field that is wrong.
func (m Model) begin() (Model, tea.Cmd) {
	if m.busy {
		return m, nil
	}
	if m.waits() {
		m.failed = "the passes are still being worked out"
		return m, nil
	}
	if m.project == nil {
		for i, f := range m.fields {
			if m.problems[f.Name] != "" {
				return m.focus(i), nil
			}
		}
		return m, nil
	}
	m.busy = true
	return m, send(BeginMsg{m.project.Plan.Spec})
}
