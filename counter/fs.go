package counter

import (
	"fmt"
	"io"
	"io/fs"
	"os"

	"github.com/gofrs/flock"
)

// FS is what a record needs of the file system; [OS] is the real one, tests put in faults.
type FS interface {
	// OpenFile opens a file with the flags of package os. It must not wait, not even for a pipe.
	OpenFile(path string, flag int, perm fs.FileMode) (File, error)
	// Stat describes a file, following links.
	Stat(path string) (fs.FileInfo, error)
	// ReadDir lists a folder, sorted by name.
	ReadDir(path string) ([]fs.DirEntry, error)
	// Mkdir makes one folder.
	Mkdir(path string, perm fs.FileMode) error
	// Remove deletes a file; it is used only on a file that was just made and holds no events.
	Remove(path string) error
	// SyncDir brings a folder's list of files to the disk.
	SyncDir(path string) error
}

// File is one open record.
type File interface {
	io.Reader
	io.Writer
	io.Closer
	// Sync brings what was written to the disk.
	Sync() error
	// Truncate cuts the file to a size in bytes.
	Truncate(size int64) error
	// Stat describes the open file.
	Stat() (fs.FileInfo, error)
	// TryLock takes the lock for winding, without waiting; false means that it is taken. Close gives
	// it back, and so does the system when the process dies.
	TryLock() (bool, error)
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
func (osFS) ReadDir(path string) ([]fs.DirEntry, error) { return os.ReadDir(path) }
func (osFS) Mkdir(path string, perm fs.FileMode) error  { return os.Mkdir(path, perm) }
func (osFS) Remove(path string) error                   { return os.Remove(path) }
func (osFS) SyncDir(path string) error                  { return syncDir(path) }

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
	if err != nil || !ok {
		return false, err
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
