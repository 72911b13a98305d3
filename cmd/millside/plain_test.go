package main

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"millside/counter"
	"millside/plan"
)

// talk is a conversation in plain mode with a clock that the test moves.
type talk struct {
	t    testing.TB
	p    *plain
	time time.Time
	fs   counter.FS
}

// newTalk makes a record of a warp of 36 ends by ten, four passes, with the guard at two seconds.
func newTalk(t testing.TB, change func(*plan.Spec)) *talk {
	t.Helper()
	return newTalkIn(t, counter.OS(), change)
}

func newTalkIn(t testing.TB, fsys counter.FS, change func(*plan.Spec)) *talk {
	t.Helper()
	s := plan.DefaultSpec()
	s.Name, s.Ends, s.TieEvery = "Runner", 36, 20
	if change != nil {
		change(&s)
	}
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	rec, err := counter.Create(fsys, filepath.Join(t.TempDir(), "runner.millside"), p)
	if err != nil {
		t.Fatal(err)
	}
	tk := &talk{t: t, time: time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC), fs: fsys}
	tk.with(rec)
	return tk
}

func (tk *talk) with(rec *counter.Record) {
	tk.t.Cleanup(func() { _ = rec.Close() })
	tk.p = newPlain(rec, func() time.Time { return tk.time })
}

// type types lines half a minute apart and gives what is said to the last.
func (tk *talk) types(lines ...string) string {
	tk.t.Helper()
	var all []string
	for _, line := range lines {
		tk.time = tk.time.Add(30 * time.Second)
		said, _, err := tk.p.take(line)
		if err != nil {
			tk.t.Fatalf("%q: %v", line, err)
		}
		all = said
	}
	return strings.Join(all, "\n")
}

// reopen leaves the record as it is and comes back to it.
func (tk *talk) reopen() string {
	tk.t.Helper()
	path := tk.p.rec.Path()
	if err := tk.p.rec.Close(); err != nil {
		tk.t.Fatal(err)
	}
	rec, err := counter.Open(tk.fs, path)
	if err != nil {
		tk.t.Fatal(err)
	}
	tk.with(rec)
	return strings.Join(tk.p.begin(), "\n")
}

func (tk *talk) wants(got string, parts ...string) {
	tk.t.Helper()
	for _, part := range parts {
		if !strings.Contains(got, part) {
			tk.t.Errorf("not said: %q, but\n%s", part, got)
		}
	}
}

// A whole warp, from the first pass to the closed record, with everything that a winder has to hear.
func TestPlainWholeWarp(t *testing.T) {
	tk := newTalk(t, nil)
	tk.wants(strings.Join(tk.p.begin(), "\n"), `Warp "Runner".`, "Type help",
		"Pass 1 of 4, outward: holes up over lease peg A, then slots up over peg B; over peg 1 and under peg 2 of the counting cross; round the far end peg counterclockwise.",
		"Now: thread the paddle: 10 positions", "tie on the group at the near end peg", "Next: pass 2, return")
	tk.wants(tk.types(""), "Pass 1 is laid, 10 ends stand.", "Pass 2 of 4, return: over peg 2 and under peg 1",
		"Keep the opening round the peg, no flick.", "Next: a look at the lease; two passes left")
	tk.wants(tk.types(""), "20 ends stand. Look at the lease: position 1 of the second group", "position 10 last", "type other")
	tk.wants(tk.types(""), "The lease is as planned.", "Pass 2 is laid, 20 ends stand.", "Now: two passes left", "Next: count tie at the counting cross round groups 1 to 2, 20 ends so far; not the one just laid; last pass: 6 ends, then tie off")
	tk.wants(tk.types(""), "Pass 4 of 4, return", "Now: count tie at the counting cross round groups 1 to 2",
		"last pass: 6 ends, then tie off; cut off positions 7 to 10 at the far end peg and leave them out", "Next: stop here")
	tk.wants(tk.types("tie"), "A count tie at")
	tk.wants(tk.types(""), "Wound: 36 ends in 4 passes.", "Step 1 of 15. Fasten the group")
	steps := len(tk.p.st.Steps())
	for i := 1; i < steps; i++ {
		tk.types("")
	}
	tk.wants(tk.types(""), "All steps are done.", "Press Enter to close the record")
	tk.time = tk.time.Add(time.Minute)
	said, over, err := tk.p.take("")
	if err != nil || !over {
		t.Fatalf("over %v, %v", over, err)
	}
	tk.wants(strings.Join(said, "\n"), "The warp is finished and off the mill: 36 ends.")
	if st := tk.p.rec.State(); !st.Finished || len(st.Ties) != 1 {
		t.Errorf("%+v", st)
	}
	tk.wants(tk.reopen(), "The warp is finished")
	tk.wants(tk.types(""), "The warp is finished")
}

