package files

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"millside/counter/disk"
)

// temp is a new file on its way to its name. Where the system can, it has no name at all until it is whole, so that
// nothing is left of it whatever happens to the program.
type temp struct {
	fsys disk.FS
	file disk.File
	name string // empty while it has none
	stop func() // no signal has to take it away any more
}

const tempEnd = ".millside-new"

// tempName is the name of the program's own new file for a path.
func tempName(path string, pid int) string {
	return filepath.Join(filepath.Dir(path), fmt.Sprintf(".%s.%d%s", filepath.Base(path), pid, tempEnd))
}

// sweep takes away what programs that were killed left in the folder, of whichever file. Replacing a file needs a name
// for a moment: the system can rename over what is there, but give a nameless file no name that is taken.
func sweep(fsys disk.FS, dir string) {
	left, err := fsys.ReadDir(dir)
	if err != nil {
		return // then nothing can be taken away either
	}
	for _, entry := range left {
		if pid, ours := tempOf(entry.Name()); ours && !alive(pid) {
			_ = fsys.Remove(filepath.Join(dir, entry.Name())) // if it can't be removed it harms nobody
		}
	}
}

// tempOf says which program made a file of such a name; false if it isn't one that [tempName] gives.
func tempOf(name string) (pid int, ours bool) {
	begin, temp := strings.CutSuffix(name, tempEnd)
	dot := strings.LastIndexByte(begin, '.')
	if !temp || !strings.HasPrefix(name, ".") || dot < 2 {
		return 0, false
	}
	pid, err := strconv.Atoi(begin[dot+1:])
	return pid, err == nil && pid > 0
}

// newTemp makes a new file in the folder of a path, with the permissions that the system gives to any new file.
func newTemp(fsys disk.FS, path string) (*temp, error) {
	if file, err := fsys.Unnamed(filepath.Dir(path)); err == nil {
		return &temp{fsys: fsys, file: file, stop: func() {}}, nil
	} else if !errors.Is(err, errors.ErrUnsupported) {
		return nil, err
	}
	name := tempName(path, os.Getpid())
	_ = fsys.Remove(name) // ours, from an earlier program of the same number
	file, err := fsys.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return nil, err
	}
	return &temp{fsys: fsys, file: file, name: name, stop: removeOnSignal(fsys, name)}, nil
}

// gone closes the file, and takes it away if it has not got its place.
func (t *temp) gone() {
	_ = t.file.Close() // it is synced, or not wanted any more
	if t.name != "" {
		_ = t.fsys.Remove(t.name)
	}
	t.stop()
}

// takePlace gives the file its name. A hard link never replaces what somebody else made since we looked; where the
// file system knows none, a rename has to do.
func (t *temp) takePlace(path string, replace bool) error {
	if t.name == "" {
		if !replace {
			return t.fsys.Name(t.file, path)
		}
		name := tempName(path, os.Getpid())
		_ = t.fsys.Remove(name)
		if err := t.fsys.Name(t.file, name); err != nil {
			return err
		}
		t.name = name
	}
	if !replace {
		err := t.fsys.Link(t.name, path)
		if err == nil && t.fsys.Remove(t.name) == nil {
			t.name = ""
		}
		if err == nil || errors.Is(err, fs.ErrExist) {
			return err
		}
		if _, err := t.fsys.Lstat(path); err == nil {
			return fs.ErrExist
		}
	}
	err := t.fsys.Rename(t.name, path)
	if err == nil {
		t.name = ""
	}
	return err
}
