package tui

import (
	"fmt"
	"strconv"
	"strings"

	"millside/plan"
)

// board shows and takes the distances of a warping board in one line: "30 in x 8; 12 in".
type board plan.Board

// String writes the distances, equal neighbours drawn together.
func (b *board) String() string {
	var parts []string
	for i := 0; i < len(*b); {
		n := 1
		for i+n < len(*b) && (*b)[i+n] == (*b)[i] {
			n++
		}
		text := (*b)[i].String()
		if n > 1 {
			text = fmt.Sprintf("%s x %d", text, n)
		}
		parts = append(parts, text)
		i += n
	}
	return strings.Join(parts, "; ")
}

// maxDistances is the most distances that a board may have, as plan has it.
const maxDistances = 200

// UnmarshalText reads the distances.
func (b *board) UnmarshalText(text []byte) error {
	var all board
	for _, part := range strings.FieldsFunc(string(text), func(r rune) bool { return r == ';' }) {
		distance, times, found := strings.Cut(part, "x")
		n := 1
		if found {
			var err error
			if n, err = strconv.Atoi(strings.TrimSpace(times)); err != nil || n < 1 || n > maxDistances {
				return &plan.FieldError{Value: strings.TrimSpace(times), Want: fmt.Sprintf("how often, 1 to %d", maxDistances)}
			}
		}
		l, err := plan.ParseLength(distance)
		if err != nil {
			return err
		}
		for range n {
			all = append(all, l)
		}
		if len(all) > maxDistances {
			return &plan.FieldError{Value: string(text), Want: fmt.Sprintf("at most %d distances", maxDistances)}
		}
	}
	*b = all
	return nil
}
