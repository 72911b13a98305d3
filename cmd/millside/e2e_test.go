//go:build unix

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"millside/counter"
	"millside/counter/journal"
	"millside/plan"
	"millside/plan/times"
)

// onlyRecord finds the one record in a folder and looks at it.
func onlyRecord(t *testing.T, dir string) *journal.Record {
	t.Helper()
	list, err := journal.Store{Dir: dir, FS: journal.OS()}.List()
	if err != nil || len(list) != 1 {
		t.Fatalf("%d records, %v", len(list), err)
	}
	rec, err := journal.OpenReadOnly(journal.OS(), list[0].Path)
	if err != nil {
		t.Fatal(err)
	}
	return rec
}

// wind lays passes until so many are laid, waiting for each to be shown as counted, and does the work at a
// peg that comes before the next one.
func (term *terminal) wind(from, to, of int) {
	term.t.Helper()
	for k := from + 1; k <= to; k++ {
		want := fmt.Sprintf("%d of %d passes laid", k, of)
		switch {
		case k == of:
			term.goes("space", "this step is done")
			return
		case k == 2:
			term.goes("space", "they alternate")
			term.goes("y", want)
		default:
			term.goesUntil("space", want, func() bool {
				return strings.Contains(term.screen(), want) || strings.Contains(term.screen(), "the work is done")
			})
			if !strings.Contains(term.screen(), want) {
				term.goes("space", want)
			}
		}
	}
}

// fillIn plans a warp of 396 ends by ten on the form, with the guard off.
func (term *terminal) fillIn(name string) {
	term.t.Helper()
	term.see("begin")
	term.press("n")
	term.see("planned from")
	term.press("ctrl+u")
	term.press(name)
	term.see(name)
	term.press("tab", "tab", "ctrl+u")
	term.press("396")
	term.see("396 ends, 40 passes")
	term.press("pgup") // the last page
	term.see("▸ count tie every")
	term.press("tab")
	term.see("▸ guard")
	term.press("ctrl+u", "0")
	term.see("guard, seconds    0")
	term.press("ctrl+s")
	term.see("0 of 40 passes laid")
}

// A whole warp at every size: planned on the form, wound half-way, killed, resumed, wound to the end,
// tied off and closed. Every pass that the screen showed as counted is in the record after the kill.
func TestWholeWarp(t *testing.T) {
	t.Parallel()
	for _, size := range []struct{ w, h int }{{60, 18}, {80, 24}, {120, 40}, {200, 60}} {
		t.Run(fmt.Sprintf("%dx%d", size.w, size.h), func(t *testing.T) {
			if size.w != 80 {
				long(t)
			}
			t.Parallel()
			dir := t.TempDir()
			term := start(t, size.w, size.h, dir)
			term.fillIn("Kitchen towels")
			term.wind(0, 17, 40)
			term.signal(syscall.SIGKILL)
			if code := term.exit(); code != 128+int(syscall.SIGKILL) {
				t.Fatalf("exit %d", code)
			}
			if st := onlyRecord(t, dir).State(); st.Laid() != 17 || st.EndsStanding() != 170 {
				t.Fatalf("after the kill: %d passes, %d ends", st.Laid(), st.EndsStanding())
			}

			term = start(t, size.w, size.h, dir)
			term.see("17 of 40 passes")
			term.press("enter")
			term.see("LOOK AT THE MILL")
			term.see("9 groups over peg 1, 8 over peg 2")
			term.goes("space", "17 of 40 passes laid")
			term.wind(17, 38, 40)
			term.goes("space", "STOP AT THE FAR END PEG BEFORE PASS 40") // four ends are cut off before the short pass
			term.goes("space", "LAST PASS")
			term.wind(39, 40, 40)
			steps := len(onlyRecord(t, dir).State().Steps())
			for i := 1; i < steps; i++ {
				term.goes("space", fmt.Sprintf("step %d of %d", i+1, steps))
			}
			term.goes("space", "STEPS DONE")
			term.goes("space", "FINISHED")
			term.press("q")
			if code := term.exit(); code != 0 {
				t.Fatalf("exit %d", code)
			}
			rec := onlyRecord(t, dir)
			laid := 0
			for _, e := range rec.Events() {
				if e.Kind == counter.Laid {
					laid++
				}
			}
			if st := rec.State(); !st.Finished || st.EndsStanding() != 396 || laid != 40 {
				t.Errorf("finished %v, %d ends, %d passes laid", st.Finished, st.EndsStanding(), laid)
			}
			term.setRight()
		})
	}
}

// setRight checks that the terminal was given back: the other screen left, the cursor shown, the mouse
// let go.
func (term *terminal) setRight() {
	term.t.Helper()
	out := term.written()
	for on, off := range map[string]string{"\x1b[?1049h": "\x1b[?1049l", "\x1b[?25l": "\x1b[?25h",
		"\x1b[?1002h": "\x1b[?1002l"} {
		if strings.LastIndex(out, off) < strings.LastIndex(out, on) {
			term.t.Errorf("%q was not undone", on)
		}
	}
}

