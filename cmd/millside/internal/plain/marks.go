package plain

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"millside/counter"
	"millside/counter/session"
	"millside/plan"
	"millside/plan/measure"
)

// mark is the word for something that went wrong.
func mark(what counter.What) func(*Talk, string, time.Time) (session.Reply, error) {
	return func(t *Talk, rest string, at time.Time) (session.Reply, error) {
		m, wrong := t.readMark(what, rest)
		if wrong != "" {
			return refused(wrong), nil
		}
		return t.do(m, at)
	}
}

// readMark reads what is typed after break, knot, missed or wrongpeg: the position, where it happened to one end;
// "pass 12"; "at 2.5 yd" or "at 3 turns"; then a text. Wrong says what to type instead.
func (t *Talk) readMark(what counter.What, rest string) (m session.Mark, wrong string) {
	m.What = what
	fields := strings.Fields(rest)
	if what.OfEnd() {
		n, err := strconv.Atoi(firstOf(fields))
		if err != nil {
			pass := t.s.State().Current().Passes[t.s.InHand()-1]
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
		if m.Place, n, wrong = readPlace(t.s.State().Plan, fields[1:]); wrong != "" {
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
	why := "Where? Type a length from the lease after at, such as at 2.5 yd, or at 3 turns."
	for n := min(len(fields), most); n > 0; n-- {
		l, err := session.PlaceOf(p, strings.Join(fields[:n], " "))
		if err == nil {
			return l, n, ""
		}
		if _, bad := measure.ParseLength(strings.Join(fields[:n], " ")); bad == nil { // a length, but none of this warp
			why = "Not done: place: " + err.Error() + "."
		}
	}
	return 0, 0, why
}

// newPackage reads what is typed after package: the position, "pass 12", and the weight.
func (t *Talk) newPackage(rest string, at time.Time) (session.Reply, error) {
	fields := strings.Fields(rest)
	n, err := strconv.Atoi(firstOf(fields))
	if err != nil {
		return refused(fmt.Sprintf("Which position? Type a number from 1 to %d after package.",
			t.s.State().Plan.Spec.Positions)), nil
	}
	in := session.NewPackage{Position: n}
	fields = fields[1:]
	if firstOf(fields) == "pass" {
		k, err := strconv.Atoi(firstOf(fields[1:]))
		if err != nil || k < 1 {
			return refused("From which pass on? Type a number after pass."), nil
		}
		in.Pass, fields = k, fields[2:]
	}
	if len(fields) > 0 {
		if in.Weight, err = measure.ParseMass(strings.Join(fields, " ")); err != nil {
			return refused("Not done: weight: " + err.Error() + "."), nil
		}
	}
	return t.do(in, at)
}
