package session

import (
	"fmt"
	"strconv"
	"strings"

	"millside/counter"
	"millside/plan"
	"millside/plan/figure"
	"millside/plan/measure"
)

// What is typed as one line, as [Ask] reads it field by field: the same answers behind a word. Where a line won't do,
// what is wrong is a sentence that says what to type instead.

// ReadMark reads what is typed after break, knot, missed or wrongpeg: the position, where it happened to one end;
// "pass 12"; "at 2.5 yd" or "at 3 turns"; then a text. Wrong says what to type instead.
func (s Session) ReadMark(what counter.What, rest string) (m Mark, wrong string) {
	m.What = what
	fields := strings.Fields(rest)
	if what.OfEnd() {
		n, err := strconv.Atoi(firstOf(fields))
		if err != nil {
			pass := s.st.Current().Passes[s.InHand()-1]
			return m, fmt.Sprintf("Which position? Type a number from 1 to %d after it.", pass.Carried.Last())
		}
		m.Position, fields = n, fields[1:]
	}
	if firstOf(fields) == "pass" {
		n, err := strconv.Atoi(firstOf(fields[1:]))
		if err != nil || n < 1 {
			return m, "Which pass? Type a number after pass."
		}
		m.Pass, fields = n, fields[2:]
	}
	if firstOf(fields) == "at" {
		n := 0
		if m.Place, n, wrong = readPlace(s.st.Plan, fields[1:]); wrong != "" {
			return m, wrong
		}
		m.HasPlace, fields = true, fields[1+n:]
	}
	m.Text = strings.Join(fields, " ")
	return m, ""
}

func firstOf(fields []string) string {
	if len(fields) == 0 {
		return ""
	}
	return strings.ToLower(fields[0])
}

// readPlace reads a length, or turns of the mill, from the front of some words, as many as belong to it, and says how
// many that are.
func readPlace(p *plan.Plan, fields []string) (place measure.Length, words int, wrong string) {
	const most = 5 // "4 yd 17 1/2 in"
	why := figure.Signed("Where? Type a length from the lease after at, such as at 2.5 yd, or at 3 turns.")
	for n := min(len(fields), most); n > 0; n-- {
		l, err := PlaceOf(p, strings.Join(fields[:n], " "))
		if err == nil {
			return l, n, ""
		}
		if _, bad := measure.ParseLength(strings.Join(fields[:n], " ")); bad == nil { // a length, but none of this warp
			why = "Not done: place: " + err.Error() + "."
		}
	}
	return 0, 0, why
}

// ReadPackage reads what is typed after package: the position, "pass 12", and the weight.
func (s Session) ReadPackage(rest string) (in NewPackage, wrong string) {
	fields := strings.Fields(rest)
	n, err := strconv.Atoi(firstOf(fields))
	if err != nil {
		return in, fmt.Sprintf("Which position? Type a number from 1 to %d after package.", s.st.Plan.Spec.Positions)
	}
	in.Position, fields = n, fields[1:]
	if firstOf(fields) == "pass" {
		k, err := strconv.Atoi(firstOf(fields[1:]))
		if err != nil || k < 1 {
			return in, "From which pass on? Type a number after pass."
		}
		in.Pass, fields = k, fields[2:]
	}
	if len(fields) > 0 {
		if in.Weight, err = measure.ParseMass(strings.Join(fields, " ")); err != nil {
			return in, "Not done: weight: " + err.Error() + "."
		}
	}
	return in, ""
}

// ReadPegs reads what is typed after pegs: the groups over peg 1 and over peg 2, "outward" or "return" for the last
// group, and "3 loose" for the groups after the last tie; a dash is what was not counted.
func (s Session) ReadPegs(rest string) (seen counter.Seen, wrong string) {
	const use = "Type pegs, the groups over peg 1, the groups over peg 2, and, if you like, outward or return for " +
		"the last group: pegs 9 8 outward. Type - for what you didn't count."
	var counts []string
	way, loose := "", ""
	fields := strings.Fields(strings.ToLower(rest))
	for i := 0; i < len(fields); i++ {
		switch f := fields[i]; {
		case f == "outward" || f == "return":
			way = f
		case i+1 < len(fields) && fields[i+1] == "loose":
			loose = f
			i++
		default:
			counts = append(counts, f)
		}
	}
	if len(counts) == 1 {
		counts = append(counts, "-")
	}
	if len(counts) == 0 && loose != "" {
		counts = []string{"-", "-"}
	}
	if len(counts) != 2 || counts[0] == "-" && counts[1] == "-" && loose == "" {
		return seen, use
	}
	seen, problem := s.ReadSeen(counts[0], counts[1], way, loose)
	if problem != "" {
		return seen, problem + ". " + use
	}
	return seen, ""
}

// ReadRecount reads what is typed after count: the number of passes, and why.
func (s Session) ReadRecount(rest string) (in Recount, wrong string) {
	number, why, _ := strings.Cut(rest, " ")
	n, err := strconv.Atoi(number)
	if err != nil {
		return in, "Type count, the number of passes that lie on the mill, and why: count 17 pressed twice."
	}
	return Recount{Passes: n, Reason: strings.TrimSpace(why)}, ""
}

// ReadDrop reads what is typed after drop: the number of a mark, or nothing for the last one.
func (s Session) ReadDrop(rest string) (in DropMark, wrong string) {
	if rest == "" {
		return in, ""
	}
	n, err := strconv.Atoi(rest)
	if err != nil || n < 1 {
		return in, "Type drop and the number of what was noted; where lists the numbers. Drop alone takes the last " +
			"mark back."
	}
	return DropMark{Number: n}, ""
}
