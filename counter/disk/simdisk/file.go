package simdisk

import (
	"errors"
	"io"
	"io/fs"
	"path"
	"slices"
	"syscall"
	"time"
)

// file is an open file.
type file struct {
	d       *Disk
	n       *node
	name    string
	off     int
	appends bool
	holds   bool
	closed  bool
}

func (f *file) Read(p []byte) (int, error) {
	n, err := f.ReadAt(p, int64(f.off))
	f.off += n
	if n > 0 {
		err = nil
	}
	return n, err
}

func (f *file) ReadAt(p []byte, off int64) (int, error) {
	if off >= int64(len(f.n.seen)) {
		return 0, io.EOF
	}
	n := copy(p, f.n.seen[off:])
	if n < len(p) {
		return n, io.EOF
	}
	return n, nil
}

func (f *file) Write(p []byte) (int, error) {
	off := f.off
	if f.appends {
		off = len(f.n.seen)
	}
	n, err := f.write(p, off)
	f.off = off + n
	return n, err
}

func (f *file) WriteAt(p []byte, off int64) (int, error) {
	if f.appends {
		return 0, errors.New("writing at a place of a file that is only added to")
	}
	return f.write(p, int(off))
}

func (f *file) write(p []byte, off int) (int, error) {
	err := f.d.call("write")
	if err != nil {
		p = p[:len(p)/2]
	}
	f.n.put(p, off)
	if len(p) > 0 {
		f.d.after("write")
	}
	if err != nil {
		return len(p), &fs.PathError{Op: "write", Path: f.name, Err: err}
	}
	return len(p), nil
}

// put writes to what is seen, sector by sector.
func (n *node) put(p []byte, off int) {
	end := off + len(p)
	if end > len(n.seen) {
		n.seen = append(n.seen, make([]byte, end-len(n.seen))...)
	}
	if end > n.size() { // bytes that are written again behind the end on the disk move that end too
		n.pending = append(n.pending, op{size: end})
	}
	copy(n.seen[off:], p)
	for len(p) > 0 {
		k := min(Sector-off%Sector, len(p))
		n.pending = append(n.pending, op{off: off, data: slices.Clone(p[:k])})
		p, off = p[k:], off+k
	}
}

// size is the size on the disk once everything pending is there.
func (n *node) size() int {
	for _, o := range slices.Backward(n.pending) {
		if o.data == nil {
			return o.size
		}
	}
	return len(n.disk)
}

func (f *file) Truncate(size int64) error {
	if err := f.d.call("truncate"); err != nil {
		return &fs.PathError{Op: "truncate", Path: f.name, Err: err}
	}
	f.n.seen = f.n.seen[:size]
	f.n.pending = append(f.n.pending, op{size: int(size)})
	f.d.after("truncate")
	return nil
}

func (f *file) Sync() error {
	if err := f.d.call("sync"); err != nil {
		f.n.pending = nil // taken for written, and it isn't
		return &fs.PathError{Op: "sync", Path: f.name, Err: err}
	}
	f.n.disk = apply(f.n.disk, f.n.pending)
	f.n.pending = nil
	f.d.after("sync")
	return nil
}

func (f *file) Chmod(mode fs.FileMode) error {
	if err := f.d.call("chmod"); err != nil {
		return err
	}
	f.n.mode = mode
	return nil
}

func (f *file) Stat() (fs.FileInfo, error) { return f.n.info(f.name), nil }

func (f *file) TryLock() (bool, error) {
	if err := f.d.call("lock"); err != nil {
		return false, err
	}
	if f.n.locked {
		return false, nil
	}
	f.n.locked, f.holds = true, true
	return true, nil
}

func (f *file) Close() error {
	if f.closed {
		return fs.ErrClosed
	}
	f.closed = true
	if f.holds {
		f.n.locked = false
	}
	return nil
}

// info describes a file.
type info struct {
	name string
	id   int
	size int
	mode fs.FileMode
}

func (n *node) info(name string) info {
	return info{name: path.Base(name), id: n.id, size: len(n.seen), mode: n.mode}
}

func (i info) Name() string       { return i.name }
func (i info) Size() int64        { return int64(i.size) }
func (i info) Mode() fs.FileMode  { return i.mode }
func (i info) ModTime() time.Time { return time.Time{} }
func (i info) IsDir() bool        { return i.mode.IsDir() }
func (i info) Sys() any           { return nil }

// ErrIO is what a failing disk says.
var ErrIO error = syscall.EIO
