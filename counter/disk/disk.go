// Package disk is the file system as a record needs it: opening, syncing, locking and replacing files, and writing a
// file whole or not at all. [OS] is the real one. Tests put in others: package simdisk below this one is a disk that
// loses what was not synced.
package disk

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"github.com/gofrs/flock"
)

// ErrNoLocks means that the file system knows no locks, as some network folders and sticks don't. It comes wrapped.
var ErrNoLocks = errors.New("this folder's file system knows no locks")

// ErrHeld means that a file can't be taken away or replaced, since a program holds it open: Windows doesn't let it. It
// comes wrapped.
var ErrHeld = errors.New("another program holds the file open: close it there (in an editor, a viewer, a backup) and " +
	"try again")

// FS is what a record needs of the file system; [OS] is the real one, tests put in faults.
type FS interface {
	// OpenFile opens a file with the flags of package os. It must not wait, not even for a pipe.
	OpenFile(path string, flag int, perm fs.FileMode) (File, error)
	// Stat describes a file, following links.
	Stat(path string) (fs.FileInfo, error)
	// Lstat describes a file, and a link itself.
	Lstat(path string) (fs.FileInfo, error)
	// Same says whether two descriptions are of one file.
	Same(a, b fs.FileInfo) bool
	// Real is the path of a file that exists, with every link followed.
	Real(path string) (string, error)
	// ReadDir lists a folder, sorted by name.
	ReadDir(path string) ([]fs.DirEntry, error)
	// Mkdir makes one folder.
	Mkdir(path string, perm fs.FileMode) error
	// Remove deletes a file; it is used only on a file that was just made and holds nothing that is nowhere else.
	// [ErrHeld] means that a program holds it open where the system then lets nobody take it away; Rename too.
	Remove(path string) error
	// Rename gives a file another name in its folder. A file of that name is replaced, at one stroke.
	Rename(from, to string) error
	// Link gives a file a second name in its folder, if that is free.
	Link(from, to string) error
	// Unnamed makes a file in a folder that has no name yet, so that nothing is left of it if the program dies;
	// [errors.ErrUnsupported] where there is no such thing. Name gives it one, if that is free.
	Unnamed(dir string) (File, error)
	Name(file File, path string) error
	// SyncDir brings a folder's list of files to the disk.
	SyncDir(path string) error
}

// File is one open file.
type File interface {
	io.Reader
	io.ReaderAt
	io.Writer
	// WriterAt writes at a place of a file that was opened without os.O_APPEND.
	io.WriterAt
	io.Closer
	// Sync brings what was written to the disk.
	Sync() error
	// Truncate cuts the file to a size in bytes.
	Truncate(size int64) error
	// Chmod sets who may read and write the file.
	Chmod(mode fs.FileMode) error
	// Stat describes the open file.
	Stat() (fs.FileInfo, error)
	// TryLock takes the lock for winding, without waiting; false means that it is taken. Close gives
	// it back, and so does the system when the process dies. Where there are no locks the error is [ErrNoLocks].
	TryLock() (bool, error)
}

// WithoutLocks is a file system on which a winder goes on alone where there are no locks; nil stands for the real one.
func WithoutLocks(fsys FS) FS {
	if fsys == nil {
		fsys = OS()
	}
	return alone{fsys}
}

type alone struct{ FS }

func (a alone) OpenFile(path string, flag int, perm fs.FileMode) (File, error) {
	f, err := a.FS.OpenFile(path, flag, perm)
	if err != nil {
		return nil, err
	}
	return aloneFile{f}, nil
}

type aloneFile struct{ File }

func (f aloneFile) TryLock() (bool, error) {
	ok, err := f.File.TryLock()
	if errors.Is(err, ErrNoLocks) {
		return true, nil
	}
	return ok, err
}

// WriteAll writes with one call, and takes a short write for the error it is.
func WriteAll(w io.Writer, data []byte) error {
	n, err := w.Write(data)
	if err == nil && n < len(data) {
		err = io.ErrShortWrite
	}
	return err
}

// OS is the real file system.
func OS() FS { return osFS{} }

type osFS struct{}

func (osFS) OpenFile(path string, flag int, perm fs.FileMode) (File, error) {
	f, err := os.OpenFile(path, flag|dontWait, perm)
	if err != nil {
		return nil, err
	}
	return &osFile{File: f}, nil
}

func (osFS) Stat(path string) (fs.FileInfo, error)      { return os.Stat(path) }
func (osFS) Lstat(path string) (fs.FileInfo, error)     { return os.Lstat(path) }
func (osFS) Link(from, to string) error                 { return os.Link(from, to) }
func (osFS) Same(a, b fs.FileInfo) bool                 { return os.SameFile(a, b) }
func (osFS) Real(path string) (string, error)           { return realPath(path) }
func (osFS) ReadDir(path string) ([]fs.DirEntry, error) { return os.ReadDir(path) }
func (osFS) Mkdir(path string, perm fs.FileMode) error  { return os.Mkdir(path, perm) }
func (osFS) Remove(path string) error                   { return told(os.Remove(path)) }
func (osFS) Rename(from, to string) error               { return told(os.Rename(from, to)) }
func (osFS) SyncDir(path string) error                  { return syncDir(path) }

// told says of an error that another program holds the file open, where that is the reason.
func told(err error) error {
	if err != nil && held(err) {
		return fmt.Errorf("%w (%w)", ErrHeld, err)
	}
	return err
}

func (osFS) Unnamed(dir string) (File, error) {
	f, err := openUnnamed(dir)
	if err != nil {
		return nil, err
	}
	return &osFile{File: f}, nil
}

func (osFS) Name(file File, path string) error {
	f, ok := file.(*osFile)
	if !ok {
		return errors.ErrUnsupported
	}
	return linkUnnamed(f.File, path)
}

// osFile is a file with the lock that may be held on it.
type osFile struct {
	*os.File
	lock *flock.Flock
}

// TryLock locks the file itself through a second handle of its own, which two openings in one process
// don't share; so they exclude each other as two processes do.
func (f *osFile) TryLock() (bool, error) {
	lock := newLock(f.Name())
	ok, err := lock.TryLock()
	if err != nil && noLocks(err) {
		err = fmt.Errorf("%w (%w)", ErrNoLocks, err)
	}
	if err != nil || !ok {
		return false, errors.Join(err, lock.Close())
	}
	if err := sameFile(f.File, lock); err != nil {
		return false, err
	}
	f.lock = lock
	return true, nil
}

// Close closes the file and gives the lock back.
func (f *osFile) Close() error {
	err := f.File.Close()
	if f.lock != nil {
		if unlock := f.lock.Close(); err == nil && unlock != nil {
			err = fmt.Errorf("giving the lock back: %w", unlock)
		}
	}
	return err
}
