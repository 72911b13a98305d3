package mill

import (
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/counter/journal"
	"millside/counter/session"
	"millside/plan/wind"
	"millside/tui/internal/hand"
)

func laid(t *testing.T, s Model) int {
	t.Helper()
	return s.s.State().Laid()
}

// Every key that a clicker or a pedal sends counts one pass, and so does a mouse click.
func TestEveryForwardKeyCounts(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.winding(hand.Towels(), 4)
	for i, k := range []string{"space", "enter", "right", "down", "pgdown"} {
		if s = b.press(s, k); laid(t, s) != 5+i {
			t.Fatalf("%s: %d passes, want %d", k, laid(t, s), 5+i)
		}
	}
	b.clock.Wait(3 * time.Second)
	s = b.send(s, tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
	s = b.send(s, tea.MouseMsg{Action: tea.MouseActionRelease, Button: tea.MouseButtonLeft})
	s = b.send(s, tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown})
	if laid(t, s) != 10 {
		t.Fatalf("mouse: %d passes, want 10", laid(t, s))
	}
}

// A press sooner than the guard is not counted, and the screen says so until the next one counts.
func TestGuardSaysThatAPressWasIgnored(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.press(b.winding(hand.Towels(), 4), "space")
	b.clock.Wait(time.Second)
	s = b.send(s, hand.Key("space"))
	if laid(t, s) != 5 || !strings.Contains(s.View(80, 24), "one press ignored") {
		t.Fatalf("%d passes; screen:\n%s", laid(t, s), s.View(80, 24))
	}
	s = b.press(s, "space")
	if laid(t, s) != 6 || strings.Contains(s.View(80, 24), "ignored") {
		t.Fatalf("%d passes; screen:\n%s", laid(t, s), s.View(80, 24))
	}
}

// The line of keys says that a key keeps what is asked for only where it does so: in the last field.
func TestKeysOfAPromptAreTrue(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.send(b.winding(hand.Towels(), 4), hand.Key("b"))
	for range 2 {
		if v := s.View(80, 24); strings.Contains(v, "keep it") || !strings.Contains(v, "enter/tab next field") {
			t.Fatalf("the key goes on to the next field:\n%s", v)
		}
		s = b.send(s, hand.Key("enter"))
	}
	if v := s.View(80, 24); !strings.Contains(v, "enter keep it") {
		t.Fatalf("the key keeps it:\n%s", v)
	}
}

// A key held down for ten seconds repeats thirty times a second and counts once.
func TestHeldKeyCountsOnce(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.winding(hand.Towels(), 4)
	for range 300 {
		b.clock.Wait(33 * time.Millisecond)
		s = b.send(s, hand.Key("space"))
	}
	if laid(t, s) != 5 {
		t.Fatalf("%d passes, want 5", laid(t, s))
	}
}

func TestGuardTurnedOff(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	spec := hand.Towels()
	spec.Guard = 0
	s := b.winding(spec, 4)
	for range 3 {
		s = b.send(s, hand.Key("space"))
	}
	if laid(t, s) != 7 {
		t.Fatalf("%d passes, want 7", laid(t, s))
	}
}

// A key still held down from the last pass must not tick a finishing step, and nothing is counted past
// the last pass.
func TestHeldKeyStopsAtTheLastPass(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.winding(hand.Towels(), 39)
	for range 200 {
		b.clock.Wait(40 * time.Millisecond)
		s = b.send(s, hand.Key("space"))
	}
	w := s
	if w.s.State().Laid() != 40 || len(w.s.State().Chains[0].Ticked) != 0 || w.s.Stage(w.at) != session.Finishing {
		t.Fatalf("laid %d, ticked %v, stage %d", w.s.State().Laid(), w.s.State().Chains[0].Ticked, w.s.Stage(w.at))
	}
	if !slices.Contains(b.heard, session.CueStop) {
		t.Errorf("heard %v, no stop after the last pass", b.heard)
	}
}

