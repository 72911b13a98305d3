package main

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"millside/counter/journal"
	"millside/plan/figure"
	"millside/tui"
)

// inLocale carries out a command where the system's locale is another.
func inLocale(t *testing.T, lang, dir string, args ...string) (code int, out, errOut string) {
	t.Helper()
	t.Cleanup(func() {
		figure.WriteComma(false)
		figure.WriteForProgram(false)
	})
	var o, e bytes.Buffer
	a := &app{
		in: os.Stdin, tty: os.Stdout, out: bufio.NewWriter(&o), errOut: &e, fs: journal.OS(),
		env: func(name string) string { return map[string]string{"LANG": lang}[name] },
		now: func() time.Time { return time.Time{} }, terminal: func(*os.File) bool { return false },
		screen: func(context.Context, tui.Options) error { return errors.New("no screen in this test") },
	}
	code = a.run(append([]string{"--records", dir}, args...))
	return code, o.String(), e.String()
}

const withComma, withPoint = "de_DE.UTF-8", "en_GB.UTF-8" // both metric

// betweenDigits is a decimal point; a version has more than one.
var betweenDigits = regexp.MustCompile(`(^|[^0-9.])[0-9]+\.[0-9]+([^0-9.]|\.?$|\.[^0-9])`)

// points lists the lines that have a decimal point between two digits.
func points(text string) (lines []string) {
	for line := range strings.Lines(text) {
		if betweenDigits.MatchString(strings.TrimRight(line, "\n")) {
			lines = append(lines, line)
		}
	}
	return lines
}

// warps are plans in which every quantity has decimals.
func warps() [][]string {
	cloth := []string{"--finished-width", "61,5 cm", "--finished-length", "1,52 m", "--sett", "78,5 in 10 cm", "--reed",
		"41,5 in 10 cm", "--reed-width", "90,5 cm", "--yarn", "cotton 8,5/2", "--cones", "450,5 g, 500,25 g", "--tube",
		"30,5 g", "--beam-section", "2,5 cm", "--draw-in", "8,5 %", "--face", "weft-faced", "--weft", "30,5 tex",
		"--picks", "70,5 in 10 cm", "--raddle", "1,5 cm", "--minutes-handling", "0,35", "--minutes-turn", "0,075",
		"--chain-ends", "205", "--guard", "1,5s", "--hem", "2,5 cm", "--peg-length", "15,5 cm", "--rise", "2,5 cm",
		"--circumference", "2,05 m", "--loom-waste", "70,5 cm", "--sample", "60,5 cm"}
	return [][]string{cloth,
		{"--ends", "90", "--board", "36,5 cm x 9, 30,5 cm", "--length", "2,5 m", "--painted", "1,5 m indigo, 0,5 m"},
		{"--stripes", "8 white, 3 times (4 red, 8 white)", "--sett", "7,5 a cm", "--reed", "7,5 a cm"}}
}

