// Package files reads and writes the files that a weaver names on the command line: whole or not at all, and never
// over a record, a device, a pipe or what a link points to.
package files

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"millside/counter/disk"
	"millside/counter/journal"
)

var (
	// ErrThere says that a file would be replaced.
	ErrThere = errors.New("there is a file of that name already")
	// ErrKeep says that what stands at the path is never replaced.
	ErrKeep = errors.New("it is never replaced")
)

// Write writes a file so that it is there whole or not at all: beside it first, synced, then by its name. Without
// replace a file that is there is left as it is, and the error is [ErrThere]. A file that is replaced keeps its
// permissions. A folder, a record, a device, a pipe and a link are never replaced ([ErrKeep]).
func Write(path string, replace bool, write func(io.Writer) error) error {
	return WriteOn(disk.OS(), path, replace, write)
}

// WriteOn is Write on another file system.
func WriteOn(fsys disk.FS, path string, replace bool, write func(io.Writer) error) error {
	if err := put(fsys, path, replace, write); err != nil {
		return fmt.Errorf("writing %s: %w", path, err)
	}
	return nil
}

func put(fsys disk.FS, path string, replace bool, write func(io.Writer) error) error {
	old, err := replaceable(fsys, path)
	if err == nil && old != nil && !replace {
		err = ErrThere
	}
	if err != nil {
		return err
	}
	sweep(fsys, filepath.Dir(path))
	temp, err := newTemp(fsys, path)
	if err != nil {
		return err
	}
	defer temp.gone()
	if err := write(temp.file); err != nil {
		return err
	}
	if old != nil {
		if err := likeOld(temp.file, old); err != nil {
			return err
		}
	}
	if err := temp.file.Sync(); err != nil {
		return err
	}
	// Somebody may have put something there since we looked.
	if _, err := replaceable(fsys, path); err != nil {
		return err
	}
	if err := temp.takePlace(path, replace); err != nil {
		if errors.Is(err, fs.ErrExist) {
			return ErrThere
		}
		return err
	}
	return fsys.SyncDir(filepath.Dir(path))
}

// replaceable describes what stands at a path, nil for nothing, and refuses what is never replaced.
func replaceable(fsys disk.FS, path string) (fs.FileInfo, error) {
	if filepath.Ext(path) == journal.Extension {
		return nil, fmt.Errorf("a name that ends in %s is kept for winding records; choose another", journal.Extension)
	}
	info, err := fsys.Lstat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	if what := special(info.Mode()); what != "" {
		return nil, fmt.Errorf("it is %s: %w", what, ErrKeep)
	}
	record, err := isRecord(fsys, path)
	if err == nil && record {
		err = fmt.Errorf("it is a winding record: %w", ErrKeep)
	}
	return info, err
}

// special says what a file is that is no plain one; empty for a plain file.
func special(mode fs.FileMode) string {
	switch {
	case mode.IsRegular():
		return ""
	case mode.IsDir():
		return "a folder"
	case mode&fs.ModeSymlink != 0:
		return "a link"
	case mode&fs.ModeNamedPipe != 0:
		return "a pipe"
	case mode&fs.ModeDevice != 0:
		return "a device"
	}
	return "no plain file"
}

// isRecord looks at the beginning of a plain file. One that can't be read may be a record.
func isRecord(fsys disk.FS, path string) (bool, error) {
	file, err := openPlain(fsys, path)
	if err != nil {
		return false, err
	}
	defer file.Close()
	begin := make([]byte, 64)
	n, err := io.ReadFull(file, begin)
	if err != nil && !errors.Is(err, io.EOF) && !errors.Is(err, io.ErrUnexpectedEOF) {
		return false, err
	}
	return journal.LooksLikeRecord(begin[:n]), nil
}

// Read reads a plain file of at most so many bytes. It waits for nothing, not even where the path names a pipe.
func Read(path string, most int) ([]byte, error) {
	file, err := openPlain(disk.OS(), path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	var data bytes.Buffer
	if _, err := data.ReadFrom(io.LimitReader(file, int64(most)+1)); err != nil {
		return nil, err
	}
	if data.Len() > most {
		return nil, fmt.Errorf("%s is longer than %d bytes", path, most)
	}
	return data.Bytes(), nil
}

// openPlain opens a plain file to read it, and nothing else.
func openPlain(fsys disk.FS, path string) (disk.File, error) {
	file, err := fsys.OpenFile(path, os.O_RDONLY, 0)
	if err != nil {
		return nil, err
	}
	info, err := file.Stat()
	if err == nil && !info.Mode().IsRegular() {
		err = fmt.Errorf("%s is %s and no plain file", path, special(info.Mode()))
	}
	if err != nil {
		return nil, errors.Join(err, file.Close())
	}
	return file, nil
}