// Taking back is guarded as a pass is, says where it ends, and can itself be taken back.
func TestUndoAndRedo(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.press(b.winding(hand.Towels(), 4), "u", "backspace", "r")
	if laid(t, s) != 3 {
		t.Fatalf("%d passes, want 3", laid(t, s))
	}
	for range 30 {
		b.clock.Wait(33 * time.Millisecond)
		s = b.send(s, hand.Key("u"))
	}
	if laid(t, s) != 2 {
		t.Fatalf("a key held down for a second leaves %d passes, want 2", laid(t, s))
	}
	s = b.press(s, "u", "u", "u")
	if laid(t, s) != 0 || !strings.Contains(s.View(80, 24), "nothing to take back") {
		t.Fatalf("%d passes:\n%s", laid(t, s), s.View(80, 24))
	}
}

// Presses that arrive while a line is on its way to the disk wait for it, in order.
func TestKeysWaitForTheDisk(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := b.winding(hand.Towels(), 4)
	b.clock.Wait(5 * time.Second)
	next, write := m.Update(hand.Key("space"), b.clock.T)
	next, none := next.Update(hand.Key("p"), b.clock.T) // before the answer
	if none != nil || laid(t, next) != 4 {
		t.Fatal("something was done before the disk answered")
	}
	for _, msg := range hand.Collect(write) {
		next = b.send(next, msg)
	}
	if w := next; w.s.State().Laid() != 5 || !w.s.State().Paused {
		t.Fatalf("laid %d, paused %v", w.s.State().Laid(), w.s.State().Paused)
	}
}

// The pause and the page on coming back take a press without counting a pass, also while the key is
// held down.
func TestComingBackCountsNoPass(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.press(b.winding(hand.Towels(), 5), "p", "space")
	s = b.send(s, hand.Key("space"))
	if w := s; w.s.State().Laid() != 5 || w.s.State().Paused || w.s.Stage(w.at) != session.Winding {
		t.Fatalf("laid %d, paused %v, stage %d", w.s.State().Laid(), w.s.State().Paused, w.s.Stage(w.at))
	}
	back := b.again(s)
	if back.s.Stage(back.at) != session.Looking {
		t.Fatalf("stage %d, want the page on coming back", back.s.Stage(back.at))
	}
	view := back.View(80, 24)
	for _, want := range []string{"5 of 40", "50 of 396", "far end", "COUNTERCLOCKWISE",
		"3 groups over peg 1, 2 over peg 2"} {
		if !strings.Contains(view, want) {
			t.Errorf("the page lacks %q:\n%s", want, view)
		}
	}
	if s := b.press(back, "space"); laid(t, s) != 5 || s.s.Stage(s.at) != session.Winding {
		t.Fatal("going on counted a pass or went nowhere")
	}
}

// A recount leads through the counting cross, keeps both numbers, says what can't be, and goes back to
// the page it came from.
func TestRecount(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.press(b.winding(hand.Towels(), 17), "c")
	s = b.typed(b.press(b.typed(s, "9"), "enter"), "6")
	if v := s.View(80, 24); !strings.Contains(v, "9") || !strings.Contains(v, "can't") {
		t.Fatalf("9 over peg 1 and 6 over peg 2 pass without a word:\n%s", v)
	}
	s = b.typed(b.press(s, "backspace", "shift+tab", "backspace"), "8")
	s = b.typed(b.press(s, "enter"), "7")
	if v := s.View(80, 24); !strings.Contains(v, "15 passes: 8 over peg 1 and 7 over peg 2, 150 ends") {
		t.Fatalf("no result:\n%s", v)
	}
	s = b.press(s, "enter", "enter", "enter", "enter", "enter")
	w := s
	if w.s.State().Laid() != 15 || w.s.Stage(w.at) != session.Winding || len(w.s.State().Recounts) != 1 ||
		w.s.State().Recounts[0].From != 17 {
		t.Fatalf("laid %d, stage %d, recounts %+v", w.s.State().Laid(), w.s.Stage(w.at), w.s.State().Recounts)
	}
	if why := w.s.State().Recounts[0].Reason; why != "counted on the pegs (8 over peg 1, 7 over peg 2)" {
		t.Errorf("reason %q", why)
	}
	s = b.press(b.press(b.again(w), "c"), "esc")
	if s.s.Stage(s.at) != session.Looking {
		t.Fatal("escape does not go back to the page on coming back")
	}
}

