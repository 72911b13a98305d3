//go:build unix

package main

import (
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"
)

// hears waits until the program has written a text, whatever the terminal made of it.
func (term *terminal) hears(want string) {
	term.t.Helper()
	term.until(fmt.Sprintf("%q to be said", want), func() bool { return strings.Contains(term.written(), want) })
}

// windPlain lays two passes and answers the question about the lease.
func (term *terminal) windPlain() {
	term.t.Helper()
	term.hears("Pass 1 of 40, outward")
	term.press("enter")
	term.hears("Pass 1 is laid, 10 ends stand.")
	term.press("enter")
	term.hears("do the neighbours alternate there")
	term.press("y")
	term.hears("The lease is as planned.")
	term.hears("Pass 3 of 40, outward")
}

// Signals end the plain mode in good order, with the count on the disk and the winding paused; nothing that
// it writes moves a cursor or changes a colour, in a terminal of twenty columns as in any other.
func TestPlainSignals(t *testing.T) {
	for _, s := range []syscall.Signal{syscall.SIGTERM, syscall.SIGHUP, syscall.SIGQUIT, syscall.SIGINT} {
		t.Run(s.String(), func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			term := start(t, 20, 5, dir, "wind", saved(t, dir, nil), "--plain")
			term.windPlain()
			term.signal(s)
			if code := term.exit(); code != 128+int(s) {
				t.Errorf("exit %d, want %d", code, 128+int(s))
			}
			if st := onlyRecord(t, dir).State(); st.Laid() != 2 || !st.Paused {
				t.Errorf("%d passes, paused %v", st.Laid(), st.Paused)
			}
			if strings.Contains(term.written(), "\x1b") {
				t.Errorf("an escape sequence: %q", term.written())
			}
		})
	}
}

// Ctrl-C leaves with status 130, the word leave and the end of the input (Ctrl-D) with 0.
func TestPlainLeaving(t *testing.T) {
	for keys, code := range map[string]int{"ctrl+c": 130, "\x04": 0, "q": 0, "leave\r": 0} {
		dir := t.TempDir()
		term := start(t, 80, 24, dir, "wind", saved(t, dir, nil), "--plain")
		term.windPlain()
		term.press(keys)
		if got := term.exit(); got != code {
			t.Errorf("%q: exit %d, want %d", keys, got, code)
		}
		if st := onlyRecord(t, dir).State(); st.Laid() != 2 || !st.Paused {
			t.Errorf("%q: %d passes, paused %v", keys, st.Laid(), st.Paused)
		}
	}
}

// hesitates waits for as long as a hand does between two presses that mean different things.
func hesitates() { <-time.After(time.Second) }

// comesBack takes the winding up after two passes.
func comesBack(t *testing.T, dir, path string) {
	t.Helper()
	again := start(t, 80, 24, dir, "wind", path, "--plain")
	again.hears("2 of 40 passes laid, 20 ends stand.")
	again.hears("1 group over peg 1 of the counting cross and 1 over peg 2.")
	again.press("enter")
	again.hears("Pass 2 is laid, 20 ends stand.")
}

// Killed, the winding is taken up where it was.
func TestPlainKilled(t *testing.T) {
	dir := t.TempDir()
	path := saved(t, dir, nil)
	term := start(t, 80, 24, dir, "wind", path, "--plain")
	term.windPlain()
	term.signal(syscall.SIGKILL)
	if code := term.exit(); code != 128+int(syscall.SIGKILL) {
		t.Errorf("exit %d", code)
	}
	comesBack(t, dir, path)
}

