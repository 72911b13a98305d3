package plan

import (
	"errors"
	"fmt"
	"millside/plan/field"
	"strconv"
	"strings"

	"millside/plan/measure"
	"millside/plan/wind"
)

// Schedule is a striped warp cut into passes and set-ups. Package stripe makes it; it is kept with the
// warp, so that a record can be read again whatever package stripe has learned since.
type Schedule struct {
	// Colours lists the colours; set-ups count them from 1.
	Colours []StripeColour `json:"colours"`
	// SetUps lists the set-ups in the order of use; passes count them from 1.
	SetUps []SetUp `json:"set_ups"`
	// Passes lists the passes in order. Their ends add up to the ends of the warp.
	Passes []ScheduledPass `json:"passes"`
	// Order is the colours of the ends from end 1 on, where each colour is wound as a chain of its own and the
	// order is made at the raddle or in the reed; empty where the passes lay the ends in their order.
	Order []ColourRun `json:"order,omitzero"`
	// Note says in words how good the schedule is.
	Note string `json:"note,omitzero"`
}

// StripeColour is one colour of yarn.
type StripeColour struct {
	// Name is what the weaver calls it: 1 to 60 printable characters.
	Name string `json:"name"`
	// Shade is how it looks, "#" and six hexadecimal digits for red, green and blue; empty if no one
	// said.
	Shade string `json:"shade,omitzero"`
}

// SetUp is the colour in each position of the paddle, that of position 1 first; 0 is an empty position.
type SetUp []int

// Threaded is the set of positions that have a colour.
func (s SetUp) Threaded() wind.Positions {
	var set wind.Positions
	for i, colour := range s {
		if colour != 0 {
			set |= 1 << i
		}
	}
	return set
}

// Change is another colour for one position of the paddle.
type Change struct {
	// Position counts from 1.
	Position int
	// From and To are colours, counted from 1; 0 is an empty position.
	From, To int
}

// ChangesTo lists what makes one set-up out of another, by position; it is empty where nothing does.
func (s SetUp) ChangesTo(next SetUp) []Change {
	at := func(set SetUp, i int) int {
		if i < len(set) {
			return set[i]
		}
		return 0
	}
	var list []Change
	for i := range max(len(s), len(next)) {
		if from, to := at(s, i), at(next, i); from != to {
			list = append(list, Change{Position: i + 1, From: from, To: to})
		}
	}
	return list
}

// ScheduledPass is one pass of a schedule.
type ScheduledPass struct {
	// Carried is the set of positions that carry an end. They need not be neighbours, but holes and slots
	// take turns among them, so that the lease can alternate.
	Carried wind.Positions
	// SetUp is the set-up, counted from 1.
	SetUp int
}

// Ends is how many ends the pass carries.
func (p ScheduledPass) Ends() int { return p.Carried.Count() }

// String writes the pass as a record keeps it, each run of neighbours with its first and its last
// position: "1-10 of 2" is positions 1 to 10 in set-up 2, "1-4,7-7 of 2" leaves out 5 and 6.
func (p ScheduledPass) String() string {
	var b strings.Builder
	for pos := 1; pos <= p.Carried.Last(); pos++ {
		if !p.Carried.Has(pos) {
			continue
		}
		from := pos
		for p.Carried.Has(pos + 1) {
			pos++
		}
		if b.Len() > 0 {
			b.WriteByte(',')
		}
		fmt.Fprintf(&b, "%d-%d", from, pos)
	}
	return fmt.Sprintf("%s of %d", b.String(), p.SetUp)
}

// MarshalText writes the pass as String does.
func (p ScheduledPass) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// UnmarshalText reads what MarshalText wrote, and nothing else, so that a record writes what it read.
func (p *ScheduledPass) UnmarshalText(b []byte) error {
	wrong := &measure.FieldError{Field: "passes", Value: string(b),
		Want: fmt.Sprintf("positions of 1 to %d, the lowest first, and a set-up, such as 1-10 of 2",
			measure.MaxPositions)}
	runs, setUp, ok := strings.Cut(string(b), " of ")
	if !ok || len(runs) > len("60-60,")*measure.MaxPositions {
		return wrong
	}
	var got ScheduledPass
	for _, run := range strings.Split(runs, ",") {
		from, to, _ := strings.Cut(run, "-")
		first, err1 := strconv.Atoi(from)
		last, err2 := strconv.Atoi(to)
		if err1 != nil || err2 != nil || first < 1 || last < first || last > measure.MaxPositions {
			return wrong
		}
		got.Carried |= wind.Span(first, last)
	}
	n, err := strconv.Atoi(setUp)
	if got.SetUp = n; err != nil || got.String() != string(b) {
		return wrong
	}
	*p = got
	return nil
}

// maxColours bounds the colours of a schedule.
const maxColours = 200

