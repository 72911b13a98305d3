package main

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
	"unicode"
	"unicode/utf8"

	"millside/cmd/millside/internal/asked"
	"millside/counter/journal"
	"millside/plan"
	"millside/plan/cloth"
	"millside/plan/frame"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/times"
	"millside/tui"
)

// A draft whose stripes take more notation than a record keeps is refused before it is cut into passes.
func TestDraftOfTooManyStripes(t *testing.T) {
	text := []byte("[WARP]\nThreads=6000\n[WARP COLORS]\n")
	r := rand.New(rand.NewPCG(1, 2))
	for i := range 6000 {
		text = fmt.Appendf(text, "%d=%d\n", i+1, 100+2*r.IntN(40)+i%2) // neighbours differ
	}
	path := filepath.Join(t.TempDir(), "huge.wif")
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	code, out, errOut := runIn(t.TempDir(), "plan", "--draft", path, "--thread-1", "left")
	if code != exitUsage || out != "" || !strings.Contains(errOut,
		`characters of notation" won't do; give stripes that take at most 50000`) {
		t.Errorf("exit code %d, %q, %q", code, out, errOut)
	}
}

// runIn carries out a command line in this process, with no screen.
func runIn(dir string, args ...string) (code int, out, errOut string) {
	var o, e bytes.Buffer
	a := &app{
		in: os.Stdin, tty: os.Stdout, out: bufio.NewWriter(&o), errOut: &e,
		fs: journal.OS(), env: func(string) string { return "" }, now: func() time.Time { return time.Time{} },
		terminal: func(*os.File) bool { return false },
		screen:   func(context.Context, tui.Options) error { return errors.New("no screen in this test") },
	}
	code = a.run(append([]string{"--records", dir}, args...))
	return code, o.String(), e.String()
}

func TestReport(t *testing.T) {
	for _, tt := range []struct {
		err  error
		code int
		text string
	}{
		{nil, 0, ""},
		{errors.New("no"), 1, "millside: no\n"},
		{errors.Join(errors.New("one"), errors.New("two")), 1, "millside: one\nmillside: two\n"},
		{errors.New("a\x1b[31mred\u202e\x9b"), 1, "millside: a[31mred\uFFFD\n"},
		{&asked.UsageError{Command: "millside plan", Err: errors.New("no")}, 2,
			"millside: no\nmillside: see 'millside plan --help'\n"},
		{fmt.Errorf("x: %w", context.Canceled), 130, ""},
		{fmt.Errorf("x: %w", &tui.SignalError{Signal: syscall.SIGINT}), 130, ""},
		{&tui.SignalError{Signal: syscall.SIGHUP}, 129, ""},
		{&tui.SignalError{Signal: syscall.SIGQUIT}, 131, ""},
		{&tui.SignalError{Signal: syscall.SIGTERM}, 143, ""},
	} {
		var b bytes.Buffer
		if code := report(&b, tt.err); code != tt.code || b.String() != tt.text {
			t.Errorf("%v: code %d, %q; want %d, %q", tt.err, code, b.String(), tt.code, tt.text)
		}
	}
}

// A file whose name would act on a terminal is listed without that.
func TestNamesOfFilesAreCleaned(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "a\x1b[31mb\u202e.millside")
	if err := os.WriteFile(name, []byte("not a record\n"), 0o600); err != nil {
		t.Skipf("the file system takes no such name: %v", err)
	}
	for _, args := range [][]string{{"list"}, {"list", "--json"}, {"show", "none"}, {"show", name}, {"wind", name},
		{"salvage", name, "x"}, {"__complete", "wind", ""}} {
		_, out, errOut := runIn(dir, args...)
		if out+errOut == "" {
			t.Errorf("%q says nothing", args)
		}
		if strings.ContainsFunc(out+errOut,
			func(r rune) bool { return r != '\n' && r != '\t' && unicode.IsControl(r) }) {
			t.Errorf("%q lets control characters through:\n%q\n%q", args, out, errOut)
		}
	}
}

// Every field of a plan that may be refused has a flag, so that the message names what was typed.
func TestEveryFieldHasItsFlag(t *testing.T) {
	cmd := newApp().planCmd()
	var wrong plan.Spec
	wrong.Guard, wrong.ChainEnds, wrong.TieEvery, wrong.Mill.Rise, wrong.Mill.Height, wrong.RestMinutes = -1, -1,
		-1, -1, -1, -1
	wrong.Pegs, wrong.Yarn.Colour, wrong.Yarn.Packages = plan.Pegs{Length: -1, Layers: -1}, "\x1b", -1
	wrong.Cloth.Fit, wrong.Loom.FirstEnd = 9, 9
	woven := plan.DefaultSpec()
	woven.Cloth = plan.Cloth{Used: true, Width: cloth.Width{Shrinkage: -1, DrawIn: -1, Doubled: -1, Floating: -1,
		Repeat: -1, Balance: -1},
		Length: cloth.Length{Shrinkage: -1, TakeUp: -1, Hem: -1, Fringe: -1, Sample: -1, Waste: -1, Knotting: -1}}
	_, clothErr := project.FromCloth(woven)
	yarn, err := measure.ParseYarn("cotton 8/2")
	if err != nil {
		t.Fatal(err)
	}
	dressed := plan.DefaultSpec()
	dressed.Board = frame.Board{1, 2, 600 * measure.Centimetre}
	dressed.Yarn = plan.WarpYarn{Size: yarn, Cones: measure.Masses{measure.Ounce}, Tube: measure.Pound}
	dressed.Loom.Raddle = loom.Raddle{Space: 1, Spaces: -1}
	dressed.Loom.EdgeDents = -1
	if err := dressed.Loom.Sett.UnmarshalText([]byte("20 an inch")); err != nil {
		t.Fatal(err)
	}
	if err := dressed.Loom.Reed.UnmarshalText([]byte("10 dents an inch")); err != nil {
		t.Fatal(err)
	}
	_, boardErr := project.New(dressed, times.Pace{})
	dressed.Board = nil
	_, loomErr := project.New(dressed, times.Pace{})
	seen := 0
	for _, fe := range measure.FieldErrors(errors.Join(wrong.Check(), clothErr, boardErr, loomErr)) {
		seen++
		if flag := asked.FlagFor(fe.Field); flag == "" || cmd.Flags().Lookup(flag) == nil {
			t.Errorf("field %q has no flag (%q)", fe.Field, flag)
		}
	}
	if seen < 35 {
		t.Errorf("only %d fields are refused", seen)
	}
}

// Every command says in its help what it does and gives an example that uses it.
func TestCommandsAreDocumented(t *testing.T) {
	for _, cmd := range newApp().root().Commands() {
		if cmd.Name() == "completion" {
			continue // the library's own
		}
		if cmd.Short == "" || cmd.Long == "" || !strings.Contains(cmd.Example, cmd.CommandPath()) {
			t.Errorf("%s lacks a description or an example", cmd.CommandPath())
		}
		for line := range strings.SplitSeq(cmd.Long+"\n"+cmd.Example, "\n") {
			if utf8.RuneCountInString(line) > 90 {
				t.Errorf("%s: a line of help is too long: %s", cmd.CommandPath(), line)
			}
		}
	}
}
