package journal

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"millside/counter"
	"millside/counter/disk"

	"millside/plan/measure"
)

// newRecord40 makes a record of a warp of four passes with one pass laid.
func newRecord40(t *testing.T, fsys FS) *Record {
	t.Helper()
	r, err := Create(fsys, filepath.Join(t.TempDir(), "warp"+Extension), testPlan(t, 40, 10, 0))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = r.Close() })
	if _, err := r.Append(laid(1, 1)); err != nil {
		t.Fatal(err)
	}
	return r
}

func TestCreateAppendOpen(t *testing.T) {
	r := newRecord40(t, OS())
	for _, e := range sample()[1:] {
		if _, err := r.Append(e); err != nil {
			t.Fatal(err)
		}
	}
	want := r.State()
	if err := r.Close(); err != nil {
		t.Fatal(err)
	}
	if err := r.Close(); err != nil {
		t.Errorf("closing again: %v", err)
	}
	if _, err := r.Append(laid(1, 1)); !errors.Is(err, ErrClosed) {
		t.Errorf("closed record: %v", err)
	}
	again, err := Open(OS(), r.Path())
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	if d := cmp.Diff(want, again.State(), same); d != "" || again.Torn() != "" || again.ReadOnly() {
		t.Errorf("torn %q, %s", again.Torn(), d)
	}
	if d := cmp.Diff(r.Events(), again.Events()); d != "" {
		t.Error(d)
	}
	if info, err := os.Stat(r.Path()); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("%v, %v", info.Mode(), err)
	}
}

// Closing and opening after any event makes no difference.
func TestResumeAnywhere(t *testing.T) {
	dir := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		events := drawHistory(t, p)
		path := filepath.Join(dir, "warp"+Extension)
		_ = os.Remove(path)
		r, err := Create(fake(), path, p)
		if err != nil {
			t.Fatal(err)
		}
		defer func() { _ = r.Close() }()
		for _, e := range events {
			if rapid.IntRange(0, 4).Draw(t, "stop") == 0 {
				if err := r.Close(); err != nil {
					t.Fatal(err)
				}
				if r, err = Open(fake(), path); err != nil {
					t.Fatal(err)
				}
			}
			if _, err := r.Append(e); err != nil {
				t.Fatal(err)
			}
		}
		want, err := Fold(p, events)
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(want, r.State(), same); d != "" {
			t.Fatal(d)
		}
	})
}

func TestAppendKeepsMilliseconds(t *testing.T) {
	r := newRecord40(t, fake())
	east := time.FixedZone("", 3600)
	s, err := r.Append(counter.Event{At: time.Date(2026, 11, 25, 10, 0, 0, 1_999_999, east), Kind: counter.Paused,
		Chain: 7})
	want := time.Date(2026, 11, 25, 9, 0, 0, 1_000_000, time.UTC)
	if err != nil || s.Last != want || r.Events()[1] != (counter.Event{At: want, Kind: counter.Paused}) {
		t.Errorf("%v, %v", s.Last, err)
	}
	_, err = r.Append(counter.Event{At: time.Date(12345, 1, 1, 0, 0, 0, 0, time.UTC), Kind: counter.Resumed})
	var fe *measure.FieldError
	if !errors.As(err, &fe) || fe.Field != "time" {
		t.Errorf("year 12345: %v", err)
	}
}

func TestRefusedEventWritesNothing(t *testing.T) {
	r := newRecord40(t, fake())
	before := readBack(t, r.Path())
	for _, e := range []counter.Event{laid(1, 3), {Kind: counter.Noted, Chain: 1, Text: "a\nb"},
		{Kind: counter.Finished}} {
		if s, err := r.Append(e); err == nil || s.Laid() != 1 {
			t.Errorf("%+v: %d laid, %v", e, s.Laid(), err)
		}
	}
	if !bytes.Equal(before, readBack(t, r.Path())) {
		t.Error("a refused event was written")
	}
	if _, err := r.Append(laid(1, 2)); err != nil {
		t.Errorf("a refused event broke the record: %v", err)
	}
}

