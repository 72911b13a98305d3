package disk

import (
	"errors"
	"fmt"
	"os"

	"golang.org/x/sys/unix"
)

// openUnnamed makes a file that has no name yet. File systems that know none say so in several ways.
func openUnnamed(dir string) (*os.File, error) {
	file, err := os.OpenFile(dir, unix.O_TMPFILE|os.O_WRONLY, 0o666)
	if errors.Is(err, unix.EOPNOTSUPP) || errors.Is(err, unix.EISDIR) || errors.Is(err, unix.EINVAL) ||
		errors.Is(err, unix.ENOENT) {
		return nil, fmt.Errorf("%w: %w", errors.ErrUnsupported, err)
	}
	if err != nil {
		return nil, err
	}
	if _, err := os.Stat(self(file)); err != nil { // without /proc it can't be named later
		return nil, errors.Join(errors.ErrUnsupported, file.Close())
	}
	return file, nil
}

// linkUnnamed gives a file its first name, if that is free.
func linkUnnamed(file *os.File, path string) error {
	err := unix.Linkat(unix.AT_FDCWD, self(file), unix.AT_FDCWD, path, unix.AT_SYMLINK_FOLLOW)
	if err != nil {
		return &os.LinkError{Op: "link", Old: file.Name(), New: path, Err: err}
	}
	return nil
}

func self(file *os.File) string { return fmt.Sprintf("/proc/self/fd/%d", file.Fd()) }
