//go:build unix

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os/exec"
	"strings"
	"syscall"
	"testing"

	"millside/counter"
	"millside/plan"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/sheet"
)

// troubledWarp is 600 ends by ten in 60 passes, for a loom: 20 ends an inch, so 30 in; a raddle of half
// inches, so 60 sections of 10 ends, 30 on either side of the middle; two ends in a dent. The first end is
// on the left. A cone of half a pound feeds each position.
func troubledWarp(t *testing.T) func(*plan.Spec) {
	t.Helper()
	reed, err := loom.ParseReed("10 dents an inch")
	if err != nil {
		t.Fatal(err)
	}
	yarn, err := measure.ParseYarn("cotton 8/2")
	if err != nil {
		t.Fatal(err)
	}
	return func(s *plan.Spec) {
		s.Name, s.Ends, s.Group = "Storm shawl", 600, 10
		if err := s.Loom.Sett.UnmarshalText([]byte("20 an inch")); err != nil {
			t.Fatal(err)
		}
		s.Loom.Reed, s.Loom.Raddle.Space, s.Loom.FirstEnd = reed, measure.Inch/2, loom.LeftSide
		s.Yarn.Size, s.Yarn.Cones = yarn, measure.Masses{measure.Pound / 2}
	}
}

// resumes opens the warp again and goes on from the page that says what must stand on the mill.
func resumes(t *testing.T, dir, path string, laid int) *terminal {
	t.Helper()
	if st := onlyRecord(t, dir).State(); st.Laid() != laid {
		t.Fatalf("the record has %d passes, the screen showed %d", st.Laid(), laid)
	}
	term := start(t, 80, 24, dir, "wind", path)
	term.seesBack(laid)
	return term
}

func (term *terminal) seesBack(laid int) {
	term.t.Helper()
	cross := counter.CrossOf(laid)
	term.see("LOOK AT THE MILL")
	term.see(fmt.Sprintf("%d groups over peg 1, %d over peg 2", cross.OverPeg1, cross.OverPeg2))
	term.goes("space", fmt.Sprintf("%d of 60 passes laid", laid))
}

// marks notes a broken end or a knot in a position, of the pass in hand or of another.
func (term *terminal) marks(key, title, position, pass, where, said string) {
	term.t.Helper()
	term.press(key)
	term.see(title)
	term.press(position, "tab")
	if pass != "" {
		term.press("ctrl+u", pass)
	}
	term.press("enter", where, "enter")
	term.reads(said)
}

// The warp on which everything goes wrong: two broken ends and a knot, a new cone, a wrong turn and its
// righting, a bout too many in the count put right at the pegs, a kill, a closed terminal and Ctrl-Z. It is
// wound to the end, and the hand-over names the right ends.
func TestTroubledWarp(t *testing.T) {
	long(t)
	t.Parallel()
	dir := t.TempDir()
	path := saved(t, dir, troubledWarp(t))
	term := start(t, 80, 24, dir, "wind", path)
	term.see("0 of 60 passes laid")
	term.wind(0, 17, 60)
	term.marks("b", "BROKEN END", "4", "", "1 1/2 turns",
		"pass 18, position 4, end 174: broken end, 3 yd from the lease")
	term.wind(17, 22, 60)
	term.signal(syscall.SIGKILL)
	term.exit()

	term = resumes(t, dir, path, 22)
	term.press("a")
	term.see("ANOTHER PACKAGE")
	term.press("6", "enter", "8 oz", "enter")
	term.reads("new package in position 6")
	term.wind(22, 31, 60)
	term.press("w")
	term.reads("Turn the paddle 2 half turns")
	term.press("e")
	term.until("the twist is out", func() bool { return !strings.Contains(term.screen(), "half turns") })
	term.wind(31, 38, 60) // the pedal was hit twice: a bout is counted that isn't on the mill
	term.press("c")
	term.see("RECOUNT")
	term.press("18", "enter", "18", "enter")
	term.reads("36 passes: 18 over peg 1 and 18 over peg 2, 360 ends. Now the count says 38; both numbers are kept.")
	term.press("enter", "enter", "enter", "enter")
	term.see("36 of 60 passes laid")
	term.reads("the count was 38, now it is 36")
	term.wind(36, 40, 60)
	term.hangUp()
	if code := term.exit(); code != 128+int(syscall.SIGHUP) {
		t.Errorf("a closed terminal: exit %d", code)
	}

	if st := onlyRecord(t, dir).State(); st.Laid() != 40 {
		t.Fatalf("after the terminal was closed: %d passes", st.Laid())
	}
	term = startShell(t, 80, 24, dir, "%s wind "+path)
	term.seesBack(40)
	term.wind(40, 45, 60)
	term.press("ctrl+z")
	term.see("Stopped")
	term.press("fg", "enter")
	term.seesBack(45)
	term.wind(45, 52, 60)
	term.marks("k", "KNOT", "10", "50", "", "pass 50, position 10, end 500: knot")
	term.marks("b", "BROKEN END", "1", "3", "2 yd", "pass 3, position 1, end 21: broken end, 2 yd from the lease")
	term.wind(52, 60, 60)
	term.finish(dir)
	term.see("pass 18, position 4, end 174")
	term.see("raddle section 13 left")
	term.press("q")
	term.see("Stopped") // the shell is back
	term.press("exit", "enter")
	term.exit()
	handsOver(t, dir, path)
}

