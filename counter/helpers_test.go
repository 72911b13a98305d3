package counter

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"millside/plan"
)

// testPlan is a warp with the given ends, group and ends in a chain (0 for one chain).
func testPlan(t testing.TB, ends, group, chainEnds int) *plan.Plan {
	t.Helper()
	spec := plan.DefaultSpec()
	spec.Name, spec.Ends, spec.Group, spec.ChainEnds = "test warp", ends, group, chainEnds
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// at is a moment so many seconds into a morning's winding.
func at(seconds int) time.Time {
	return time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC).Add(time.Duration(seconds) * time.Second)
}

func laid(chain, pass int) Event {
	return Event{At: at(pass), Kind: Laid, Chain: chain, Pass: pass}
}

// windAll is every event from the first pass of a plan to the end.
func windAll(p *plan.Plan) []Event {
	var events []Event
	for _, c := range p.Chains {
		for k := range c.Passes {
			events = append(events, laid(c.Number, k+1))
		}
		for _, step := range p.Finishing(c) {
			events = append(events, Event{At: at(1000), Kind: Ticked, Chain: c.Number, Step: step.ID})
		}
	}
	return append(events, Event{At: at(2000), Kind: Finished})
}

// sample is one event of every kind, with a text that tries the quoting.
func sample() []Event {
	return []Event{
		laid(1, 1), laid(1, 2),
		{At: at(3), Kind: LeaseSeen, Order: plan.MirroredOrder},
		{At: at(4).Add(250 * time.Millisecond), Kind: Noted, Chain: 1, Pass: 2, Text: `knot "here" \ #00000000, Länge ½`},
		{At: at(5), Kind: Undone, Chain: 1, Pass: 2},
		{At: at(6), Kind: Paused}, {At: at(7), Kind: Resumed},
		{At: at(8), Kind: Recounted, Chain: 1, Pass: 4, Text: "counted at the pegs"},
		{At: at(9), Kind: Ticked, Chain: 1, Step: plan.StepFasten},
		{At: at(10), Kind: Unticked, Chain: 1, Step: plan.StepFasten},
	}
}

// fileOf is the bytes of a record.
func fileOf(t testing.TB, p *plan.Plan, events []Event) []byte {
	t.Helper()
	head, err := appendHead(nil, p.Spec)
	if err != nil {
		t.Fatal(err)
	}
	data, sum := seal(head, 0)
	for i, e := range events {
		var line []byte
		line, sum = seal(appendEvent(nil, i+2, e.normal()), sum)
		data = append(data, line...)
	}
	return data
}

// lineOf is the number of the line, from 1, that a byte of a file belongs to.
func lineOf(data []byte, offset int) int { return bytes.Count(data[:offset], []byte{'\n'}) + 1 }

