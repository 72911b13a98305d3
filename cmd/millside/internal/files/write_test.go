package files

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"
)

func TestWrite(t *testing.T) {
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
	if err := Write(path, false, write("one")); err != nil {
		t.Fatal(err)
	}
	content("one")
	if err := Write(path, false, write("two")); !errors.Is(err, ErrThere) {
		t.Errorf("over a file: %v", err)
	}
	content("one")
	if err := Write(path, true, write("three")); err != nil {
		t.Error(err)
	}
	content("three")
	// What fails half-way leaves what was there.
	broken := errors.New("broken")
	err := Write(path, true, func(w io.Writer) error { _, _ = io.WriteString(w, "half"); return broken })
	if !errors.Is(err, broken) {
		t.Errorf("%v", err)
	}
	content("three")
	// A file that somebody makes meanwhile isn't replaced.
	other := filepath.Join(dir, "other.txt")
	err = Write(other, false, func(io.Writer) error { return os.WriteFile(other, []byte("theirs"), 0o600) })
	if got, _ := os.ReadFile(other); !errors.Is(err, ErrThere) || string(got) != "theirs" {
		t.Errorf("%v, %q", err, got)
	}
	for _, bad := range []string{dir, filepath.Join(dir, "none", "sheet.txt")} {
		if err := Write(bad, true, write("x")); err == nil {
			t.Errorf("%s is no error", bad)
		}
	}
}
