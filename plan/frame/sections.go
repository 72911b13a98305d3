package frame

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"

	"millside/plan/figure"
	"millside/plan/measure"
)

// Section is a length of the warp that is painted or dyed by itself.
type Section struct {
	Length measure.Length
	// Name is what the weaver calls it, such as its colour; it may be empty.
	Name string
}

// Sections lists the sections of a painted warp along its length, from the lease on. Behind the last one lies what
// is left of the warp.
type Sections []Section

// mostSections is the most sections of a warp.
const mostSections = 200

const sectionsWant = `lengths from the lease on, with a name behind them if you like, such as "1 yd indigo, ` +
	`18 in, 1 yd rust"; "12 in blue x 4" for four alike; each 1 cm or more, at most 200`

// ParseSections reads sections as [Sections.String] writes them: lengths with commas between them, each with a name
// behind it or without; "12 in blue x 4" is four alike. The error is a [*measure.FieldError] without a field.
func ParseSections(text string) (Sections, error) {
	var list Sections
	for _, part := range measure.SplitList(text) {
		one, times := strings.TrimSpace(part), 1
		if m := repeated.FindStringSubmatch(one); m != nil {
			one = m[1]
			times, _ = strconv.Atoi(m[2]) // three digits at the most
		}
		s, ok := parseSection(one)
		if !ok || times < 1 || len(list)+times > mostSections {
			return nil, &measure.FieldError{Value: measure.Shortened(strings.TrimSpace(part)), Want: sectionsWant}
		}
		for range times {
			list = append(list, s)
		}
	}
	return list, nil
}

// parseSection reads a length and the name behind it: the longest beginning that is a length is the length.
func parseSection(text string) (Section, bool) {
	words := strings.Fields(text)
	for n := len(words); n > 0; n-- {
		l, err := measure.ParseLength(strings.Join(words[:n], " "))
		if err != nil {
			continue
		}
		name := strings.Join(words[n:], " ")
		ok := l >= measure.Centimetre && l <= measure.MaxLength && (name == "" || measure.CheckColour(name) == nil)
		return Section{l, name}, ok
	}
	return Section{}, false
}

// String writes a section: "1 yd indigo".
func (s Section) String() string { return strings.TrimSpace(s.Length.String() + " " + s.Name) }

// String writes the sections as [ParseSections] reads them, neighbours that are alike once.
func (s Sections) String() string { return s.text(Section.String) }

// text writes the sections, one of them as the function does.
func (s Sections) text(one func(Section) string) string {
	var parts []string
	for i := 0; i < len(s); {
		n := 1
		for i+n < len(s) && s[i+n] == s[i] {
			n++
		}
		text := one(s[i])
		if n > 1 {
			text += fmt.Sprintf(" x %d", n)
		}
		parts = append(parts, text)
		i += n
	}
	return strings.Join(parts, ", ")
}

// Total is how long they are together.
func (s Sections) Total() measure.Length {
	var sum measure.Length
	for _, one := range s {
		sum += one.Length
	}
	return sum
}

// MarshalText writes the sections as String does, but always with decimal points.
func (s Sections) MarshalText() ([]byte, error) {
	return []byte(s.text(func(one Section) string {
		length, _ := one.Length.MarshalText() // it writes every length
		return strings.TrimSpace(string(length) + " " + one.Name)
	})), nil
}

// UnmarshalText reads what MarshalText wrote.
func (s *Sections) UnmarshalText(b []byte) error {
	got, err := ParseSections(string(b))
	if err == nil {
		*s = got
	}
	return err
}

// Border is a place on the warp where a section ends.
type Border struct {
	// At is how far it is from the near end peg.
	At measure.Length
	// Before and Behind name the sections on its two sides; either may be empty.
	Before, Behind string
}

// Borders lists the places between the sections of a warp that is so long, and where the last one ends, if any warp
// lies behind it.
func (s Sections) Borders(length measure.Length) []Border {
	var list []Border
	var at measure.Length
	for i, one := range s {
		if at += one.Length; at >= length {
			break
		}
		b := Border{At: at, Before: one.Name}
		if i+1 < len(s) {
			b.Behind = s[i+1].Name
		}
		list = append(list, b)
	}
	return list
}

// Where says where a place on the warp is on a mill, from the near end peg: the turns, and the place for an end peg
// that it is at, or how far behind one.
func (m Mill) Where(p MillPath, at measure.Length, units measure.LengthUnitSystem) string {
	step := m.stepLength()
	if step <= 0 || p.PerTurn <= 0 {
		return ""
	}
	turns := figure.Of(big.NewRat(int64(at), int64(p.PerTurn)), 2, "turn", "turns")
	pegs, beyond := int(at/step), at%step
	if step-beyond < measure.Millimetre { // what a rounded step leaves
		pegs, beyond = pegs+1, 0
	}
	text := fmt.Sprintf("%s, peg %d", turns, pegs)
	if beyond >= measure.Millimetre {
		text += " and " + beyond.As(units.Short(), 1).String()
	}
	return text
}

// Where says where a place on the warp is on a board: behind which peg, counted from the near end peg as 0.
func (b Board) Where(at measure.Length, units measure.LengthUnitSystem) string {
	pegs := 0
	for pegs < len(b) && at >= b[pegs] {
		at -= b[pegs]
		pegs++
	}
	text := fmt.Sprintf("peg %d", pegs)
	if at > 0 {
		text += " and " + at.As(units.Short(), 1).String()
	}
	return text
}
