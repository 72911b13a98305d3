package journal

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"

	"millside/counter"
	"millside/counter/disk"
)

// What opening shows is on the disk: the last line is written once more and synced first.
func TestOpenSyncsBeforeItShows(t *testing.T) {
	path := newClosed40(t)
	fsys := fake()
	var calls []string
	fsys.writeAt = func(f disk.File, p []byte, off int64) (int, error) {
		calls = append(calls, "write "+string(p[:6]))
		return f.WriteAt(p, off)
	}
	fsys.sync = func() error { calls = append(calls, "sync"); return nil }
	fsys.syncDir = func(string) error { calls = append(calls, "folder"); return nil }
	r, err := Open(fsys, path)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	if got := strings.Join(calls, ", "); got != "write 2 2026, sync, folder" {
		t.Errorf("before it shows: %s", got)
	}
	if string(readBack(t, path)) != string(fileOf(t, testPlan(t, 40, 10, 0), []counter.Event{laid(1, 1)})) {
		t.Error("the file was changed")
	}
}

// After a sync that failed the record is shown again only once its bytes were written again and synced.
func TestReopenAfterFailedSync(t *testing.T) {
	fsys := fake()
	r := newRecord40(t, fsys)
	fsys.sync = func() error { return syscall.EIO }
	if _, err := r.Append(laid(1, 2)); !errors.Is(err, ErrFailed) {
		t.Fatal(err)
	}
	for range 3 { // r, r, r
		if _, err := r.Reopen(); !errors.Is(err, ErrFailed) || !errors.Is(err, syscall.EIO) {
			t.Fatalf("shown while syncs fail: %v", err)
		}
	}
	written := ""
	fsys.sync = nil
	fsys.writeAt = func(f disk.File, p []byte, off int64) (int, error) {
		written += string(p)
		return f.WriteAt(p, off)
	}
	again, err := r.Reopen()
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	if again.State().Laid() != 2 || !strings.HasPrefix(written, "3 ") || !strings.Contains(written, "pass=2") {
		t.Errorf("%d laid, written again: %q", again.State().Laid(), written)
	}
	if _, err := again.Append(laid(1, 3)); err != nil {
		t.Error(err)
	}
}

// A record that was replaced while it is wound takes nothing more, and what was counted can be saved beside.
func TestReplacedWhileWinding(t *testing.T) {
	older := fileOf(t, testPlan(t, 40, 10, 0), nil)
	write := func(path string, data []byte) error { return os.WriteFile(path, data, 0o600) }
	tests := []struct {
		name string
		hurt func(path string) error
		says string
	}{
		{"removed", os.Remove, "removed or moved"},
		{"moved", func(path string) error { return os.Rename(path, path+"-moved") }, "removed or moved"},
		{"an older copy moved over it", func(path string) error {
			return errors.Join(write(path+".tmp", older), os.Rename(path+".tmp", path))
		}, "another file has taken its place"},
		{"the same copy moved over it", func(path string) error {
			return errors.Join(write(path+".tmp", readBack(t, path)), os.Rename(path+".tmp", path))
		}, "another file has taken its place"},
		{"an older copy copied over it", func(path string) error { return write(path, older) }, "shorter"},
		{"shortened", func(path string) error { return os.Truncate(path, int64(len(older))+3) }, "shorter"},
		{"added to", func(path string) error { return write(path, append(readBack(t, path), "hello\n"...)) },
			"written to"},
		{"written over", func(path string) error {
			return write(path, append(readBack(t, path)[:len(readBack(t, path))-4], "abc\n"...))
		}, "written over"},
		{"its folder removed", func(path string) error {
			return os.Rename(filepath.Dir(path), filepath.Dir(path)+
				"-moved")
		}, "removed or moved"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := newRecord40(t, fake())
			if err := tt.hurt(r.Path()); err != nil {
				t.Fatal(err)
			}
			left, _ := os.ReadFile(r.Path())
			s, err := r.Append(laid(1, 2))
			if !errors.Is(err, ErrReplaced) || !errors.Is(err, ErrFailed) || !strings.Contains(err.Error(), tt.says) ||
				s.Laid() != 1 {
				t.Fatalf("%d laid, %v", s.Laid(), err)
			}
			if now, _ := os.ReadFile(r.Path()); !bytes.Equal(left, now) {
				t.Error("what stands in its place was written to")
			}
			if _, err := r.Append(laid(1, 2)); !errors.Is(err, ErrReplaced) {
				t.Errorf("it goes on counting: %v", err)
			}
			if strings.Contains(tt.name, "folder") {
				return // there is no place beside it
			}
			saved, err := r.SaveBeside()
			if err != nil {
				t.Fatal(err)
			}
			if s, err := saved.Append(laid(1, 2)); err != nil || s.Laid() != 2 {
				t.Errorf("the record beside: %d laid, %v", s.Laid(), err)
			}
			if err := saved.Close(); err != nil {
				t.Fatal(err)
			}
			if again, err := OpenReadOnly(OS(), saved.Path()); err != nil || again.State().Laid() != 2 ||
				!strings.HasSuffix(saved.Path(), "warp-saved"+Extension) {
				t.Errorf("%s: %v", saved.Path(), err)
			}
		})
	}
}