// The number of passes can be given outright; nonsense is refused at the field.
func TestRecountByNumber(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.press(b.winding(hand.Towels(), 17), "c", "tab", "tab", "tab", "tab", "backspace", "backspace")
	s = b.press(b.typed(s, "99"), "enter", "enter")
	if w := s; w.over != overPrompt || !strings.Contains(s.View(80, 24), "give 0 to 40") {
		t.Fatalf("stage %d:\n%s", w.s.Stage(w.at), s.View(80, 24))
	}
	s = b.press(s, "shift+tab", "backspace", "backspace")
	s = b.press(b.typed(s, "15"), "enter", "enter")
	if laid(t, s) != 15 {
		t.Fatalf("%d passes, want 15", laid(t, s))
	}
}

func TestNote(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.press(b.winding(hand.Towels(), 17), "n", "enter")
	if !strings.Contains(s.View(80, 24), "write a few words") {
		t.Fatalf("an empty note was taken:\n%s", s.View(80, 24))
	}
	s = b.press(b.typed(s, "q: thin place"), "enter")
	if w := s; len(w.s.State().Notes) != 1 || w.s.State().Notes[0].Text != "q: thin place" ||
		w.s.State().Notes[0].Pass != 17 {
		t.Fatalf("notes %+v", w.s.State().Notes)
	}
}

// After pass 2 the weaver looks at the lease. The other order changes the plan from then on, and says
// that pass 2 had the other opening first.
func TestLeaseTheOtherWay(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.winding(hand.Towels(), 1)
	s = b.press(s, "space")
	if s.s.Stage(s.at) != session.AtQuestion {
		t.Fatal("the lease is not asked about after pass 2")
	}
	s = b.press(s, "o")
	if s.s.State().Plan.Spec.ReturnOrder != wind.MirroredOrder ||
		!strings.Contains(hand.Flat(s.View(120, 40)), "take it back and lay it anew") {
		t.Fatalf("order %s:\n%s", s.s.State().Plan.Spec.ReturnOrder, s.View(120, 40))
	}
	s = b.press(s, "u", "space")
	if s.s.Stage(s.at) != session.Winding || laid(t, s) != 2 {
		t.Fatalf("asked again: stage %d, laid %d", s.s.Stage(s.at), laid(t, s))
	}
	if p, _ := s.s.State().NextPass(); p.FirstOpening != wind.HolesUp {
		t.Errorf("pass 3 of an even mirrored warp begins with %s", p.FirstOpening)
	}
}

// The question never eats a press: the pass key counts the next pass; the question stays open as a
// reminder until it is answered.
func TestLeaseQuestionEatsNoPress(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.press(b.winding(hand.Towels(), 1), "space", "space")
	if laid(t, s) != 3 || s.s.Stage(s.at) != session.Winding {
		t.Fatalf("%d passes, stage %d", laid(t, s), s.s.Stage(s.at))
	}
	for _, size := range append(hand.Sizes, hand.Extremes...) {
		if v := hand.Flat(s.View(size.W, size.H)); !strings.Contains(v, "lease is") {
			t.Errorf("no reminder at %s:\n%s", size, s.View(size.W, size.H))
		}
	}
	if s = b.press(s, "y"); !s.s.State().LeaseSeen || laid(t, s) != 3 {
		t.Errorf("answered %v, %d passes", s.s.State().LeaseSeen, laid(t, s))
	}
}

// The question is drawn: at the seam an end over the peg and one under it alternate if the answer is yes, and
// two neighbours lie alike if it is no.
func TestSeamIsDrawn(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	s := b.press(b.winding(hand.Towels(), 1), "space")
	q, _ := s.s.Question()
	for i, second := range [][]session.SeamEnd{q.Seam.Second, q.Seam.Turned} {
		rows := s.drawSeam(q, second, 70, 10, "")
		alike := rows[5]
		over := strings.Count(alike, "██")
		if want := 4; over != want {
			t.Errorf("picture %d: %d ends over the peg, want %d:\n%s", i, over, want, strings.Join(rows, "\n"))
		}
	}
}

