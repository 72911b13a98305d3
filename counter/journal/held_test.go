package journal

import (
	"errors"
	"os"
	"strings"
	"testing"

	"millside/counter/disk"
)

// heldFS lets no file be taken away while it is open, as Windows doesn't: by another program, or by this one.
type heldFS struct {
	FS
	open map[string]int
}

func (f heldFS) OpenFile(path string, flag int, perm os.FileMode) (disk.File, error) {
	file, err := f.FS.OpenFile(path, flag, perm)
	if err != nil {
		return nil, err
	}
	f.open[path]++
	return &heldFile{file, func() { f.open[path]-- }}, nil
}

func (f heldFS) Remove(path string) error {
	if f.open[path] > 0 {
		return disk.ErrHeld
	}
	return f.FS.Remove(path)
}

type heldFile struct {
	disk.File
	closed func()
}

func (f *heldFile) Close() error {
	f.closed()
	return f.File.Close()
}

// Where an open file can't be taken away, a record is put away all the same, since its own handle is closed first;
// while another program holds it open the error says so in plain words, and it stays where it is and there only.
func TestShelveWhereAnOpenFileStays(t *testing.T) {
	fsys := heldFS{OS(), map[string]int{}}
	s := Store{Dir: t.TempDir(), FS: fsys}
	r, err := s.Create(testPlan(t, 400, 10, 0))
	if err != nil {
		t.Fatal(err)
	}
	if err := r.Close(); err != nil {
		t.Fatal(err)
	}
	clear(fsys.open) // what was open before is none of this
	fsys.open[r.Path()]++
	_, err = s.Shelve(r.Path(), PutAway)
	const words = "another program holds the file open: close it there"
	if !errors.Is(err, disk.ErrHeld) || !strings.Contains(err.Error(), words) {
		t.Errorf("held by another program: %v", err)
	}
	list, err := s.List()
	put, more := s.On(PutAway).List()
	if err != nil || more != nil || len(list) != 1 || len(put) != 0 {
		t.Errorf("%d among the warps, %d put away, %v, %v", len(list), len(put), err, more)
	}
	fsys.open[r.Path()]--
	if _, err := s.Shelve(r.Path(), PutAway); err != nil {
		t.Errorf("held by nobody: %v", err)
	}
}