func TestLookChangesNothing(t *testing.T) {
	data := fileOf(t, testPlan(t, 40, 10, 0), []counter.Event{laid(1, 1)})
	data = append(data, "3 2026-11"...)
	path := writeFile(t, data)
	r, err := OpenReadOnly(OS(), path)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := r.Append(laid(1, 2)); !errors.Is(err, ErrReadOnly) || !r.ReadOnly() {
		t.Errorf("%v", err)
	}
	if !strings.Contains(r.Torn(), "line 3") || r.State().Laid() != 1 {
		t.Errorf("torn %q", r.Torn())
	}
	if err := r.Close(); err != nil {
		t.Error(err)
	}
	if !bytes.Equal(data, readBack(t, path)) {
		t.Error("looking changed the file")
	}
}

func TestFailedRecord(t *testing.T) {
	part := func(f disk.File, p []byte) (int, error) { return f.Write(p[:len(p)/2]) }
	tests := []struct {
		name  string
		fault func(*fakeFS)
		cause error
		laid  int // after opening anew
		torn  bool
	}{
		{"short write", func(f *fakeFS) { f.write = part }, io.ErrShortWrite, 1, false},
		{"disk full", func(f *fakeFS) {
			f.write = func(w disk.File, p []byte) (int, error) {
				n, _ := part(w, p)
				return n, &fs.PathError{Op: "write", Err: syscall.ENOSPC}
			}
		}, syscall.ENOSPC, 1, false},
		{"disk full and no way back", func(f *fakeFS) {
			f.write = func(w disk.File, p []byte) (int, error) {
				n, _ := part(w, p)
				return n, syscall.ENOSPC
			}
			f.truncate = func(disk.File, int64) error { return syscall.EIO }
		}, syscall.ENOSPC, 1, true},
		// The line is in the file, and nobody can say whether it is on the disk: it is read as it stands.
		{"failed sync", func(f *fakeFS) { f.sync = func() error { return syscall.EIO } }, syscall.EIO, 2, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			fsys := fake()
			r := newRecord40(t, fsys)
			tt.fault(fsys)
			s, err := r.Append(laid(1, 2))
			if !errors.Is(err, ErrFailed) || !errors.Is(err, tt.cause) || s.Laid() != 1 || r.State().Laid() != 1 ||
				len(r.Events()) != 1 {
				t.Errorf("%d laid, %v", s.Laid(), err)
			}
			*fsys = *fake() // the fault is gone, but the record can't know
			if _, err := r.Append(laid(1, 2)); !errors.Is(err, ErrFailed) || !errors.Is(err, tt.cause) {
				t.Errorf("a broken record takes events: %v", err)
			}
			if err := r.Close(); err != nil {
				t.Fatal(err)
			}
			again, err := Open(fsys, r.Path())
			if err != nil {
				t.Fatal(err)
			}
			defer again.Close()
			if again.State().Laid() != tt.laid || (again.Torn() != "") != tt.torn {
				t.Errorf("opened anew: %d laid, torn %q", again.State().Laid(), again.Torn())
			}
			if _, err := again.Append(laid(1, tt.laid+1)); err != nil {
				t.Error(err)
			}
		})
	}
}

// One append is one write and then one sync, and the event counts only after both.
func TestAppendWritesOnceThenSyncs(t *testing.T) {
	fsys := fake()
	r := newRecord40(t, fsys)
	var calls []string
	fsys.write = func(f disk.File, p []byte) (int, error) { calls = append(calls, "write"); return f.Write(p) }
	fsys.sync = func() error { calls = append(calls, "sync"); return nil }
	if _, err := r.Append(laid(1, 2)); err != nil || strings.Join(calls, " ") != "write sync" {
		t.Errorf("%v, %v", calls, err)
	}
}

func TestCreateThatFailsLeavesNoFile(t *testing.T) {
	eio := func() error { return syscall.EIO }
	tests := []struct {
		name  string
		fault func(*fakeFS)
	}{
		{"write", func(f *fakeFS) { f.write = func(disk.File, []byte) (int, error) { return 0, syscall.EIO } }},
		{"sync", func(f *fakeFS) { f.sync = eio }},
		{"sync of the folder", func(f *fakeFS) { f.syncDir = func(string) error { return syscall.EIO } }},
		{"read-only folder", func(f *fakeFS) { f.open = func(string, int) error { return syscall.EIO } }},
	}
	for _, tt := range tests {
		fsys := fake()
		tt.fault(fsys)
		path := filepath.Join(t.TempDir(), "warp"+Extension)
		if _, err := Create(fsys, path, testPlan(t, 40, 10, 0)); !errors.Is(err, syscall.EIO) {
			t.Errorf("%s: %v", tt.name, err)
		}
		if _, err := os.Stat(path); !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("%s: %v", tt.name, err)
		}
	}
}

