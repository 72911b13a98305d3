package session

import (
	"fmt"
	"strconv"
	"strings"

	"millside/counter"
	"millside/plan/measure"
)

// AskRecount leads through the counting cross. What is typed at the pegs fills in the number of passes, if it goes
// together; the number can be typed as well.
type AskRecount struct{}

// The fields of a recount.
const (
	atPeg1 = iota
	atPeg2
	atWay
	atLoose
	atPasses
	atWhy
)

// Title is what is asked for.
func (AskRecount) Title() string { return "RECOUNT  ·  trust the pegs, not the memory" }

// Labels names the fields.
func (AskRecount) Labels() []string {
	return []string{"groups over peg 1", "groups over peg 2", "last group: o outward, r return",
		"groups after the last tie", "passes on the mill", "why"}
}

// Begin begins with the number of passes that is believed.
func (AskRecount) Begin(s Session) []string {
	return []string{"", "", "", "", fmt.Sprint(s.st.Laid()), CountedOnPegs}
}

// CountedOnPegs is the reason of a recount where none is given.
const CountedOnPegs = "counted on the pegs"

// ReadSeen reads what was typed of the pegs: the groups over peg 1 and over peg 2, the way of the last group ("o" or
// "outward", "r" or "return") and the groups after the last tie; an empty text or a dash is what was not counted.
func (s Session) ReadSeen(one, two, way, loose string) (counter.Seen, string) {
	seen := counter.NothingSeen()
	labels := AskRecount{}.Labels()
	for i, f := range []struct {
		text string
		at   *int
	}{{one, &seen.OverPeg1}, {two, &seen.OverPeg2}} {
		if f.text == "" || f.text == "-" {
			continue
		}
		n, problem := CountOf(labels[i], f.text, 0, measure.MaxEnds)
		if problem != "" {
			return seen, problem
		}
		*f.at = n
	}
	switch way := strings.ToLower(way); {
	case way == "" || way == "-":
	case strings.HasPrefix("outward", way):
		seen.LastWay = counter.WayOutward
	case strings.HasPrefix("return", way):
		seen.LastWay = counter.WayReturn
	default:
		return seen, fmt.Sprintf("last group: %q won't do; give o or r", shorten(way))
	}
	if loose != "" && loose != "-" {
		n, problem := CountOf(labels[atLoose], loose, 0, measure.MaxEnds)
		if problem != "" {
			return seen, problem
		}
		seen.TiedGroups, seen.LooseGroups = s.st.LastTie(), n
	}
	return seen, ""
}

func (AskRecount) seen(s Session, t []string) (counter.Seen, string) {
	return s.ReadSeen(t[atPeg1], t[atPeg2], t[atWay], t[atLoose])
}

// Changed fills in the number of passes that fits what was counted.
func (q AskRecount) Changed(s Session, t []string, at int) []string {
	if at >= atPasses {
		return t
	}
	seen, problem := q.seen(s, t)
	if problem != "" {
		return t
	}
	if r := counter.Reconcile(s.st.Current(), s.st.Laid(), seen); r.Best >= 0 {
		t[atPasses] = strconv.Itoa(r.Best)
	}
	return t
}

// Preview says what the count would be, and from which tie it counts.
func (q AskRecount) Preview(s Session, t []string) string {
	seen, problem := q.seen(s, t)
	if problem != "" {
		return problem
	}
	r := counter.Reconcile(s.st.Current(), s.st.Laid(), seen)
	if len(r.Disagree) > 0 {
		return strings.Join(r.Disagree, " ")
	}
	n, problem := CountOf("passes", t[atPasses], 0, len(s.st.Current().Passes))
	if problem != "" {
		return problem
	}
	cross := counter.CrossOf(n)
	text := fmt.Sprintf("%s: %d over peg 1 and %d over peg 2, %d ends. Now the count says %d; both numbers are kept.",
		measure.Counted(n, "pass", "passes"), cross.OverPeg1, cross.OverPeg2, s.st.Current().EndsAfter(n), s.st.Laid())
	if tie := s.Standing().Tie; tie.Pass > 0 {
		text += fmt.Sprintf(" The last tie holds %s, so %s after it.", measure.Counted(tie.Ends, "end", "ends"),
			loose(n-tie.Pass))
	}
	return text
}

// loose says how many groups lie after a tie.
func loose(n int) string {
	if n < 0 {
		return fmt.Sprintf("%s fewer than are tied", measure.Counted(-n, "group", "groups"))
	}
	return measure.Counted(n, "group lies", "groups lie")
}

// Intent is a [Recount].
func (q AskRecount) Intent(s Session, t []string) (Intent, string) {
	n, problem := CountOf("passes", t[atPasses], 0, len(s.st.Current().Passes))
	if problem != "" {
		return nil, problem
	}
	if t[atWhy] == "" {
		return nil, "why: say why, so that the record can be read later"
	}
	seen, problem := q.seen(s, t)
	if problem != "" {
		return nil, problem
	}
	return Recount{Passes: n, Reason: t[atWhy], Seen: seen}, ""
}

// Pegs says which number of passes fits what was counted at the pegs. It changes nothing.
func (s Session) Pegs(seen counter.Seen) []string {
	r := counter.Reconcile(s.st.Current(), s.st.Laid(), seen)
	passes := func(n int) string { return measure.Counted(n, "pass", "passes") }
	switch {
	case len(r.Disagree) > 0:
		return r.Disagree
	case r.Best < 0:
		return []string{"Say what was counted: the groups over peg 1, over peg 2, or both."}
	case r.Sure && r.Agrees:
		return []string{fmt.Sprintf("That is %s, as counted.", passes(r.Best))}
	case r.Sure:
		return []string{fmt.Sprintf("That is %s, and the count says %d. A recount to %d sets it.", passes(r.Best),
			s.st.Laid(), r.Best)}
	}
	return []string{fmt.Sprintf("That fits more than one count; the nearest to %d is %d. Count the other peg, or "+
		"say whether the last group lies outward or return.",
		s.st.Laid(), r.Best)}
}