// Each word does what the help says.
func TestPlainWords(t *testing.T) {
	tests := []struct {
		name  string
		lines []string
		says  []string
		check func(counter.State) bool
	}{
		{"undo", []string{"", "undo"}, []string{"Pass 1 is taken back.", "Pass 1 of 4"}, func(s counter.State) bool { return s.Laid() == 0 }},
		{"undo of nothing", []string{"undo"}, []string{"Nothing to undo"}, func(s counter.State) bool { return s.Events == 0 }},
		{"capitals and blanks", []string{"", "  UNDO "}, []string{"taken back"}, nil},
		{"pause", []string{"", "pause"}, []string{"Paused at ", "1 of 4 passes laid, 10 ends stand.", "1 group over peg 1 of the counting cross and 0 over peg 2",
			"The paddle is at the counting cross, the last turn was counterclockwise.", "press Enter"}, func(s counter.State) bool { return s.Paused }},
		{"go on", []string{"", "pause", ""}, []string{"Pass 1 is laid", "Pass 2 of 4"}, func(s counter.State) bool { return !s.Paused && s.Laid() == 1 }},
		{"undo in a pause", []string{"", "pause", "undo"}, []string{"Not done: the winding is paused"}, nil},
		{"count", []string{"", "count 3 pressed too late"}, []string{"The count was 1, now it is 3.", "Pass 4 of 4"},
			func(s counter.State) bool { return s.Laid() == 3 && s.Recounts[0].Reason == "pressed too late" }},
		{"count without a reason", []string{"", "count 0"}, []string{"now it is 0"}, func(s counter.State) bool { return s.Recounts[0].Reason == "counted on the pegs" }},
		{"count of nothing", []string{"count"}, []string{"Type count"}, nil},
		{"count too many", []string{"count 5"}, []string{"Not done: passes laid: \"5\" won't do; give 0 to 4."}, nil},
		{"pegs, as counted", []string{"", "pegs 1 0"}, []string{"That is 1 pass, as counted."}, nil},
		{"pegs, other", []string{"", "pegs 1 1"}, []string{"That is 2 passes, and the count says 1. Type count 2 to set it."}, nil},
		{"pegs, one and the way", []string{"pegs - 1 outward"}, []string{"That is 3 passes"}, nil},
		{"pegs, one", []string{"pegs 1"}, []string{"more than one count; the nearest to 0 is 1"}, nil},
		{"pegs that can't be", []string{"pegs 2 0"}, []string{"can't both be", "Count again", "2 groups in all would lie 1 and 1."}, nil},
		{"pegs of nothing", []string{"pegs - -"}, []string{"Type pegs"}, nil},
		{"pegs of words", []string{"pegs many"}, []string{"Type pegs"}, nil},
		{"note", []string{"", "note two  blanks"}, []string{"The note is kept."}, func(s counter.State) bool { return s.Notes[0].Text == "two  blanks" }},
		{"note of nothing", []string{"note"}, []string{"Type note and a few words."}, nil},
		{"note with a bell", []string{"note a\ab"}, []string{"Not done: note:", "control characters"}, nil},
		{"break", []string{"", "break 4"}, []string{"Noted as number 3: pass 2, position 4, end 14: broken end."}, nil},
		{"knot on another pass", []string{"", "knot 4 pass 1 at 2 1/2 yd by the blue cone"},
			[]string{"Noted as number 3: pass 1, position 4, end 4: knot, 2.5 yd from the lease (by the blue cone)."}, nil},
		{"knot at turns", []string{"knot 4 at 2 turns"}, []string{"end 4: knot, 4 yd from the lease."}, nil},
		{"break with a text", []string{"break 4 mended"}, []string{"broken end (mended)"}, nil},
		{"break nowhere", []string{"break"}, []string{"Which position? Type a number from 1 to 10"}, nil},
		{"break on no pass", []string{"break 4 pass"}, []string{"Which pass?"}, nil},
		{"break at no place", []string{"break 4 at home"}, []string{"Where? Type a length"}, nil},
		{"break at the end of words", []string{"break 4 at"}, []string{"Where?"}, nil},
		{"break beyond the warp", []string{"break 4 at 9 yd"}, []string{"Not done: place:"}, nil},
		{"break in no end", []string{"break 11"}, []string{"Not done: position:"}, nil},
		{"missed", []string{"", "missed"}, []string{"pass 2: missed opening."}, nil},
		{"wrongpeg", []string{"", "wrongpeg pass 1 over both"}, []string{"pass 1: wrong peg (over both)."}, nil},
		{"withdraw the last", []string{"break 4", "knot 5", "withdraw"}, []string{"Number 3 is taken back."}, func(s counter.State) bool { return s.Incidents[1].Withdrawn }},
		{"withdraw by number", []string{"break 4", "knot 5", "withdraw 2"}, []string{"Number 2 is taken back."}, func(s counter.State) bool { return s.Incidents[0].Withdrawn }},
		{"withdraw nothing", []string{"withdraw"}, []string{"nothing to take back"}, nil},
		{"withdraw a word", []string{"withdraw it"}, []string{"where lists the numbers"}, nil},
		{"turn", []string{"", "turn"}, []string{"A wrong turn after pass 1 is noted.", "Turn the paddle 2 half turns", "at the next peg"}, func(s counter.State) bool { return s.Twist() == 1 }},
		{"turn is said again", []string{"", "turn", "", ""}, []string{"Turn the paddle 2 half turns"}, nil},
		{"turn before a pass", []string{"turn"}, []string{"Not done: chain 1 has no pass yet."}, nil},
		{"a second turn", []string{"", "turn", "", "turn"}, []string{"The twist is as planned again."}, func(s counter.State) bool { return s.Twist() == 0 }},
		{"righted", []string{"", "turn", "righted"}, []string{"The twist is as planned again."}, func(s counter.State) bool { return s.Twist() == -1 }},
		{"tie", []string{"", "tie"}, []string{"A count tie at 10 ends is noted."}, func(s counter.State) bool { return len(s.Ties) == 1 }},
		{"where", []string{"", "", "", "break 4", "knot 5", "withdraw", "turn", "where"},
			[]string{"2 of 4 passes laid", "1 group over peg 1", "Turn the paddle 2 half turns clockwise", "Number 5, chain 1: pass 3, position 4, end 24: broken end.",
				"30s a pass; 1 minute to the end of the chain, 1 minute to 1 minute.", "Pass 3 of 4"},
			func(s counter.State) bool { return s.Events == 7 }},
		{"where before the first pass", []string{"where"}, []string{"Pass 1 of 4"}, nil},
		{"other", []string{"", "", "other"}, []string{"Return passes now lie in the mirrored order.", "Pass 2 had the other opening first: type undo"},
			func(s counter.State) bool { return s.Plan.Spec.ReturnOrder == plan.MirroredOrder }},
		{"other at another time", []string{"other"}, []string{"comes after pass 2"}, nil},
		{"undo at the lease", []string{"", "", "undo"}, []string{"Pass 2 is taken back."}, nil},
		{"help", []string{"help"}, []string{"An empty line: the pass is laid", "break 4: the end in position 4 broke", "leave: "}, nil},
		{"unknown", []string{"wind"}, []string{`"wind" means nothing here.`, "undo, pause"}, func(s counter.State) bool { return s.Events == 0 }},
		{"undo of a step", []string{"", "", "", "", "", "", "undo"}, []string{"The step is taken back.", "Step 1 of 15"}, nil},
	}
	for _, tt := range tests {
		tk := newTalk(t, nil)
		tk.wants(tk.types(tt.lines...), tt.says...)
		if tt.check != nil && !tt.check(tk.p.rec.State()) {
			t.Errorf("%s: %+v", tt.name, tk.p.rec.State())
		}
		if t.Failed() {
			t.Fatal(tt.name)
		}
	}
}

