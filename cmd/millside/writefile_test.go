package main

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"
)

func TestWriteFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "sheet.txt")
	write := func(text string) func(io.Writer) error {
		return func(w io.Writer) error { _, err := io.WriteString(w, text); return err }
	}
	content := func(want string) {
		t.Helper()
		got, err := os.ReadFile(path)
		if err != nil || string(got) != want {
			t.Errorf("%q, %v; want %q", got, err, want)
		}
		if entries, err := os.ReadDir(dir); err != nil || len(entries) != 1 {
			t.Errorf("left beside it: %v, %v", entries, err)
		}
	}
	if err := writeFile(path, false, write("one")); err != nil {
		t.Fatal(err)
	}
	content("one")
	if err := writeFile(path, false, write("two")); !errors.Is(err, errFileThere) {
		t.Errorf("over a file: %v", err)
	}
	content("one")
	if err := writeFile(path, true, write("three")); err != nil {
		t.Error(err)
	}
	content("three")
	// What fails half-way leaves what was there.
	broken := errors.New("broken")
	err := writeFile(path, true, func(w io.Writer) error { _, _ = io.WriteString(w, "half"); return broken })
	if !errors.Is(err, broken) {
		t.Errorf("%v", err)
	}
	content("three")
	// A file that somebody makes meanwhile isn't replaced.
	other := filepath.Join(dir, "other.txt")
	err = writeFile(other, false, func(io.Writer) error { return os.WriteFile(other, []byte("theirs"), 0o600) })
	if got, _ := os.ReadFile(other); !errors.Is(err, errFileThere) || string(got) != "theirs" {
		t.Errorf("%v, %q", err, got)
	}
	for _, bad := range []string{dir, filepath.Join(dir, "none", "sheet.txt")} {
		if err := writeFile(bad, true, write("x")); err == nil {
			t.Errorf("%s is no error", bad)
		}
	}
}
