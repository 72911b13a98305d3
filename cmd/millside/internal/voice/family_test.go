//go:build unix

package voice

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A command that is ended ends with all that it started.
func TestFamilyEnds(t *testing.T) {
	sh, err := exec.LookPath("sh")
	if err != nil {
		t.Skip("no sh here")
	}
	pids := filepath.Join(t.TempDir(), "pids")
	ctx, cancel := context.WithCancel(t.Context())
	done := make(chan error, 1)
	go func() { done <- say(ctx, []string{sh, "-c", `sleep 60 & echo $! $$ >"$1"; wait`, "sh", pids}, "said") }()
	var numbers []string
	for deadline := time.Now().Add(20 * time.Second); len(numbers) < 2; {
		if time.Now().After(deadline) {
			t.Fatal("the command never started")
		}
		data, _ := os.ReadFile(pids)
		numbers = strings.Fields(string(data))
		<-time.After(10 * time.Millisecond)
	}
	cancel()
	if err := <-done; err == nil {
		t.Error("ended, and no error")
	}
	for _, n := range numbers {
		gone(t, n)
	}
}

// gone waits until a process has ended.
func gone(t *testing.T, number string) {
	t.Helper()
	for deadline := time.Now().Add(20 * time.Second); ; {
		stat, err := os.ReadFile("/proc/" + number + "/stat")
		if err != nil || strings.Contains(string(stat), ") Z ") {
			return // it has ended, or there is no such folder on this system
		}
		if time.Now().After(deadline) {
			t.Fatalf("process %s still lives: %s", number, stat)
		}
		<-time.After(10 * time.Millisecond)
	}
}
