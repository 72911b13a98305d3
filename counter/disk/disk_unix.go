//go:build !windows

package disk

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"syscall"

	"github.com/gofrs/flock"
)

// dontWait keeps the opening of a pipe without a writer from hanging.
const dontWait = syscall.O_NONBLOCK

// newLock is the lock on a file that exists.
func newLock(path string) *flock.Flock {
	return flock.New(path, flock.SetFlag(os.O_RDWR|dontWait))
}

// sameFile makes sure that the lock is on the file that was opened, and not on another one that took
// its path in between.
func sameFile(f *os.File, lock *flock.Flock) error {
	opened, err := f.Stat()
	if err == nil {
		var locked os.FileInfo
		if locked, err = lock.Stat(); err == nil && os.SameFile(opened, locked) {
			return nil
		}
	}
	_ = lock.Close()
	if err == nil {
		err = fmt.Errorf("%s was replaced while it was opened", f.Name())
	}
	return err
}

// syncDir syncs a folder, so that a new file in it outlives a power cut. File systems that know no
// such sync say so with EINVAL or ENOTSUP; there is nothing more to be done on them.
func syncDir(path string) error {
	d, err := os.Open(path)
	if err != nil {
		return err
	}
	err = d.Sync()
	if errors.Is(err, syscall.EINVAL) || errors.Is(err, syscall.ENOTSUP) {
		err = nil
	}
	return errors.Join(err, d.Close())
}

// noLocks says whether a lock failed because the file system has none.
func noLocks(err error) bool {
	return slices.ContainsFunc([]error{syscall.ENOLCK, syscall.ENOSYS, syscall.ENOTSUP, syscall.EOPNOTSUPP,
		syscall.EINVAL},
		func(known error) bool { return errors.Is(err, known) })
}

// held is never so here: a file that is open can be taken away.
func held(error) bool { return false }

// RenameOpen says that a file can be replaced while it is open.
const RenameOpen = true

func realPath(path string) (string, error) { return filepath.EvalSymlinks(path) }
