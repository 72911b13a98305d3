package journal

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"millside/counter/disk"
)

// Open opens a record for winding and locks it. What it shows is on the disk: it is synced first. A torn tail is cut
// off and reported by [Record.Torn]; where more is missing than a power cut takes, the file is left as it is, see
// [Record.Lost]. Errors: [ErrLocked], [disk.ErrNoLocks], [ErrNewer], [ErrNotPlain], [*DamageError] and those of the
// file system.
func Open(fsys FS, path string) (*Record, error) {
	file, err := openPlain(fsys, path, os.O_RDWR|os.O_APPEND)
	if err != nil {
		return nil, err
	}
	r, err := openLocked(fsys, file, path)
	if err != nil {
		return nil, errors.Join(err, file.Close())
	}
	return r, nil
}

func openLocked(fsys FS, file disk.File, path string) (*Record, error) {
	if err := lock(file, path); err != nil {
		return nil, err
	}
	data, got, err := readFile(file, path)
	if err != nil {
		return nil, err
	}
	r := newRecord(fsys, path, got, len(data))
	r.file = file
	if got.foreign || got.lost.Lines > 0 {
		r.renew = &renewal{cut: bytes.Clone(data[got.end:])}
		if got.lost.Lines == 0 {
			r.renew.cut = nil
		}
	} else if err := r.mend(got); err != nil {
		return nil, fmt.Errorf("mending the end of %s: %w", path, err)
	}
	if err := r.secure(data, got); err != nil {
		return nil, fmt.Errorf("%w: bringing %s to the disk: %w", ErrFailed, path, err)
	}
	return r, nil
}

// OpenReadOnly opens a record to read it only. It takes no lock, so it can look at a warp that is being
// wound, and it never changes the file. Errors are those of [Open] but for the locks.
func OpenReadOnly(fsys FS, path string) (*Record, error) {
	data, got, err := readAt(fsys, path)
	if err != nil {
		return nil, err
	}
	r := newRecord(fsys, path, got, len(data))
	r.readOnly = true
	return r, nil
}

// readAt reads a file; with an error the result is what was sound before it.
func readAt(fsys FS, path string) ([]byte, reading, error) {
	file, err := openPlain(fsys, path, os.O_RDONLY)
	if err != nil {
		return nil, reading{}, err
	}
	data, got, err := readFile(file, path)
	return data, got, errors.Join(err, file.Close())
}

func newRecord(fsys FS, path string, got reading, size int) *Record {
	return &Record{fsys: fsys, path: path, events: got.events, state: got.state(), torn: got.torn, lost: got.lost,
		head: bytes.Clone(got.head), lines: got.lines, size: int64(size), sum: got.sum}
}

// openPlain opens a plain file and nothing else. It asks before opening, since opening a device can
// do something, and again afterwards, since the path may have changed its meaning in between.
func openPlain(fsys FS, path string, flag int) (disk.File, error) {
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

// readFile reads an open file to its end and takes it apart.
func readFile(file disk.File, path string) ([]byte, reading, error) {
	info, err := file.Stat()
	if err != nil {
		return nil, reading{}, fmt.Errorf("reading %s: %w", path, err)
	}
	var data bytes.Buffer
	if info.Size() <= maxRecord {
		data.Grow(int(info.Size()) + bytes.MinRead)
		// The file may have grown since it was asked for its size.
		if _, err := data.ReadFrom(io.LimitReader(file, maxRecord+1)); err != nil {
			return nil, reading{}, fmt.Errorf("reading %s: %w", path, err)
		}
	}
	if max(info.Size(), int64(data.Len())) > maxRecord {
		return nil, reading{}, fmt.Errorf("reading %s: %w: it is longer than %d MiB", path, ErrFull, maxRecord>>20)
	}
	got, err := read(path, data.Bytes())
	return data.Bytes(), got, err
}

// mend cuts a torn tail off and ends the last line.
func (r *Record) mend(got reading) error {
	if r.size == int64(got.end) && !got.unended {
		return nil
	}
	if r.size > int64(got.end) {
		if err := r.file.Truncate(int64(got.end)); err != nil {
			return err
		}
		r.size = int64(got.end)
	}
	if got.unended {
		if err := disk.WriteAll(r.file, []byte{'\n'}); err != nil {
			return err
		}
		r.size++
	}
	return nil
}

// secure brings what was read to the disk before it is shown. The last line may have been left behind by a program
// that died, or by a sync that failed: then the system may take its bytes for written though they are not. So it is
// written once more, from memory and over itself, and synced.
func (r *Record) secure(data []byte, got reading) error {
	again, err := r.fsys.OpenFile(r.path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	defer again.Close() // what counts is the sync
	if same, err := r.sameFile(again); err != nil || !same {
		return errors.Join(err, fmt.Errorf("%w: another file has taken its place", ErrReplaced))
	}
	if _, err := again.WriteAt(data[got.last:got.end], int64(got.last)); err != nil {
		return err
	}
	if err := again.Sync(); err != nil {
		return err
	}
	// A folder that may be passed through and not read can't be synced; its file can.
	if err := r.fsys.SyncDir(filepath.Dir(r.path)); err != nil && !errors.Is(err, fs.ErrPermission) {
		return err
	}
	return nil
}

// sameFile says whether another handle is on the record's file.
func (r *Record) sameFile(other disk.File) (bool, error) {
	own, err := r.file.Stat()
	if err != nil {
		return false, err
	}
	info, err := other.Stat()
	if err != nil {
		return false, err
	}
	return r.fsys.Same(own, info), nil
}
