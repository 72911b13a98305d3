package journal

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"
)

// Reopen opens a record anew that could not be written, and gives the lock of the old one back. What was counted must
// be in the file still: otherwise the error is [ErrReplaced], and [Record.SaveBeside] can save it. Other errors are
// those of [Open].
func (r *Record) Reopen() (*Record, error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	_ = r.close() // it may not close well either; what counts is what is in the file
	next, err := Open(r.fsys, r.path)
	if err != nil {
		return nil, err
	}
	if err := r.holds(next); err != nil {
		return nil, errors.Join(fmt.Errorf("%w: %w", ErrFailed, err), next.Close())
	}
	return next, nil
}

// holds makes sure that a record that was opened anew holds what was counted.
func (r *Record) holds(next *Record) error {
	if string(next.head) != string(r.head) {
		return replaced("another record has taken its place")
	}
	if next.lines < r.lines {
		return replaced(fmt.Sprintf("%d of the %d lines that were counted are in it", next.lines, r.lines))
	}
	if _, sum := written(next.head, next.events.first(r.lines-1)); sum != r.sum {
		return replaced("it is not as it was wound")
	}
	return nil
}

// SaveBeside writes all that was counted into a new record beside the old one and opens that for winding. It is the way
// on where the file was replaced or the disk doesn't take it any more; the old file is left as it is.
func (r *Record) SaveBeside() (*Record, error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	data, sum := written(r.head, r.events.all())
	base := strings.TrimSuffix(r.path, Extension) + "-saved"
	for n := 1; n <= maxSameName; n++ {
		path := base + Extension
		if n > 1 {
			path = fmt.Sprintf("%s-%d%s", base, n, Extension)
		}
		file, err := startFile(r.fsys, path, data)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return nil, err
		}
		return &Record{fsys: r.fsys, path: path, file: file, events: r.events.with(), state: r.state,
			head: r.head, lines: r.lines, size: int64(len(data)), sum: sum}, nil
	}
	return nil, fmt.Errorf("saving beside: too many records of that name in %s", filepath.Dir(r.path))
}