// finish ticks all steps of a warp of one chain, each once the one before is on the disk, and closes the
// record.
func (term *terminal) finish(dir string) {
	term.t.Helper()
	steps := len(onlyRecord(term.t, dir).State().Steps())
	for i := range steps {
		term.goesUntil("space", fmt.Sprintf("step %d of %d on the disk", i+1, steps), func() bool {
			return len(onlyRecord(term.t, dir).State().Chains[0].Ticked) == i+1
		})
	}
	term.goes("space", "FINISHED")
}

// handsOver checks the record and the sheet of the troubled warp. The ends follow from pass and position:
// end = (pass - 1) x 10 + position, outward and back, since the return order is the same. Section and dent
// follow from the end: ten ends in a section, the 31st of 60 is the first to the right of the middle, and
// two ends in a dent.
func handsOver(t *testing.T, dir, path string) {
	t.Helper()
	st := onlyRecord(t, dir).State()
	if !st.Finished || st.EndsStandingAll() != 600 || len(st.Recounts) != 1 || st.Recounts[0].From != 38 ||
		st.Recounts[0].To != 36 {
		t.Errorf("finished %v, %d ends, recounts %+v", st.Finished, st.EndsStandingAll(), st.Recounts)
	}
	part := recordPart(t, dir, path)
	if part.Title != "Hand-over" {
		t.Errorf("title %q", part.Title)
	}
	var want []string
	for _, mark := range []struct {
		what           string
		pass, position int
		place          string
	}{
		{"broken end", 18, 4, ", 3 yd from the lease"},
		{"knot", 50, 10, ""},
		{"broken end", 3, 1, ", 2 yd from the lease"},
	} {
		end := (mark.pass-1)*10 + mark.position
		section, side := 30-(end-1)/10, "left"
		if section <= 0 {
			section, side = 1-section, "right"
		}
		want = append(want, fmt.Sprintf("%s: pass %d, position %d, end %d: %s%s, raddle section %d %s, dent %d of "+
			"the warp from the left",
			mark.what, mark.pass, mark.position, end, mark.what, mark.place, section, side, (end+1)/2))
	}
	want = append(want,
		"wrong turn: round the end peg after pass 31, put right",
		"begin at near peg: 10 ends: 1 to 10",
		"finish at near peg: 10 ends: 591 to 600",
		"new package: position 6, from pass 23 on",
		"recounted: from 38 to 36: counted on the pegs (18 over peg 1, 18 over peg 2)")
	var got []string
	for _, r := range part.Rows {
		got = append(got, r.Name+": "+r.Value.String())
	}
	if len(got) < len(want) || strings.Join(got[:len(want)], "\n") != strings.Join(want, "\n") {
		t.Errorf("the hand-over says\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// recordPart is the hand-over on the sheet, as a program reads it.
func recordPart(t *testing.T, dir, path string) sheet.Part {
	t.Helper()
	cmd := exec.Command(binary(t), "sheet", path, "--format", "json")
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	cmd.Env = append(cmd.Environ(), "MILLSIDE_RECORDS="+dir, "XDG_CONFIG_HOME="+dir)
	if err := cmd.Run(); err != nil {
		t.Fatalf("%v: %s", err, errs.String())
	}
	var made struct{ Parts []sheet.Part }
	if err := json.Unmarshal(out.Bytes(), &made); err != nil {
		t.Fatal(err)
	}
	for i, part := range made.Parts {
		if part.ID == sheet.PartRecord {
			if i != len(made.Parts)-2 || made.Parts[i+1].ID != sheet.PartCautions {
				t.Error("the hand-over doesn't stand before the cautions")
			}
			return part
		}
	}
	t.Fatal("the sheet has no hand-over")
	return sheet.Part{}
}