// Every word of the help is known, and none is twice.
func TestPlainHelpIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, w := range typedWords() {
		if seen[w.word] || !strings.HasPrefix(w.use, w.word) || w.help == "" || (w.act == nil) != (w.word == "leave") {
			t.Errorf("%+v", w)
		}
		seen[w.word] = true
	}
}

// Lines faster than a hand can wind count once.
func TestPlainGuard(t *testing.T) {
	tk := newTalk(t, nil)
	tk.types("")
	for range 5 {
		tk.time = tk.time.Add(100 * time.Millisecond)
		said, _, err := tk.p.take("")
		if err != nil {
			t.Fatal(err)
		}
		tk.wants(strings.Join(said, "\n"), "Not counted: sooner than 2s after the last.")
	}
	tk.wants(tk.types(""), "Look at the lease")
	if n := tk.p.rec.State().Laid(); n != 2 {
		t.Errorf("%d passes", n)
	}
}

// Coming back begins with what must be seen on the mill, and so does an empty line after a long time.
func TestPlainLooksFirst(t *testing.T) {
	tk := newTalk(t, nil)
	tk.types("", "", "", "")
	tk.wants(tk.reopen(), "Stopped at ", "3 of 4 passes laid, 30 ends stand.", "2 groups over peg 1 of the counting cross and 1 over peg 2", "press Enter")
	tk.wants(tk.types(""), "Pass 4 of 4")
	tk.time = tk.time.Add(11 * time.Minute)
	tk.wants(tk.types(""), "Not counted: nothing has happened for a long time.", "2 groups over peg 1")
	tk.wants(tk.types(""), "Pass 4 of 4")
	if n := tk.p.rec.State().Laid(); n != 3 {
		t.Errorf("%d passes", n)
	}
	tk.wants(strings.Join(tk.p.lookAgain(), "\n"), "2 groups over peg 1")
	tk.wants(tk.types(""), "Pass 4 of 4")
	tk.types("", "")
	tk.wants(tk.reopen(), "1 finishing step done.")
	tk.wants(tk.types(""), "Step 2 of 15")
}

