package journal

import (
	"bytes"
	"fmt"
	"math"

	"millside/counter"
	"millside/plan/measure"
)

// Loss is what is missing at the end of a record beyond the one line that can be on its way to the disk when the power
// goes: it had been counted.
type Loss struct {
	// Lines is how many lines are missing, as well as can be told from the bytes; 0 if none are.
	Lines int
	// Bytes is how many bytes at the end of the file can't be read.
	Bytes int
	// About says that Lines is reckoned from the length of the lines before.
	About bool
}

// String says how much is missing: "about 9 lines (512 bytes)".
func (l Loss) String() string {
	about := ""
	if l.About {
		about = "about "
	}
	return fmt.Sprintf("%s%s (%s)", about, measure.Counted(l.Lines, "line", "lines"),
		measure.Counted(l.Bytes, "byte", "bytes"))
}

const (
	// plainLine is longer than any line of an event without a text, and shorter than two of them and a half. The
	// longest has two large numbers, a length and a weight.
	plainLine = 160
	// usualLine is the length of a line about a pass laid, for a record that has none yet.
	usualLine = 57
)

// tail judges what stands after the last sound line, if it can be the end of a record. One line can be on its way to
// the disk at a time: what may be its rest was never counted. More than that was. False means that it is neither,
// but damage inside.
func (r *reading) tail(rest []byte) bool {
	text := bytes.TrimRight(rest, "\x00")
	if i := bytes.IndexAny(text, "\r\n"); i >= 0 && len(bytes.TrimLeft(text[i:], blanks)) > 0 {
		return false
	}
	ended := bytes.HasSuffix(rest, []byte{'\n'})
	hollow := r.hollow(rest)
	line := r.lines + 1
	if (ended && !hollow) || len(rest) > r.mostInFlight(text) {
		r.lost = r.missing(rest)
		r.tornLine = line
		r.torn = fmt.Sprintf("%s at the end can't be read, from line %d on: more than a power cut takes, so passes "+
			"that were counted are missing", r.lost, line)
		return true
	}
	r.tornLine = line
	if len(text) == 0 {
		r.torn = fmt.Sprintf("after line %d the file had %s, as a power cut can leave, and they are not counted",
			r.lines, measure.Counted(len(rest), "empty byte", "empty bytes"))
		return true
	}
	r.torn = fmt.Sprintf("line %d was cut short, as a power cut can do, and is not counted: %s", line, quote(text))
	return true
}

// sector is what a disk writes at one stroke, in bytes; larger ones are multiples of it.
const sector = 512

// hollow says whether the bytes have empty places such as a write leaves that was not finished: up to the end of a
// sector, or to the end of the file.
func (r *reading) hollow(rest []byte) bool {
	found := false
	for i := 0; i < len(rest); i++ {
		if rest[i] != 0 || i+1 < len(rest) && rest[i+1] == 0 {
			continue
		}
		if i+1 < len(rest) && (r.end+i+1)%sector != 0 {
			return false
		}
		found = true
	}
	return found
}

// mostInFlight is the longest that the rest of one line may be, from what can be read of it.
func (r *reading) mostInFlight(text []byte) int {
	parts := bytes.SplitN(text, []byte{' '}, 4)
	if len(parts) < 4 {
		return plainLine
	}
	if counter.Kind(parts[2]).HasText() {
		return maxLine
	}
	return plainLine
}

// missing reckons how many lines stood in the bytes that can't be read.
func (r *reading) missing(rest []byte) Loss {
	length := float64(usualLine)
	if events := r.lines - 1; events > 0 {
		length = float64(r.size-len(r.head)-1) / float64(events)
	}
	return Loss{Lines: max(1, int(math.Round(float64(len(rest))/length))), Bytes: len(rest), About: true}
}
