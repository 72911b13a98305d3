//go:build unix

package main

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"millside/counter/journal"
)

// plainProgram is the real program in plain mode, with a pipe for what is typed.
type plainProgram struct {
	t   *testing.T
	cmd *exec.Cmd
	in  io.WriteCloser
	out *bytes.Buffer
	got chan string
}

func startPlain(t *testing.T, args ...string) *plainProgram {
	t.Helper()
	p := &plainProgram{t: t, cmd: exec.Command(binary(t), args...), out: &bytes.Buffer{}, got: make(chan string, 1000)}
	p.cmd.Env = append(os.Environ(), "XDG_CONFIG_HOME="+t.TempDir())
	var err error
	if p.in, err = p.cmd.StdinPipe(); err != nil {
		t.Fatal(err)
	}
	p.cmd.Stdout, p.cmd.Stderr = lineWriter{p.got}, lineWriter{p.got}
	if err := p.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = p.cmd.Process.Kill() })
	return p
}

type lineWriter struct{ to chan string }

func (w lineWriter) Write(b []byte) (int, error) { w.to <- string(b); return len(b), nil }

// hears waits for a text in what the program says.
func (p *plainProgram) hears(want string) {
	p.t.Helper()
	for end := time.After(patience); !strings.Contains(p.out.String(), want); {
		select {
		case s := <-p.got:
			p.out.WriteString(s)
		case <-end:
			p.t.Fatalf("waited in vain for %q in %q", want, p.out)
		}
	}
	p.out.Reset()
}

func (p *plainProgram) types(lines string) {
	p.t.Helper()
	if _, err := io.WriteString(p.in, lines); err != nil {
		p.t.Fatal(err)
	}
}

// A record that is moved away while it is wound is not counted on to the end: the program stops with status 1, and all
// that was counted is in a record beside.
func TestPlainRecordMovedAway(t *testing.T) {
	dir := t.TempDir()
	path := saved(t, dir, nil)
	p := startPlain(t, "--records", dir, "wind", path, "--plain")
	p.hears("Pass 1 of 40")
	p.types("\n")
	p.hears("Pass 1 is laid")
	if err := os.Rename(path, filepath.Join(dir, "moved")); err != nil {
		t.Fatal(err)
	}
	p.types("\n")
	p.hears("what was counted is saved in")
	if err := p.cmd.Wait(); p.cmd.ProcessState.ExitCode() != 1 {
		t.Errorf("status %d, %v", p.cmd.ProcessState.ExitCode(), err)
	}
	rec, err := journal.OpenReadOnly(journal.OS(), strings.TrimSuffix(path, journal.Extension)+"-saved"+
		journal.Extension)
	if err != nil || rec.State().Laid() != 1 {
		t.Errorf("%v", err)
	}
}

// Nobody reads any more: the winding is paused before the program ends.
func TestPlainIntoAClosedPipe(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path := saved(t, dir, nil)
	const pipe = `(printf '\n'; sleep 1; printf '\n') | "$0" --records "$1" wind "$2" --plain | head -n 3 >/dev/null`
	cmd := exec.Command("sh", "-c", pipe, binary(t), dir, path)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Logf("%v: %s", err, out)
	}
	if st := onlyRecord(t, dir).State(); !st.Paused || st.Laid() == 0 {
		t.Errorf("paused %v, %d laid", st.Paused, st.Laid())
	}
}