// The reminder to rest comes once in a stretch of winding.
func TestPlainRest(t *testing.T) {
	tk := newTalk(t, func(s *plan.Spec) { s.Ends, s.RestMinutes = 360, 2 })
	var said []string
	for range 8 {
		said = append(said, tk.types(""))
	}
	if n := strings.Count(strings.Join(said, "\n"), "2 minutes without a break: rest your hands"); n != 1 {
		t.Errorf("said %d times:\n%s", n, strings.Join(said, "\n\n"))
	}
	tk.types("pause")
	tk.time = tk.time.Add(3 * time.Minute)
	said = nil
	for range 6 {
		said = append(said, tk.types(""))
	}
	if n := strings.Count(strings.Join(said, "\n"), "rest your hands"); n != 1 {
		t.Errorf("after a rest: said %d times", n)
	}
}

// Chains one after the other; the last step of a chain can be taken back.
func TestPlainChains(t *testing.T) {
	tk := newTalk(t, func(s *plan.Spec) { s.Ends, s.ChainEnds = 40, 20 })
	tk.types("", "", "") // two passes and the lease
	steps := len(tk.p.st.Steps())
	for range steps - 1 {
		tk.types("")
	}
	tk.wants(tk.types(""), "Done.", "Pass 1 of 2 of chain 2, outward", "Now: tie on the group at the near end peg")
	tk.wants(tk.types("undo"), "The step is taken back.", "Pass the last loop over")
	tk.wants(tk.types(""), "Pass 1 of 2 of chain 2")
	tk.wants(tk.types(""), "Pass 1 is laid")
}

