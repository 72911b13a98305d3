//go:build unix

package journal

import (
	"errors"
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

// A pipe that nobody writes to would keep a plain opening waiting for ever.
func TestPipeDoesNotHang(t *testing.T) {
	path := filepath.Join(t.TempDir(), "pipe"+Extension)
	if err := syscall.Mkfifo(path, 0o600); err != nil {
		t.Skip(err)
	}
	for _, open := range []func(FS, string) (*Record, error){Open, OpenReadOnly} {
		if _, err := open(OS(), path); !errors.Is(err, ErrNotPlain) {
			t.Errorf("%v", err)
		}
	}
	if f, err := OS().OpenFile(path, os.O_RDONLY, 0); err == nil { // as if it took a file's place
		_ = f.Close()
	}
}

func TestFileReplacedWhileOpening(t *testing.T) {
	r := newRecord40(t, fake())
	file, err := OS().OpenFile(r.Path(), os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if err := os.Rename(r.Path(), r.Path()+"-old"); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(r.Path(), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if ok, err := file.TryLock(); ok || err == nil {
		t.Errorf("the lock is on another file: %v, %v", ok, err)
	}
}