// Left behind by a terminal that was closed, the winding is paused. The terminal is read here and not beside
// the test, since closing waits for a reader.
func TestPlainTerminalClosed(t *testing.T) {
	dir := t.TempDir()
	path := saved(t, dir, nil)
	cmd := exec.Command(binary(t), "wind", path, "--plain")
	tty, err := pty.Start(cmd)
	if err != nil {
		t.Fatal(err)
	}
	defer time.AfterFunc(patience, func() { _ = cmd.Process.Kill() }).Stop()
	var heard strings.Builder
	for buf, asked := make([]byte, 4096), 0; !strings.Contains(heard.String(), "Pass 2 is laid, 20 ends stand."); {
		if waits := strings.Count(heard.String(), "Next: "); waits > asked {
			asked = waits
			if _, err := io.WriteString(tty, "\n"); err != nil {
				t.Fatal(err)
			}
		}
		n, err := tty.Read(buf)
		if err != nil {
			t.Fatalf("%v; heard %s", err, heard.String())
		}
		heard.Write(buf[:n])
	}
	if err := tty.Close(); err != nil {
		t.Fatal(err)
	}
	if err := cmd.Wait(); err == nil {
		t.Error("exit 0")
	}
	if st := onlyRecord(t, dir).State(); st.Laid() != 2 || !st.Paused {
		t.Errorf("%d passes, paused %v", st.Laid(), st.Paused)
	}
	comesBack(t, dir, path)
}

// Put aside with Ctrl-Z and taken up again, the mill is looked at first.
func TestPlainPutAside(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path := saved(t, dir, nil)
	term := startShell(t, 80, 24, dir, "%s wind --plain "+path)
	term.windPlain()
	term.press("ctrl+z")
	term.hears("Stopped  ")
	term.press("fg", "enter")
	term.hears("Stopped at ")
	term.hears("1 group over peg 1 of the counting cross and 1 over peg 2.")
	hesitates()
	term.press("enter")
	term.hears("Pass 2 is laid, 20 ends stand.\r\nPass 3 of 40, outward")
	hesitates()
	term.press("pgdown")
	term.hears("Pass 3 is laid, 30 ends stand.")
}

// A command of --say that hangs holds neither the winding up nor the end of it, and ends with it.
func TestPlainSayHangs(t *testing.T) {
	t.Parallel()
	if _, err := exec.LookPath("sh"); err != nil {
		t.Skip("no sh here")
	}
	dir := t.TempDir()
	path := saved(t, dir, nil)
	began := dir + "/began"
	term := start(t, 80, 24, dir, "wind", path, "--plain", "--say",
		fmt.Sprintf("sh -c 'echo $$ >> %s; exec sleep 60'", began))
	term.windPlain()
	term.press("q")
	if code := term.exit(); code != 0 {
		t.Errorf("exit %d", code)
	}
	data, err := os.ReadFile(began)
	if err != nil || len(data) == 0 {
		t.Errorf("started %q, %v", data, err)
	}
	for _, number := range strings.Fields(string(data)) {
		var pid int
		if _, err := fmt.Sscan(number, &pid); err != nil {
			t.Fatal(err)
		}
		if p, err := os.FindProcess(pid); err == nil && p.Signal(syscall.Signal(0)) == nil {
			t.Errorf("the command %d lives on after the program", pid)
		}
	}
}

// Once nobody reads the answers any more, as behind "head", the winding is paused and ends with an error.
func TestPlainNobodyReads(t *testing.T) {
	dir := t.TempDir()
	cmd := exec.Command(binary(t), "wind", saved(t, dir, nil), "--plain")
	typed, err := cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	answers, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	defer time.AfterFunc(patience, func() { _ = cmd.Process.Kill() }).Stop()
	if _, err := answers.Read(make([]byte, 1)); err != nil {
		t.Fatal(err)
	}
	if err := answers.Close(); err != nil {
		t.Fatal(err)
	}
	if _, err := io.WriteString(typed, "\n"); err != nil {
		t.Fatal(err)
	}
	if err := cmd.Wait(); err == nil || cmd.ProcessState.ExitCode() != 1 {
		t.Errorf("%v", err)
	}
	if st := onlyRecord(t, dir).State(); st.Laid() != 1 || !st.Paused {
		t.Errorf("%d passes, paused %v", st.Laid(), st.Paused)
	}
}
