package journal

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"millside/counter"
	"millside/counter/disk"
)

// renewal is a file that has to be written anew before anything is added to it: it has foreign line ends, or more of
// its end is missing than a power cut takes.
type renewal struct {
	cut []byte // what can't be read at the end; kept in a file beside
}

// afterLoss is the state in which the next event finds the warp, and the event that tells of a loss, if there is one.
func (r *Record) afterLoss(next counter.Event) (counter.State, []counter.Event, error) {
	if r.renew == nil || r.lost.Lines == 0 {
		return r.state, nil, nil
	}
	lost := counter.Event{At: next.At, Kind: counter.Lost, Lines: r.lost.Lines}.Normal()
	s, err := r.state.Apply(lost)
	return s, []counter.Event{lost}, err
}

// renewed writes the file anew where that has to be done. It is never without its counted lines: the new file is
// written whole and synced, and then takes the place of the old one at one stroke.
func (r *Record) renewed(losses []counter.Event, after counter.State) error {
	if r.renew == nil {
		return nil
	}
	if err := r.unchanged(); err != nil {
		return err
	}
	path, err := r.fsys.Real(r.path)
	if err != nil {
		return err
	}
	if len(r.renew.cut) > 0 {
		if err := keepBeside(r.fsys, path, r.renew.cut); err != nil {
			return fmt.Errorf("keeping what can't be read: %w", err)
		}
	}
	events := r.events.with(losses...)
	data, sum := written(r.head, events.all())
	file, err := r.replace(path, data)
	if err != nil {
		return fmt.Errorf("writing the record anew: %w", err)
	}
	_ = r.file.Close() // it has no name any more
	r.file, r.own, r.renew, r.events, r.state = file, nil, nil, events, after
	r.lines, r.size, r.sum = events.len()+1, int64(len(data)), sum
	return nil
}

// replace puts a new file, locked, in the place of the record's.
func (r *Record) replace(path string, data []byte) (disk.File, error) {
	temp := filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".new")
	if err := r.fsys.Remove(temp); err != nil && !errors.Is(err, fs.ErrNotExist) { // from a program that was killed
		return nil, err
	}
	old, err := r.file.Stat()
	if err != nil {
		return nil, err
	}
	file, err := startFile(r.fsys, temp, data)
	if err != nil {
		return nil, err
	}
	err = file.Chmod(old.Mode().Perm())
	if err == nil && !disk.RenameOpen {
		err = errors.Join(r.file.Close(), file.Close())
	}
	if err == nil {
		err = r.fsys.Rename(temp, path)
	}
	if err != nil {
		return nil, errors.Join(err, file.Close(), r.fsys.Remove(temp))
	}
	if !disk.RenameOpen {
		if file, err = openPlain(r.fsys, path, os.O_RDWR|os.O_APPEND); err == nil {
			err = lock(file, path)
		}
	}
	if err == nil {
		err = r.fsys.SyncDir(filepath.Dir(path))
	}
	if err != nil {
		return nil, errors.Join(err, file.Close())
	}
	return file, nil
}

// keepBeside writes bytes that were cut off a record into a file beside it.
func keepBeside(fsys FS, path string, cut []byte) error {
	for n := 1; ; n++ {
		file, err := startFile(fsys, fmt.Sprintf("%s.cut-%d", path, n), cut)
		if errors.Is(err, fs.ErrExist) && n < maxSameName {
			continue
		}
		if err != nil {
			return err
		}
		return file.Close()
	}
}
