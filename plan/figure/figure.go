package figure

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// Figure is one thing that a formatter writes: [Text], [Count], [Number], [Duration], [Range], [List] or
// [Colour], and nothing else.
type Figure interface {
	// String writes it for a person.
	String() string
	figure()
}

// Text is words between figures.
type Text string

// String gives the words.
func (t Text) String() string { return string(t) }

// Count is a whole number of things. One and Many name them; both are empty for a bare number.
type Count struct {
	N         int
	One, Many string
}

// Counted is a count with its noun.
func Counted(n int, one, many string) Count { return Count{n, one, many} }

// Noun is the word behind the number; "" for a bare one.
func (c Count) Noun() string {
	if c.N == 1 {
		return c.One
	}
	return c.Many
}

// String writes the number and its noun: "1 pass", "40 passes".
func (c Count) String() string {
	if c.Many == "" {
		return strconv.Itoa(c.N)
	}
	return strconv.Itoa(c.N) + " " + c.Noun()
}

// Duration is a span of time in whole minutes, rounded up; About says that it is one of several that may be.
type Duration struct {
	Time  time.Duration
	About bool
}

// Minutes is the time in whole minutes, rounded up.
func (d Duration) Minutes() int {
	n := int(d.Time / time.Minute)
	if d.Time%time.Minute > 0 {
		n++
	}
	return n
}

// String writes it as "37 min", "2 h" or "about 1 h 20 min".
func (d Duration) String() string {
	text := ""
	if d.About {
		text = "about "
	}
	switch n := d.Minutes(); {
	case n < 60:
		return fmt.Sprintf("%s%d min", text, n)
	case n%60 == 0:
		return fmt.Sprintf("%s%d h", text, n/60)
	default:
		return fmt.Sprintf("%s%d h %d min", text, n/60, n%60)
	}
}

// Range is numbers from First to Last, both of them in it, such as those of ends.
type Range struct{ First, Last int }

// String writes it as "4 to 9", or "4" for one alone.
func (r Range) String() string {
	if r.First == r.Last {
		return strconv.Itoa(r.First)
	}
	return fmt.Sprintf("%d to %d", r.First, r.Last)
}

// List is rising numbers, such as those of passes.
type List []int

// String writes the numbers so that they can be read on a wall: "1 to 9", "2, 4, 6 ... 50", or each by itself.
// The points stand only for numbers that go on in even steps.
func (l List) String() string {
	if len(l) == 0 {
		return ""
	}
	step, even := 0, len(l) > 2
	for i := 1; i < len(l); i++ {
		if i == 1 {
			step = l[1] - l[0]
		}
		even = even && l[i]-l[i-1] == step
	}
	last := l[len(l)-1]
	switch {
	case even && step == 1:
		return fmt.Sprintf("%d to %d", l[0], last)
	case even && len(l) > 5:
		return fmt.Sprintf("%d, %d, %d ... %d", l[0], l[1], l[2], last)
	}
	parts := make([]string, len(l))
	for i, v := range l {
		parts[i] = strconv.Itoa(v)
	}
	return strings.Join(parts, ", ")
}

// Colour is a colour of the warp, by its letter and its name. Shade is "#" and six hexadecimal digits, or
// empty.
type Colour struct{ Letter, Name, Shade string }

// String writes the letter and the name, "C navy", or the shade where it has neither.
func (c Colour) String() string {
	if text := strings.TrimSpace(c.Letter + " " + c.Name); text != "" {
		return text
	}
	return c.Shade
}

func (Text) figure()     {}
func (Count) figure()    {}
func (Number) figure()   {}
func (Duration) figure() {}
func (Range) figure()    {}
func (List) figure()     {}
func (Colour) figure()   {}

// Named writes the range behind its noun: "end 4", "ends 4 to 9".
func (r Range) Named(one, many string) string {
	if r.First == r.Last {
		return one + " " + r.String()
	}
	return many + " " + r.String()
}