func TestCreateNeverOverwrites(t *testing.T) {
	path := writeFile(t, []byte("mine"))
	if _, err := Create(OS(), path, testPlan(t, 40, 10, 0)); !errors.Is(err, fs.ErrExist) {
		t.Errorf("%v", err)
	}
	if string(readBack(t, path)) != "mine" {
		t.Error("a file was overwritten")
	}
	if _, err := Create(OS(), path+"2", nil); err == nil {
		t.Error("a record without a plan was made")
	}
}

func TestOnlyPlainFiles(t *testing.T) {
	dir := t.TempDir()
	for _, open := range []func(FS, string) (*Record, error){Open, OpenReadOnly} {
		for _, path := range []string{dir, os.DevNull} {
			if _, err := open(OS(), path); !errors.Is(err, ErrNotPlain) {
				t.Errorf("%s: %v", path, err)
			}
		}
		if _, err := open(OS(), filepath.Join(dir, "none")); !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("missing file: %v", err)
		}
	}
}

func TestReadOnlyFile(t *testing.T) {
	fsys := fake()
	path := newRecord40(t, fake()).Path()
	// A real read-only folder doesn't stop root, so the answer of the system is put in.
	fsys.open = func(path string, flag int) error {
		if flag&os.O_RDWR != 0 {
			return &fs.PathError{Op: "open", Path: path, Err: syscall.EACCES}
		}
		return nil
	}
	if _, err := Open(fsys, path); !errors.Is(err, fs.ErrPermission) {
		t.Errorf("%v", err)
	}
	if r, err := OpenReadOnly(fsys, path); err != nil || r.State().Laid() != 1 {
		t.Errorf("%v", err)
	}
}

func TestTooLongARecord(t *testing.T) {
	path := writeFile(t, nil)
	if err := os.Truncate(path, maxRecord+1); err != nil { // no bytes on the disk: a hole
		t.Fatal(err)
	}
	if _, err := OpenReadOnly(OS(), path); !errors.Is(err, ErrFull) {
		t.Errorf("%v", err)
	}
	r := newRecord40(t, fake())
	r.size = maxRecord - 10
	if _, err := r.Append(laid(1, 2)); !errors.Is(err, ErrFull) || errors.Is(err, ErrFailed) {
		t.Errorf("%v", err)
	}
}

func TestMendThatFails(t *testing.T) {
	data := fileOf(t, testPlan(t, 40, 10, 0), []counter.Event{laid(1, 1)})
	path := writeFile(t, data[:len(data)-5])
	fsys := fake()
	fsys.truncate = func(disk.File, int64) error { return syscall.EIO }
	if _, err := Open(fsys, path); !errors.Is(err, syscall.EIO) {
		t.Errorf("%v", err)
	}
	r, err := Open(fake(), path) // the lock is free again
	if err != nil {
		t.Fatal(err)
	}
	if err := r.Close(); err != nil {
		t.Error(err)
	}
}

// A record that is finished can be read and takes nothing more.
func TestFinishedRecordIsReadOnly(t *testing.T) {
	p := testPlan(t, 20, 10, 0)
	path := writeFile(t, fileOf(t, p, windAll(p)))
	r, err := Open(OS(), path)
	if err != nil {
		t.Fatal(err)
	}
	before := readBack(t, path)
	for _, e := range append(trouble(), sample()...) {
		if _, err := r.Append(e); err == nil || !strings.Contains(err.Error(), "finished") {
			t.Errorf("%s: %v", e.Kind, err)
		}
	}
	if err := r.Close(); err != nil || !slices.Equal(before, readBack(t, path)) {
		t.Errorf("the file was changed, %v", err)
	}
}
