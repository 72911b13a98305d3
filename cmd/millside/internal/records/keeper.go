package records

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"millside/counter/disk"
	"millside/counter/journal"
)

// keeper is a file system that keeps what was read of a file to its end, and gives it to whoever opens the
// file to read it again.
type keeper struct {
	journal.FS
	files map[string]kept // by cleaned path
	size  int             // of all of them, in bytes
}

// kept is what a file held.
type kept struct {
	data []byte
	info fs.FileInfo
}

// OpenFile opens a file, or what was kept of it if it is only to be read.
func (k *keeper) OpenFile(path string, flag int, perm fs.FileMode) (disk.File, error) {
	path = filepath.Clean(path)
	if had, ok := k.files[path]; ok && flag&(os.O_WRONLY|os.O_RDWR) == 0 {
		return &keptFile{Reader: bytes.NewReader(had.data), info: had.info}, nil
	}
	file, err := k.FS.OpenFile(path, flag, perm)
	if err != nil {
		return nil, err
	}
	return &watched{File: file, done: func(data []byte, info fs.FileInfo) { k.keep(path, kept{data, info}) }}, nil
}

// mostKept is the longest file that is kept, in bytes: a longer one is read again.
const mostKept = 1 << 20

// mostInAll bounds what is kept of all files together, in bytes.
const mostInAll = 32 << 20

// keep keeps what a file held, as long as there is room.
func (k *keeper) keep(path string, file kept) {
	if k.size+len(file.data) <= mostInAll {
		k.size += len(file.data)
		k.files[path] = file
	}
}

// watched is a file of which what is read is kept, once it was read to its end.
type watched struct {
	disk.File
	read []byte
	done func(data []byte, info fs.FileInfo) // nil once it was called
}

// Read reads on, and hands over what was read at the end of the file.
func (w *watched) Read(p []byte) (int, error) {
	n, err := w.File.Read(p)
	if w.done == nil {
		return n, err
	}
	if len(w.read)+n > mostKept {
		w.read, w.done = nil, nil
		return n, err
	}
	w.read = append(w.read, p[:n]...)
	if errors.Is(err, io.EOF) {
		if info, wrong := w.File.Stat(); wrong == nil {
			w.done(w.read, info)
		}
		w.read, w.done = nil, nil
	}
	return n, err
}

// errKept says that a kept file can only be read.
var errKept = errors.New("this record is open to be read only")

// keptFile is what was kept of a file.
type keptFile struct {
	*bytes.Reader
	info fs.FileInfo
}

func (*keptFile) Write([]byte) (int, error)          { return 0, errKept }
func (*keptFile) WriteAt([]byte, int64) (int, error) { return 0, errKept }
func (*keptFile) Truncate(int64) error               { return errKept }
func (*keptFile) Chmod(fs.FileMode) error            { return errKept }
func (*keptFile) Sync() error                        { return nil }
func (*keptFile) TryLock() (bool, error)             { return false, errKept }
func (*keptFile) Close() error                       { return nil }
func (f *keptFile) Stat() (fs.FileInfo, error)       { return f.info, nil }
