package counter

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"sync"

	"millside/plan"
)

// Record is a journal in a file. Its methods may be called from several goroutines.
type Record struct {
	mu     sync.Mutex
	path   string
	file   File // nil once closed, and in a record that is only looked at
	look   bool
	broken error
	events []Event
	state  State
	torn   string
	// lines, size and sum describe the sound part of the file; see [reading].
	lines int
	size  int64
	sum   uint32
}

// Create makes a new record for a plan and locks it for winding. The file must not exist yet; it can
// be read by its owner only. It and its folder are synced before Create returns. If anything fails the
// file is removed again.
func Create(fsys FS, path string, p *plan.Plan) (*Record, error) {
	if p == nil {
		return nil, errors.New("a record needs a plan")
	}
	p, err := plan.New(p.Spec) // as it will be read again
	if err != nil {
		return nil, err
	}
	head, err := appendHead(nil, p.Spec)
	if err != nil {
		return nil, err
	}
	head, sum := seal(head, 0)
	file, err := fsys.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_RDWR|os.O_APPEND, 0o600)
	if err != nil {
		return nil, fmt.Errorf("making a record: %w", err)
	}
	if err := startFile(fsys, file, path, head); err != nil {
		return nil, errors.Join(err, file.Close(), fsys.Remove(path))
	}
	return &Record{path: path, file: file, state: NewState(p), lines: 1, size: int64(len(head)), sum: sum}, nil
}

// startFile locks a new file, writes its first bytes and makes them and its name durable.
func startFile(fsys FS, file File, path string, data []byte) error {
	if err := lock(file, path); err != nil {
		return err
	}
	if err := writeAll(file, data); err != nil {
		return fmt.Errorf("making a record: %w", err)
	}
	if err := file.Sync(); err != nil {
		return fmt.Errorf("making a record: %w", err)
	}
	if err := fsys.SyncDir(filepath.Dir(path)); err != nil {
		return fmt.Errorf("making a record: %w", err)
	}
	return nil
}

// lock takes the lock for winding.
func lock(file File, path string) error {
	ok, err := file.TryLock()
	if err != nil {
		return fmt.Errorf("locking %s: %w", path, err)
	}
	if !ok {
		return fmt.Errorf("%w: %s", ErrLocked, path)
	}
	return nil
}

// writeAll writes with one call, and takes a short write for the error it is.
func writeAll(w io.Writer, data []byte) error {
	n, err := w.Write(data)
	if err == nil && n < len(data) {
		err = io.ErrShortWrite
	}
	return err
}

// State is the warp as the events so far leave it. It is not changed by later events.
func (r *Record) State() State {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.state
}

// Events is a copy of the events so far, in order.
func (r *Record) Events() []Event {
	r.mu.Lock()
	defer r.mu.Unlock()
	return slices.Clone(r.events)
}

// Torn says in plain words what was left out at the end of the file when it was opened; it is empty if
// nothing was.
func (r *Record) Torn() string { return r.torn }

// Path is the record's file.
func (r *Record) Path() string { return r.path }

// ReadOnly says whether the record was opened by [Look].
func (r *Record) ReadOnly() bool { return r.look }

// Close closes the file and gives the lock back. Everything that was counted is on the disk already.
// Closing again does nothing.
func (r *Record) Close() error {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.file == nil {
		return nil
	}
	file := r.file
	r.file = nil
	if err := file.Close(); err != nil {
		return fmt.Errorf("closing %s: %w", r.path, err)
	}
	return nil
}
