package counter

import (
	"bytes"
	"errors"
	"fmt"
)

// reading is what a record's bytes hold, as far as they are sound.
type reading struct {
	events []Event
	fold   *folder // nil if the first line is wrong
	// sound is the part of the file that is sound; lines and sum are its lines and its last checksum.
	sound []byte
	lines int
	sum   uint32
	// unended says that the last sound line lacks its line feed.
	unended bool
	// torn says what was left out at the end, and tornLine which line that is; empty if nothing was.
	torn     string
	tornLine int
}

// state is the warp after the sound events; the zero State if the first line is wrong.
func (r *reading) state() State {
	if r.fold == nil {
		return State{}
	}
	return r.fold.settled()
}

// read takes a record apart. An error is a [*DamageError], or wraps [ErrNewer]; what was read up to
// there is in the result.
func read(path string, data []byte) (reading, error) {
	var r reading
	whole := bytes.TrimRight(data, "\x00")
	for rest := whole; len(rest) > 0; {
		line, after, ended := bytes.Cut(rest, []byte{'\n'})
		if len(line) >= maxLine {
			return r, r.damaged(path, fmt.Errorf("it is longer than %d bytes", maxLine))
		}
		body, sum, err := unseal(line, r.sum)
		if err != nil && !ended && r.fold != nil {
			r.tornLine = r.lines + 1
			r.torn = fmt.Sprintf("line %d was cut short, as a power cut can do, and is not counted: %q", r.tornLine, shorten(string(line)))
			return r, nil
		}
		if err == nil {
			err = r.take(body)
		}
		if errors.Is(err, ErrNewer) {
			return r, fmt.Errorf("%s: %w", path, err)
		}
		if err != nil {
			return r, r.damaged(path, err)
		}
		r.sum = sum
		r.lines++
		r.sound = data[:len(whole)-len(after)]
		r.unended = !ended
		rest = after
	}
	if r.fold == nil {
		return r, r.damaged(path, errors.New("the file is empty"))
	}
	if n := len(data) - len(whole); n > 0 {
		r.torn = fmt.Sprintf("after line %d the file had %d empty bytes, as a power cut can leave, and they are not counted", r.lines, n)
		r.tornLine = r.lines + 1
	}
	return r, nil
}

// take reads the next line, less its checksum, and folds it in.
func (r *reading) take(body []byte) error {
	if r.fold == nil {
		p, err := parseHead(body)
		if err != nil {
			return err
		}
		r.fold = newFolder(NewState(p))
		return nil
	}
	e, err := parseEvent(body, r.lines+1)
	if err != nil {
		return err
	}
	if err := r.fold.apply(e); err != nil {
		return fmt.Errorf("it doesn't follow from the lines before it: %w", err)
	}
	r.events = append(r.events, e)
	return nil
}

// damaged is the error for the line after the sound ones.
func (r *reading) damaged(path string, why error) error {
	return &DamageError{Path: path, Line: r.lines + 1, Why: why.Error()}
}
