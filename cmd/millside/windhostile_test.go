//go:build unix

package main

import (
	"bytes"
	"fmt"
	"hash/crc32"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"millside/counter/journal"
	"millside/plan"
)

// Sequences that would give a terminal another title, in the usual form and in that of the eight-bit control
// characters.
const (
	hostile     = "\x1b]0;owned\x07"
	hostileC1   = "\u009d0;owned\u009c"
	hostileMark = "owned"
)

// sealed writes lines as a record does: each with its checksum, begun with that of the line before (package
// counter describes the format). The test does it by itself, as someone with bad intent would.
func sealed(lines ...string) []byte {
	var out bytes.Buffer
	sum := uint32(0)
	for _, line := range lines {
		sum = crc32.Update(sum, crc32.MakeTable(crc32.Castagnoli), []byte(line))
		fmt.Fprintf(&out, "%s #%08x\n", line, sum)
	}
	return out.Bytes()
}

// headOf is the first line of a sound record, without its checksum.
func headOf(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile(saved(t, t.TempDir(), nil))
	if err != nil {
		t.Fatal(err)
	}
	line, _, _ := strings.Cut(string(data), "\n")
	return line[:strings.LastIndex(line, " #")]
}

// Nothing in a record that was made to do harm reaches a terminal: with checksums that fit, it is refused all
// the same, and no command shows what stands in it as it stands.
func TestHostileRecord(t *testing.T) {
	head := headOf(t)
	named := func(name string) string { return strings.Replace(head, `"name":"Runner"`, `"name":"`+name+`"`, 1) }
	const at = " 2026-11-25T09:00:01Z "
	for name, lines := range map[string][]string{
		"name, raw":        {named(hostile)},
		"name, escaped":    {named(`\u001b]0;owned\u0007`)},
		"name, eight bits": {named(hostileC1)},
		"name, turned":     {named("\u202eowned")},
		"note, raw":        {head, "2" + at + `noted chain=1 pass=0 text="` + hostile + `"`},
		"note, escaped":    {head, "2" + at + `noted chain=1 pass=0 text="\x1b]0;owned\a"`},
		"note, eight bits": {head, "2" + at + `noted chain=1 pass=0 text="\u009d0;owned\u009c"`},
		"reason":           {head, "2" + at + `recounted chain=1 pass=1 text="\x1b]0;owned\a"`},
		"incident":         {head, "2" + at + `incident chain=1 pass=1 position=1 what=knot text="\x1b]0;owned\a"`},
		"kind":             {head, "2" + at + hostile},
		"an unknown field": {strings.Replace(head, `"dyed":`, `"`+hostile+`":1,"dyed":`, 1)},
		"no plan":          {"millside-record 1 " + hostile},
		"another version":  {"millside-record 9 " + hostile},
		"no record at all": {hostile},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			path := filepath.Join(dir, "evil.millside")
			if err := os.WriteFile(path, sealed(lines...), 0o600); err != nil {
				t.Fatal(err)
			}
			for _, args := range [][]string{{"wind", path}, {"wind", path, "--plain"}, {"show", path, "--events"},
				{"show", path, "--json"},
				{"sheet", path}, {"list"}, {"list", "--json"},
				{"salvage", path, filepath.Join(t.TempDir(), "saved.millside")}} {
				cmd := exec.Command(binary(t), args...)
				cmd.Env = append(os.Environ(), "MILLSIDE_RECORDS="+dir, "XDG_CONFIG_HOME="+dir)
				out, err := cmd.CombinedOutput()
				if args[0] != "list" && args[0] != "salvage" && err == nil {
					t.Errorf("%v goes well: %s", args, out)
				}
				harmless(t, fmt.Sprint(args), string(out))
			}
			term := start(t, 80, 24, dir)
			term.see("half-wound")
			term.press("enter")
			term.see("! opening the record:")
			term.press("q")
			term.exit()
			harmless(t, "the home screen", term.written())
		})
	}
}

// harmless checks that none of the hostile sequences went out as it was.
func harmless(t *testing.T, what, out string) {
	t.Helper()
	for _, bad := range []string{hostile, hostileC1, "\x1b]0;", "\u009d", "\u202e"} {
		if strings.Contains(out, bad) {
			t.Errorf("%s: %q reached the terminal: %q", what, bad, out)
		}
	}
}

