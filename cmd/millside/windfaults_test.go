//go:build linux

package main

import (
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"millside/counter/journal"
)

// faulty runs the program in a terminal under a tracer that makes a system call fail or wait, as a disk or a network
// folder does. Where there is no tracer, or it may not trace, the test is skipped; .ci/run installs one.
func faulty(t *testing.T, dir, call, fault string, args ...string) *terminal {
	t.Helper()
	if err := exec.Command("strace", "-qq", "-o", "/dev/null", "true").Run(); err != nil {
		t.Skip("no strace here, or it may not trace:", err)
	}
	traced := append([]string{"-f", "-qq", "-o", filepath.Join(t.TempDir(), "log"), "-e", "trace=" + call,
		"-e", "inject=" + call + ":" + fault, binary(t)}, args...)
	return startCommand(t, 80, 24, dir, exec.Command("strace", traced...))
}

// A folder that knows no locks, as some network folders and sticks: the screen asks before anything is opened, a pass
// key answers nothing, and who goes on alone winds.
func TestScreenWithoutLocks(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path := saved(t, dir, nil)
	laid := func() int {
		rec, err := journal.OpenReadOnly(journal.OS(), path)
		if err != nil {
			t.Fatal(err)
		}
		return rec.State().Laid()
	}
	term := faulty(t, dir, "flock", "error=ENOLCK", "wind", path)
	term.see("Is this warp wound nowhere else?")
	term.press("space", "enter")
	term.see("nothing is counted here")
	term.press("esc")
	term.see("MILLSIDE") // home, with the record in its list
	term.press("enter")
	term.see("Is this warp wound nowhere else?")
	term.press("a")
	term.see("0 of 40 passes laid")
	term.wind(0, 2, 40)
	term.press("q")
	if code := term.exit(); code != 0 || laid() != 2 {
		t.Errorf("status %d, %d passes", code, laid())
	}
}

// The same without the full screen: a word goes on, only Enter leaves and counts nothing.
func TestPlainWithoutLocks(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path := saved(t, dir, nil)
	term := faulty(t, dir, "flock", "error=ENOLCK", "wind", path, "--plain")
	term.see("Type alone to go on")
	term.press("enter")
	term.see("--alone")
	if code := term.exit(); code != 1 {
		t.Errorf("status %d", code)
	}
	term = faulty(t, dir, "flock", "error=ENOLCK", "wind", path, "--plain")
	term.see("Type alone to go on")
	term.press("alone", "enter")
	term.see("Pass 1")
}

// A disk that takes its time: the screen says that it saves and doesn't count before, and afterwards that the disk is
// slow.
func TestScreenSaysSaving(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path := saved(t, dir, nil)
	term := faulty(t, dir, "fsync", "delay_enter=2000000", "wind", path)
	term.see("0 of 40 passes laid")
	term.press("space")
	term.until("saving, and no pass counted yet", func() bool {
		screen := term.screen()
		return strings.Contains(screen, "saving pass 1") && strings.Contains(screen, "0 of 40 passes laid")
	})
	term.see("1 of 40 passes laid")
	term.reads("the disk is slow: saving took 2")
}
