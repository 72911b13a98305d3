package plain

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"testing"
	"time"

	"millside/counter"
	"millside/counter/disk"
	"millside/counter/journal"
	"millside/counter/session"
	"millside/plan"
	"millside/plan/wind"

	"pgregory.net/rapid"
)

// A whole warp, from the first pass to the closed record, with everything that a winder has to hear.
func TestWholeWarp(t *testing.T) {
	tk := newBench(t, nil)
	tk.wants(tk.begins(), `Warp "Runner".`, "Type help",
		"Pass 1 of 4, outward: holes up over lease peg A, then slots up over peg B; over peg 1 and under peg 2 of "+
			"the counting cross; round the far end peg counterclockwise.",
		"Now: thread the paddle: 10 positions", "tie the group on at the near end peg",
		"position 1 goes to the foot of the peg", "Next: pass 2, return")
	tk.wants(tk.types(""), "Pass 1 is laid, 10 ends stand.", "Pass 2 of 4, return: over peg 2 and under peg 1",
		"Keep the opening, no flick.", "Next: a look at the lease; two passes left")
	tk.wants(tk.types(""), "Pass 2 is laid, 20 ends stand.", "do the neighbours alternate there",
		"Answer yes: they alternate; other:", "The pass key counts the next pass")
	tk.wants(tk.types("yes"), "The lease is as planned.", "Pass 2 is laid, 20 ends stand.",
		"Next: count tie at the counting cross",
		"last pass: 6 ends, then tie off",
		"stop at the far end peg: cut off 4 ends; there the pass key confirms the work")
	tk.wants(tk.types(""), "Stop at the far end peg before pass 4: cut off 4 ends.", "Cut off positions 7 to 10.",
		"Count tie at the counting cross")
	tk.wants(tk.types(""), "The work at the peg is done.", "Pass 4 of 4, return",
		"last pass: 6 ends, then tie off; leave out positions 7 to 10", "Next: stop here")
	tk.wants(tk.types("tie"), "Count tie noted: 20 ends in 2 groups.")
	tk.wants(tk.types(""), "Wound: 36 ends in 4 passes.", "Step 1 of 15. Fasten the group")
	steps := len(tk.state().Steps())
	for i := 1; i < steps; i++ {
		tk.types("")
	}
	tk.wants(tk.types("done"), "All steps are done.", "The pass key closes the record")
	tk.wants(tk.types(""), "The warp is finished and off the mill: 36 ends.")
	if st := tk.state(); !st.Finished || len(st.Ties) != 1 {
		t.Errorf("%+v", st)
	}
	tk.wants(tk.reopen(), "The warp is finished")
	tk.wants(tk.types(""), "Not counted: the warp is finished")
	tk.wants(tk.types("reopen"), "Say why")
	tk.wants(tk.types("reopen the label was wrong"), "The record is open again.", "All steps are done.")
	if st := tk.state(); st.Finished {
		t.Errorf("%+v", st)
	}
}

