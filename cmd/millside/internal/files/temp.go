package files

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// temp is a new file on its way to its name. Where the system can, it has no name at all until it is whole, so that
// nothing is left of it whatever happens to the program.
type temp struct {
	file *os.File
	name string // empty while it has none
	stop func() // no signal has to take it away any more
}

// unnamed makes a file without a name in a folder; tests put in one that can't.
var unnamed = openUnnamed

const tempEnd = ".millside-new"

// tempName is the name of the program's own new file for a path.
func tempName(path string, pid int) string {
	return filepath.Join(filepath.Dir(path), fmt.Sprintf(".%s.%d%s", filepath.Base(path), pid, tempEnd))
}

// sweep takes away what programs that were killed left of the same file.
func sweep(path string) {
	left, err := filepath.Glob(filepath.Join(escaped(filepath.Dir(path)), "."+escaped(filepath.Base(path))+".*"+tempEnd))
	if err != nil {
		return
	}
	for _, name := range left {
		number := strings.TrimSuffix(strings.TrimPrefix(filepath.Base(name), "."+filepath.Base(path)+"."), tempEnd)
		if pid, err := strconv.Atoi(number); err == nil && !alive(pid) {
			_ = os.Remove(name) // if it can't be removed it harms nobody
		}
	}
}

// escaped keeps what is in a path from being taken for a pattern.
func escaped(s string) string {
	return strings.NewReplacer(`\`, `\\`, "*", `\*`, "?", `\?`, "[", `\[`).Replace(s)
}

// newTemp makes a new file in the folder of a path, with the permissions that the system gives to any new file.
func newTemp(path string) (*temp, error) {
	if file, err := unnamed(filepath.Dir(path)); err == nil {
		return &temp{file: file, stop: func() {}}, nil
	} else if !errors.Is(err, errors.ErrUnsupported) {
		return nil, err
	}
	name := tempName(path, os.Getpid())
	_ = os.Remove(name) // ours, from an earlier program of the same number
	file, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return nil, err
	}
	return &temp{file: file, name: name, stop: removeOnSignal(name)}, nil
}

// gone closes the file, and takes it away if it has not got its place.
func (t *temp) gone() {
	_ = t.file.Close() // it is synced, or not wanted any more
	if t.name != "" {
		_ = os.Remove(t.name)
	}
	t.stop()
}

// takePlace gives the file its name. A hard link never replaces what somebody else made since we looked; where the
// file system knows none, a rename has to do.
func (t *temp) takePlace(path string, replace bool) error {
	if t.name == "" {
		if !replace {
			return linkUnnamed(t.file, path)
		}
		name := tempName(path, os.Getpid())
		_ = os.Remove(name)
		if err := linkUnnamed(t.file, name); err != nil {
			return err
		}
		t.name = name
	}
	if !replace {
		err := os.Link(t.name, path)
		if err == nil || errors.Is(err, fs.ErrExist) {
			return err
		}
		if _, err := os.Lstat(path); err == nil {
			return fs.ErrExist
		}
	}
	err := os.Rename(t.name, path)
	if err == nil {
		t.name = ""
	}
	return err
}
