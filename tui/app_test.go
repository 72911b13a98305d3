package tui

import (
	"errors"
	"reflect"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/counter/session"
	"millside/tui/form"
	"millside/tui/internal/hand"
	"millside/tui/mill"
)

// Letters typed in one read arrive as one message; each is a key of its own.
func TestRunesInOneReadAreSplit(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, b.winding(hand.Towels(), 4), tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("n7")}, hand.Key("enter"))
	if notes := state(t, m).Notes; len(notes) != 1 || notes[0].Text != "7" {
		t.Fatalf("notes %+v:\n%s", notes, m.View())
	}
}

// What was pasted is text, never a key.
func TestPasteIsNoKey(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	a := b.winding(hand.Towels(), 4)
	events := state(t, a).Events
	next, cmd := a.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("q"), Paste: true})
	if cmd != nil || state(t, next).Events != events {
		t.Fatal("a pasted q left the program")
	}
}

func TestInterrupt(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	a := b.app()
	a.screen = planning{Model: form.New(a.forForm(), hand.Towels())}
	next, cmd := a.Update(hand.Key("ctrl+c"))
	if !next.(app).interrupted || cmd == nil {
		t.Fatal("ctrl+c did not leave")
	}
	if _, ok := cmd().(tea.QuitMsg); !ok {
		t.Fatal("ctrl+c did not quit")
	}
}

// From home to a new warp, wound a little, left, and found again at the head of the list.
func TestFromHomeAndBack(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, b.app(), hand.Key("n"), hand.Key("ctrl+u"))
	for _, k := range hand.Letters("Blue rug") {
		m = drive(b, m, k)
	}
	m = drive(b, m, hand.Key("ctrl+s"), hand.Key("space"), hand.Key("p"))
	if st := state(t, m); st.Plan.Spec.Name != "Blue rug" || st.Laid() != 1 {
		t.Fatalf("screen %T:\n%s", m.(app).screen, m.View())
	}
	m = drive(b, m, mill.HomeMsg{})
	if v := m.View(); !strings.Contains(v, "Blue rug") || !strings.Contains(v, "1 of 20 passes") {
		t.Fatalf("home:\n%s", v)
	}
	m = drive(b, m, hand.Key("enter"))
	if state(t, m).Laid() != 1 || !strings.Contains(m.View(), "passes laid        1 of 20") {
		t.Fatalf("not asked to look:\n%s", m.View())
	}
	m.(app).close()
}

// The plan of a warp can be copied in three keys: a name is proposed, the form opens with the plan, and begins
// a warp of its own.
func TestTheSameWarpAgain(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	first := b.winding(hand.Towels(), 4)
	list, err := b.deps.store.List()
	if err != nil {
		t.Fatal(err)
	}
	a := b.app()
	a.screen = newHome(b.deps, listing{list: list}, b.clock.T)
	m := drive(b, a, hand.Key("c"), hand.Key("enter"), hand.Key("ctrl+s"))
	want := state(t, first).Plan.Spec
	want.Name += " 2"
	if st := state(t, m); !reflect.DeepEqual(st.Plan.Spec, want) || st.Laid() != 0 ||
		m.(app).path() == first.path() {
		t.Fatalf("%T:\n%s", m.(app).screen, m.View())
	}
	m.(app).close()
}

// path is the file of the record that is shown.
func (a app) path() string { return a.screen.(winding).Record().Path() }

// A second window on the same warp looks, and doesn't wind.
func TestOpenTwiceLooks(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	first := b.winding(hand.Towels(), 4)
	m := drive(b, b.app(), openMsg{first.path()})
	if w, ok := m.(app).screen.(winding); !ok || !w.Record().ReadOnly() {
		t.Fatalf("the second window winds: %T", m.(app).screen)
	}
}

