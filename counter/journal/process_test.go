package journal

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// child is this test binary as another process; see TestMain.
func child(t *testing.T, what, path string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(self)
	cmd.Env = append(os.Environ(), "COUNTER_CHILD="+what, "COUNTER_PATH="+path)
	cmd.Stderr = os.Stderr
	return cmd
}

func TestLockInOneProcess(t *testing.T) {
	r := newRecord40(t, OS())
	if _, err := Open(OS(), r.Path()); !errors.Is(err, ErrLocked) || !strings.Contains(err.Error(), r.Path()) {
		t.Errorf("%v", err)
	}
	if look, err := OpenReadOnly(OS(), r.Path()); err != nil || look.State().Laid() != 1 {
		t.Errorf("looking at a warp that is being wound: %v", err)
	}
	if _, err := r.Append(laid(1, 2)); err != nil {
		t.Error(err)
	}
	if err := r.Close(); err != nil {
		t.Fatal(err)
	}
	again, err := Open(OS(), r.Path())
	if err != nil {
		t.Fatalf("closing didn't free the lock: %v", err)
	}
	_ = again.Close()
}

func TestLockBetweenProcesses(t *testing.T) {
	r := newRecord40(t, OS())
	say := func(cmd *exec.Cmd) (string, io.Closer) {
		in, err := cmd.StdinPipe()
		if err != nil {
			t.Fatal(err)
		}
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		line, err := bufio.NewReader(out).ReadString('\n')
		if err != nil {
			t.Fatal(err)
		}
		return line, in
	}
	second := child(t, "hold", r.Path())
	line, in := say(second)
	if !strings.Contains(line, ErrLocked.Error()) {
		t.Errorf("another process: %s", line)
	}
	_ = in.Close()
	_ = second.Wait()

	if err := r.Close(); err != nil {
		t.Fatal(err)
	}
	holder := child(t, "hold", r.Path())
	if line, _ := say(holder); !strings.Contains(line, "<nil>") {
		t.Fatalf("another process: %s", line)
	}
	if _, err := Open(OS(), r.Path()); !errors.Is(err, ErrLocked) {
		t.Errorf("%v", err)
	}
	if err := holder.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	_ = holder.Wait()
	again, err := Open(OS(), r.Path())
	if err != nil {
		t.Fatalf("the system didn't free the lock of a killed process: %v", err)
	}
	_ = again.Close()
}

// A process that winds is killed again and again at a random moment. What it had said to be counted is
// always there afterwards, and nothing that it hadn't begun to write.
//
// A kill is not a power cut: what a killed process wrote stays in the system's memory, synced or not.
// This shows that the order of writing, syncing and showing is right and that any rest of a line is
// cut off, not what a disk does when the power goes.
func TestKill(t *testing.T) {
	kills := 200
	if testing.Short() {
		kills = 20
	}
	path := filepath.Join(t.TempDir(), "warp"+Extension)
	r, err := Create(OS(), path, testPlan(t, 1000, 10, 0))
	if err != nil {
		t.Fatal(err)
	}
	events, total := 0, 0
	for i := range kills {
		if err := r.Close(); err != nil {
			t.Fatal(err)
		}
		cmd := child(t, "wind", path)
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		said := make([]byte, 1) // it has begun: so the kill falls into the winding
		if _, err := io.ReadFull(out, said); err != nil {
			t.Fatal(err)
		}
		time.AfterFunc(time.Duration(rand.IntN(20_000))*time.Microsecond, func() { _ = cmd.Process.Kill() })
		rest, _ := io.ReadAll(out)
		_ = cmd.Wait()
		said = append(said, rest...)
		if bytes.Contains(said, []byte("error")) {
			t.Fatalf("kill %d: %s", i, said)
		}
		attempted, acknowledged := bytes.Count(said, []byte{'+'}), bytes.Count(said, []byte{'='})
		if r, err = Open(OS(), path); err != nil {
			t.Fatalf("kill %d: %v", i, err)
		}
		recovered := r.State().Events - events
		if recovered < acknowledged || recovered > attempted {
			t.Fatalf("kill %d: %d counted, %d found, %d begun", i, acknowledged, recovered, attempted)
		}
		events += recovered
		total += acknowledged
	}
	_ = r.Close()
	if total < kills {
		t.Errorf("only %d events counted over %d kills: the kills fell too early to show anything", total, kills)
	}
	t.Logf("%d kills, %d events counted, %d found", kills, total, events)
}
