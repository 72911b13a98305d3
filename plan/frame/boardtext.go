package frame

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"millside/plan/measure"
)

const boardWants = "the distances from peg to peg, such as 36 in x 10, 18 in"

// MaxBoardText is the longest text of a board that is read, in bytes.
const MaxBoardText = 2000

// repeated parts a distance from how often it comes: "36 in x 10".
var repeated = regexp.MustCompile(`^(.*\S)\s*(?:x|times)\s*([0-9]{1,3})$`)

// ParseBoard reads a board: its distances from peg to peg with commas or semicolons between, in the order
// in which the warp goes round them. A distance that comes several times over is written once, "36 in x
// 10". A comma that a digit follows at once is a decimal comma. Each distance is 1 cm to 10 m, and there
// are 1 to 200 of them. The error is a [*measure.FieldError], without a field name where the text can't be read.
func ParseBoard(s string) (Board, error) {
	if strings.TrimSpace(s) == "" || len(s) > MaxBoardText {
		return nil, &measure.FieldError{Value: measure.Shortened(s), Want: boardWants}
	}
	var b Board
	for _, part := range measure.SplitList(s) {
		text, n := strings.TrimSpace(part), 1
		if m := repeated.FindStringSubmatch(text); m != nil {
			text = m[1]
			n, _ = strconv.Atoi(m[2]) // three digits at the most
		}
		d, err := measure.ParseLength(text)
		if err != nil || n == 0 {
			return nil, &measure.FieldError{Value: part, Want: boardWants}
		}
		for range n {
			b = append(b, d)
		}
		if len(b) > maxDistances {
			break // check says so
		}
	}
	return b, b.checkDistances()
}

// String writes the board as ParseBoard reads it; "" for no board.
func (b Board) String() string {
	var parts []string
	for i := 0; i < len(b); {
		n := 1
		for i+n < len(b) && b[i+n] == b[i] {
			n++
		}
		text := b[i].String()
		if n > 1 {
			text += fmt.Sprintf(" x %d", n)
		}
		parts = append(parts, text)
		i += n
	}
	return strings.Join(parts, ", ")
}