// The finishing steps are ticked one by one, taken back one by one, and lead on to the next chain.
func TestFinishingTwoChains(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	spec := hand.Towels()
	spec.Ends, spec.ChainEnds = 40, 20
	s := b.press(b.winding(spec, 2), "space", "u")
	if w := s; w.s.Stage(w.at) != session.Finishing || len(w.s.State().Chains[0].Ticked) != 0 {
		t.Fatalf("stage %d, ticked %v", w.s.Stage(w.at), w.s.State().Chains[0].Ticked)
	}
	for s.s.State().Chain == 1 {
		s = b.press(s, "space")
	}
	if w := s; w.s.Stage(w.at) != session.Winding || w.s.State().Laid() != 0 ||
		!strings.Contains(w.View(80, 24), "chain 2 of 2") {
		t.Fatalf("stage %d, laid %d:\n%s", w.s.Stage(w.at), w.s.State().Laid(), w.View(80, 24))
	}
	for !s.s.State().Finished {
		s = b.press(s, "space")
	}
	if s.s.Stage(s.at) != session.Done {
		t.Fatal("no last page")
	}
}

// Leaving pauses the warp first; leaving a warp that nothing was done to writes nothing.
func TestLeaving(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := b.winding(hand.Towels(), 4)
	next, cmd := m.Update(hand.Key("q"), b.clock.T)
	var msgs []tea.Msg
	for _, msg := range hand.Collect(cmd) {
		var more tea.Cmd
		next, more = next.Update(msg, b.clock.T)
		msgs = append(msgs, hand.Collect(more)...)
	}
	if len(msgs) != 1 || !next.s.State().Paused {
		t.Fatalf("messages %v, paused %v", msgs, next.s.State().Paused)
	}
	if _, ok := msgs[0].(LeaveMsg); !ok {
		t.Fatalf("%T, want LeaveMsg", msgs[0])
	}
	fresh := b.winding(hand.Towels(), 0)
	_, cmd = fresh.Update(hand.Key("q"), b.clock.T)
	if msgs := hand.Collect(cmd); len(msgs) != 1 || fresh.rec.State().Events != 0 {
		t.Fatalf("messages %v, events %d", msgs, fresh.rec.State().Events)
	}
}

// Another window may look, and can't count.
func TestLooking(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := b.winding(hand.Towels(), 4)
	rec, err := journal.OpenReadOnly(journal.OS(), m.rec.Path())
	if err != nil {
		t.Fatal(err)
	}
	look := New(b.deps, rec, b.clock.T)
	s := b.press(look, "space", "u", "c", "n", "p")
	if laid(t, s) != 4 || !strings.Contains(s.View(80, 24), "only looking") {
		t.Fatalf("%d passes:\n%s", laid(t, s), s.View(80, 24))
	}
	b.press(m, "space")
	if s = b.press(s, "r"); laid(t, s) != 5 {
		t.Fatalf("looking again shows %d passes, want 5", laid(t, s))
	}
}

// A record that can't be written says so at once, the count stands still, and trying again reads what
// is on the disk.
func TestNotSaved(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := b.winding(hand.Towels(), 4)
	if err := m.rec.Close(); err != nil {
		t.Fatal(err)
	}
	s := b.press(m, "space")
	if laid(t, s) != 4 || !strings.Contains(hand.Flat(s.View(80, 24)), "not counted") {
		t.Fatalf("%d passes:\n%s", laid(t, s), s.View(80, 24))
	}
	b.clock.Wait(5 * time.Second)
	s.s, _ = s.s.Take(session.Press{}, b.clock.T)
	next, _ := s.saved(savedMsg{err: journal.ErrFailed})
	if !strings.Contains(hand.Flat(next.View(40, 12)), "NOT SAVED") {
		t.Fatalf("nothing is said:\n%s", next.View(40, 12))
	}
	b.heard = nil
	if next = b.press(next, "space"); next.s.Stage(next.at) != session.Failed ||
		!slices.Equal(b.heard, []session.Cue{session.CueRefused}) {
		t.Fatalf("a broken record goes on counting, heard %v", b.heard)
	}
	if s = b.press(next, "r"); laid(t, s) != 4 || s.s.Stage(s.at) != session.Looking {
		t.Fatalf("trying again: %d passes, stage %d", laid(t, s), s.s.Stage(s.at))
	}
	_ = s.rec.Close()
}