// check reports what keeps a schedule from being wound as a warp of so many ends with a paddle of so
// many positions.
func (s *Schedule) check(ends, positions int) error {
	if s == nil {
		return nil
	}
	errs := []error{s.checkColours(), s.checkSetUps(positions)}
	if err := errors.Join(errs...); err != nil {
		return err
	}
	total, last := 0, 1
	for i, p := range s.Passes {
		name := fmt.Sprintf("pass %d", i+1)
		if p.SetUp < last || p.SetUp > len(s.SetUps) {
			return measure.Outside(name+" set-up", p.SetUp, last, len(s.SetUps), "")
		}
		last = p.SetUp
		if p.Carried == 0 || p.Carried.Last() > positions {
			return &measure.FieldError{Field: name, Value: p.String(),
				Want: fmt.Sprintf("one or more positions of 1 to %d", positions)}
		}
		if !p.Carried.Alternate() {
			return &measure.FieldError{Field: name, Value: p.String(),
				Want: "holes (odd positions) and slots (even ones) in turn, so that the lease alternates"}
		}
		if bare := p.Carried.Without(s.SetUps[p.SetUp-1].Threaded()); bare != 0 {
			return &measure.FieldError{Field: name, Value: p.String(), Want: "positions that are threaded; " +
				wind.PositionsText(bare) + " not so"}
		}
		total += p.Ends()
	}
	if total != ends {
		return &measure.FieldError{Field: field.StripesOf.Name, Value: fmt.Sprintf("%d ends in the schedule", total),
			Want: fmt.Sprintf("%d, the ends of the warp", ends)}
	}
	return s.checkOrder(ends)
}

func (s *Schedule) checkColours() error {
	if len(s.Colours) < 1 || len(s.Colours) > maxColours {
		return measure.Outside("colours", len(s.Colours), 1, maxColours, "")
	}
	for _, c := range s.Colours {
		if measure.CheckName(c.Name) != nil {
			return &measure.FieldError{Field: field.Colour.Name, Value: c.Name,
				Want: fmt.Sprintf("1 to %d printable characters", measure.MaxName)}
		}
		if _, err := strconv.ParseUint(strings.TrimPrefix(c.Shade, "#"), 16, 24); c.Shade != "" &&
			(err != nil || len(c.Shade) != 7) {
			return &measure.FieldError{Field: "shade of " + c.Name, Value: c.Shade,
				Want: "# and six hexadecimal digits"}
		}
	}
	if len(s.Note) > 1000 || s.Note != "" && !measure.Printable(s.Note) {
		return &measure.FieldError{Field: "note of the schedule", Value: s.Note,
			Want: "up to 1000 printable characters"}
	}
	return nil
}

func (s *Schedule) checkSetUps(positions int) error {
	if len(s.SetUps) == 0 {
		return measure.Outside("set-ups", 0, 1, measure.MaxEnds, "")
	}
	for i, set := range s.SetUps {
		if len(set) > positions {
			return measure.Outside(fmt.Sprintf("positions of set-up %d", i+1), len(set), 1, positions, "")
		}
		for _, colour := range set {
			if colour < 0 || colour > len(s.Colours) {
				return measure.Outside(fmt.Sprintf("colour in set-up %d", i+1), colour, 0, len(s.Colours), "")
			}
		}
	}
	return nil
}

// firstLetter begins the letters of the colours after those of the lease pegs, A and B, so that "C first"
// can't be taken for a peg, on a screen or aloud.
const firstLetter = 2

// Letter is the letter that stands for a colour, counted from 1, where colours can't be seen: C to Z, then
// c to z, then "?"; 0, an empty position, is a dot. A and B are the lease pegs.
func Letter(colour int) rune {
	const letters = 26 - firstLetter
	switch {
	case colour == 0:
		return '·'
	case colour <= letters:
		return 'A' + rune(firstLetter+colour-1)
	case colour <= 2*letters:
		return 'a' + rune(firstLetter+colour-letters-1)
	default:
		return '?'
	}
}

// reflected is the schedule with the paddle turned round: what was in the lowest position is in the
// highest one that is used, and so on. Nil stays nil.
func (s *Schedule) reflected() *Schedule {
	if s == nil {
		return nil
	}
	used := 0
	for _, set := range s.SetUps {
		used = max(used, set.Threaded().Last())
	}
	r := &Schedule{Colours: s.Colours, Order: s.Order, Note: s.Note}
	for _, set := range s.SetUps {
		turned := make(SetUp, max(len(set), used))
		for i, colour := range set {
			if colour != 0 {
				turned[used-1-i] = colour
			}
		}
		r.SetUps = append(r.SetUps, turned)
	}
	for _, p := range s.Passes {
		var carried wind.Positions
		for pos := range p.Carried.All() {
			carried |= wind.OnePosition(used + 1 - pos)
		}
		r.Passes = append(r.Passes, ScheduledPass{Carried: carried, SetUp: p.SetUp})
	}
	return r
}
