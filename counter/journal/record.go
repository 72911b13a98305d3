package journal

import (
	"errors"
	"fmt"
	"io/fs"
	"iter"
	"os"
	"path/filepath"
	"slices"
	"sync"

	"millside/counter"
	"millside/counter/disk"
	"millside/plan"
	"millside/plan/sheet"
)

// Record is a journal in a file. Its methods may be called from several goroutines.
type Record struct {
	mu       sync.Mutex
	fsys     FS
	path     string
	file     disk.File   // nil once closed, and in a record that is only looked at
	own      fs.FileInfo // which file that is; nil until it is asked for
	readOnly bool
	failed   error
	events   history
	state    counter.State
	torn     string
	lost     Loss
	// head is the first line with its checksum; lines and sum are the lines and the last checksum.
	head  []byte
	lines int
	sum   uint32
	// size is the size of the file.
	size int64
	// renew is what has to be done to the file before anything is added to it; nil if nothing has.
	renew *renewal
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
	body, err := appendHead(nil, p.Spec)
	if err != nil {
		return nil, err
	}
	line, sum := seal(body, 0)
	file, err := startFile(fsys, path, line)
	if err != nil {
		return nil, err
	}
	return &Record{fsys: fsys, path: path, file: file, state: counter.NewState(p),
		head: line[:len(line)-1], lines: 1, size: int64(len(line)), sum: sum}, nil
}

// startFile makes a new file, locks it, writes its first bytes and makes them and its name durable. If that fails it
// is removed again.
func startFile(fsys FS, path string, data []byte) (disk.File, error) {
	file, err := fsys.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_RDWR|os.O_APPEND, 0o600)
	if err != nil {
		return nil, fmt.Errorf("making a record: %w", err)
	}
	err = lock(file, path)
	if err == nil {
		err = disk.WriteAll(file, data)
	}
	if err == nil {
		err = file.Sync()
	}
	if err == nil {
		err = fsys.SyncDir(filepath.Dir(path))
	}
	if err != nil {
		return nil, errors.Join(fmt.Errorf("making a record: %w", err), file.Close(), fsys.Remove(path))
	}
	return file, nil
}

// lock takes the lock for winding.
func lock(file disk.File, path string) error {
	ok, err := file.TryLock()
	if errors.Is(err, disk.ErrNoLocks) {
		return fmt.Errorf("locking %s: %w; if no other window or computer winds this warp, 'millside --alone' goes "+
			"on without one", path, err)
	}
	if err != nil {
		return fmt.Errorf("locking %s: %w", path, err)
	}
	if !ok {
		return fmt.Errorf("%w: %s", ErrLocked, path)
	}
	return nil
}

// written is the bytes of a record, from its first line with its checksum on, and the last checksum.
func written(head []byte, events iter.Seq[counter.Event]) ([]byte, uint32) {
	_, sum := seal(slices.Clone(head[:len(head)-sumLen]), 0)
	data := append(slices.Clone(head), '\n')
	var line []byte
	n := counter.FirstLine
	for e := range events {
		line, sum = seal(counter.AppendEvent(line[:0], n, e), sum)
		data = append(data, line...)
		n++
	}
	return data, sum
}

// State is the warp as the events so far leave it. It is not changed by later events.
func (r *Record) State() counter.State {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.state
}

// Events is a copy of the events so far, in order.
func (r *Record) Events() []counter.Event {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.events.list()
}

// All goes through the events so far, in order, without a list of them.
func (r *Record) All() iter.Seq[counter.Event] {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.events.all()
}

// PaceOverall is the pace over all passes; see the function of that name.
func (r *Record) PaceOverall() counter.PaceResult { return counter.PaceOverall(r.All()) }

// HandOver is what the loom must know; see the function of that name.
func (r *Record) HandOver() sheet.Part { return counter.HandOver(r.State(), r.All()) }

// Torn says in plain words what was left out at the end of the file when it was opened; it is empty if
// nothing was.
func (r *Record) Torn() string { return r.torn }

// Lost is what was missing at the end of the file when it was opened, beyond the one line that a power cut can take.
// The file is left as it is until an event is added; then the loss goes on the record as an event of its own.
func (r *Record) Lost() Loss { return r.lost }

// Path is the record's file.
func (r *Record) Path() string { return r.path }

// ReadOnly says whether the record was opened by [OpenReadOnly].
func (r *Record) ReadOnly() bool { return r.readOnly }

// Close closes the file and gives the lock back. Everything that was counted is on the disk already.
// Closing again does nothing.
func (r *Record) Close() error {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.close()
}

func (r *Record) close() error {
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
