package counter

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// Open opens a record for winding and locks it. A torn tail is cut off and reported by
// [Record.Torn]. Errors: [ErrLocked], [ErrNewer], [ErrNotPlain], [*DamageError] and those of the file
// system.
func Open(fsys FS, path string) (*Record, error) {
	file, err := openPlain(fsys, path, os.O_RDWR|os.O_APPEND)
	if err != nil {
		return nil, err
	}
	r, err := openLocked(file, path)
	if err != nil {
		return nil, errors.Join(err, file.Close())
	}
	return r, nil
}

func openLocked(file File, path string) (*Record, error) {
	if err := lock(file, path); err != nil {
		return nil, err
	}
	got, size, err := readFile(file, path)
	if err != nil {
		return nil, err
	}
	r := newRecord(path, got)
	r.file = file
	if err := r.mend(size, got.unended); err != nil {
		return nil, fmt.Errorf("mending the end of %s: %w", path, err)
	}
	return r, nil
}

// Look opens a record to read it only. It takes no lock, so it can look at a warp that is being
// wound, and it never changes the file. Errors are those of [Open] but for [ErrLocked].
func Look(fsys FS, path string) (*Record, error) {
	got, err := lookAt(fsys, path)
	if err != nil {
		return nil, err
	}
	r := newRecord(path, got)
	r.look = true
	return r, nil
}

// lookAt reads a file; with an error the result is what was sound before it.
func lookAt(fsys FS, path string) (reading, error) {
	file, err := openPlain(fsys, path, os.O_RDONLY)
	if err != nil {
		return reading{}, err
	}
	got, _, err := readFile(file, path)
	return got, errors.Join(err, file.Close())
}

func newRecord(path string, got reading) *Record {
	return &Record{path: path, events: got.events, state: got.state(), torn: got.torn,
		lines: got.lines, size: int64(len(got.sound)), sum: got.sum}
}

// openPlain opens a plain file and nothing else. It asks before opening, since opening a device can
// do something, and again afterwards, since the path may have changed its meaning in between.
func openPlain(fsys FS, path string, flag int) (File, error) {
	info, err := fsys.Stat(path)
	if err == nil && !info.Mode().IsRegular() {
		err = notPlain(path, info)
	}
	if err != nil {
		return nil, fmt.Errorf("opening a record: %w", err)
	}
	file, err := fsys.OpenFile(path, flag, 0)
	if err != nil {
		return nil, fmt.Errorf("opening a record: %w", err)
	}
	info, err = file.Stat()
	if err == nil && !info.Mode().IsRegular() {
		err = notPlain(path, info)
	}
	if err != nil {
		return nil, errors.Join(fmt.Errorf("opening a record: %w", err), file.Close())
	}
	return file, nil
}

func notPlain(path string, info fs.FileInfo) error {
	return fmt.Errorf("%s: %w (%s)", path, ErrNotPlain, info.Mode().Type())
}

// readFile reads an open file to its end and gives its size with what it holds.
func readFile(file File, path string) (reading, int64, error) {
	info, err := file.Stat()
	if err != nil {
		return reading{}, 0, fmt.Errorf("reading %s: %w", path, err)
	}
	var data bytes.Buffer
	if info.Size() <= maxRecord {
		data.Grow(int(info.Size()) + bytes.MinRead)
		// The file may have grown since it was asked for its size.
		if _, err := data.ReadFrom(io.LimitReader(file, maxRecord+1)); err != nil {
			return reading{}, 0, fmt.Errorf("reading %s: %w", path, err)
		}
	}
	if max(info.Size(), int64(data.Len())) > maxRecord {
		return reading{}, 0, fmt.Errorf("reading %s: %w: it is longer than %d MiB", path, ErrFull, maxRecord>>20)
	}
	got, err := read(path, data.Bytes())
	return got, int64(data.Len()), err
}

// mend cuts a torn tail off and ends the last line.
func (r *Record) mend(size int64, unended bool) error {
	if size == r.size && !unended {
		return nil
	}
	if size > r.size {
		if err := r.file.Truncate(r.size); err != nil {
			return err
		}
	}
	if unended {
		if err := writeAll(r.file, []byte{'\n'}); err != nil {
			return err
		}
		r.size++
	}
	return r.file.Sync()
}
