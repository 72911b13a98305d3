package plain

import (
	"io"
	"slices"
	"strings"
	"testing"
	"time"
)

// In a terminal a key means what it means on the screen: the keys of a clicker and a pedal count, letters do their work
// at once, and what needs an answer asks for it.
func TestKeys(t *testing.T) {
	tk := newBench(t, nil)
	tk.wants(said(tk.p.Begin(tk.time, true)), "Space, Enter or Page Down is the pass key")
	tk.wants(tk.presses("pgdown"), "Pass 1 is laid, 10 ends stand.")
	tk.wants(tk.presses("u"), "Pass 1 is taken back.")
	tk.wants(tk.presses("U"), "Nothing to take back")
	tk.wants(tk.presses("right", " "), "do the neighbours alternate", "The key y says yes")
	tk.wants(tk.presses("y"), "The lease is as planned.")
	tk.wants(tk.presses("b"), "BROKEN END", "Which position of the paddle?")
	tk.wants(tk.presses("4", "enter"), "That is end 24 of the warp.")
	if got := tk.p.Echo(); got != "pass? (3) " {
		t.Errorf("echo %q", got)
	}
	tk.presses("enter")
	tk.wants(tk.presses("enter"), "pass 3, position 4, end 24: broken end.")
	if n := tk.state().Laid(); n != 2 {
		t.Errorf("an answer counted a pass: %d", n)
	}
	tk.presses("k", "9", "9")
	tk.wants(tk.presses("backspace", "backspace", "x", "enter", "enter", "enter"), "Nothing was noted: position:")
	tk.presses("n", "a", " ", "b")
	tk.wants(tk.presses("pgdown"), "Finish what you are typing")
	tk.wants(tk.presses("enter"), "The note is kept.")
	if got := tk.state().Notes[0].Text; got != "a b" {
		t.Errorf("%q", got)
	}
	tk.presses("n", "a")
	tk.wants(tk.presses("esc"), "Given up; nothing was done.")
	tk.presses(":", "t", "i", "e")
	if got := tk.p.Echo(); got != ": tie" {
		t.Errorf("echo %q", got)
	}
	tk.wants(tk.presses("enter"), "No count tie is due")
	tk.wants(tk.presses(":", "enter"), "No word was typed")
	tk.wants(tk.presses("?"), "u: ", "A colon begins a word")
	tk.wants(tk.presses("ü"), "means nothing here")
	if n := tk.state().Laid(); n != 2 {
		t.Errorf("%d passes", n)
	}
	if r, err := tk.p.Key("q", tk.time.Add(time.Minute)); err != nil || !r.Over {
		t.Errorf("%+v, %v", r, err)
	}
}

// A line that comes in one piece is a line, as from a program or the clipboard; in the middle of an answer it is a part
// of it.
func TestPieces(t *testing.T) {
	tk := newBench(t, nil)
	r, err := tk.p.Piece("note by the way", true, tk.time)
	if err != nil {
		t.Fatal(err)
	}
	tk.wants(said(r), "The note is kept.")
	tk.presses("n")
	if _, err := tk.p.Piece("pasted", false, tk.time); err != nil {
		t.Fatal(err)
	}
	tk.presses("enter")
	if got := tk.state().Notes[1].Text; got != "pasted" {
		t.Errorf("%q", got)
	}
	if _, err := tk.p.Piece("whe", false, tk.time); err != nil {
		t.Fatal(err)
	}
	tk.wants(tk.presses("r", "e", "enter"), "Pass 1 of 4")
}

// A recount by key goes through the pegs, and what is counted there fills in the number.
func TestRecountByKeys(t *testing.T) {
	tk := newBench(t, nil)
	tk.presses(" ", " ")
	tk.wants(tk.presses("c"), "RECOUNT")
	tk.presses("2", "enter", "1", "enter", "enter", "enter")
	tk.wants(tk.presses("enter", "enter"), "The count was 2, now it is 3")
	if got := tk.state().Recounts[0].Reason; got != "counted on the pegs (2 over peg 1, 1 over peg 2)" {
		t.Errorf("%q", got)
	}
}

// What a terminal sends is taken apart into keys; a piece of several letters is a line.
func TestApart(t *testing.T) {
	for _, tt := range []struct {
		piece string
		want  []string
	}{
		{" ", []string{" "}}, {"\r", []string{"enter"}}, {"\x1b[6~", []string{"pgdown"}}, {"\x1b[5~", []string{"pgup"}},
		{"\x1bOC\x1b[B", []string{"right", "down"}},
		{"uuu", []string{"u", "u", "u"}}, {"    ", []string{" ", " ", " ", " "}}, {"\x1b", []string{"esc"}},
		{"\x1b[99;99x", []string{"unknown"}},
		{"undo\n", []string{"<undo>!"}}, {"note a b\r\nq", []string{"<note a b>!", "q"}}, {"und", []string{"<und>"}},
		{"\n\n", []string{"enter", "enter"}},
		{"\x7fü", []string{"backspace", "ü"}}, {"\x1b[15~.", []string{"f5", "."}}, {"\x01", []string{"control"}},
		{"where\nundo\n", []string{"<where>!", "<undo>!"}},
	} {
		inputs, end := apart(tt.piece, time.Time{})
		var got []string
		for _, in := range inputs {
			switch {
			case in.Key != "":
				got = append(got, in.Key)
			case in.Ended:
				got = append(got, "<"+in.Text+">!")
			default:
				got = append(got, "<"+in.Text+">")
			}
		}
		if !slices.Equal(got, tt.want) || end {
			t.Errorf("%q: %q, want %q", tt.piece, got, tt.want)
		}
	}
	if inputs, end := apart("u\x04u", time.Time{}); !end || len(inputs) != 1 {
		t.Errorf("%v %v", inputs, end)
	}
}

// Keys come with their time, a letter that was cut in two comes whole, and the end is the end.
func TestKeysOfATerminal(t *testing.T) {
	r, w := io.Pipe()
	go func() {
		for _, piece := range []string{"\xc3", "\xbc", "\x1b[6~", "\x04"} {
			_, _ = io.WriteString(w, piece)
		}
	}()
	now := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
	var got []string
	for in := range Keys(r, func() time.Time { return now }) {
		if !in.At.Equal(now) {
			t.Errorf("%+v", in)
		}
		got = append(got, in.Key)
	}
	if !slices.Equal(got, []string{"ü", "pgdown"}) {
		t.Errorf("%q", got)
	}
}

// Lines that are too long are cut, and the next one is whole.
func TestLines(t *testing.T) {
	long := "note " + strings.Repeat("a", 3*maxTyped)
	var got []string
	for in := range Lines(strings.NewReader("one\r\n\n"+long+"\ntwo"), time.Now) {
		got = append(got, in.Text)
	}
	if len(got) != 4 || got[0] != "one" || got[1] != "" || got[2] != long[:maxTyped] || got[3] != "two" {
		t.Errorf("%d lines: %.40q", len(got), got)
	}
}

// A key of the weaver's own is the pass key here too, and a finished warp is opened again by its key.
func TestOwnKeyAndReopening(t *testing.T) {
	tk := newBench(t, nil)
	tk.p.keys = tk.p.keys.WithOwn([]string{"f5"})
	tk.wants(tk.presses("f5"), "Pass 1 is laid, 10 ends stand.")
	for range 30 {
		tk.presses("f5")
	}
	if !tk.state().Finished {
		t.Fatal("not finished")
	}
	tk.wants(tk.presses("r"), "OPEN THE RECORD AGAIN")
	tk.wants(tk.presses("x", "enter"), "The record is open again.")
}
