package wind

import (
	"fmt"
	"strings"

	"millside/plan/field"
	"millside/plan/measure"
)

// Laid says how stripes that are written come to the ends that are wanted, by a cloth's width or by a number.
type Laid uint8

// The ways to lay them.
const (
	AsWritten    Laid = iota // the stripes say how many ends there are
	Repeated                 // side by side until the ends are there, the last time broken off
	WholeRepeats             // side by side as often as they go in whole
	CutToEnds                // once, and cut where the ends are there
)

// String gives the name that a plan file uses.
func (l Laid) String() string { return measure.OneOf(int(l), field.StripesLaid.Words...) }

// MarshalText writes the name.
func (l Laid) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// UnmarshalText reads the name.
func (l *Laid) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(strings.ReplaceAll(string(b), "-", " "), field.StripesLaid.Words...)
	*l = Laid(i)
	return err
}

// Laying is how the stripes of a warp were laid. The zero value says that they are the warp.
type Laying struct {
	How Laid `json:"how,omitzero"`
	// Written is how many ends the stripes have as they are written, Wanted how many the cloth's width or the weaver
	// asks for; both are 0 where nothing is asked for beside the stripes.
	Written int `json:"written,omitzero"`
	Wanted  int `json:"wanted,omitzero"`
}

// Ends is how many ends come of it.
func (l Laying) Ends() int {
	switch {
	case l.Wanted == 0 || l.How == AsWritten:
		return l.Written
	case l.How == Repeated:
		return l.Wanted
	case l.How == WholeRepeats:
		return l.Wanted / max(l.Written, 1) * l.Written
	}
	return min(l.Written, l.Wanted)
}

// Off says how many ends the warp has more (above 0) or fewer (below 0) than are wanted.
func (l Laying) Off() int {
	if l.Wanted == 0 {
		return 0
	}
	return l.Ends() - l.Wanted
}

// Text says what was made of the stripes as written, and what is left over; "" where there is nothing to say.
func (l Laying) Text() string {
	if l.Wanted == 0 || l.How == AsWritten && l.Off() == 0 {
		return ""
	}
	ends := func(n int) string { return measure.Counted(n, "end", "ends") }
	times, over := l.Wanted/max(l.Written, 1), l.Wanted%max(l.Written, 1)
	once := ends(l.Written) + " " + measure.Counted(times, "time", "times")
	switch {
	case l.How == AsWritten || l.How == CutToEnds && l.Written <= l.Wanted:
		return fmt.Sprintf("%s as written%s", ends(l.Written), l.offText())
	case l.How == CutToEnds || times == 0:
		return fmt.Sprintf("cut from %s to the first %d: the other %d are left out", ends(l.Written), l.Wanted,
			l.Written-l.Wanted)
	case l.How == WholeRepeats:
		return once + l.offText()
	case over == 0:
		return once
	}
	return fmt.Sprintf("%s, and the first %d once more: the other %d of the last time are left out", once, over,
		l.Written-over)
}

// offText says how far the warp is from what is wanted.
func (l Laying) offText() string {
	switch off := l.Off(); {
	case off > 0:
		return fmt.Sprintf(", %d more than the %d that are wanted", off, l.Wanted)
	case off < 0:
		return fmt.Sprintf(", %d fewer than the %d that are wanted", -off, l.Wanted)
	}
	return ""
}
