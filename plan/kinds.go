package plan

import (
	"millside/plan/measure"
	"millside/plan/wind"
	"strings"
)

// PassKind is a kind of pass of a striped warp: certain positions that carry certain colours. The weaver
// learns each kind once.
type PassKind struct {
	// Number counts the kinds from 1, in the order in which they first come.
	Number int
	// First is the first pass of the kind, for its drawing; Chain is the chain that it is in, from 1.
	Chain int
	First wind.Pass
	// Passes is how many passes are of the kind.
	Passes int
}

// Kinds lists the kinds of pass of a striped warp; there are none in a plain one.
func (p *Plan) Kinds() []PassKind {
	if !p.Striped() {
		return nil
	}
	var list []PassKind
	for i, c := range p.Chains {
		for k, pass := range c.Passes {
			n := p.kinds[i][k]
			if n > len(list) {
				list = append(list, PassKind{Number: n, Chain: c.Number, First: pass})
			}
			list[n-1].Passes++
		}
	}
	return list
}

// KindOf is the number of the kind of a pass, chain and pass counted from 1; 0 where there is no such pass, and
// where all passes are of one kind, which then needs no name.
func (p *Plan) KindOf(chain, pass int) int {
	if !p.manyKinds || chain < 1 || chain > len(p.kinds) || pass < 1 || pass > len(p.kinds[chain-1]) {
		return 0
	}
	return p.kinds[chain-1][pass-1]
}

// findKinds numbers the kinds of the passes, by chain and pass from 0, and says whether there is more than one.
func (p *Plan) findKinds() (kinds [][]int, many bool) {
	if !p.Striped() {
		return nil, false
	}
	number := map[string]int{}
	for _, c := range p.Chains {
		own := make([]int, 0, len(c.Passes))
		for _, pass := range c.Passes {
			key := p.kindKey(pass)
			if number[key] == 0 {
				number[key] = len(number) + 1
			}
			own = append(own, number[key])
		}
		kinds = append(kinds, own)
	}
	return kinds, len(number) > 1
}

// kindKey is the same for passes of one kind.
func (p *Plan) kindKey(pass wind.Pass) string {
	set := p.SetUpOf(pass)
	key := make([]byte, measure.MaxPositions)
	for pos := range pass.Carried.All() {
		if pos <= len(set) {
			key[pos-1] = byte(set[pos-1])
		}
	}
	return string(key)
}

// KindName is the name of a kind of pass by its number from 1: I, II, III, IV and so on.
func KindName(n int) string {
	if n < 1 || n > 3999 {
		return "?"
	}
	var b strings.Builder
	for _, r := range []struct {
		value int
		text  string
	}{
		{1000, "M"}, {900, "CM"}, {500, "D"}, {400, "CD"}, {100, "C"}, {90, "XC"}, {50, "L"}, {40, "XL"},
		{10, "X"}, {9, "IX"},
		{5, "V"}, {4, "IV"}, {1, "I"},
	} {
		for ; n >= r.value; n -= r.value {
			b.WriteString(r.text)
		}
	}
	return b.String()
}

// KindText says which positions a kind carries, colour by colour, that of the lowest position first: "positions 1
// to 4, 7 C white; 5, 6 D red".
func (p *Plan) KindText(k PassKind) string {
	set := p.SetUpOf(k.First)
	var colours []int
	carried := map[int]wind.Positions{} // by colour
	for pos := range k.First.Carried.All() {
		c := set[pos-1]
		if carried[c] == 0 {
			colours = append(colours, c)
		}
		carried[c] |= wind.FirstPositions(pos).Without(wind.FirstPositions(pos - 1))
	}
	parts := make([]string, len(colours))
	for i, c := range colours {
		parts[i] = carried[c].String() + " " + p.ColourText(c)
	}
	word := "positions "
	if k.First.Carried.Count() == 1 {
		word = "position "
	}
	return word + strings.Join(parts, "; ")
}