// Reopening doesn't take a record that holds less than was counted.
func TestReopenFindsCountedPassesGone(t *testing.T) {
	p := testPlan(t, 40, 10, 0)
	for _, data := range [][]byte{fileOf(t, p, nil),
		fileOf(t, p, []counter.Event{laid(1, 1), {At: at(5), Kind: counter.Paused}}),
		fileOf(t, testPlan(t, 60, 10, 0), []counter.Event{laid(1, 1), laid(1, 2)})} {
		r := newRecord40(t, fake())
		if _, err := r.Append(laid(1, 2)); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(r.Path(), data, 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := r.Append(laid(1, 3)); !errors.Is(err, ErrReplaced) {
			t.Errorf("%v", err)
		}
		if _, err := r.Reopen(); !errors.Is(err, ErrReplaced) || !errors.Is(err, ErrFailed) {
			t.Errorf("%v", err)
		}
		if saved, err := r.SaveBeside(); err != nil || saved.State().Laid() != 2 {
			t.Errorf("%v", err)
		} else {
			_ = saved.Close()
		}
	}
}

// Two writers that the lock didn't keep apart are found at the next append, whoever comes first.
func TestTwoWriters(t *testing.T) {
	path := newClosed40(t)
	open := func() *Record {
		fsys := fake()
		fsys.lock = func(disk.File) (bool, error) { return true, nil }
		r, err := Open(fsys, path)
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { _ = r.Close() })
		return r
	}
	one, two := open(), open()
	if _, err := one.Append(laid(1, 2)); err != nil {
		t.Fatal(err)
	}
	if _, err := two.Append(laid(1, 2)); !errors.Is(err, ErrReplaced) {
		t.Errorf("two writers: %v", err)
	}
	if _, err := one.Append(laid(1, 3)); err != nil {
		t.Errorf("the one that was first can't go on: %v", err)
	}

	fsys := fake()
	r := newRecord40(t, fsys)
	fsys.write = func(f disk.File, p []byte) (int, error) { // between the look and the line
		other, err := os.OpenFile(r.Path(), os.O_WRONLY|os.O_APPEND, 0)
		if err != nil {
			t.Fatal(err)
		}
		_, _ = other.WriteString("x\n")
		_ = other.Close()
		return f.Write(p)
	}
	if s, err := r.Append(laid(1, 2)); !errors.Is(err, ErrReplaced) || s.Laid() != 1 {
		t.Errorf("written between the look and the line: %v", err)
	}
}

