package loom

import (
	"fmt"
	"slices"
)

// Threaded is a warp in the heddles. A repeat fills what its beginning and its end leave.
type Threaded struct {
	// Begin stands before the repeats, from end 1 on, and End behind them; both may be empty.
	Begin, Repeat, End Threading
	// Ends is the ends of the warp, Doubled how many ends at each edge are drawn double and Floating how many
	// floating selvedges are among them: as in [Sleying]. The two ends of a doubled pair share a heddle, and a floating
	// selvedge goes through none (both from memory).
	Ends, Doubled, Floating int
	// FirstEnd is the side on which end 1 lies: of an odd number of floating ones, one more is on the left.
	FirstEnd Side
}

// EndByEnd says that the threading is as long as the warp, and so names the shafts of each end by itself, floating
// and doubled ones too.
func (t Threaded) EndByEnd() bool { return len(t.Begin)+len(t.End) == 0 && len(t.Repeat) >= t.Ends }

// Places is how many heddle places there are from edge to edge: ends, less the floating ones and one of each doubled
// pair.
func (t Threaded) Places() int {
	if t.EndByEnd() {
		return t.Ends
	}
	return max(t.Ends-t.Floating-2*t.Doubled, 0)
}

// Repeats is how often the whole repeat stands between the beginning and the end, and how many of its ends are left
// over there. It is 0, 0 where the beginning and the end leave no place.
func (t Threaded) Repeats() (times, over int) {
	if len(t.Repeat) == 0 {
		return 0, 0
	}
	left := max(t.Places()-len(t.Begin)-len(t.End), 0)
	return left / len(t.Repeat), left % len(t.Repeat)
}

// Lacking is how many places there are too few for the beginning and the end, or too many where there is no repeat to
// fill them; 0 where it comes out.
func (t Threaded) Lacking() int {
	over := len(t.Begin) + len(t.End) - t.Places()
	if over < 0 && len(t.Repeat) > 0 {
		return 0
	}
	return over
}

// shafts is those of a place, counted from 1.
func (t Threaded) shafts(place int) Shafts {
	fromEnd := t.Places() - place // 0 for the last one
	switch {
	case place <= len(t.Begin):
		return t.Begin[place-1]
	case fromEnd < len(t.End):
		return t.End[len(t.End)-1-fromEnd]
	}
	return t.Repeat.At(place - len(t.Begin))
}

// place is that of an end; 0 for a floating one.
func (t Threaded) place(end int) int {
	if t.EndByEnd() {
		return end
	}
	end -= t.floatingFirst()
	inside := t.Ends - t.Floating
	switch {
	case end < 1 || end > inside:
		return 0
	case end <= 2*t.Doubled:
		return (end + 1) / 2
	case end > inside-2*t.Doubled:
		return t.Places() - (inside-end)/2
	}
	return end - t.Doubled
}

// At is the shafts of an end of the warp, 1 to Ends; none for an end through no heddle.
func (t Threaded) At(end int) Shafts {
	if p := t.place(end); p > 0 && end <= t.Ends {
		return t.shafts(p)
	}
	return nil
}

// All is the threading of the whole warp, a place at a time.
func (t Threaded) All() Threading {
	all := make(Threading, 0, t.Places())
	for p := range t.Places() {
		all = append(all, t.shafts(p+1))
	}
	return all
}

// DoubledRule says how the ends of doubled pairs are told in heddles (from memory).
const DoubledRule = "Two ends that are worked as one share a heddle, and so are counted once."

// Heddles is how many heddles each shaft needs, shaft 1 first, as often as the shaft stands in the threading of all
// places (common practice, no source). A doubled pair is counted once, also where each of its ends is named by itself.
func (t Threaded) Heddles() []int {
	all := t.All()
	need := all.Heddles(len(all))
	if !t.EndByEnd() {
		return need
	}
	for _, end := range t.pairs() {
		if first := t.At(end); sameShafts(first, t.At(end+1)) {
			for _, n := range first {
				need[n-1]--
			}
		}
	}
	return need
}

// pairs is the first end of each doubled pair.
func (t Threaded) pairs() []int {
	before := t.floatingFirst()
	last := t.Ends - (t.Floating - before)
	var list []int
	for i := range t.Doubled {
		list = append(list, before+2*i+1, last-2*i-1)
	}
	return list
}

// floatingFirst is how many floating selvedges lie before the others, from end 1 on.
func (t Threaded) floatingFirst() int {
	if t.FirstEnd == LeftSide {
		return (t.Floating + 1) / 2
	}
	return t.Floating / 2
}

// NoHeddle is how many ends go through no heddle.
func (t Threaded) NoHeddle() int {
	all := t.All()
	n := all.Unthreaded(len(all))
	if !t.EndByEnd() {
		n += t.Floating
	}
	return n
}

// HeddleWork is what is to be done before threading with the heddles that a loom has.
type HeddleWork struct {
	// Moves lists what is moved from a shaft to another.
	Moves []HeddleMove
	// Add is how many heddles are still lacking on each shaft, and Beyond how many of the shafts needed the loom
	// hasn't got; its heddles aren't counted there.
	Add    []int
	Beyond int
}

// HeddleMove is heddles that go from one shaft to another, both counted from 1.
type HeddleMove struct{ Heddles, From, To int }

// String says it: "20 from shaft 4 to shaft 1".
func (m HeddleMove) String() string {
	return fmt.Sprintf("%d from shaft %d to shaft %d", m.Heddles, m.From, m.To)
}

// WorkOnHeddles sets the heddles that each shaft needs against those that are on it. Shafts with too few get the spare
// ones of the others, from the shaft with the most; what is then lacking is to be added.
func WorkOnHeddles(need, have []int) HeddleWork {
	w := HeddleWork{Add: make([]int, min(len(need), len(have))), Beyond: max(len(need)-len(have), 0)}
	spare := slices.Clone(have)
	for i := range w.Add {
		spare[i] -= need[i]
	}
	for i := range w.Add {
		for spare[i] < 0 {
			from := 0
			for j, n := range spare {
				if n > spare[from] {
					from = j
				}
			}
			n := min(spare[from], -spare[i])
			if n <= 0 {
				w.Add[i], spare[i] = -spare[i], 0
				break
			}
			spare[from] -= n
			spare[i] += n
			w.Moves = append(w.Moves, HeddleMove{n, from + 1, i + 1})
		}
	}
	return w
}
