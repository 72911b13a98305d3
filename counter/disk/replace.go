package disk

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// MakeDir makes a folder and the folders above it, for their owner only, and syncs the folder that each new one
// stands in.
func MakeDir(fsys FS, dir string) error {
	info, err := fsys.Stat(dir)
	if err == nil {
		if !info.IsDir() {
			return fmt.Errorf("%s is not a folder", dir)
		}
		return nil
	}
	parent := filepath.Dir(dir)
	if !errors.Is(err, fs.ErrNotExist) || parent == dir {
		return err
	}
	if err := MakeDir(fsys, parent); err != nil {
		return err
	}
	if err := fsys.Mkdir(dir, 0o700); err != nil && !errors.Is(err, fs.ErrExist) {
		return err
	}
	return fsys.SyncDir(parent)
}

// Replace puts a file with these bytes in the place of whatever file has the path, at one stroke: it is written beside
// and synced first, so that the path holds the old bytes or the new ones, whole, wherever the power goes. Only the
// owner can read it. It is meant for files of which one program at a time is the writer: no record that may be wound,
// but a copy of one under a name that was just taken.
func Replace(fsys FS, path string, data []byte) error {
	dir := filepath.Dir(path)
	temp := filepath.Join(dir, fmt.Sprintf(".%s.%d.new", filepath.Base(path), os.Getpid()))
	if err := fsys.Remove(temp); err != nil && !errors.Is(err, fs.ErrNotExist) { // from a program that was killed
		return err
	}
	file, err := fsys.OpenFile(temp, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
	if err != nil {
		return err
	}
	err = WriteAll(file, data)
	if err == nil {
		err = file.Sync()
	}
	if err = errors.Join(err, file.Close()); err == nil {
		err = fsys.Rename(temp, path)
	}
	if err != nil {
		return errors.Join(err, fsys.Remove(temp))
	}
	return fsys.SyncDir(dir)
}
