package tui

import (
	"fmt"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/counter/journal"
	"millside/tui/internal/hand"
)

// sixty is home with twenty half-wound warps, twenty that are not begun and twenty finished ones.
func sixty(b *bench) app {
	var list []journal.Summary
	for i := range 60 {
		sum := journal.Summary{Path: fmt.Sprint(i), Name: fmt.Sprintf("Warp %02d", i), Passes: 40, Ends: 400}
		switch i / 20 {
		case 0:
			sum.Laid, sum.Begun, sum.Started = 3, true, b.clock.T.Add(-time.Hour)
		case 2:
			sum.Finished, sum.Wound, sum.Begun, sum.Laid, sum.Started = true, true, true, 40, b.clock.T.Add(-time.Hour)
		}
		list = append(list, sum)
	}
	a := b.app()
	a.screen = newHome(b.deps, listing{list: list}, b.clock.T)
	return a
}

// What is half-wound, not begun and finished stand apart, each with its number.
func TestHomePartsAndCounts(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	v := sixty(b).screen.view(120, 200)
	for _, want := range []string{"half-wound (20)", "not begun (20)", "finished (20)"} {
		if !strings.Contains(v, want) {
			t.Errorf("no %q:\n%s", want, v)
		}
	}
}

// Sixty warps are not sixty presses: the ends of the list are one key away, a page is several warps, and a part of
// a name finds one.
func TestHomeIsQuicklyGoneThrough(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	press := func(m tea.Model, types ...tea.KeyType) tea.Model {
		for _, k := range types {
			m = drive(b, m, tea.KeyMsg{Type: k})
		}
		return m
	}
	chosen := func(m tea.Model) string {
		h := m.(app).screen.(home)
		e := h.entries()[h.chosen]
		if e.summary == nil {
			return e.word
		}
		return e.summary.Name
	}
	if got := chosen(press(sixty(b), tea.KeyEnd)); got != "Warp 59" {
		t.Errorf("end: %s", got)
	}
	if got := chosen(press(sixty(b), tea.KeyEnd, tea.KeyHome)); got != "Warp 00" {
		t.Errorf("home: %s", got)
	}
	down := press(sixty(b), tea.KeyPgDown)
	if got := chosen(down); got < "Warp 04" || got > "Warp 15" {
		t.Errorf("page down: %s", got)
	}
	if got := chosen(press(down, tea.KeyPgUp)); got != "Warp 00" {
		t.Errorf("page up: %s", got)
	}
	found := drive(b, sixty(b), hand.Key("/"), tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("rp 4")})
	if v := found.View(); !strings.Contains(v, "Warp 47") || strings.Contains(v, "Warp 07") {
		t.Errorf("found:\n%s", v)
	}
	found = drive(b, found, hand.Key("7"))
	if got := chosen(found); got != "Warp 47" {
		t.Errorf("found %s", got)
	}
	if all := drive(b, found, hand.Key("esc")); !strings.Contains(all.View(), "Warp 00") {
		t.Errorf("esc doesn't bring the others back:\n%s", all.View())
	}
	none := drive(b, found, hand.Key("q"), hand.Key("enter"), hand.Key("enter"), hand.Key("c"))
	if v := none.View(); !strings.Contains(v, "no warp has that in its name") {
		t.Errorf("q left, or nothing is said:\n%s", v)
	}
}

// The wheel goes through the list, a click chooses the warp under it.
func TestHomeMouse(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, sixty(b), tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown},
		tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown})
	if got := m.(app).screen.(home).chosen; got != 2 {
		t.Errorf("the wheel goes to %d", got)
	}
	for y, line := range strings.Split(m.View(), "\n") {
		if strings.Contains(line, "Warp 05") {
			m = drive(b, m, tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonLeft, Y: y, X: 8})
			break
		}
	}
	if got := m.(app).screen.(home).chosen; got != 5 {
		t.Errorf("the click chooses %d", got)
	}
}

// place is the entry that home shows as chosen.
func place(m tea.Model) string {
	e, _ := m.(app).screen.(home).current()
	return e.name()
}

// click presses the mouse on the line that holds a text.
func click(b *bench, m tea.Model, text string) tea.Model {
	b.t.Helper()
	for y, line := range strings.Split(m.View(), "\n") {
		if strings.Contains(line, text) {
			return drive(b, m, tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonLeft, Y: y, X: 8})
		}
	}
	b.t.Fatalf("no %q:\n%s", text, m.View())
	return m
}

// Only a second click opens, on the chosen entry too; and the list stands still under the mouse.
func TestSecondClickOpens(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	opens := func(m tea.Model) bool { return m.(app).screen.(home).problem != "" } // there are no such files
	m := click(b, sixty(b), "Warp 00")
	if opens(m) {
		t.Error("the first click on the chosen entry opened it")
	}
	if m = click(b, m, "Warp 00"); !opens(m) {
		t.Error("the second click opened nothing")
	}
	at := sixty(b)
	before := at.View()
	m = click(b, at, "Warp 03")
	if got := strings.ReplaceAll(m.View(), "▸", " "); got != strings.ReplaceAll(before, "▸", " ") {
		t.Errorf("the list moved under the mouse:\n%s", m.View())
	}
	m = click(b, drive(b, m, hand.Key("down"), hand.Key("up")), "Warp 03")
	if opens(m) {
		t.Error("a click long after another opened")
	}
}

