package journal

import (
	"errors"
	"fmt"
	"io/fs"

	"millside/counter"
	"millside/counter/disk"
)

// Append adds an event: it is checked against the state, written as one line with one call, synced,
// and only then the state moves. It gives the state after it.
//
// Before it writes, it makes sure that the file is the one that was opened, at its path and as it was left. Where a
// loss was found at opening ([Record.Lost]) the first event that is added puts it on the record first; the bytes
// that can't be read are kept in a file beside.
//
// With an error the state is the one before, and:
//   - an event that doesn't follow, or a text that won't do ([*measure.FieldError]), leaves the record as
//     it was, and so does [ErrFull];
//   - a failed write or sync gives [ErrFailed] with its cause, now and from then on, and so does [ErrReplaced]. After a
//     failed sync the event may or may not be in the file: [Record.Reopen] sees;
//   - [ErrReadOnly] and [ErrClosed] speak for themselves.
func (r *Record) Append(e counter.Event) (counter.State, error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if err := r.ready(); err != nil {
		return r.state, err
	}
	if err := e.CheckTime(); err != nil {
		return r.state, err
	}
	e = e.Normal()
	before, losses, err := r.afterLoss(e)
	if err != nil {
		return r.state, err
	}
	next, err := before.Apply(e)
	if err != nil {
		return r.state, err
	}
	if err := r.renewed(losses, before); err != nil {
		return r.state, r.fails(err)
	}
	line, sum := seal(counter.AppendEvent(nil, r.lines+1, e), r.sum)
	if len(line) > maxLine || r.size+int64(len(line)) > maxRecord {
		return r.state, fmt.Errorf("%w: %s has %d lines", ErrFull, r.path, r.lines)
	}
	if err := r.write(line); err != nil {
		return r.state, r.fails(err)
	}
	r.lines++
	r.size += int64(len(line))
	r.sum = sum
	r.events.add(e)
	r.state = next
	return next, nil
}

// fails is the error of a record that takes nothing more.
func (r *Record) fails(err error) error {
	r.failed = fmt.Errorf("%w: %w", ErrFailed, err)
	return r.failed
}

// ready says why the record takes no events.
func (r *Record) ready() error {
	switch {
	case r.readOnly:
		return fmt.Errorf("%w: %s", ErrReadOnly, r.path)
	case r.failed != nil:
		return r.failed
	case r.file == nil:
		return fmt.Errorf("%w: %s", ErrClosed, r.path)
	}
	return nil
}

// write puts a line on the disk. If it can't be written whole, what was written of it is cut off
// again as well as may be; if that fails too, the next opening does it. After a failed sync nothing is
// cut: the line may be on the disk.
func (r *Record) write(line []byte) error {
	if err := r.unchanged(); err != nil {
		return err
	}
	if err := disk.WriteAll(r.file, line); err != nil {
		_ = r.file.Truncate(r.size)
		return err
	}
	// Another program may have written between the look and the line.
	if info, err := r.file.Stat(); err != nil {
		return err
	} else if want := r.size + int64(len(line)); info.Size() != want {
		return replaced("another program wrote to it at the same time")
	}
	return r.file.Sync()
}

// unchanged makes sure that the file is as it was left, and the one that stands at its path. The last checksum stands
// for all that is before it.
func (r *Record) unchanged() error {
	at, err := r.fsys.Stat(r.path)
	if errors.Is(err, fs.ErrNotExist) {
		return replaced("it was removed or moved")
	}
	if err != nil {
		return err
	}
	if r.own == nil {
		if r.own, err = r.file.Stat(); err != nil {
			return err
		}
	}
	switch {
	case !r.fsys.Same(at, r.own):
		return replaced("another file has taken its place")
	case at.Size() < r.size:
		return replaced("it was made shorter")
	case at.Size() > r.size:
		return replaced("another program has written to it")
	case r.renew != nil:
		return nil // the end is not a line of ours
	}
	var last [9]byte
	if _, err := r.file.ReadAt(last[:], r.size-int64(len(last))); err != nil {
		return err
	}
	if string(last[:]) != fmt.Sprintf("%08x\n", r.sum) {
		return replaced("something else was written over it")
	}
	return nil
}

func replaced(how string) error { return fmt.Errorf("%w: %s", ErrReplaced, how) }
