//go:build linux

package main

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
)

// childOf is the number of the program that a shell runs.
func (term *terminal) childOf() int {
	term.t.Helper()
	pid := 0
	term.until("the shell's program", func() bool {
		stats, _ := filepath.Glob("/proc/[0-9]*/stat")
		for _, name := range stats {
			data, err := os.ReadFile(name)
			after := strings.Fields(string(data[strings.LastIndexByte(string(data), ')')+1:]))
			if err != nil || len(after) < 2 || after[1] != strconv.Itoa(term.cmd.Process.Pid) {
				continue
			}
			pid, _ = strconv.Atoi(filepath.Base(filepath.Dir(name)))
			return true
		}
		return false
	})
	return pid
}

// Put aside by Ctrl-Z, by a signal from outside, or by one that no program hears, and taken up again with fg, the
// screen is drawn whole, the keys and the mouse work, and the mill is looked at first.
func TestPutAsideAndTakenUp(t *testing.T) {
	t.Parallel()
	const mouseOn = "\x1b[?1002h"
	ways := []struct {
		name string
		stop func(*terminal)
	}{
		{"Ctrl-Z", func(term *terminal) { term.press("ctrl+z") }},
		{"SIGTSTP", func(term *terminal) { _ = syscall.Kill(term.childOf(), syscall.SIGTSTP) }},
		{"SIGSTOP", func(term *terminal) { _ = syscall.Kill(term.childOf(), syscall.SIGSTOP) }},
	}
	for _, way := range ways {
		t.Run(way.name, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			term := startShell(t, 80, 24, dir, "%s wind "+saved(t, dir, nil))
			term.see("0 of 40 passes laid")
			term.wind(0, 3, 40)
			for range 2 {
				way.stop(term)
				term.see("Stopped")
				before := len(term.written())
				term.press("clear; echo gone; fg", "enter")
				term.see("LOOK AT THE MILL")
				term.until("the mouse", func() bool { return strings.Contains(term.written()[before:], mouseOn) })
				term.goes("\x1b[<0;10;10M", "3 of 40 passes laid") // a click
			}
			term.wind(3, 4, 40)
			if st := onlyRecord(t, dir).State(); st.Laid() != 4 {
				t.Errorf("%d passes, want 4", st.Laid())
			}
			term.press("q")
			term.until("the end", func() bool {
				return strings.HasSuffix(strings.TrimSpace(term.written()), "#") ||
					strings.HasSuffix(strings.TrimSpace(term.written()), "$")
			})
			if out := term.written(); strings.LastIndex(out, "\x1b[?1002l") < strings.LastIndex(out, mouseOn) {
				t.Error("the mouse was not let go")
			}
		})
	}
}
