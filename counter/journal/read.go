package journal

import (
	"bytes"
	"errors"
	"fmt"
	"millside/counter"
	"millside/plan/measure"
	"unicode/utf8"
)

// reading is what a record's bytes hold, as far as they are sound.
type reading struct {
	events history
	fold   *counter.Folder // nil if the first line is wrong
	// head is the first line with its checksum, as it is written.
	head []byte
	// lines, sum and size are the lines of the sound part, its last checksum and its length, as this program
	// writes them; end is where that part ends in the file as it is.
	lines int
	sum   uint32
	size  int
	end   int
	// foreign says that the sound part is in the file with other line ends, a byte order mark or blank lines.
	foreign bool
	// unended says that the last sound line lacks its line end.
	unended bool
	// last is where the last sound line begins in the file.
	last int
	// torn says what was left out at the end, and tornLine which line that is; empty if nothing was.
	torn     string
	tornLine int
	// lost is what is missing beyond the one line that can be in flight.
	lost Loss
}

// state is the warp after the sound events; the zero State if the first line is wrong.
func (r *reading) state() counter.State {
	if r.fold == nil {
		return counter.State{}
	}
	return r.fold.State()
}

// byteOrderMark is what some programs put before UTF-8 text (Unicode Standard 16.0, section 23.8).
var byteOrderMark = []byte("\ufeff")

// read takes a record apart. An error is a [*DamageError], or wraps [ErrNewer]; what was read up to
// there is in the result.
func read(path string, data []byte) (reading, error) {
	var r reading
	r.events.short = make([]short, 0, bytes.Count(data, []byte{'\n'}))
	for r.end = beginning(data); r.end < len(data); {
		rest := data[r.end:]
		if r.fold != nil && r.blank(rest) {
			break
		}
		line, n, ended := cutLine(rest)
		if len(line) >= maxLine {
			return r, r.damaged(path, data, fmt.Errorf("it is longer than %d bytes", maxLine))
		}
		body, sum, err := unseal(line, r.sum)
		if err != nil && r.fold != nil && r.tail(rest) {
			return r, nil
		}
		if err != nil && r.fold == nil && !ended {
			err = errUnmade
		}
		if err == nil {
			err = r.take(body)
		}
		if errors.Is(err, ErrNewer) {
			return r, fmt.Errorf("%s: %w", path, err)
		}
		if err != nil {
			return r, r.damaged(path, data, err)
		}
		r.took(line, n, sum, ended)
		if ended && string(rest[len(line):n]) != "\n" {
			r.foreign = true
		}
	}
	if r.fold == nil {
		return r, r.damaged(path, data, errUnmade)
	}
	r.foreign = r.foreign || !r.unended && r.end != r.size
	return r, nil
}

// LooksLikeRecord says whether a file that begins with these bytes is a record or was meant to be one. Fewer than 64
// bytes are enough.
func LooksLikeRecord(data []byte) bool {
	return bytes.HasPrefix(data[min(beginning(data), len(data)):], []byte(magic+" "))
}

// errUnmade is what is wrong with a file that holds no plan yet.
var errUnmade = errors.New("the file ends before its plan does, as after a power cut while the record was made: " +
	"then no pass was counted in it")

// beginning is where a record begins: after a byte order mark and blank lines.
func beginning(data []byte) int {
	rest := bytes.TrimPrefix(data, byteOrderMark)
	return len(data) - len(bytes.TrimLeft(rest, blanks))
}

// blanks are what a blank line may hold.
const blanks = " \t\r\n"

// blank says whether only blank lines follow, and takes them in.
func (r *reading) blank(rest []byte) bool {
	if len(bytes.TrimLeft(rest, blanks)) > 0 {
		return false
	}
	r.end += len(rest)
	return true
}

// cutLine cuts the first line off. N is how far it reaches with its end, which is a line feed, with or without a
// carriage return before it. A record has no other carriage returns: its texts are quoted. So one by itself is a line
// end too.
func cutLine(data []byte) (line []byte, n int, ended bool) {
	i := bytes.IndexAny(data, "\r\n")
	if i < 0 {
		// A power cut can leave empty bytes in place of a line end.
		return bytes.TrimRight(data, "\x00"), len(bytes.TrimRight(data, "\x00")), false
	}
	if data[i] == '\r' && i+1 < len(data) && data[i+1] == '\n' {
		return data[:i], i + 2, true
	}
	return data[:i], i + 1, true
}

// took moves over a sound line.
func (r *reading) took(line []byte, n int, sum uint32, ended bool) {
	if r.lines == 0 {
		r.head = line
		r.foreign = r.end > 0
	}
	r.last = r.end
	r.sum = sum
	r.lines++
	r.size += len(line) + 1
	r.end += n
	r.unended = !ended
}

// headOf is [parseHead]; a test that reads very many records keeps what it gave.
var headOf = parseHead

// take reads the next line, less its checksum, and folds it in.
func (r *reading) take(body []byte) error {
	if r.fold == nil {
		p, err := headOf(body)
		if err != nil {
			return err
		}
		r.fold = counter.NewFolder(counter.NewState(p))
		return nil
	}
	e, err := counter.ParseEvent(body, r.lines+1)
	if err != nil {
		return err
	}
	if err := r.fold.Apply(e); err != nil {
		return fmt.Errorf("it doesn't follow from the lines before it: %w", err)
	}
	r.events.add(e)
	return nil
}

// damaged is the error for the line after the sound ones.
func (r *reading) damaged(path string, data []byte, why error) error {
	rest := bytes.TrimRight(data[r.end:], "\x00"+blanks)
	return &DamageError{Path: path, Line: r.lines + 1, Why: why.Error(), After: bytes.Count(rest, []byte{'\n'})}
}

// quote shows the beginning of some bytes of a file in a message.
func quote(b []byte) string {
	const most = 200 // more than is shown
	b = b[:min(len(b), most)]
	for len(b) > 0 && !utf8.Valid(b) && len(b) == most {
		b = b[:len(b)-1]
	}
	return fmt.Sprintf("%q", measure.Shortened(string(b)))
}
