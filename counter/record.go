package counter

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
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
