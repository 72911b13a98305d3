package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// errFileThere says that a file would be replaced. The message names the way to do it all the same.
var errFileThere = errors.New("there is a file of that name already")

// writeFile writes a file so that it is there whole or not at all: into a temporary file in the same
// folder first, then by its name. Without replace a file that is there is left as it is, and the error is
// errFileThere.
func writeFile(path string, replace bool, write func(io.Writer) error) error {
	if info, err := os.Lstat(path); err == nil {
		if info.IsDir() {
			return fmt.Errorf("writing %s: it is a folder", path)
		}
		if !replace {
			return fmt.Errorf("writing %s: %w", path, errFileThere)
		}
	}
	temp, err := temporary(path)
	if err != nil {
		return fmt.Errorf("writing %s: %w", path, err)
	}
	defer os.Remove(temp.Name()) // gone already if all went well
	err = errors.Join(write(temp), temp.Sync(), temp.Close())
	if err == nil {
		err = takePlace(temp.Name(), path, replace)
	}
	if errors.Is(err, fs.ErrExist) {
		err = errFileThere
	}
	if err != nil {
		return fmt.Errorf("writing %s: %w", path, err)
	}
	return nil
}

// temporary makes a new file beside a path, with the rights that the system gives to any new file.
func temporary(path string) (*os.File, error) {
	for n := 1; ; n++ {
		name := filepath.Join(filepath.Dir(path), fmt.Sprintf(".%s.%d-%d.tmp", filepath.Base(path), os.Getpid(), n))
		f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) || n == 100 {
			return f, err
		}
	}
}

// takePlace gives the temporary file its name. A hard link never replaces what somebody else made since
// we looked; where the file system knows none, a rename has to do.
func takePlace(temp, path string, replace bool) error {
	if !replace {
		err := os.Link(temp, path)
		if err == nil || errors.Is(err, fs.ErrExist) {
			return err
		}
		if _, err := os.Lstat(path); err == nil {
			return fs.ErrExist
		}
	}
	return os.Rename(temp, path)
}
