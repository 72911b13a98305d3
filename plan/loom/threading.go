package loom

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"millside/plan/field"
	"millside/plan/measure"
)

// MaxShafts is the most shafts that a threading may name.
const MaxShafts = 1000

// Shafts lists the shafts whose heddles an end goes through, from 1; it is empty for an end that goes
// through none, such as a floating selvedge.
type Shafts []int

// String writes them as a threading does: "3", "1+3", "0" for none.
func (s Shafts) String() string {
	if len(s) == 0 {
		return "0"
	}
	var b strings.Builder
	for i, n := range s {
		if i > 0 {
			b.WriteByte('+')
		}
		b.WriteString(strconv.Itoa(n))
	}
	return b.String()
}

// Threading says through which shafts each end goes, from end 1 on. It is a repeat: behind its last end it
// begins anew, so that the threading of a pattern serves a warp of any width. It never changes once made;
// the zero value leaves it out.
type Threading []Shafts

// At is the shafts of an end, counted from 1; nil where there is no threading.
func (t Threading) At(end int) Shafts {
	if len(t) == 0 || end < 1 {
		return nil
	}
	return t[(end-1)%len(t)]
}

// Highest is the highest shaft.
func (t Threading) Highest() int {
	most := 0
	for _, s := range t {
		for _, n := range s {
			most = max(most, n)
		}
	}
	return most
}

// Heddles is how many heddles each shaft needs for so many ends, shaft 1 first: as often as the shaft
// stands in the threading (common practice, no source).
func (t Threading) Heddles(ends int) []int {
	if len(t) == 0 || ends < 1 {
		return nil
	}
	need := make([]int, t.Highest())
	for i, s := range t {
		times := ends / len(t)
		if i < ends%len(t) {
			times++
		}
		for _, n := range s {
			need[n-1] += times
		}
	}
	return need
}

// Unthreaded is how many of so many ends go through no shaft.
func (t Threading) Unthreaded(ends int) int {
	n := 0
	for end := 1; end <= ends && len(t) > 0; end++ {
		if len(t.At(end)) == 0 {
			n++
		}
	}
	return n
}

// Check reports a threading of too many ends, or of shafts out of their range.
func (t Threading) Check() error {
	if len(t) > measure.MaxEnds {
		return measure.Outside("ends in the threading", len(t), 0, measure.MaxEnds, "")
	}
	for _, s := range t {
		for i, n := range s {
			if n < 1 || n > MaxShafts {
				return measure.Outside("shaft", n, 1, MaxShafts, "")
			}
			if slices.Contains(s[:i], n) {
				return &measure.FieldError{Field: field.Threading.Name, Value: s.String(),
					Want: "each shaft of an end once"}
			}
		}
	}
	return nil
}

// String writes the threading with its repeats in brackets: "24 times (1, 2, 3, 4), 1".
func (t Threading) String() string {
	var b strings.Builder
	writeThreading(&b, t)
	return b.String()
}

// longestThreadingRepeat is the most ends that a repeat is looked for in; a longer one stays written out.
const longestThreadingRepeat = 400

func writeThreading(b *strings.Builder, t []Shafts) {
	for i := 0; i < len(t); {
		length, times := repeatAt(t[i:])
		if i > 0 {
			b.WriteString(", ")
		}
		if times == 1 {
			b.WriteString(t[i].String())
		} else {
			fmt.Fprintf(b, "%d times (", times)
			writeThreading(b, t[i:i+length])
			b.WriteByte(')')
		}
		i += length * times
	}
}

// repeatAt is the repeat that saves most where a threading begins, 1 end once if none saves anything.
func repeatAt(t []Shafts) (length, times int) {
	length, times = 1, 1
	most := 2 // a bracket must save more ends than it takes to read
	for n := 1; n <= min(longestThreadingRepeat, len(t)/2); n++ {
		k := 1
		for (k+1)*n <= len(t) && slices.EqualFunc(t[:n], t[k*n:(k+1)*n], sameShafts) {
			k++
		}
		if saved := (k - 1) * n; saved > most {
			length, times, most = n, k, saved
		}
	}
	return length, times
}

func sameShafts(a, b Shafts) bool { return slices.Equal(a, b) }

// MarshalText writes the threading as String does.
func (t Threading) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// UnmarshalText reads what MarshalText wrote, and nothing else, so that a record writes what it read.
func (t *Threading) UnmarshalText(b []byte) error {
	got, err := ParseThreading(string(b))
	if err == nil && got.String() != string(b) {
		err = &measure.FieldError{Field: field.Threading.Name, Value: string(b), Want: got.String()}
	}
	if err == nil {
		*t = got
	}
	return err
}