// Leaving pauses once, and never a warp that stands still already.
func TestPlainLeaves(t *testing.T) {
	for _, tt := range []struct {
		name   string
		lines  []string
		events int
	}{{"nothing wound", nil, 0}, {"winding", []string{""}, 2}, {"paused", []string{"", "pause"}, 2}, {"at the lease", []string{"", ""}, 3},
		{"paused and gone on", []string{"", "pause", ""}, 4}} {
		tk := newTalk(t, nil)
		tk.types(tt.lines...)
		said, over, err := tk.p.take("leave")
		if st := tk.p.rec.State(); err != nil || !over || st.Events != tt.events || st.Paused != (tt.events > 0) {
			t.Errorf("%s: over %v, %d events, paused %v, %v", tt.name, over, st.Events, st.Paused, err)
		}
		tk.wants(strings.Join(said, "\n"), "All of it is on the disk.")
	}
}

// Who only looks at where the warp stands after a crash leaves the record as it is.
func TestPlainLeavesALookAlone(t *testing.T) {
	tk := newTalk(t, nil)
	tk.types("")
	tk.reopen()
	if _, _, err := tk.p.take("leave"); err != nil || tk.p.rec.State().Events != 1 {
		t.Errorf("%d events, %v", tk.p.rec.State().Events, err)
	}
	// Put aside and left, it is paused though the mill has not been looked at.
	tk.reopen()
	tk.types("", "")
	tk.p.lookAgain()
	if _, _, err := tk.p.take("leave"); err != nil || !tk.p.rec.State().Paused {
		t.Errorf("paused %v, %v", tk.p.rec.State().Paused, err)
	}
}

// fullDisk is a file system whose writes fail once it is full.
type fullDisk struct {
	counter.FS
	full bool
}

func (d *fullDisk) OpenFile(path string, flag int, perm fs.FileMode) (counter.File, error) {
	f, err := d.FS.OpenFile(path, flag, perm)
	return fullFile{f, d}, err
}

type fullFile struct {
	counter.File
	d *fullDisk
}

func (f fullFile) Write(b []byte) (int, error) {
	if f.d.full {
		return 0, errors.New("no space left on the disk")
	}
	return f.File.Write(b)
}

// A record that can't be written ends the conversation with an error, and the count has not moved.
func TestPlainBrokenRecord(t *testing.T) {
	disk := &fullDisk{FS: counter.OS()}
	tk := newTalkIn(t, disk, nil)
	tk.types("")
	disk.full = true
	tk.time = tk.time.Add(time.Minute)
	_, _, err := tk.p.take("")
	if !errors.Is(err, counter.ErrBroken) || !strings.Contains(err.Error(), "the count did not move, 1 pass laid on the disk") {
		t.Errorf("%v", err)
	}
	disk.full = false
	tk.wants(tk.reopen(), "1 of 4 passes laid")
}

