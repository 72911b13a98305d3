package disk

import (
	"errors"
	"os"
	"path/filepath"
	"syscall"

	"github.com/gofrs/flock"
)

// dontWait has no meaning here: opening a path never waits for a pipe's other end.
const dontWait = 0

// newLock is the lock beside a file: on Windows a lock on the file itself would keep even its holder's
// other handle from reading it.
func newLock(path string) *flock.Flock { return flock.New(path + ".lock") }

// sameFile has nothing to compare, since the lock is a file of its own.
func sameFile(*os.File, *flock.Flock) error { return nil }

// syncDir does nothing: Windows has no sync of a folder.
func syncDir(string) error { return nil }

// noLocks knows of no file system here that has none.
func noLocks(error) bool { return false }

// held says whether a file can't be taken away since a program holds it open.
func held(err error) bool {
	const sharing, locking = syscall.Errno(32), syscall.Errno(33)
	return errors.Is(err, sharing) || errors.Is(err, locking)
}

// RenameOpen says that a file can't be replaced while it is open.
const RenameOpen = false

func realPath(path string) (string, error) { return filepath.EvalSymlinks(path) }