func writeFile(t testing.TB, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "test"+Extension)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func readBack(t testing.TB, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// fakeFS is the real file system with faults. A nil function does what the real one does, but for the
// syncs, which do nothing, so that tests with thousands of files are quick.
type fakeFS struct {
	FS
	write    func(f File, p []byte) (int, error)
	sync     func() error
	syncDir  func(path string) error
	truncate func(f File, size int64) error
	open     func(path string, flag int) error
}

func fake() *fakeFS { return &fakeFS{FS: OS()} }

func (f *fakeFS) OpenFile(path string, flag int, perm fs.FileMode) (File, error) {
	if f.open != nil {
		if err := f.open(path, flag); err != nil {
			return nil, err
		}
	}
	file, err := f.FS.OpenFile(path, flag, perm)
	if err != nil {
		return nil, err
	}
	return &fakeFile{File: file, fs: f}, nil
}

func (f *fakeFS) SyncDir(path string) error {
	if f.syncDir == nil {
		return nil
	}
	return f.syncDir(path)
}

type fakeFile struct {
	File
	fs *fakeFS
}

func (f *fakeFile) Write(p []byte) (int, error) {
	if f.fs.write == nil {
		return f.File.Write(p)
	}
	return f.fs.write(f.File, p)
}

func (f *fakeFile) Sync() error {
	if f.fs.sync == nil {
		return nil
	}
	return f.fs.sync()
}

func (f *fakeFile) Truncate(size int64) error {
	if f.fs.truncate == nil {
		return f.File.Truncate(size)
	}
	return f.fs.truncate(f.File, size)
}

// drawPlan draws a small warp of one to several chains.
func drawPlan(t *rapid.T) *plan.Plan {
	spec := plan.DefaultSpec()
	spec.Ends = rapid.IntRange(1, 24).Draw(t, "ends")
	spec.Group = rapid.IntRange(1, 6).Draw(t, "group")
	if chain := rapid.IntRange(0, 12).Draw(t, "chain"); chain >= spec.Group {
		spec.ChainEnds = chain
	}
	spec.ReturnOrder = plan.ReturnOrder(rapid.IntRange(0, 1).Draw(t, "order"))
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// drawEvent draws any event that makes some sense for a plan, legal or not, and rather often legal.
func drawEvent(t *rapid.T, m *model) Event {
	kinds := []Kind{Laid, Laid, Laid, Laid, Laid, Undone, Recounted, Paused, Resumed, Noted, LeaseSeen, Ticked, Ticked, Ticked, Unticked, Finished, "dropped"}
	e := Event{
		At:    at(rapid.IntRange(-5, 100).Draw(t, "at")),
		Kind:  rapid.SampledFrom(kinds).Draw(t, "kind"),
		Chain: m.chain + rapid.SampledFrom([]int{0, 0, 0, 0, 0, 0, -1, 1}).Draw(t, "chain"),
		Text:  rapid.SampledFrom([]string{"a knot", "counted", "ü \" \\ #", "", " ", "two\nlines"}).Draw(t, "text"),
		Order: plan.ReturnOrder(rapid.IntRange(0, 2).Draw(t, "order seen")),
	}
	e.Pass = m.laid[m.chain-1] + rapid.SampledFrom([]int{1, 1, 0, 0, -1, 2}).Draw(t, "pass")
	steps := []plan.StepID{"no-step"}
	for _, step := range m.plan.Finishing(m.plan.Chains[m.chain-1]) {
		steps = append(steps, step.ID)
	}
	e.Step = rapid.SampledFrom(steps).Draw(t, "step")
	return e
}

// drawHistory draws a list of legal events, and the model after them.
func drawHistory(t *rapid.T, p *plan.Plan) ([]Event, *model) {
	m := newModel(p)
	var events []Event
	for range rapid.IntRange(0, 60).Draw(t, "draws") {
		if e := drawEvent(t, m); m.allows(e) {
			m.take(e)
			events = append(events, e)
		}
	}
	return events, m
}

// model says again, in the plainest way, what a half-wound warp is and what may follow.
type model struct {
	plan                        *plan.Plan
	laid                        []int
	ticked                      []map[plan.StepID]bool
	chain                       int
	paused, leaseSeen, finished bool
	order                       plan.ReturnOrder
	notes, recounts             int
}

func newModel(p *plan.Plan) *model {
	m := &model{plan: p, laid: make([]int, len(p.Chains)), chain: 1, order: p.Spec.ReturnOrder}
	for range p.Chains {
		m.ticked = append(m.ticked, map[plan.StepID]bool{})
	}
	return m
}

func (m *model) total(chain int) int { return len(m.plan.Chains[chain-1].Passes) }

func (m *model) isStep(e Event) bool {
	steps := m.plan.Finishing(m.plan.Chains[e.Chain-1])
	return slices.ContainsFunc(steps, func(s plan.Step) bool { return s.ID == e.Step })
}

func (m *model) done(chain int) bool {
	return m.laid[chain-1] == m.total(chain) && len(m.ticked[chain-1]) == len(m.plan.Finishing(m.plan.Chains[chain-1]))
}

func (m *model) allows(e Event) bool {
	if m.finished || (m.paused && e.Kind != Resumed && e.Kind != Noted) {
		return false
	}
	text := e.Text == "a knot" || e.Text == "counted" || e.Text == "ü \" \\ #"
	here := e.Chain == m.chain
	untouched := len(m.ticked[m.chain-1]) == 0
	now := m.laid[m.chain-1]
	switch e.Kind {
	case Laid:
		return here && e.Pass == now+1 && e.Pass <= m.total(m.chain)
	case Undone:
		return here && e.Pass == now && now > 0 && untouched
	case Recounted:
		return here && e.Pass >= 0 && e.Pass <= m.total(m.chain) && text && untouched
	case Paused:
		return true
	case Resumed:
		return m.paused
	case Noted:
		return e.Chain >= 1 && e.Chain <= len(m.laid) && e.Pass >= 0 && e.Pass <= m.total(e.Chain) && text
	case LeaseSeen:
		return e.Order <= 1
	case Ticked:
		return here && now == m.total(m.chain) && m.isStep(e) && !m.ticked[m.chain-1][e.Step]
	case Unticked:
		before := e.Chain == m.chain-1 && e.Chain >= 1 && now == 0
		return (here || before) && m.ticked[e.Chain-1][e.Step]
	case Finished:
		return m.chain == len(m.laid) && m.done(m.chain)
	}
	return false
}

func (m *model) take(e Event) {
	switch e.Kind {
	case Laid, Recounted:
		m.laid[e.Chain-1] = e.Pass
	case Undone:
		m.laid[e.Chain-1]--
	case Paused, Resumed:
		m.paused = e.Kind == Paused
	case LeaseSeen:
		m.leaseSeen, m.order = true, e.Order
	case Ticked:
		m.ticked[e.Chain-1][e.Step] = true
	case Unticked:
		delete(m.ticked[e.Chain-1], e.Step)
	case Finished:
		m.finished = true
	}
	if e.Kind == Noted {
		m.notes++
	}
	if e.Kind == Recounted {
		m.recounts++
	}
	m.chain = 1
	for m.chain < len(m.laid) && m.done(m.chain) {
		m.chain++
	}
}

// differs says where a state is not as the model has it.
func (m *model) differs(s State) string {
	for i, c := range s.Chains {
		if c.Laid != m.laid[i] {
			return fmt.Sprintf("chain %d: %d laid, want %d", i+1, c.Laid, m.laid[i])
		}
		if len(c.Ticked) != len(m.ticked[i]) {
			return fmt.Sprintf("chain %d: %v ticked, want %v", i+1, c.Ticked, m.ticked[i])
		}
		for id := range m.ticked[i] {
			if !c.Has(id) {
				return fmt.Sprintf("chain %d: %s not ticked", i+1, id)
			}
		}
	}
	got := fmt.Sprint(s.Chain, s.Paused, s.LeaseSeen, s.Finished, s.Plan.Spec.ReturnOrder, len(s.Notes), len(s.Recounts))
	want := fmt.Sprint(m.chain, m.paused, m.leaseSeen, m.finished, m.order, m.notes, m.recounts)
	if got != want {
		return got + ", want " + want
	}
	return ""
}
