//go:build unix

package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"
	"github.com/hinshun/vt10x"
)

// The tests in this file and its neighbours drive the real binary in a pseudo-terminal, as a weaver
// would: keys in, the screen out.

var (
	buildOnce sync.Once
	builtPath string
	buildErr  error
)

// binary builds the program once for all tests.
//
// Under the race detector it is built for it too. A program that has a race then says so on its screen and ends with
// status 66, which no test takes for an end in order.
func binary(t *testing.T) string {
	t.Helper()
	buildOnce.Do(func() {
		dir, err := os.MkdirTemp("", "millside")
		if err != nil {
			buildErr = err
			return
		}
		builtPath = filepath.Join(dir, "millside")
		build := []string{"build", "-o", builtPath}
		if raced {
			build = append(build, "-race")
		}
		out, err := exec.Command("go", append(build, ".")...).CombinedOutput()
		if err != nil {
			buildErr = fmt.Errorf("%w: %s", err, out)
		}
	})
	if buildErr != nil {
		t.Fatal(buildErr)
	}
	return builtPath
}

// terminal is the real program in a pseudo-terminal.
type terminal struct {
	t    *testing.T
	cmd  *exec.Cmd
	pty  *os.File // for its size only
	line *os.File // the same terminal, for keys and what is written
	vt   vt10x.Terminal
	done chan error // the program's end
	mu   sync.Mutex
	raw  strings.Builder // everything that it wrote
}

// patience is the longest that a test waits for something to show up; nothing waits when it is there.
const patience = 20 * time.Second

// start runs the program with its records in a folder of the test's own.
func start(t *testing.T, w, h int, records string, args ...string) *terminal {
	t.Helper()
	return startCommand(t, w, h, records, exec.Command(binary(t), args...))
}

// startCommand runs any command in a terminal. Its own environment stands over that of all tests.
func startCommand(t *testing.T, w, h int, records string, cmd *exec.Cmd) *terminal {
	t.Helper()
	term := &terminal{t: t, cmd: cmd, vt: vt10x.New(vt10x.WithSize(w, h)), done: make(chan error, 1)}
	own := term.cmd.Env
	// A weaver's terminal has no CI in its environment; with it nothing would be coloured.
	base := slices.DeleteFunc(os.Environ(), func(v string) bool { return strings.HasPrefix(v, "CI=") })
	term.cmd.Env = append(base, "TERM=xterm-256color", "COLORTERM=", "NO_COLOR=",
		"LC_MEASUREMENT=en_US.UTF-8", "LC_NUMERIC=en_US.UTF-8", "MILLSIDE_RECORDS="+records, "GORACE=atexit_sleep_ms=0",
		"XDG_CONFIG_HOME="+filepath.Join(records, "config"))
	term.cmd.Env = append(term.cmd.Env, own...)
	f, err := pty.StartWithSize(term.cmd, &pty.Winsize{Cols: uint16(w), Rows: uint16(h)})
	if err != nil {
		t.Fatal(err)
	}
	// Asking for its number makes a file block, and closing one that blocks waits for its reader.
	// No other test's program may hold it open: the terminal would not be closed when this test closes it.
	syscall.ForkLock.RLock()
	fd, err := syscall.Dup(int(f.Fd()))
	if err == nil {
		syscall.CloseOnExec(fd)
		err = syscall.SetNonblock(fd, true)
	}
	syscall.ForkLock.RUnlock()
	if err != nil {
		t.Fatal(err)
	}
	term.pty, term.line = f, os.NewFile(uintptr(fd), f.Name())
	read := make(chan struct{})
	go func() {
		defer close(read)
		in := bufio.NewReader(io.TeeReader(term.line, rawWriter{term}))
		for term.vt.Parse(in) == nil {
			continue // until the program's end closes the terminal
		}
	}()
	go func() {
		err := term.cmd.Wait()
		<-read
		term.done <- err
	}()
	t.Cleanup(func() { _ = term.cmd.Process.Kill(); _ = term.line.Close(); _ = f.Close() })
	return term
}

type rawWriter struct{ t *terminal }

func (w rawWriter) Write(p []byte) (int, error) {
	w.t.mu.Lock()
	defer w.t.mu.Unlock()
	return w.t.raw.Write(p)
}

func (term *terminal) written() string {
	term.mu.Lock()
	defer term.mu.Unlock()
	return term.raw.String()
}

