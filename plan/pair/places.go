package pair

import (
	"fmt"
	"slices"
	"strings"

	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/stripe"
)

// Which is one of the two warps.
type Which uint8

// The two warps.
const (
	Ground Which = iota
	Second
)

// String gives "ground" or "second".
func (w Which) String() string { return measure.OneOf(int(w), "ground", "second") }

// Other is the other warp.
func (w Which) Other() Which { return 1 - w }

// longestRepeat is the longest order that is taken where none is given, in ends.
const longestRepeat = 12

// Places is in which order the ends of both warps lie side by side.
type Places struct {
	// Order is the warp of each end from the left.
	Order []Which
	// Text is the order as it repeats, Repeat how many ends it has, Times how often it stands there whole, and Over how
	// many ends of it stand there once more.
	Text                string
	Repeat, Times, Over int
	of                  [2][]int // the places of each warp's ends, from the left, counted from 1
	first               [2]loom.Side
}

// Lay lays so many ends of the ground and of the second in an order, which is written from the left in the notation of
// package stripe, with the words ground and second or the names of the warps, and goes on over and over until all ends
// are laid. Without an order it is the one that spreads the second evenly. First is the side on which end 1 of each
// lies. The error is a [*measure.FieldError]: an order that can't be read, or one that leaves ends over.
func Lay(text string, n [2]int, names [2]string, first [2]loom.Side) (*Places, error) {
	if strings.TrimSpace(text) == "" {
		return spread(n, first)
	}
	repeat, err := readOrder(text, names)
	if err != nil {
		return nil, err
	}
	return lay(&Places{Text: strings.TrimSpace(text), Repeat: len(repeat), first: first}, repeat, n)
}

// spread is the shortest order that takes all ends, so many of the ground and then so many of the second.
func spread(n [2]int, first [2]loom.Side) (*Places, error) {
	for length := 2; length <= longestRepeat; length++ {
		for second := 1; second < length; second++ {
			repeat := append(slices.Repeat([]Which{Ground}, length-second), slices.Repeat([]Which{Second}, second)...)
			p := &Places{Text: fmt.Sprintf("%d ground, %d second", length-second, second), Repeat: length, first: first}
			if p, err := lay(p, repeat, n); err == nil {
				return p, nil
			}
		}
	}
	return nil, OrderField.Wrong("", fmt.Sprintf("the order in which %d ends of the ground and %d of the "+
		"second lie side by side, such as 2 ground, 1 second", n[Ground], n[Second]))
}

// lay lays the ends in a repeat.
func lay(p *Places, repeat []Which, n [2]int) (*Places, error) {
	left := n
	for i := 0; left[Ground]+left[Second] > 0; i++ {
		w := repeat[i%len(repeat)]
		if left[w] == 0 {
			return nil, leftOver(p, w, n, left, repeat)
		}
		left[w]--
		p.Order = append(p.Order, w)
		p.of[w] = append(p.of[w], len(p.Order))
	}
	p.Times, p.Over = len(p.Order)/p.Repeat, len(p.Order)%p.Repeat
	if p.Times == 0 {
		return nil, OrderField.Wrong(measure.Shortened(p.Text), fmt.Sprintf("an order of at most the %d "+
			"ends of both warps: it has %d", len(p.Order), p.Repeat))
	}
	return p, nil
}

// leftOver refuses an order that asks for an end of a warp that has none left.
func leftOver(p *Places, w Which, n, left [2]int, repeat []Which) error {
	var in [2]int
	for _, one := range repeat {
		in[one]++
	}
	other := w.Other()
	text := fmt.Sprintf("an order that takes all ends: after end %d of both all %d of the %s lie, and %s "+
		"left over; ", len(p.Order), n[w], w, are(left[other], other))
	if in[Ground] == 0 || in[Second] == 0 {
		return OrderField.Wrong(p.Text, text+"it has both warps in it")
	}
	times := n[w] / in[w]
	return OrderField.Wrong(p.Text, text+fmt.Sprintf("it stands %s whole, which takes %d of the ground and "+
		"%d of the second", measure.Counted(times, "time", "times"), times*in[Ground], times*in[Second]))
}

// are writes "1 end of the ground is", "5 ends of the second are".
func are(n int, of Which) string {
	return measure.Counted(n, "end of the "+of.String()+" is", "ends of the "+of.String()+" are")
}

// readOrder reads an order of the two warps.
func readOrder(text string, names [2]string) ([]Which, error) {
	order, err := stripe.Parse(text)
	if err != nil {
		return nil, OrderField.In(err)
	}
	var which []Which
	for _, c := range order.Colours {
		w, ok := named(c.Name, names)
		if !ok {
			return nil, OrderField.Wrong(c.Name, orderWants)
		}
		which = append(which, w)
	}
	ends, err := order.Ends()
	if err != nil {
		return nil, OrderField.In(err)
	}
	list := make([]Which, len(ends))
	for i, c := range ends {
		list[i] = which[c-1]
	}
	return list, nil
}

// named finds the warp that a word of an order means.
func named(word string, names [2]string) (Which, bool) {
	for _, w := range []Which{Ground, Second} {
		if strings.EqualFold(word, w.String()) {
			return w, true
		}
	}
	for _, w := range []Which{Ground, Second} {
		if strings.EqualFold(word, names[w]) && !strings.EqualFold(names[Ground], names[Second]) {
			return w, true
		}
	}
	return 0, false
}

// Ends is how many ends a warp has.
func (p *Places) Ends(w Which) int { return len(p.of[w]) }

// Of is the place of a warp's end among those of both, from the left, counted from 1; 0 for an end that isn't there.
func (p *Places) Of(w Which, end int) int {
	if end < 1 || end > len(p.of[w]) {
		return 0
	}
	if p.first[w] == loom.RightSide {
		end = len(p.of[w]) + 1 - end
	}
	return p.of[w][end-1]
}

// alone is how many ends lie at the edges outside the other warp, and of which warp those at the left edge are.
func (p *Places) alone() (n int, of Which) {
	of = p.Order[0]
	for i := 0; i < len(p.Order) && p.Order[i] == of; i++ {
		n++
	}
	for i := len(p.Order) - 1; i >= n && p.Order[i] == of; i-- {
		n++
	}
	return n, of
}

// count is how many ends of each warp lie in the places from first to last, and which: their lowest and highest
// number.
func (p *Places) count(first, last int, before [2]int) (in Share) {
	for _, w := range p.Order[first-1 : last] {
		in.Ends[w]++
	}
	for _, w := range []Which{Ground, Second} {
		low, high := before[w]+1, before[w]+in.Ends[w]
		if p.first[w] == loom.RightSide {
			low, high = len(p.of[w])+1-high, len(p.of[w])+1-low
		}
		if in.Ends[w] > 0 {
			in.First[w], in.Last[w] = low, high
		}
	}
	return in
}

// Share is how many ends of each warp lie in a dent, and the lowest and the highest of their numbers; 0 where none do.
type Share struct{ Ends, First, Last [2]int }