// More lost than one line: nothing is cut before something is added, then the loss is on the record and what was cut
// is kept beside.
func TestLossIsKept(t *testing.T) {
	p := testPlan(t, 400, 10, 0)
	var events []counter.Event
	for k := 1; k <= 20; k++ {
		events = append(events, laid(1, k))
	}
	data := fileOf(t, p, events)
	clear(data[len(data)-512:])
	path := writeFile(t, data)
	r, err := Open(OS(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	laidNow := r.State().Laid()
	if lost := r.Lost().Lines; lost != 20-laidNow || !strings.Contains(r.Torn(), "lines") {
		t.Errorf("%d laid, %d said to be lost: %s", laidNow, lost, r.Torn())
	}
	if !bytes.Equal(readBack(t, path), data) {
		t.Error("the file was cut before a key was pressed")
	}
	if _, err := r.Append(laid(1, 1)); err == nil || !bytes.Equal(readBack(t, path), data) {
		t.Errorf("the file was cut for an event that doesn't follow: %v", err)
	}
	s, err := r.Append(counter.Event{At: at(30), Kind: counter.Resumed})
	if err != nil || s.Missing() != 20-laidNow {
		t.Fatalf("%d missing, %v", s.Missing(), err)
	}
	if kept := readBack(t, path+".cut-1"); !bytes.HasSuffix(data, kept) || len(kept) < 512 {
		t.Errorf("kept beside: %q", kept)
	}
	if s, err = r.Append(counter.Event{At: at(31), Kind: counter.Recounted, Chain: 1, Pass: 20,
		Text: "counted on the pegs"}); err != nil || s.Missing() != 0 {
		t.Errorf("%d missing, %v", s.Missing(), err)
	}
	if _, err := r.Append(laid(1, 21)); err != nil {
		t.Error(err)
	}
	again, err := OpenReadOnly(OS(), path)
	if err != nil || again.Torn() != "" || again.State().Laid() != 21 || len(again.State().Losses) != 1 {
		t.Errorf("%v, %+v", err, again.State().Losses)
	}
	rows := counter.HandOver(again.State(), slices.Values(again.Events())).Rows
	found := false
	for _, row := range rows {
		found = found || row.Name == "lost"
	}
	if !found {
		t.Errorf("not on the sheet: %+v", rows)
	}
	if names := namesIn(t, filepath.Dir(path)); names != "test.millside test.millside.cut-1" {
		t.Errorf("left behind: %s", names)
	}
}

// A record that another system's program saved is read, and written clean when the winding goes on.
func TestForeignIsWrittenClean(t *testing.T) {
	p := testPlan(t, 40, 10, 0)
	clean := fileOf(t, p, []counter.Event{laid(1, 1), laid(1, 2)})
	for _, foreign := range [][]byte{
		bytes.ReplaceAll(clean, []byte("\n"), []byte("\r\n")),
		append([]byte("\ufeff"), clean...),
		append([]byte("\n\n"), append(bytes.Clone(clean), "\n\n"...)...),
		bytes.ReplaceAll(clean, []byte("\n"), []byte("\r")),
	} {
		path := writeFile(t, foreign)
		if err := os.Chmod(path, 0o640); err != nil {
			t.Fatal(err)
		}
		r, err := Open(OS(), path)
		if err != nil {
			t.Fatal(err)
		}
		if r.Torn() != "" || r.State().Laid() != 2 || !bytes.Equal(readBack(t, path), foreign) {
			t.Errorf("%d laid, torn %q", r.State().Laid(), r.Torn())
		}
		if _, err := Open(OS(), path); !errors.Is(err, ErrLocked) {
			t.Errorf("not locked: %v", err)
		}
		if _, err := r.Append(laid(1, 3)); err != nil {
			t.Fatal(err)
		}
		want := fileOf(t, p, []counter.Event{laid(1, 1), laid(1, 2), laid(1, 3)})
		if got := readBack(t, path); !bytes.Equal(got, want) {
			t.Errorf("%q", got)
		}
		if _, err := Open(OS(), path); !errors.Is(err, ErrLocked) {
			t.Errorf("not locked once written anew: %v", err)
		}
		if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o640 {
			t.Errorf("%v, %v", info.Mode(), err)
		}
		if _, err := r.Append(laid(1, 4)); err != nil {
			t.Error(err)
		}
		_ = r.Close()
		if names := namesIn(t, filepath.Dir(path)); names != "test.millside" {
			t.Errorf("left behind: %s", names)
		}
	}
}

// A record reached over a link is written clean where it lies; the link stays.
func TestForeignBehindALink(t *testing.T) {
	path := writeFile(t, append(fileOf(t, testPlan(t, 40, 10, 0), nil), '\n'))
	link := filepath.Join(t.TempDir(), "link"+Extension)
	if err := os.Symlink(path, link); err != nil {
		t.Skip(err)
	}
	r, err := Open(OS(), link)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	if _, err := r.Append(laid(1, 1)); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&fs.ModeSymlink == 0 {
		t.Errorf("the link was replaced: %v, %v", info.Mode(), err)
	}
	if again, err := OpenReadOnly(OS(), path); err != nil || again.State().Laid() != 1 {
		t.Error(err)
	}
}

// Where there are no locks it is said, and the winder may go on alone.
func TestNoLocks(t *testing.T) {
	path := newClosed40(t)
	fsys := fake()
	fsys.lock = func(disk.File) (bool, error) { return false, disk.ErrNoLocks }
	if _, err := Open(fsys, path); !errors.Is(err, disk.ErrNoLocks) {
		t.Errorf("%v", err)
	}
	r, err := Open(disk.WithoutLocks(fsys), path)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := r.Append(laid(1, 2)); err != nil {
		t.Error(err)
	}
	_ = r.Close()
	held, err := Open(OS(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer held.Close()
	if _, err := Open(disk.WithoutLocks(OS()), path); !errors.Is(err, ErrLocked) {
		t.Errorf("alone where there are locks: %v", err)
	}
}

// newClosed40 makes a record of a warp of four passes with one pass laid, and closes it.
func newClosed40(t *testing.T) string {
	t.Helper()
	r := newRecord40(t, fake())
	if err := r.Close(); err != nil {
		t.Fatal(err)
	}
	return r.Path()
}

// namesIn lists what is in a folder.
func namesIn(t *testing.T, dir string) string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return strings.Join(names, " ")
}
