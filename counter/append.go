package counter

import "fmt"

// Append adds an event: it is checked against the state, written as one line with one call, synced,
// and only then the state moves. It gives the state after it.
//
// With an error the state is the one before, and:
//   - an event that doesn't follow, or a text that won't do ([*plan.FieldError]), leaves the record as
//     it was, and so does [ErrFull];
//   - a failed write or sync gives [ErrBroken] with its cause, now and from then on. After a failed
//     sync the event may or may not be in the file: open the record anew to see;
//   - [ErrReadOnly] and [ErrClosed] speak for themselves.
func (r *Record) Append(e Event) (State, error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if err := r.ready(); err != nil {
		return r.state, err
	}
	if err := e.checkTime(); err != nil {
		return r.state, err
	}
	e = e.normal()
	next, err := r.state.Apply(e)
	if err != nil {
		return r.state, err
	}
	line, sum := seal(appendEvent(nil, r.lines+1, e), r.sum)
	if len(line) > maxLine || r.size+int64(len(line)) > maxRecord {
		return r.state, fmt.Errorf("%w: %s has %d lines", ErrFull, r.path, r.lines)
	}
	if err := r.write(line); err != nil {
		r.broken = fmt.Errorf("%w: %w", ErrBroken, err)
		return r.state, r.broken
	}
	r.lines++
	r.size += int64(len(line))
	r.sum = sum
	r.events = append(r.events, e)
	r.state = next
	return next, nil
}

// ready says why the record takes no events.
func (r *Record) ready() error {
	switch {
	case r.look:
		return fmt.Errorf("%w: %s", ErrReadOnly, r.path)
	case r.broken != nil:
		return r.broken
	case r.file == nil:
		return fmt.Errorf("%w: %s", ErrClosed, r.path)
	}
	return nil
}

// write puts a line on the disk. If it can't be written whole, what was written of it is cut off
// again as well as may be; if that fails too, the next opening does it. After a failed sync nothing is
// cut: the line may be on the disk.
func (r *Record) write(line []byte) error {
	if err := writeAll(r.file, line); err != nil {
		_ = r.file.Truncate(r.size)
		return err
	}
	return r.file.Sync()
}