// Enter pressed twice on home opens the warp once, for winding.
func TestOpeningTwiceInARow(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	first := b.winding(hand.Towels(), 4)
	path := first.path()
	first.close()
	a := b.app()
	list, err := b.deps.store.List()
	if err != nil {
		t.Fatal(err)
	}
	a.screen = newHome(b.deps, listing{list: list}, b.clock.T)
	once, cmd := a.Update(hand.Key("enter"))
	twice, more := once.Update(hand.Key("enter"))
	m := drive(b, twice, append(hand.Collect(cmd), hand.Collect(more)...)...)
	m = drive(b, m, openMsg{path})
	if w, ok := m.(app).screen.(winding); !ok || w.Record().ReadOnly() {
		t.Fatalf("%T", m.(app).screen)
	}
	m.(app).close()
}

func TestOpeningWhatIsNotThere(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, b.app(), openMsg{b.deps.store.Dir + "/none.millside"})
	if v := m.View(); !strings.Contains(v, "! opening the record") {
		t.Fatalf("no reason given:\n%s", v)
	}
}

// A key is bound only after it was asked for, shown and confirmed, and works at once; a stray press binds
// nothing, and what is pressed can be given up.
func TestOwnKey(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	var kept mill.Settings
	b.deps.save = func(s mill.Settings) error { kept = s; return nil }
	m := drive(b, b.winding(hand.Towels(), 4), hand.Key("s"), hand.Key("f5"), hand.Key("."), hand.Key("7"))
	if len(kept.Keys) != 0 {
		t.Fatalf("a stray press bound %v", kept.Keys)
	}
	m = drive(b, m, hand.Key("a"), hand.Key("f5"))
	if len(kept.Keys) != 0 || !strings.Contains(m.View(), `"f5" WAS PRESSED`) {
		t.Fatalf("not shown first, kept %v:\n%s", kept.Keys, m.View())
	}
	m = drive(b, m, hand.Key("esc"), hand.Key("a"), hand.Key("f5"), hand.Key("y"), hand.Key("a"), hand.Key("q"))
	if !strings.Contains(m.View(), `"q" must keep its meaning: leave`) ||
		!reflect.DeepEqual(kept.Keys, []string{"f5"}) {
		t.Fatalf("kept %v:\n%s", kept.Keys, m.View())
	}
	m = drive(b, m, hand.Key("esc"), hand.Key("f5"))
	if laid := state(t, m).Laid(); laid != 5 {
		t.Fatalf("%d passes, want 5:\n%s", laid, m.View())
	}
	drive(b, m, hand.Key("s"), hand.Key("backspace"))
	if len(kept.Keys) != 0 {
		t.Errorf("kept %+v", kept)
	}
}

// What a clicker sends beside its two big keys does no harm as it comes, and can be bound: then it means a pass
// and nothing else.
func TestClickerKeys(t *testing.T) {
	for _, name := range []string{"b", ".", "f5", "esc"} {
		b := newBench(t, termenv.Ascii)
		m := drive(b, b.winding(hand.Towels(), 4), hand.Key(name), hand.Key("pgdown"))
		if laid := state(t, m).Laid(); laid != 5 {
			t.Errorf("%s: %d passes, want 5:\n%s", name, laid, m.View())
		}
		m = drive(b, m, hand.Key("s"), hand.Key("a"), hand.Key(name), hand.Key("y"), hand.Key("esc"))
		m = drive(b, m, hand.Key(name))
		if laid := state(t, m).Laid(); laid != 6 {
			t.Errorf("%s bound: %d passes, want 6:\n%s", name, laid, m.View())
		}
	}
}

// Caps Lock changes nothing.
func TestCapsLock(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, b.winding(hand.Towels(), 4), hand.Key("U"))
	if laid := state(t, m).Laid(); laid != 3 {
		t.Errorf("U: %d passes, want 3", laid)
	}
	if m = drive(b, m, hand.Key("P")); !state(t, m).Paused {
		t.Error("P does not pause")
	}
}