// Each word does what the help says.
func TestWords(t *testing.T) {
	tests := []struct {
		name  string
		lines []string
		says  []string
		check func(counter.State) bool
	}{
		{"undo", []string{"", "undo"}, []string{"Pass 1 is taken back.", "Pass 1 of 4"},
			func(s counter.State) bool { return s.Laid() == 0 }},
		{"undo of nothing", []string{"undo"}, []string{"Nothing to take back"},
			func(s counter.State) bool { return s.Events == 0 }},
		{"undo of the last", []string{"", "undo 1"}, []string{"Pass 1 is taken back."}, nil},
		{"undo of another", []string{"", "", "undo 1"},
			[]string{"Nothing was done: undo is about the last pass, which is 2"},
			func(s counter.State) bool { return s.Laid() == 2 }},
		{"undo of a word", []string{"", "undo all"}, []string{"Nothing was done"},
			func(s counter.State) bool { return s.Laid() == 1 }},
		{"redo", []string{"", "undo", "redo"}, []string{"Pass 1 lies again.", "Pass 2 of 4"},
			func(s counter.State) bool { return s.Laid() == 1 }},
		{"redo with a number", []string{"", "undo", "redo 1"}, []string{"redo takes nothing after it"},
			func(s counter.State) bool { return s.Laid() == 0 }},
		{"capitals and blanks", []string{"", "  UNDO "}, []string{"taken back"}, nil},
		{"a colon before the word", []string{"", ":undo"}, []string{"taken back"}, nil},
		{"a colon alone", []string{":"}, []string{"No word was typed; nothing was done."},
			func(s counter.State) bool { return s.Events == 0 }},
		{"pause", []string{"", "pause"}, []string{"Paused at ", "1 of 4 passes laid, 10 ends stand.",
			"1 group over peg 1 of the counting cross and 0 over peg 2",
			"The paddle is at the far end peg, the last turn was counterclockwise.", "press the pass key to go on"},
			func(s counter.State) bool { return s.Paused }},
		{"go on", []string{"", "pause", ""}, []string{"Pass 1 is laid", "Pass 2 of 4"},
			func(s counter.State) bool { return !s.Paused && s.Laid() == 1 }},
		{"on", []string{"", "pause", "on"}, []string{"Pass 2 of 4"}, func(s counter.State) bool { return !s.Paused }},
		{"undo in a pause", []string{"", "pause", "undo"}, []string{"Nothing is taken back: look at the mill first"},
			nil},
		{"count", []string{"", "count 3 pressed too late"}, []string{"The count was 1, now it is 3.", "before pass 4"},
			func(s counter.State) bool { return s.Laid() == 3 && s.Recounts[0].Reason == "pressed too late" }},
		{"count without a reason", []string{"", "count 0"}, []string{"now it is 0"},
			func(s counter.State) bool { return s.Recounts[0].Reason == session.CountedOnPegs }},
		{"count of nothing", []string{"count"}, []string{"Type count"}, nil},
		{"count too many", []string{"count 5"}, []string{"Not done: passes laid: \"5\" won't do; give 0 to 4."}, nil},
		{"pegs, as counted", []string{"", "pegs 1 0"}, []string{"That is 1 pass, as counted."}, nil},
		{"pegs, other", []string{"", "pegs 1 1"},
			[]string{"That is 2 passes, and the count says 1. A recount to 2 sets it."}, nil},
		{"pegs, one and the way", []string{"pegs - 1 outward"}, []string{"That is 3 passes"}, nil},
		{"pegs, one", []string{"pegs 1"}, []string{"more than one count; the nearest to 0 is 1"}, nil},
		{"pegs, loose", []string{"", "yes", "", "yes", "", "", "tie", "pegs - - 1 loose"},
			[]string{"That is 3 passes, as counted."}, nil},
		{"pegs that can't be", []string{"pegs 2 0"},
			[]string{"can't both be", "Count again", "2 groups in all would lie 1 and 1."}, nil},
		{"pegs of nothing", []string{"pegs - -"}, []string{"Type pegs"}, nil},
		{"pegs of words", []string{"pegs many"}, []string{"Type pegs"}, nil},
		{"note", []string{"", "note two  blanks"}, []string{"The note is kept."},
			func(s counter.State) bool { return s.Notes[0].Text == "two  blanks" }},
		{"note of nothing", []string{"note"}, []string{"Type note and a few words."}, nil},
		{"note with a bell", []string{"note a\ab"}, []string{"Not done: note:", "control characters"}, nil},
		{"break", []string{"", "break 4"}, []string{"Marked as number 3: pass 2, position 4, end 14: broken end."},
			nil},
		{"knot on another pass", []string{"", "knot 4 pass 1 at 2 1/2 yd by the blue cone"},
			[]string{"Marked as number 3: pass 1, position 4, end 4: knot, 2.5 yd from the lease (by the blue cone)."},
			nil},
		{"knot at turns", []string{"knot 4 at 2 turns"}, []string{"end 4: knot, 4 yd from the lease."}, nil},
		{"break with a text", []string{"break 4 mended"}, []string{"broken end (mended)"}, nil},
		{"break nowhere", []string{"break"}, []string{"Which position? Type a number from 1 to 10"}, nil},
		{"break on no pass", []string{"break 4 pass"}, []string{"Which pass?"}, nil},
		{"break at no place", []string{"break 4 at home"}, []string{"Where? Type a length"}, nil},
		{"break at the end of words", []string{"break 4 at"}, []string{"Where?"}, nil},
		{"break beyond the warp", []string{"break 4 at 9 yd"}, []string{"Not done: place:", "5 yd"}, nil},
		{"break in no end", []string{"break 11"}, []string{"Not done: position:"}, nil},
		{"missed", []string{"", "missed"}, []string{"pass 2: missed opening."}, nil},
		{"wrongpeg", []string{"", "wrongpeg pass 1 over both"}, []string{"pass 1: wrong peg (over both)."}, nil},
		{"package", []string{"", "package 4"}, []string{"New package in position 4, from pass 2 on."},
			func(s counter.State) bool { return s.Cones[0].Position == 4 }},
		{"package with its weight", []string{"", "package 4 pass 1 250 g"},
			[]string{"New package in position 4, from pass 1 on."},
			func(s counter.State) bool { return s.Cones[0].Weight > 0 }},
		{"package nowhere", []string{"package"}, []string{"Which position?"}, nil},
		{"package of no weight", []string{"package 4 heavy"}, []string{"Not done: weight:"}, nil},
		{"package from no pass", []string{"package 4 pass"}, []string{"From which pass on?"}, nil},
		{"drop the last", []string{"break 4", "knot 5", "drop"},
			[]string{"Mark number 3 is taken back (pass 1, position 5"},
			func(s counter.State) bool { return s.Incidents[1].Withdrawn && !s.Incidents[0].Withdrawn }},
		{"drop by number", []string{"break 4", "knot 5", "drop 2"}, []string{"Mark number 2 is taken back"},
			func(s counter.State) bool { return s.Incidents[0].Withdrawn }},
		{"drop by its older word", []string{"break 4", "withdraw"}, []string{"Mark number 2 is taken back"}, nil},
		{"drop nothing", []string{"drop"}, []string{"no mark to take back"}, nil},
		{"drop a word", []string{"drop it"}, []string{"where lists the numbers"}, nil},
		{"turn", []string{"", "turn"}, []string{"Wrong turn after pass 1 marked.", "Turn the paddle 2 half turns",
			"at the next peg"}, func(s counter.State) bool { return s.Twist() == 1 }},
		{"turn is said again", []string{"", "turn", "", ""}, []string{"Turn the paddle 2 half turns"}, nil},
		{"turn before a pass", []string{"turn"}, []string{"No pass is laid yet"}, nil},
		{"turn of another pass", []string{"", "", "yes", "turn 1"}, []string{"turn is about the last pass, which is 2"},
			func(s counter.State) bool { return s.TwistAdvice() == "" }},
		{"a second turn", []string{"", "turn", "", "turn"}, []string{"the twist is as planned again."},
			func(s counter.State) bool { return s.Twist() == 0 }},
		{"righted", []string{"", "turn", "righted"}, []string{"The twist is as planned again."},
			func(s counter.State) bool { return s.Twist() == -1 }},
		{"tie where none is due", []string{"", "tie"}, []string{"No count tie is due"},
			func(s counter.State) bool { return len(s.Ties) == 0 }},
		{"tie", []string{"", "", "yes", "", "tie"}, []string{"Count tie noted: 20 ends in 2 groups."},
			func(s counter.State) bool { return len(s.Ties) == 1 }},
		{"notie", []string{"", "", "yes", "", "notie"}, []string{"The count tie of 20 ends is waved off."},
			func(s counter.State) bool { return len(s.TiesWaved) == 1 }},
		{"tieback", []string{"", "", "yes", "", "tie", "tieback"}, []string{"The count tie of 20 ends is taken back."},
			func(s counter.State) bool { return len(s.Ties) == 0 }},
		{"where", []string{"", "", "yes", "break 4", "knot 5", "drop", "turn", "where"},
			[]string{"2 of 4 passes laid", "1 group over peg 1", "the last turn was counterclockwise, the wrong way",
				"Turn the paddle 2 half turns clockwise",
				"Number 5, chain 1: pass 3, position 4, end 24: broken end.", "Pass 3 of 4"},
			func(s counter.State) bool { return s.Events == 7 }},
		{"where before the first pass", []string{"where"}, []string{"Pass 1 of 4"}, nil},
		{"look", []string{"", "look"}, []string{"1 of 4 passes laid", "press the pass key to go on"},
			func(s counter.State) bool { return s.Events == 1 }},
		{"other", []string{"", "", "other"},
			[]string{"Return passes lie in the mirrored order from here on",
				"pass 2 had the wrong opening first: take it back"},
			func(s counter.State) bool { return s.Plan.Spec.ReturnOrder == wind.MirroredOrder }},
		{"other at another time", []string{"other"}, []string{"Nothing is asked about the lease now."}, nil},
		{"later", []string{"", "", "later"}, []string{"The look at the lease stays open.", "Pass 3 of 4"},
			func(s counter.State) bool { return s.LeaseLeft == 2 }},
		{"undo at the lease", []string{"", "", "undo"}, []string{"Pass 2 is taken back."}, nil},
		{"foot", []string{"foot last"}, []string{"position 10 lies at the foot of the peg"},
			func(s counter.State) bool { return s.Plan.Spec.Foot == wind.FootLast }},
		{"foot of nothing", []string{"foot"}, []string{"Type foot first or foot last."}, nil},
		{"done while winding", []string{"", "done"}, []string{"The finishing has not begun."},
			func(s counter.State) bool { return s.Events == 1 }},
		{"done with nothing to it", []string{"", "done 3"}, []string{"done takes nothing after it"}, nil},
		{"reopen what is open", []string{"reopen it"}, []string{"The record is open already."}, nil},
		{"help", []string{"help"}, []string{"An empty line is the pass key", "break 4: the end in position 4 broke",
			"leave: "}, nil},
		{"unknown", []string{"wind"}, []string{`"wind" means nothing here.`, "undo, redo, pause"},
			func(s counter.State) bool { return s.Events == 0 }},
		{"undo of a step", []string{"", "", "", "", "", "", "undo"},
			[]string{"The step is taken back.", "Step 1 of 15"}, nil},
	}
	for _, tt := range tests {
		tk := newBench(t, nil)
		tk.wants(tk.types(tt.lines...), tt.says...)
		if tt.check != nil && !tt.check(tk.state()) {
			t.Errorf("%s: %+v", tt.name, tk.state())
		}
		if t.Failed() {
			t.Fatal(tt.name)
		}
	}
}