// Nor does the name of a file.
func TestHostileFileName(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	name := "evil " + hostile + hostileC1 + ".millside"
	if err := os.WriteFile(filepath.Join(dir, name), []byte("no record"), 0o600); err != nil {
		t.Skip("no such names here: ", err)
	}
	sound := saved(t, dir, func(s *plan.Spec) { s.Ends = 20 })
	if err := os.Rename(sound, filepath.Join(dir, "sound "+hostile+".millside")); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"list"}, {"wind", name}, {"show", "evil"}, {"show", "runner"}} {
		cmd := exec.Command(binary(t), args...)
		cmd.Env = append(os.Environ(), "MILLSIDE_RECORDS="+dir, "XDG_CONFIG_HOME="+dir)
		out, _ := cmd.CombinedOutput()
		harmless(t, fmt.Sprint(args), string(out))
	}
	term := start(t, 80, 24, dir)
	term.see("evil")
	term.press("down", "down", "down", "enter", "up", "up", "up", "enter") // the damaged one, wherever it stands
	term.see("pass")
	term.press("ctrl+c")
	term.exit()
	harmless(t, "the home screen", term.written())
}

// snapshot is every file and folder below a folder, with its mode and what stands in it.
func snapshot(t *testing.T, dir string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.Walk(dir, func(path string, info os.FileInfo, err error) error {
		if err != nil {
			return err
		}
		all[path] = info.Mode().String()
		if info.Mode().IsRegular() {
			data, err := os.ReadFile(path)
			all[path] += string(data)
			return err
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// Records can be read and written by their owner alone, whatever the shell's mask says, and so can the
// folder. Winding writes in that folder and nowhere else; looking at a warp writes nothing at all.
func TestWhereRecordsAreWritten(t *testing.T) {
	t.Parallel()
	shell, err := exec.LookPath("sh")
	if err != nil {
		t.Skip("no shell here")
	}
	home := t.TempDir()
	mine := filepath.Join(home, ".local", "share", "millside")
	open := func(args string) *exec.Cmd {
		cmd := exec.Command(shell, "-c", "umask 0; cd \"$HOME\"; exec "+binary(t)+" "+args)
		cmd.Env = []string{"HOME=" + home, "MILLSIDE_RECORDS=", "XDG_DATA_HOME=", "XDG_CONFIG_HOME=", "XDG_CACHE_HOME=",
			"XDG_STATE_HOME="}
		return cmd
	}
	if out, err := open("plan --ends 40 --guard 0 --name Runner --save").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	path := filepath.Join(mine, "runner"+journal.Extension)
	for what, mode := range map[string]os.FileMode{mine: 0o700 | os.ModeDir, path: 0o600} {
		if info, err := os.Stat(what); err != nil || info.Mode() != mode {
			t.Errorf("%s: %v, want %v (%v)", what, info.Mode(), mode, err)
		}
	}

	before := snapshot(t, home)
	term := startCommand(t, 80, 24, mine, open("wind runner --look"))
	term.see("only looking")
	term.press("space", "n", "q")
	term.exit()
	for _, args := range []string{"show runner", "list", "sheet runner", "plan --ends 20"} {
		if out, err := open(args).CombinedOutput(); err != nil {
			t.Errorf("%s: %v: %s", args, err, out)
		}
	}
	if after := snapshot(t, home); fmt.Sprint(after) != fmt.Sprint(before) {
		t.Errorf("looking changed\n%v\nto\n%v", before, after)
	}

	term = startCommand(t, 80, 24, mine, open("wind runner"))
	term.see("0 of 4 passes laid")
	term.wind(0, 2, 4)
	term.press("q")
	term.exit()
	after := snapshot(t, home)
	for name := range after {
		if _, there := before[name]; name != path && (!there || after[name] != before[name]) {
			t.Errorf("winding wrote %s", name)
		}
	}
	if len(after) != len(before) || after[path] == before[path] {
		t.Errorf("%d files and folders before, %d after", len(before), len(after))
	}
}