// saved makes a record of 40 passes with the guard off.
func saved(t *testing.T, dir string, change func(*plan.Spec)) string {
	t.Helper()
	s := plan.DefaultSpec()
	s.Name, s.Ends, s.Guard = "Runner", 400, 0
	if change != nil {
		change(&s)
	}
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	rec, err := journal.Store{Dir: dir, FS: journal.OS()}.Create(p)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = rec.Close() }()
	return rec.Path()
}

// Signals end the program in good order, with the count on the disk and the terminal set right.
func TestSignals(t *testing.T) {
	t.Parallel()
	for _, s := range []syscall.Signal{syscall.SIGTERM, syscall.SIGHUP, syscall.SIGQUIT, syscall.SIGINT} {
		t.Run(s.String(), func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			term := start(t, 80, 24, dir, "wind", saved(t, dir, nil))
			term.see("0 of 40 passes laid")
			term.wind(0, 3, 40)
			term.signal(s)
			if code := term.exit(); code != 128+int(s) {
				t.Errorf("exit %d, want %d", code, 128+int(s))
			}
			if st := onlyRecord(t, dir).State(); st.Laid() != 3 {
				t.Errorf("%d passes, want 3", st.Laid())
			}
			term.setRight()
		})
	}
}

// The terminal is never asked for anything at the start: one that doesn't answer would keep the weaver
// waiting. See package tui/ground.
func TestTerminalIsNotAsked(t *testing.T) {
	dir := t.TempDir()
	term := start(t, 80, 24, dir)
	term.see("MILLSIDE")
	term.press("q")
	term.exit()
	for _, question := range []string{"\x1b]11;?", "\x1b]10;?", "\x1b[6n"} {
		if strings.Contains(term.written(), question) {
			t.Errorf("the terminal was asked %q", question)
		}
	}
}

// Ctrl-C leaves with status 130, q with 0; after q the record says that the winding was paused.
func TestLeaving(t *testing.T) {
	dir := t.TempDir()
	path := saved(t, dir, nil)
	term := start(t, 80, 24, dir, "wind", path)
	term.see("0 of 40 passes laid")
	term.wind(0, 2, 40)
	term.press("q")
	if code := term.exit(); code != 0 {
		t.Errorf("q: exit %d", code)
	}
	if !onlyRecord(t, dir).State().Paused {
		t.Error("q did not pause the winding")
	}
	term = start(t, 80, 24, dir, "wind", path)
	term.see("PAUSED")
	term.press("ctrl+c")
	if code := term.exit(); code != 130 {
		t.Errorf("ctrl+c: exit %d", code)
	}
}

// A second window on the same warp can look, and can't count.
func TestSecondWindow(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path := saved(t, dir, nil)
	first := start(t, 80, 24, dir, "wind", path)
	first.see("0 of 40 passes laid")
	first.wind(0, 3, 40)
	second := start(t, 80, 24, dir)
	second.see("Runner")
	second.press("enter")
	second.see("only looking")
	second.press("space", "space")
	first.wind(3, 4, 40)
	second.press("r")
	second.see("4 of 40 passes laid")
}

// Put aside with Ctrl-Z and taken up again, the screen first says what must stand on the mill.
func TestPutAside(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path := saved(t, dir, nil)
	term := startShell(t, 80, 24, dir, "%s wind "+path)
	term.see("0 of 40 passes laid")
	term.wind(0, 3, 40)
	term.press("ctrl+z")
	term.see("Stopped")
	term.press("fg", "enter")
	term.see("LOOK AT THE MILL")
	term.goes("space", fmt.Sprintf("%d of %d passes laid", 3, 40))
	term.wind(3, 4, 40)
}

// The window may change its size at any moment.
func TestResize(t *testing.T) {
	dir := t.TempDir()
	term := start(t, 80, 24, dir, "wind", saved(t, dir, nil))
	term.see("0 of 40 passes laid")
	for _, size := range [][2]int{{200, 60}, {60, 18}, {30, 8}, {120, 40}} {
		term.resize(size[0], size[1])
		if size[0] < 40 {
			term.see("pass 1 of 40")
			continue
		}
		term.see("0 of 40 passes laid")
	}
	term.wind(0, 1, 40)
}

// A burst of presses, as a bouncing pedal sends it, counts once; the screen says that presses were
// ignored.
func TestBurst(t *testing.T) {
	dir := t.TempDir()
	term := start(t, 80, 24, dir, "wind", saved(t, dir, func(s *plan.Spec) { s.Guard = times.Guard(2 * time.Second) }))
	term.see("0 of 40 passes laid")
	term.press("space", "space", "space", "enter", "pgdown", "space")
	term.see("ignored")
	term.see("1 of 40 passes laid")
	if st := onlyRecord(t, dir).State(); st.Laid() != 1 {
		t.Errorf("%d passes counted, want 1", st.Laid())
	}
}

// A damaged record is not opened, and the error says where.
func TestDamagedRecord(t *testing.T) {
	dir := t.TempDir()
	path := saved(t, dir, nil)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	data[len(data)/2] ^= 1
	damaged := filepath.Join(dir, "damaged.millside")
	if err := os.WriteFile(damaged, data, 0o600); err != nil {
		t.Fatal(err)
	}
	term := start(t, 80, 24, dir, "wind", damaged)
	if code := term.exit(); code != 1 || !strings.Contains(term.written(), "line 1") {
		t.Errorf("exit %d: %s", code, term.written())
	}
}