// Every word of the help is known, and none is twice.
func TestHelpIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, w := range words() {
		if seen[w.name] || !strings.HasPrefix(w.use, w.name) || w.help == "" || w.act == nil {
			t.Errorf("%+v", w)
		}
		seen[w.name] = true
	}
	for was, now := range older {
		if _, ok := wordOf(was); !ok || !seen[now] {
			t.Errorf("%s is not known", was)
		}
	}
}

// Lines faster than a hand can wind count once.
func TestGuard(t *testing.T) {
	tk := newBench(t, nil)
	tk.types("")
	for n := range 5 {
		tk.time = tk.time.Add(100 * time.Millisecond)
		r, err := tk.p.Line("", tk.time)
		if err != nil {
			t.Fatal(err)
		}
		want := "One press ignored: sooner than 2s after the last."
		if n > 0 {
			want = fmt.Sprintf("%d presses ignored in a row: sooner than 2s after the last.", n+1)
		}
		tk.wants(said(r), want)
	}
	tk.wants(tk.types(""), "do the neighbours alternate")
	if n := tk.state().Laid(); n != 2 {
		t.Errorf("%d passes", n)
	}
}

// Leaving pauses once, and the words that lead there are all there.
func TestLeaves(t *testing.T) {
	for _, tt := range []struct {
		name   string
		lines  []string
		events int
	}{{"nothing wound", nil, 0}, {"winding", []string{""}, 2}, {"paused", []string{"", "pause"}, 2}} {
		tk := newBench(t, nil)
		tk.types(tt.lines...)
		r, err := tk.p.Line("leave", tk.time.Add(time.Minute))
		if st := tk.state(); err != nil || !r.Over || st.Events != tt.events || st.Paused != (tt.events > 0) {
			t.Errorf("%s: over %v, %d events, paused %v, %v", tt.name, r.Over, st.Events, st.Paused, err)
		}
		tk.wants(said(r), "All of it is on the disk.")
	}
	// Put aside and left, it is paused though the mill has not been looked at.
	tk := newBench(t, nil)
	tk.types("")
	tk.reopen()
	tk.types("")
	tk.wants(said(tk.p.Wake(tk.time)), "1 group over peg 1")
	if _, err := tk.p.Leave(tk.time.Add(time.Minute)); err != nil || !tk.state().Paused {
		t.Errorf("paused %v, %v", tk.state().Paused, err)
	}
}