// A filter that is typed and left again leaves the warp chosen that was; one that is taken chooses what it found.
func TestFilterKeepsTheChosen(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, sixty(b), hand.Key("down"), hand.Key("down"), hand.Key("/"))
	m = typeInto(b, m, "warp 0")
	if got := place(m); got != "Warp 02" {
		t.Errorf("still found, and %s is chosen", got)
	}
	if m = typeInto(b, m, "7"); place(m) != "Warp 07" {
		t.Errorf("%s is chosen", place(m))
	}
	if back := drive(b, m, hand.Key("esc")); place(back) != "Warp 02" {
		t.Errorf("after esc %s is chosen", place(back))
	}
	m = drive(b, m, hand.Key("backspace"), hand.Key("down"), hand.Key("enter"), hand.Key("esc"))
	if place(m) != "Warp 03" {
		t.Errorf("after a move %s is chosen", place(m))
	}
}

// The line of the filter says how many were found, and an old problem goes with the next key.
func TestFilterCounts(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	m := drive(b, sixty(b), hand.Key("enter"))
	if v := m.View(); !strings.Contains(v, "! ") {
		t.Fatalf("nothing is wrong:\n%s", v)
	}
	m = typeInto(b, drive(b, m, hand.Key("/")), "warp 4")
	if v := m.View(); !strings.Contains(v, "10 of 60") || strings.Contains(v, "! ") {
		t.Errorf("no count, or an old problem:\n%s", v)
	}
}

// What is wound and not finished has a part of its own, what is not begun takes one line, and End goes to the last
// warp.
func TestHomePartsOfTheirOwn(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	a := b.app()
	list := []journal.Summary{
		{Path: "a", Name: "Rug", Passes: 40, Laid: 40, Ends: 400, Standing: 400, Wound: true, Begun: true,
			Started: b.clock.T},
		{Path: "b", Name: "Scarf", Passes: 20, Ends: 200},
		{Path: "c", Name: "Towels", Passes: 20, Ends: 200},
	}
	a.screen = newHome(b.deps, listing{list: list}, b.clock.T)
	v := a.View()
	lines := strings.Split(v, "\n")
	for i, line := range lines {
		if strings.Contains(line, "Scarf") && (!strings.Contains(line, "200 ends, 20 passes") ||
			!strings.Contains(lines[i+1], "Towels")) {
			t.Errorf("more than a line:\n%s", v)
		}
	}
	if !strings.Contains(v, "wound, not finished (1)") || strings.Contains(v, "half-wound") {
		t.Errorf("parts:\n%s", v)
	}
	if m := drive(b, a, tea.KeyMsg{Type: tea.KeyEnd}); place(m) != "Towels" {
		t.Errorf("end: %s", place(m))
	}
}

// Where not all keys find room there is a sign, and the key that shows them all.
func TestKeysAreNotHiddenWithoutASign(t *testing.T) {
	b := newBench(t, termenv.Ascii)
	for w := 30; w <= 200; w++ {
		for h := 12; h <= 30; h += 6 {
			v := sixty(b).screen.view(w, h)
			if !strings.Contains(v, "move") && !strings.HasSuffix(strings.TrimRight(v, " \n"), "… ? keys") {
				t.Fatalf("%dx%d:\n%s", w, h, v)
			}
		}
	}
}

// However far the list is turned, and however little room a fault told above the keys leaves it, the chosen entry is
// seen, neither a heading nor half of an entry stands last, and a line says how many entries are out of sight.
func TestHomeSaysWhereThereIsMore(t *testing.T) {
	const fault = "at-hand.txt: line 2, column 9, peg step: \"18\" won't do; give a number and a unit, such as " +
		"7.5 yd, 7 1/2 yd, 6.4 m or 250 in; left out"
	for _, size := range [][2]int{{60, 18}, {60, 24}, {80, 24}, {120, 40}} {
		for _, make := range []func(*bench) home{func(b *bench) home { return sixty(b).screen.(home) },
			func(b *bench) home { return homePage(b).(home) }} {
			for _, told := range []string{"", fault} {
				m := make(newBench(t, termenv.Ascii))
				m.w, m.h, m.problem = size[0], size[1], told
				for i := range m.entries() {
					m = m.to(i)
					l := m.lay(m.w, m.h)
					checkWindow(t, m, l, fmt.Sprintf("%v, entry %d, fault %v", size, i, told != ""))
				}
			}
		}
	}
}

func checkWindow(t *testing.T, m home, l laid, where string) {
	t.Helper()
	lines := m.view(m.w, m.h)
	seen, whole := map[int]int{}, map[int]int{}
	last := -1
	for i, of := range l.ofShown {
		if of >= 0 {
			seen[of]++
		}
		if strings.TrimSpace(l.shown[i]) != "" && !strings.Contains(l.shown[i], "more below") {
			last = of
		}
	}
	for _, of := range l.of {
		whole[of]++
	}
	hidden := 0
	for i := range m.entries() {
		if seen[i] == 0 {
			hidden++
		} else if seen[i] != whole[i] {
			t.Errorf("%s: half of an entry:\n%s", where, lines)
		}
	}
	if seen[m.chosen] == 0 || last < 0 || len(l.head)+len(l.shown)+len(l.foot) > m.h {
		t.Errorf("%s: chosen seen %d times, the last line is of %d:\n%s", where, seen[m.chosen], last, lines)
	}
	if n := count(l, "above") + count(l, "below"); n != hidden {
		t.Errorf("%s: %d entries are hidden, told %d:\n%s", where, hidden, n, lines)
	}
}

// count is how many entries the sign says to be above or below.
func count(l laid, where string) (n int) {
	for _, line := range l.shown {
		if strings.HasSuffix(line, " more "+where) {
			_, _ = fmt.Sscanf(strings.TrimSpace(line), "… %d more", &n)
		}
	}
	return n
}