// startShell runs a shell with job control, and types a command line into it; %s in the line is the
// program. Without such a shell the test is skipped.
func startShell(t *testing.T, w, h int, records, line string) *terminal {
	t.Helper()
	shell, err := exec.LookPath("bash")
	if err != nil {
		t.Skip("no shell with job control here")
	}
	term := startCommand(t, w, h, records, exec.Command(shell, "--noprofile", "--norc", "-i"))
	term.press(fmt.Sprintf(line, binary(t)), "enter")
	return term
}

// press writes keys as a terminal sends them.
func (term *terminal) press(keys ...string) {
	term.t.Helper()
	sent := map[string]string{
		"space": " ", "enter": "\r", "tab": "\t", "esc": "\x1b", "ctrl+s": "\x13", "ctrl+u": "\x15", "ctrl+c": "\x03",
		"ctrl+z": "\x1a",
		"down":   "\x1b[B", "up": "\x1b[A", "right": "\x1b[C", "pgdown": "\x1b[6~", "pgup": "\x1b[5~",
		"backspace": "\x7f",
	}
	for _, k := range keys {
		s, ok := sent[k]
		if !ok {
			s = k
		}
		if _, err := io.WriteString(term.line, s); err != nil {
			term.t.Fatalf("pressing %q: %v", k, err)
		}
	}
}

func (term *terminal) screen() string { return term.vt.String() }

// see waits until the screen shows a text.
func (term *terminal) see(want string) {
	term.t.Helper()
	term.until(fmt.Sprintf("%q on the screen", want), func() bool { return strings.Contains(term.screen(), want) })
}

// reads waits until the screen shows a text that may go over several lines.
func (term *terminal) reads(want string) {
	term.t.Helper()
	term.until(fmt.Sprintf("%q to be read", want), func() bool {
		return strings.Contains(strings.Join(strings.Fields(term.screen()), " "), want)
	})
}

// goes presses a key until something is seen. A press that comes too soon after the last one is refused with a word, as
// it has to be: then it is pressed again, as a weaver does.
func (term *terminal) goes(key, want string) {
	term.t.Helper()
	term.goesUntil(key, fmt.Sprintf("%q on the screen", want),
		func() bool { return strings.Contains(term.screen(), want) })
}

func (term *terminal) goesUntil(key, what string, ok func() bool) {
	term.t.Helper()
	term.press(key)
	pressed := time.Now()
	term.until(what, func() bool {
		if ok() {
			return true
		}
		if time.Since(pressed) > 3*time.Second && strings.Contains(term.screen(), "ignored") {
			term.press(key)
			pressed = time.Now()
		}
		return false
	})
}

// until waits for a condition, looking often.
func (term *terminal) until(what string, ok func() bool) {
	term.t.Helper()
	for end := time.Now().Add(patience); !ok(); time.Sleep(5 * time.Millisecond) {
		if time.Now().After(end) {
			term.t.Fatalf("waited in vain for %s; the screen:\n%s\nlast written: %q", what, term.screen(),
				tail(term.written(), 400))
		}
	}
}

// signal sends a signal to the program.
func (term *terminal) signal(s syscall.Signal) {
	term.t.Helper()
	if err := term.cmd.Process.Signal(s); err != nil {
		term.t.Fatal(err)
	}
}

// hangUp closes the terminal's window. It can't be done after a resize.
func (term *terminal) hangUp() {
	term.t.Helper()
	if err := errors.Join(term.line.Close(), term.pty.Close()); err != nil {
		term.t.Fatal(err)
	}
}

// exit waits for the end of the program and gives its exit status; ended by a signal counts 128 + n.
func (term *terminal) exit() int {
	term.t.Helper()
	select {
	case err := <-term.done:
		var ee *exec.ExitError
		if err == nil {
			return 0
		}
		if !errors.As(err, &ee) {
			term.t.Fatal(err)
		}
		if ws, ok := ee.Sys().(syscall.WaitStatus); ok && ws.Signaled() {
			return 128 + int(ws.Signal())
		}
		return ee.ExitCode()
	case <-time.After(patience):
		term.t.Fatalf("the program doesn't end; the screen:\n%s", term.screen())
		return 0
	}
}

// resize changes the size of the terminal while the program runs.
func (term *terminal) resize(w, h int) {
	term.t.Helper()
	term.vt.Resize(w, h)
	if err := pty.Setsize(term.pty, &pty.Winsize{Cols: uint16(w), Rows: uint16(h)}); err != nil {
		term.t.Fatal(err)
	}
}

// tail is the end of a text, at most n bytes of it.
func tail(s string, n int) string { return s[max(len(s)-n, 0):] }