// Each sound can be switched off, and is then not heard.
func TestSoundsOff(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	var kept mill.Settings
	b.deps.save = func(s mill.Settings) error { kept = s; return nil }
	m := drive(b, b.winding(hand.Towels(), 4), hand.Key("s"))
	for range mill.Cues() {
		m = drive(b, m, hand.Key("x"), hand.Key("down"))
	}
	if !reflect.DeepEqual(kept.Off, mill.Cues()) {
		t.Fatalf("off: %v", kept.Off)
	}
	b.heard = nil
	drive(b, m, hand.Key("esc"), hand.Key("space"), hand.Key("p"), hand.Key("u"))
	if len(b.heard) != 0 {
		t.Errorf("heard %v with all sounds off", b.heard)
	}
}

func TestSettingsThatCantBeKept(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	b.deps.save = func(mill.Settings) error { return errors.New("no space left on device") }
	m := drive(b, b.winding(hand.Towels(), 4), hand.Key("s"), hand.Key("x"))
	if !strings.Contains(m.View(), "could not be kept") {
		t.Errorf("nothing is said:\n%s", m.View())
	}
}

// A pass key on the settings page counts nothing, and says so with the sound of a refusal.
func TestPassKeyOnSettings(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, b.winding(hand.Towels(), 4), hand.Key("s"))
	for _, msg := range []tea.Msg{hand.Key("space"), hand.Key("pgdown"),
		tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonLeft}} {
		b.heard = nil
		m = drive(b, m, msg)
		if !strings.Contains(m.View(), "not counted") ||
			!reflect.DeepEqual(b.heard, []session.Cue{session.CueRefused}) {
			t.Errorf("%v: heard %v:\n%s", msg, b.heard, m.View())
		}
	}
}

// The settings page may be asked for while a line is on its way to the disk, and keys after it are for
// that page.
func TestSettingsWhileSaving(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	var kept mill.Settings
	b.deps.save = func(s mill.Settings) error { kept = s; return nil }
	var m tea.Model = b.winding(hand.Towels(), 4)
	b.clock.Wait(5e9)
	stamped := stamp(b.clock.Now)
	m, write := m.Update(stamped(m, hand.Key("space")))
	for _, k := range []string{"s", "x"} {
		m, _ = m.Update(stamped(m, hand.Key(k)))
	}
	m = drive(b, m, hand.Collect(write)...)
	if _, ok := m.(app).screen.(setting); !ok || len(kept.Off) != 1 {
		t.Fatalf("%T, %v off", m.(app).screen, kept.Off)
	}
	if m = drive(b, m, hand.Key("esc")); state(t, m).Laid() != 5 {
		t.Errorf("%d passes, want 5", state(t, m).Laid())
	}
}

// A rhythm is rung to its end, and a newer one ends an older.
func TestRinger(t *testing.T) {
	rings, waits := make(chan bool), make(chan time.Duration, 10)
	fire := make(chan time.Time)
	r := ringer{cues: make(chan session.Cue, 1), done: make(chan struct{})}
	go r.run(func() { rings <- true }, func(d time.Duration) <-chan time.Time { waits <- d; return fire })
	defer r.stop()
	r.sound(session.CueRefused)
	<-rings
	for _, gap := range mill.Rhythm(session.CueRefused)[:2] {
		if d := <-waits; d != gap {
			t.Fatalf("a gap of %s, want %s", d, gap)
		}
		fire <- time.Time{}
		<-rings
	}
	<-waits
	r.sound(session.CueOutward)
	<-rings
	select {
	case d := <-waits:
		t.Errorf("one ring is followed by a gap of %s", d)
	default:
	}
}

// A press has the time at which it came, also where it waited for the disk: two that came within the guard
// are one press too many however slow the disk was.
func TestPressesKeepTheirTime(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	var m tea.Model = b.winding(hand.Towels(), 4)
	b.clock.Wait(5e9)
	stamped := stamp(b.clock.Now)
	m, write := m.Update(stamped(m, hand.Key("space")))
	b.clock.Wait(5e8)
	m, _ = m.Update(stamped(m, hand.Key("space")))
	b.clock.Wait(10e9) // the disk
	if m = drive(b, m, hand.Collect(write)...); state(t, m).Laid() != 5 {
		t.Errorf("%d passes, want 5", state(t, m).Laid())
	}
}
