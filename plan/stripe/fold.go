package stripe

import (
	"slices"
	"strconv"
)

// longestRepeat is the most stripes that a repeat is looked for in; a longer one stays written out.
const longestRepeat = 200

// Folded is the same order with its repeats in brackets, so that an order that was read stripe by stripe
// can be read by a person: "8 white, 21 times (4 red, 14 white), 20 red". An order that is the same from
// both sides is written to its middle where that is shorter. The ends stay exactly as they are; an order
// that has brackets already is given back as it is. It is for orders that pass [Order.Check].
func (o Order) Folded() Order {
	for _, p := range o.Parts {
		if p.Kind != Stripe {
			return o
		}
	}
	names := writtenNames(o.Colours)
	whole := o
	whole.Parts = foldParts(o.Parts, names)
	n := len(o.Parts)
	for i := range n / 2 {
		if !sameStripe(o.Parts[i], o.Parts[n-1-i]) {
			return whole
		}
	}
	if n%2 == 0 || n == 1 {
		return whole
	}
	half := o
	half.Parts = []Part{{Kind: Point, Inside: append(foldParts(o.Parts[:n/2], names), o.Parts[n/2])}}
	if len(half.String()) < len(whole.String()) {
		return half
	}
	return whole
}

// foldParts puts what repeats in a list of stripes into brackets, from the front on: each time the
// repeat that saves most of the text, the shorter one of two.
func foldParts(list []Part, names []string) []Part {
	var out []Part
	for i := 0; i < len(list); {
		length, times, best := 1, 1, 0
		inside := 0 // the text of list[i:i+n]
		for n := 1; n <= min(longestRepeat, (len(list)-i)/2); n++ {
			inside += textOf(list[i+n-1], names)
			k := timesOf(list[i:], n)
			if saved := (k-1)*inside - len(strconv.Itoa(k)+" times ()"); k > 1 && saved > best {
				length, times, best = n, k, saved
			}
		}
		if times == 1 {
			out = append(out, list[i])
		} else {
			out = append(out, Part{Kind: Repeat, Count: times, Inside: foldParts(list[i:i+length], names)})
		}
		i += length * times
	}
	return out
}

// timesOf says how often a list begins with its first n stripes.
func timesOf(list []Part, n int) int {
	k := 1
	for (k+1)*n <= len(list) && slices.EqualFunc(list[:n], list[k*n:(k+1)*n], sameStripe) {
		k++
	}
	return k
}

func sameStripe(a, b Part) bool { return a.Count == b.Count && a.Colour == b.Colour }

// textOf is how many bytes a stripe takes in a list.
func textOf(p Part, names []string) int {
	return len(strconv.Itoa(p.Count)) + len(" ") + len(nameOf(names, p.Colour)) + len(", ")
}
