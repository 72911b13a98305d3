package journal

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"pgregory.net/rapid"

	"millside/counter"
	"millside/counter/disk"
	"millside/plan"
)

// fileOf is the bytes of a record.
func fileOf(t rapid.TB, p *plan.Plan, events []counter.Event) []byte {
	t.Helper()
	head, err := appendHead(nil, p.Spec)
	if err != nil {
		t.Fatal(err)
	}
	data, sum := seal(head, 0)
	for i, e := range events {
		var line []byte
		line, sum = seal(counter.AppendEvent(nil, i+2, e.Normal()), sum)
		data = append(data, line...)
	}
	return data
}

// lineOf is the number of the line, from 1, that a byte of a file belongs to.
func lineOf(data []byte, offset int) int { return bytes.Count(data[:offset], []byte{'\n'}) + 1 }

func writeFile(t testing.TB, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "test"+Extension)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func readBack(t testing.TB, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// fakeFS is the real file system with faults. A nil function does what the real one does, but for the
// syncs, which do nothing, so that tests with thousands of files are quick.
type fakeFS struct {
	FS
	write    func(f disk.File, p []byte) (int, error)
	sync     func() error
	syncDir  func(path string) error
	truncate func(f disk.File, size int64) error
	open     func(path string, flag int) error
	writeAt  func(f disk.File, p []byte, off int64) (int, error)
	lock     func(f disk.File) (bool, error)
}

func fake() *fakeFS { return &fakeFS{FS: OS()} }

func (f *fakeFS) OpenFile(path string, flag int, perm fs.FileMode) (disk.File, error) {
	if f.open != nil {
		if err := f.open(path, flag); err != nil {
			return nil, err
		}
	}
	file, err := f.FS.OpenFile(path, flag, perm)
	if err != nil {
		return nil, err
	}
	return &fakeFile{File: file, fs: f}, nil
}

func (f *fakeFS) SyncDir(path string) error {
	if f.syncDir == nil {
		return nil
	}
	return f.syncDir(path)
}

type fakeFile struct {
	disk.File
	fs *fakeFS
}

func (f *fakeFile) Write(p []byte) (int, error) {
	if f.fs.write == nil {
		return f.File.Write(p)
	}
	return f.fs.write(f.File, p)
}

func (f *fakeFile) WriteAt(p []byte, off int64) (int, error) {
	if f.fs.writeAt == nil {
		return f.File.WriteAt(p, off)
	}
	return f.fs.writeAt(f.File, p, off)
}

func (f *fakeFile) TryLock() (bool, error) {
	if f.fs.lock == nil {
		return f.File.TryLock()
	}
	return f.fs.lock(f.File)
}

func (f *fakeFile) Sync() error {
	if f.fs.sync == nil {
		return nil
	}
	return f.fs.sync()
}

func (f *fakeFile) Truncate(size int64) error {
	if f.fs.truncate == nil {
		return f.File.Truncate(size)
	}
	return f.fs.truncate(f.File, size)
}