// fullDisk is a file system whose writes fail once it is full.
type fullDisk struct {
	journal.FS
	full bool
}

func (d *fullDisk) OpenFile(path string, flag int, perm fs.FileMode) (disk.File, error) {
	f, err := d.FS.OpenFile(path, flag, perm)
	return fullFile{f, d}, err
}

type fullFile struct {
	disk.File
	d *fullDisk
}

func (f fullFile) Write(b []byte) (int, error) {
	if f.d.full {
		return 0, errors.New("no space left on the disk")
	}
	return f.File.Write(b)
}

// A record that can't be written ends the conversation with an error, and the count has not moved.
func TestFailedRecord(t *testing.T) {
	disk := &fullDisk{FS: journal.OS()}
	tk := newBenchIn(t, disk, nil)
	tk.types("")
	disk.full = true
	tk.time = tk.time.Add(time.Minute)
	_, err := tk.p.Line("", tk.time)
	if !errors.Is(err, journal.ErrFailed) ||
		!strings.Contains(err.Error(), "the count did not move, 1 pass laid on the disk") {
		t.Errorf("%v", err)
	}
	disk.full = false
	tk.wants(tk.reopen(), "1 of 4 passes laid")
}

// Whatever is typed or pressed, there is an answer without control characters and no panic, and the record opens again.
func TestTakesAnything(t *testing.T) {
	pieces := []string{"", "", "", "undo", "undo 1", "redo", "pause", "on", "look", "count 2", "count 9 9",
		"pegs 1 1 return", "pegs -1 x", "pegs - - 2 loose",
		"note \x1b[2J", "note ü", "break 4 pass 2 at 1 yd a", "break 4 pass", "break 4 at 1", "knot 99", "missed",
		"wrongpeg pass 0", "package 3 1 kg", "package",
		"drop", "drop 2", "turn", "turn 1", "righted", "tie", "notie", "tieback", "yes", "other", "later", "foot last",
		"done", "where", "reopen why", "help", "\x1b[A"}
	names := []string{" ", "pgdown", "enter", "u", "b", "4", "c", "n", "k", "w", "t", "d", "?", ":", "esc", "backspace",
		"unknown", "x", "y", "ü"}
	rapid.Check(t, func(rt *rapid.T) {
		tk := newBench(t, func(s *plan.Spec) { s.Guard = 0 })
		tk.p.Begin(tk.time, true)
		for range rapid.IntRange(1, 40).Draw(rt, "inputs") {
			tk.time = tk.time.Add(time.Duration(rapid.IntRange(-5, 90).Draw(rt, "seconds")) * time.Second)
			var r session.Reply
			var err error
			switch rapid.IntRange(0, 9).Draw(rt, "how") {
			case 0:
				r, err = tk.p.Line(rapid.String().Draw(rt, "text"), tk.time)
			case 1, 2, 3:
				r, err = tk.p.Key(rapid.SampledFrom(names).Draw(rt, "key"), tk.time)
			case 4:
				r, err = tk.p.Piece(rapid.SampledFrom(pieces).Draw(rt, "piece"), rapid.Bool().Draw(rt, "ended"),
					tk.time)
			default:
				r, err = tk.p.Line(rapid.SampledFrom(pieces).Draw(rt, "line"), tk.time)
			}
			if err != nil || len(r.Said) == 0 && tk.p.Echo() == "" {
				rt.Fatalf("%q, %v", r.Said, err)
			}
			if r.Over {
				break
			}
		}
		tk.reopen()
		if err := tk.rec.Close(); err != nil {
			rt.Fatal(err)
		}
	})
}