// Whatever is typed, there is an answer without control characters and no panic, and the record opens again.
func TestPlainTakesAnything(t *testing.T) {
	pieces := []string{"", "", "", "undo", "pause", "count 2", "count 9 9", "pegs 1 1 return", "pegs -1 x", "note \x1b[2J", "note ü", "break 4 pass 2 at 1 yd a",
		"break 4 pass", "break 4 at 1", "knot 99", "missed", "wrongpeg pass 0", "withdraw", "withdraw 2", "turn", "righted", "tie", "where", "other", "help", "\x1b[A"}
	rapid.Check(t, func(rt *rapid.T) {
		tk := newTalk(t, func(s *plan.Spec) { s.GuardMillis = 0 })
		for range rapid.IntRange(1, 40).Draw(rt, "lines") {
			line := rapid.SampledFrom(pieces).Draw(rt, "line")
			if rapid.IntRange(0, 9).Draw(rt, "any") == 0 {
				line = rapid.String().Draw(rt, "text")
			}
			tk.time = tk.time.Add(time.Duration(rapid.IntRange(-5, 90).Draw(rt, "seconds")) * time.Second)
			said, over, err := tk.p.take(line)
			if err != nil || len(said) == 0 {
				rt.Fatalf("%q: %q, %v", line, said, err)
			}
			if over {
				break
			}
		}
		tk.reopen()
		if err := tk.p.rec.Close(); err != nil {
			rt.Fatal(err)
		}
	})
}

// Lines that are too long are cut, and the next one is whole.
func TestTyped(t *testing.T) {
	long := "note " + strings.Repeat("a", 3*maxTyped)
	var got []string
	for line := range typed(strings.NewReader("one\r\n\n" + long + "\ntwo")) {
		got = append(got, line)
	}
	if len(got) != 4 || got[0] != "one" || got[1] != "" || got[2] != long[:maxTyped] || got[3] != "two" {
		t.Errorf("%d lines: %.40q", len(got), got)
	}
}

// An output that can't be written to ends the winding with an error, and what was counted is kept.
func TestPlainOutputFails(t *testing.T) {
	tk := newTalk(t, nil)
	r, w := io.Pipe()
	_ = r.Close()
	a := &app{out: bufio.NewWriter(w), errOut: new(bytes.Buffer)}
	lines := make(chan string)
	tk.types("")
	err := a.talk(tk.p, lines)
	if st := tk.p.rec.State(); err == nil || !strings.Contains(err.Error(), "writing the answer") || st.Laid() != 1 || !st.Paused {
		t.Errorf("%d passes, paused %v, %v", st.Laid(), st.Paused, err)
	}
}

// The paddle of a striped warp is threaded and changed in words, and an end that broke has its colour.
func TestPlainStripes(t *testing.T) {
	tk := newTalk(t, func(s *plan.Spec) {
		s.Ends, s.Group, s.Positions, s.TieEvery = 16, 4, 4, 0
		all := func(setUp int) plan.ScheduledPass { return plan.ScheduledPass{Carried: plan.Span(1, 4), SetUp: setUp} }
		s.Stripes = "2 white 1 blue 1 white"
		s.Schedule = &plan.Schedule{Colours: []plan.StripeColour{{Name: "white"}, {Name: "blue"}},
			SetUps: []plan.SetUp{{1, 1, 2, 1}, {1, 1, 1, 2}}, Passes: []plan.ScheduledPass{all(1), all(1), all(1), all(2)}}
	})
	tk.wants(strings.Join(tk.p.begin(), "\n"), "Thread it, position 1 nearest the thumb: C white in positions 1, 2, 4; D blue in position 3.")
	tk.wants(tk.types("", "", "", "break 3"), "end 11: broken end.\nIts colour is D blue.")
	tk.wants(tk.types(""), "Now: last pass: 4 ends, then tie off; cut off, thread anew and tie on positions 3, 4 at the far end peg.",
		"Cut, tie in and thread at the far end peg: position 3 from D blue to C white; position 4 from C white to D blue.")
}
