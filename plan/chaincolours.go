package plan

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"millside/plan/figure"
	"millside/plan/measure"
)

// ColourRun is a run of neighbouring ends of one colour in a stripe order.
type ColourRun struct {
	// Ends is how many ends the run has, 1 or more; Colour counts from 1.
	Ends, Colour int
}

// text writes the run as a record keeps it: "8 of 1" is eight ends of colour 1.
func (r ColourRun) text() string { return fmt.Sprintf("%d of %d", r.Ends, r.Colour) }

// MarshalText writes the run as a record keeps it: "8 of 1" is eight ends of colour 1.
func (r ColourRun) MarshalText() ([]byte, error) { return []byte(r.text()), nil }

// UnmarshalText reads what MarshalText wrote, and nothing else.
func (r *ColourRun) UnmarshalText(b []byte) error {
	ends, colour, _ := strings.Cut(string(b), " of ")
	n, err1 := strconv.Atoi(ends)
	c, err2 := strconv.Atoi(colour)
	got := ColourRun{Ends: n, Colour: c}
	if err := errors.Join(err1, err2); err != nil || got.text() != string(b) {
		return &measure.FieldError{Field: "order", Value: string(b), Want: "ends and a colour, such as 8 of 1"}
	}
	*r = got
	return nil
}

// checkOrder reports what keeps a schedule from being wound as a chain for each colour: each pass carries one
// colour, the passes of a colour follow one another, and there are as many of its ends as the order has.
func (s *Schedule) checkOrder(ends int) error {
	if !s.byColour() {
		return nil
	}
	left, total := make([]int, len(s.Colours)+1), 0
	for i, r := range s.Order {
		name := fmt.Sprintf("run %d of the order", i+1)
		if r.Ends < 1 || r.Ends > ends-total || r.Colour < 1 || r.Colour > len(s.Colours) {
			return &measure.FieldError{Field: name, Value: r.text(),
				Want: fmt.Sprintf("ends of a colour of 1 to %d, %d in all", len(s.Colours), ends)}
		}
		left[r.Colour] += r.Ends
		total += r.Ends
	}
	last := 0
	for i, p := range s.Passes {
		name, colour := fmt.Sprintf("pass %d", i+1), 0
		for pos := range p.Carried.All() {
			if c := s.SetUps[p.SetUp-1][pos-1]; colour == 0 {
				colour = c
			} else if c != colour {
				return &measure.FieldError{Field: name, Value: p.String(), Want: "one colour, that of its chain"}
			}
		}
		if colour != last && last != 0 && left[last] != 0 || left[colour] < p.Ends() {
			return &measure.FieldError{Field: name, Value: p.String(),
				Want: "the ends of one colour after those of another, as many as the order has"}
		}
		left[colour] -= p.Ends()
		last = colour
	}
	return nil
}

// byColour says whether each colour is wound as a chain of its own, and the order made at the raddle or in the
// reed.
func (s *Schedule) byColour() bool { return s != nil && len(s.Order) > 0 }

// colourOf is the colour of the passes from one on, in a schedule of a chain for each colour.
func (s *Schedule) colourOf(pass int) int {
	p := s.Passes[pass]
	return s.SetUps[p.SetUp-1][p.Carried.First()-1]
}

// chainsByColour splits the passes into a chain for each colour, and those by split.
func (s *Schedule) chainsByColour(split func(*Schedule) ([]ChainPart, error)) ([]ChainPart, error) {
	var parts []ChainPart
	first := 1
	for from := 0; from < len(s.Passes); {
		to := from + 1
		for to < len(s.Passes) && s.colourOf(to) == s.colourOf(from) {
			to++
		}
		one := &Schedule{Passes: s.Passes[from:to]}
		chains, err := split(one)
		if err != nil {
			return nil, err
		}
		for _, part := range chains {
			ends := part.Ends()
			part.Number, part.First, part.Last = len(parts)+1, first, first+ends-1
			part.Why = s.Colours[s.colourOf(from)-1].Name + ": " + part.Why
			first += ends
			parts = append(parts, part)
		}
		from = to
	}
	return parts, nil
}

// numbers is the number in the warp of each end in the order of winding: the k-th end of a colour that is wound
// is the k-th of that colour in the order. Nil where both orders are one.
func (s *Schedule) numbers() []int {
	if !s.byColour() {
		return nil
	}
	inOrder := make([][]int, len(s.Colours)+1)
	end := 0
	for _, r := range s.Order {
		for range r.Ends {
			end++
			inOrder[r.Colour] = append(inOrder[r.Colour], end)
		}
	}
	numbers := make([]int, 0, end)
	done := make([]bool, len(s.Colours)+1)
	for i := range s.Passes {
		if c := s.colourOf(i); !done[c] {
			done[c] = true
			numbers = append(numbers, inOrder[c]...)
		}
	}
	return numbers
}

// inverse is the place of each number in a list of the numbers from 1 on, counted from 1.
func inverse(numbers []int) []int {
	places := make([]int, len(numbers))
	for i, n := range numbers {
		places[n-1] = i + 1
	}
	return places
}

// ByColour says whether each colour is a chain of its own. The numbers of passes and chains ([wind.Pass.First],
// [Chain.First]) then count the ends as they are wound; [Plan.EndOfWound] says which end of the warp each is.
func (p *Plan) ByColour() bool { return p.Spec.Schedule.byColour() }

// EndOfWound is the number in the warp of the end that is wound as the n-th, 1 to EndsWound; 0 for another number.
func (p *Plan) EndOfWound(n int) int {
	switch {
	case n < 1 || n > p.EndsWound():
		return 0
	case p.numbers == nil:
		return n
	}
	return p.numbers[n-1]
}

// woundAs is the n of [Plan.EndOfWound] for an end of the warp.
func (p *Plan) woundAs(end int) int {
	if p.numbers == nil || end < 1 || end > len(p.wound) {
		return end
	}
	return p.wound[end-1]
}

// ChainColour is the colour of all ends of a chain, counted from 1; 0 where chains aren't one colour each.
func (p *Plan) ChainColour(chain int) int {
	if !p.ByColour() || chain < 1 || chain > len(p.Chains) {
		return 0
	}
	first := p.Chains[chain-1].Passes[0]
	return p.SetUpOf(first)[first.Carried.First()-1]
}

// WoundRange is a range of ends as they are wound, as it is shown: where each colour is a chain of its own they
// are counted within the colour, as on its lease.
func (p *Plan) WoundRange(first, last int) figure.Range {
	if c := p.colourBefore(first); c > 0 {
		return figure.Range{First: first - c, Last: last - c}
	}
	return figure.Range{First: first, Last: last}
}

// WoundText names a range of ends as they are wound: "ends 1 to 10", "ends 1 to 10 of navy".
func (p *Plan) WoundText(first, last int) string {
	text := p.WoundRange(first, last).Named("end", "ends")
	if c, ok := p.Colour(p.EndColour(p.EndOfWound(first))); ok && p.ByColour() {
		text += " of " + c.Name
	}
	return text
}

// colourBefore is how many ends of other colours are wound before the n-th end.
func (p *Plan) colourBefore(n int) int {
	if !p.ByColour() {
		return 0
	}
	colour := p.EndColour(p.EndOfWound(n))
	for _, c := range p.Chains {
		if p.ChainColour(c.Number) == colour {
			return c.First - 1
		}
	}
	return 0
}
