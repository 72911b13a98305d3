//go:build unix

package main

import (
	"fmt"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"syscall"
	"testing"

	"millside/plan"
)

// squeezes changes the size of the window over and over on one page: the page is drawn anew each time, its
// line of keys on the last row, and in a window that is too small for anything something is said. Afterwards
// the window is as it was.
func (term *terminal) squeezes(page, keys string) {
	term.t.Helper()
	for _, size := range [][2]int{{300, 100}, {40, 12}, {20, 5}, {60, 18}, {80, 24}} {
		w, h := size[0], size[1]
		term.resize(w, h)
		if w < 40 {
			term.until("a word on a tiny window", func() bool {
				return slices.ContainsFunc([]string{"this window", "pass ", "MILLSIDE", "▸warp"},
					func(s string) bool { return strings.Contains(term.screen(), s) })
			})
			continue
		}
		// Keys that don't go into one row stand in two or three at the foot.
		term.until(fmt.Sprintf("%q with %q in the last of %d rows", page, keys, h), func() bool {
			rows := strings.Split(strings.TrimRight(term.screen(), "\n"), "\n")
			return strings.Count(term.screen(), page) == 1 && len(rows) == h &&
				strings.Contains(strings.Join(rows[h-3:], "\n"), keys)
		})
	}
}

// Every page bears a window of any size, changed while it is shown, from 40 by 12 to 300 by 100.
func TestResizeOnEachPage(t *testing.T) {
	long(t)
	t.Parallel()
	dir := t.TempDir()
	term := start(t, 80, 24, dir)
	term.see("MILLSIDE")
	term.squeezes("MILLSIDE", "enter open")
	term.press("n")
	term.see("planned from")
	term.squeezes("▸warp", "ctrl+s")
	term.press("ctrl+c")
	term.exit()

	path, _ := savedStripes(t, dir, threeStripes, fourPositions)
	term = start(t, 80, 24, dir, "wind", path)
	term.see("THREAD")
	term.squeezes("THREAD THE PADDLE", "space")
	term.goes("space", "0 of 16 passes laid")
	term.squeezes("0 of 16 passes laid", "space")
	for _, page := range []struct{ key, title, keys, back string }{
		{"?", "Keys while winding", "space", "z"},
		{"c", "RECOUNT", "enter", "esc"},
		{"n", "NOTE", "enter", "esc"},
		{"b", "BROKEN END", "enter", "esc"},
		{"a", "ANOTHER PACKAGE", "enter", "esc"},
		{"p", "PAUSED", "space", "space"},
	} {
		term.press(page.key)
		term.see(page.title)
		term.squeezes(page.title, page.keys)
		term.goes(page.back, "0 of 16 passes laid")
	}
	term.goes("space", "1 of 16 passes laid")
	term.goes("space", "they alternate")
	term.squeezes("they alternate", "space")
	term.press("y")
	term.see("2 of 16 passes laid")
	term.wind(2, 5, 16)
	term.goes("space", "BEFORE PASS 7")
	term.squeezes("BEFORE PASS 7", "space")
	term.signal(syscall.SIGKILL)
	term.exit()

	term = start(t, 80, 24, dir, "wind", path)
	term.see("LOOK AT THE MILL")
	term.squeezes("LOOK AT THE MILL", "space")
	term.goes("space", "BEFORE PASS 7")
	term.goes("space", fmt.Sprintf("%d of %d passes laid", 6, 16))
	term.wind(6, 16, 16)
	term.squeezes("this step is done", "space")
	term.finish(dir)
	term.squeezes("FINISHED", "home")
}

// A whole warp in the smallest window and in a very large one.
func TestExtremeSizes(t *testing.T) {
	long(t)
	t.Parallel()
	for _, size := range [][2]int{{40, 12}, {300, 100}} {
		t.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			term := start(t, size[0], size[1], dir, "wind", saved(t, dir, func(s *plan.Spec) { s.Ends = 56 }))
			term.see("0 of 6 passes laid")
			for _, part := range []string{"pass 1 of 6, outward", "tie the group on", "next"} {
				term.see(part)
			}
			term.wind(0, 4, 6)
			term.goes("space", "STOP")
			term.goes("space", "LAST PASS") // in the smallest window the bar gives way to what the last pass needs
			term.wind(5, 6, 6)
			term.finish(dir)
			if size[1] < 18 {
				term.see("lines more: 'millside sheet'") // no mark is cut off unsaid
			}
			term.press("q")
			term.exit()
			if st := onlyRecord(t, dir).State(); !st.Finished || st.EndsStandingAll() != 56 {
				t.Errorf("finished %v, %d ends", st.Finished, st.EndsStandingAll())
			}
		})
	}
}

var looks = regexp.MustCompile("\x1b\\[([0-9;]*)m")

// coloursOf tells which kinds of colour were written: "16", "256" and "true" (ECMA-48, 8.3.117; ITU-T
// T.416, 13.1.8 for the last two).
func coloursOf(out string) []string {
	var kinds []string
	note := func(kind string) {
		if !slices.Contains(kinds, kind) {
			kinds = append(kinds, kind)
		}
	}
	for _, m := range looks.FindAllStringSubmatch(out, -1) {
		codes := strings.Split(m[1], ";")
		for i := 0; i < len(codes); i++ {
			switch c := codes[i]; {
			case (c == "38" || c == "48") && i+1 < len(codes) && codes[i+1] == "2":
				note("true")
				i += 4
			case (c == "38" || c == "48") && i+1 < len(codes) && codes[i+1] == "5":
				note("256")
				i += 2
			case len(c) == 2 && (c[0] == '3' || c[0] == '4') && c[1] < '8', len(c) == 2 && c[0] == '9', len(c) == 3 &&
				c[:2] == "10":
				note("16")
			}
		}
	}
	slices.Sort(kinds)
	return kinds
}

// The yarns have their own colours in as many shades as the terminal has. Without colours nothing is lost:
// direction and yarns are told by word, arrow and letter, which stand there in any case.
func TestColoursOfTheTerminal(t *testing.T) {
	t.Parallel()
	for name, tt := range map[string]struct {
		env   []string
		want  []string // what may be written, and is
		shade string   // the ground of the red yarn, #b03a2e
	}{
		"NO_COLOR": {[]string{"NO_COLOR=1", "COLORTERM=truecolor"}, nil, ""},
		"16":       {[]string{"TERM=xterm"}, []string{"16"}, ""},
		"256":      {[]string{"TERM=xterm-256color"}, []string{"16", "256"}, ""},
		"true":     {[]string{"COLORTERM=truecolor"}, []string{"16", "true"}, "48;2;176;58;46"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			path, _ := savedStripes(t, dir, threeStripes, fourPositions)
			cmd := exec.Command(binary(t), "wind", path)
			cmd.Env = tt.env
			term := startCommand(t, 80, 24, dir, cmd)
			term.see("THREAD THE PADDLE")
			term.goes("space", "0 of 16 passes laid")
			for _, part := range []string{"pass 1 of 16, outward", "kind I     C   C   C   C",
				"C L O C K W I S E"} {
				term.see(part)
			}
			term.wind(0, 5, 16)
			term.see("pass 6 of 16, return")
			term.goes("space", "white")
			term.see("red")
			term.goes("space", "kind II    D   D   D   D")
			term.press("q")
			term.exit()
			out := term.written()
			if got := coloursOf(out); !slices.Equal(got, tt.want) {
				t.Errorf("colours %v, want %v", got, tt.want)
			}
			if !strings.Contains(out, tt.shade) {
				t.Errorf("the red yarn isn't drawn in its own colour, %s", tt.shade)
			}
		})
	}
}