// Where the weaver writes a decimal comma no quantity that a person reads has a point: in plans, sheets, records, helps
// and errors. Versions aren't quantities, and the looks of a page of HTML aren't read.
func TestDecimalCommaEverywhere(t *testing.T) {
	alone(t)
	dir := t.TempDir()
	hand := filepath.Join(dir, "hand.txt")
	if err := os.WriteFile(hand, []byte("reed ten: 10,5 dents an inch, width 36,5 in\nmill big: circumference 2,05 m, "+
		"peg step 0,5 m, rise 2,5 cm\nyarn white: cotton 8,5/2, cones 450,5 g\nboard wide: 36,5 cm x 9\n"),
		0o600); err != nil {
		t.Fatal(err)
	}
	draft := filepath.Join(dir, "draft.wif")
	if err := os.WriteFile(draft, []byte("[WARP]\nThreads=8\nSpacing=0.0525\nUnits=Inches\n[WEAVING]\nShafts=2\n"+
		"[THREADING]\n1=1\n2=2\n3=1\n4=2\n5=1\n6=2\n7=1\n8=2\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	commands := [][]string{{"draft", draft}, {"plan", "--draft", draft, "--thread-1", "left", "--sett", "7,5 a cm",
		"--reed", "7,5 a cm", "--sheet"}}
	for i, warp := range warps() {
		plan := append([]string{"plan", "--at-hand", hand}, warp...)
		for _, more := range [][]string{{"--passes"}, {"--sheet", "--how"}, {"--wall"},
			{"--sheet", "--format", "markdown"}} {
			commands = append(commands, slices.Concat(plan, more))
		}
		name := []string{"one", "two", "three"}[i]
		commands = append(commands, slices.Concat(plan, []string{"--save", "--name", name}), []string{"show", name},
			[]string{"sheet", name, "--how"})
	}
	commands = append(commands,
		[]string{"sett", "cotton 8,5/2", "--factor", "0,95", "--face", "weft-faced", "--weft", "25,5 tex", "--at-hand",
			hand},
		[]string{"start", "--ends", "400", "--length", "7,5 m", "--yarn", "cotton 8,5/2", "--on-hand", "250,5 g"},
		[]string{"start", "--finished-width", "61,5 cm", "--sett", "78,5 in 10 cm"},
		[]string{"at-hand", "--at-hand", hand}, []string{"list"}, []string{"sett", "--help"},
		[]string{"plan", "--finished-width", "20,5 cm", "--finished-length", "1,5 m", "--sett", "7,5 a cm", "--reed",
			"41,5 in 10 cm", "--name", "ground", "--save"},
		[]string{"together", "ground", "--order", "2 ground, 1 second", "--take-up", "40,5 %"},
		[]string{"plan", "--help"})
	for _, args := range commands {
		code, out, errOut := inLocale(t, withComma, dir, args...)
		if code != 0 {
			t.Errorf("%q: %s", args, errOut)
		}
		for _, line := range points(out) {
			t.Errorf("%q has a decimal point: %s", args, line)
		}
	}
	for _, args := range [][]string{
		{"--length", "0,01 m"}, {"--length", "1,5 ells"}, {"--draw-in", "95,5 %"}, {"--minutes-turn", "99,5"},
		{"--guard", "1,23456s"}, {"--guard", "90,5s"}, {"--sett", "2000,5 an inch"}, {"--reed", "23,5"},
		{"--sett", "23,5"},
		{"--sett", "1,5 an inch", "--reed", "30,5 an inch"}, {"--tube", "300,5 kg"}, {"--board", "0,1 mm"},
		{"--sett", "20,5 an inch", "--reed", "10,5 an inch", "--dents", "3 dents of 9"},
		{"--sett", "20,5 an inch", "--reed", "10,5 an inch", "--reed-width", "30,5 m"},
		{"--sett", "0,5 an inch", "--beam-section", "1,5 cm"}, {"--peg-step", "0,4 mm"}, {"--yarn", "cotton 0,000001"},
		{"--raddle", "15,5 cm", "--sett", "20,5 an inch"}, {"--board", "36,5 cm", "--length", "9,5 m"},
		{"--finished-width", "20,5 m", "--finished-length", "1,5 m", "--sett", "8,5 a cm"},
	} {
		args = append([]string{"plan", "--ends", "40", "--yarn", "cotton 8,5/2", "--cones", "100,5 g"}, args...)
		code, _, errOut := inLocale(t, withComma, dir, args...)
		if code == 0 {
			t.Errorf("%q is no error", args)
		}
		for _, line := range points(errOut) {
			t.Errorf("%q has a decimal point: %s", args, line)
		}
	}
}

// What a program reads, and what a record keeps, is the same whatever sign the weaver writes.
func TestProgramsReadAPoint(t *testing.T) {
	alone(t)
	here, there := t.TempDir(), t.TempDir()
	for i, warp := range warps() {
		name := []string{"one", "two", "three"}[i]
		for _, args := range [][]string{
			append([]string{"plan", "--json"}, warp...),
			append([]string{"plan", "--sheet", "--format", "json"}, warp...),
			append([]string{"plan", "--wall", "--format", "json"}, warp...),
			append([]string{"plan", "--sheet", "-o", filepath.Join("%", name+".json")}, warp...),
			append([]string{"plan", "--save", "--name", name}, warp...),
			{"show", name, "--json"}, {"sheet", name, "--format", "json", "--how"},
			{"sett", "cotton 8,5/2", "--factor", "0,95", "--json"},
			{"start", "--ends", "400", "--length", "7,5 m", "--yarn", "cotton 8,5/2", "--on-hand", "250,5 g", "--json"},
		} {
			_, comma, errOut := inLocale(t, withComma, here, placed(args, here)...)
			_, point, _ := inLocale(t, withPoint, there, placed(args, there)...)
			if slices.Contains(args, "--save") {
				continue // what is kept is compared below
			}
			comma = strings.ReplaceAll(comma, here, there)
			if comma != point || comma == "" && !slices.Contains(args, "-o") {
				t.Errorf("%q is another in another locale: %s\n%s", args, errOut, differ(comma, point))
			}
		}
	}
	kept := 0
	for _, dir := range []string{"*.millside", "*.json"} {
		files, err := filepath.Glob(filepath.Join(here, dir))
		if err != nil {
			t.Fatal(err)
		}
		for _, path := range files {
			kept++
			comma, err1 := os.ReadFile(path)
			point, err2 := os.ReadFile(filepath.Join(there, filepath.Base(path)))
			if err := errors.Join(err1, err2); err != nil || !bytes.Equal(comma, point) {
				t.Errorf("%s is another in another locale: %v\n%s", path, err, differ(string(comma), string(point)))
			}
		}
	}
	if kept < 6 {
		t.Errorf("%d files were looked at", kept)
	}
}

// placed puts a folder in the place of a percent sign.
func placed(args []string, dir string) []string {
	out := slices.Clone(args)
	for i, a := range out {
		if rest, ok := strings.CutPrefix(a, "%"); ok {
			out[i] = dir + rest
		}
	}
	return out
}

// differ is the first line that isn't the same.
func differ(a, b string) string {
	right := strings.Split(b, "\n")
	for i, line := range strings.Split(a, "\n") {
		if i >= len(right) || line != right[i] {
			return line + "\n" + strings.Join(right[min(i, len(right)):min(i+1, len(right))], "")
		}
	}
	return ""
}
