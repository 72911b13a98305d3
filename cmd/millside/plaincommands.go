package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"millside/counter"
	"millside/plan"
	"millside/plan/measure"
)

// command is a word that may be typed instead of an empty line.
type command struct {
	word, use, help string
	act             func(p *plain, rest string) ([]string, error)
}

// typedWords lists the commands in the order of the help. It is a function since one of them lists them all.
func typedWords() []command {
	return []command{
		{"undo", "undo", "takes the last pass or finishing step back", (*plain).undo},
		{"pause", "pause", "stops; Enter goes on", (*plain).pause},
		{"pegs", "pegs 9 8", "9 groups counted over peg 1, 8 over peg 2: which count fits? Add outward or return for the last group; - for what you didn't count", (*plain).pegs},
		{"count", "count 17 why", "sets the count to 17 passes, and keeps the reason", (*plain).setCount},
		{"note", "note text", "keeps a note", (*plain).note},
		{"break", "break 4", "the end in position 4 broke, on the pass being laid. Add: pass 12, for another pass; at 2.5 yd, or at 3 turns, from the lease; and any text", (*plain).broke},
		{"knot", "knot 4", "a knot in that end, noted in the same way", (*plain).knot},
		{"missed", "missed", "a missed opening on the pass being laid, or: missed pass 12", (*plain).missed},
		{"wrongpeg", "wrongpeg", "a wrong peg, in the same way", (*plain).wrongPeg},
		{"withdraw", "withdraw 7", "takes back what was noted as number 7", (*plain).withdraw},
		{"turn", "turn", "after the last pass the group went the wrong way round the peg", (*plain).turn},
		{"righted", "righted", "the twist behind the paddle was taken out", (*plain).righted},
		{"tie", "tie", "the count tie is made", (*plain).tie},
		{"where", "where", "what stands on the mill, what was noted, and what comes next", (*plain).where},
		{"other", "other", "at the look at the lease: the second group lies the other way round", (*plain).other},
		{"help", "help", "lists these words", (*plain).help},
		{"leave", "leave", "pauses and ends; so does the end of the input", nil}, // take does it
	}
}

func (p *plain) help(string) ([]string, error) {
	said := []string{"An empty line: the pass is laid, or the question is answered with yes."}
	for _, w := range typedWords() {
		said = append(said, w.use+": "+w.help+".")
	}
	return said, nil
}

// unknown explains a word that means nothing here.
func unknown(word string) string {
	var known []string
	for _, w := range typedWords() {
		known = append(known, w.word)
	}
	return fmt.Sprintf("%q means nothing here. An empty line goes on; the words are %s.", shorten(word), strings.Join(known, ", "))
}

// shorten cuts what was typed for an answer.
func shorten(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}

// again says that something was done, and what the winder needs to know now.
func (p *plain) again(done string) func() []string {
	return func() []string { return append([]string{done}, p.announce()...) }
}

func (p *plain) undo(string) ([]string, error) {
	if ticked := p.st.Chains[p.st.Chain-1].Ticked; len(ticked) > 0 {
		return p.then(counter.Event{Kind: counter.Unticked, Step: ticked[len(ticked)-1]}, p.again("The step is taken back."))
	}
	if p.st.Laid() == 0 && p.st.Chain > 1 {
		before := p.st.Chains[p.st.Chain-2].Ticked
		return p.then(counter.Event{Kind: counter.Unticked, Chain: p.st.Chain - 1, Step: before[len(before)-1]}, p.again("The step is taken back."))
	}
	if p.st.Laid() == 0 {
		return []string{"Nothing to undo: no pass is laid."}, nil
	}
	k := p.st.Laid()
	return p.then(counter.Event{Kind: counter.Undone, Pass: k}, p.again(fmt.Sprintf("Pass %d is taken back.", k)))
}

func (p *plain) pause(string) ([]string, error) {
	return p.then(counter.Event{Kind: counter.Paused}, p.announce)
}

// setCount is a recount. Without a reason it says where the count comes from.
func (p *plain) setCount(rest string) ([]string, error) {
	number, why, _ := strings.Cut(rest, " ")
	n, err := strconv.Atoi(number)
	if err != nil {
		return []string{"Type count, the number of passes that lie on the mill, and why: count 17 pressed twice."}, nil
	}
	if why = strings.TrimSpace(why); why == "" {
		why = "counted on the pegs"
	}
	was := p.st.Laid()
	return p.then(counter.Event{Kind: counter.Recounted, Pass: n, Text: why},
		func() []string { return p.again(fmt.Sprintf("The count was %d, now it is %d.", was, p.st.Laid()))() })
}

// pegs works out which number of passes fits what lies on the counting cross. It changes nothing.
func (p *plain) pegs(rest string) ([]string, error) {
	seen, ok := readSeen(strings.Fields(strings.ToLower(rest)))
	if !ok {
		return []string{"Type pegs, the groups over peg 1, the groups over peg 2, and, if you like, outward or return for the last group: pegs 9 8 outward. Type - for what you didn't count."}, nil
	}
	r := counter.Reconcile(p.st.Current(), p.st.Laid(), seen)
	switch {
	case len(r.Disagree) > 0:
		return r.Disagree, nil
	case r.Sure && r.Agrees:
		return []string{fmt.Sprintf("That is %s, as counted.", count(r.Best, "pass"))}, nil
	case r.Sure:
		return []string{fmt.Sprintf("That is %s, and the count says %d. Type count %d to set it.", count(r.Best, "pass"), p.st.Laid(), r.Best)}, nil
	}
	return []string{fmt.Sprintf("That fits more than one count; the nearest to %d is %d. Count the other peg, or add outward or return.", p.st.Laid(), r.Best)}, nil
}

// readSeen reads one or two counts and the way of the last group; at least one count.
func readSeen(fields []string) (counter.Seen, bool) {
	seen, counts, given := counter.NothingSeen(), 0, false
	for _, f := range fields {
		n, err := strconv.Atoi(f)
		switch {
		case f == "outward":
			seen.LastWay = counter.WayOutward
		case f == "return":
			seen.LastWay = counter.WayReturn
		case counts == 2, f != "-" && (err != nil || n < 0):
			return seen, false
		default:
			if f == "-" {
				n = counter.NotCounted
			} else {
				given = true
			}
			*[]*int{&seen.OverPeg1, &seen.OverPeg2}[counts] = n
			counts++
		}
	}
	return seen, given
}

func (p *plain) note(rest string) ([]string, error) {
	if rest == "" {
		return []string{"Type note and a few words."}, nil
	}
	return p.then(counter.Event{Kind: counter.Noted, Pass: p.st.Laid(), Text: rest}, func() []string { return []string{"The note is kept."} })
}

func (p *plain) broke(rest string) ([]string, error)    { return p.incident(counter.Broken, rest) }
func (p *plain) knot(rest string) ([]string, error)     { return p.incident(counter.Knot, rest) }
func (p *plain) missed(rest string) ([]string, error)   { return p.incident(counter.MissedOpening, rest) }
func (p *plain) wrongPeg(rest string) ([]string, error) { return p.incident(counter.WrongPeg, rest) }

// incident notes something that went wrong.
func (p *plain) incident(what counter.What, rest string) ([]string, error) {
	e, wrong := readIncident(p.st, what, rest)
	if wrong != "" {
		return []string{wrong}, nil
	}
	return p.then(e, func() []string {
		in := p.st.Incidents[len(p.st.Incidents)-1]
		said := fmt.Sprintf("Noted as number %d: %s.", in.Number, in.Words(p.st.Plan.Spec.Units))
		return append([]string{said}, p.colourWords(in.End)...)
	})
}

// withdraw takes an incident back: the one of that number, or the last that stands.
func (p *plain) withdraw(rest string) ([]string, error) {
	line, err := strconv.Atoi(rest)
	if rest == "" {
		for _, in := range p.st.Incidents {
			if !in.Withdrawn {
				line = in.Number
			}
		}
		if line == 0 {
			return []string{"There is nothing to take back."}, nil
		}
	} else if err != nil {
		return []string{"Type withdraw and the number of what was noted; where lists the numbers."}, nil
	}
	return p.then(counter.Event{Kind: counter.Withdrawn, Line: line}, func() []string { return []string{fmt.Sprintf("Number %d is taken back.", line)} })
}

func (p *plain) turn(string) ([]string, error) {
	return p.then(counter.Event{Kind: counter.WrongTurn, Pass: p.st.Laid()}, func() []string {
		said := fmt.Sprintf("A wrong turn after pass %d is noted.", p.st.Laid())
		if advice := p.st.TwistAdvice(); advice != "" {
			return []string{said, advice}
		}
		return []string{said, "The twist is as planned again."}
	})
}

func (p *plain) righted(string) ([]string, error) {
	return p.then(counter.Event{Kind: counter.Righted}, func() []string { return []string{"The twist is as planned again."} })
}

func (p *plain) tie(string) ([]string, error) {
	return p.then(counter.Event{Kind: counter.TieMade, Pass: p.st.Laid()}, func() []string {
		return []string{fmt.Sprintf("A count tie at %s is noted.", count(p.st.EndsStanding(), "end"))}
	})
}

// where says all of it, and changes nothing.
func (p *plain) where(string) ([]string, error) {
	if p.st.Finished || p.st.Events == 0 {
		return p.announce(), nil
	}
	var said []string
	if p.stage() != stageLook {
		said = p.mustBeSeen()
	}
	for _, in := range p.st.Incidents {
		if in.Stands() {
			said = append(said, fmt.Sprintf("Number %d, chain %d: %s.", in.Number, in.Chain, in.Words(p.st.Plan.Spec.Units)))
		}
	}
	return slices.Concat(said, p.paceWords(), p.announce()), nil
}

func (p *plain) other(string) ([]string, error) {
	if p.stage() != stageLease {
		return []string{"That is the answer to the look at the lease, which comes after pass 2."}, nil
	}
	p.guard = p.guard.Counted(p.now())
	before := p.st
	return p.then(counter.Event{Kind: counter.LeaseSeen, Order: p.st.Plan.Spec.ReturnOrder.Other()},
		func() []string { return p.again(saidOrder(before, p.st))() })
}

// readIncident reads what is typed after break, knot, missed or wrongpeg: the position, where it happened
// to one end; "pass 12"; "at 2.5 yd" or "at 3 turns"; then a text. Wrong says what to type instead.
func readIncident(s counter.State, what counter.What, rest string) (e counter.Event, wrong string) {
	e = counter.Event{Kind: counter.Incident, What: what, Chain: s.Chain, Pass: min(s.Laid()+1, len(s.Current().Passes))}
	fields := strings.Fields(rest)
	if what.OfEnd() {
		n, err := strconv.Atoi(firstOf(fields))
		if err != nil {
			return e, fmt.Sprintf("Which position? Type a number from 1 to %d after it.", s.Current().Passes[e.Pass-1].Carried.Last())
		}
		e.Position, fields = n, fields[1:]
	}
	if firstOf(fields) == "pass" {
		n, err := strconv.Atoi(firstOf(fields[1:]))
		if err != nil {
			return e, "Which pass? Type a number after pass."
		}
		e.Pass, fields = n, fields[2:]
	}
	if firstOf(fields) == "at" {
		n := 0
		if e.Place, n = readPlace(s.Plan.Path, fields[1:]); n == 0 {
			return e, "Where? Type a length from the lease after at, such as at 2.5 yd, or at 3 turns."
		}
		e.HasPlace, fields = true, fields[1+n:]
	}
	e.Text = strings.Join(fields, " ")
	return e, ""
}

func firstOf(fields []string) string {
	if len(fields) == 0 {
		return ""
	}
	return strings.ToLower(fields[0])
}

// readPlace reads a length, or whole turns of the mill, from the front of some words, as many as belong
// to it, and says how many that are; 0 if none do.
func readPlace(path plan.MillPath, fields []string) (measure.Length, int) {
	if len(fields) > 1 && strings.HasPrefix(strings.ToLower(fields[1]), "turn") {
		// No path has so many turns, and a product beyond any warp could run over.
		if n, err := strconv.Atoi(fields[0]); err == nil && n >= 0 && n <= measure.MaxEnds {
			return path.PerTurn.Times(n), 2
		}
	}
	const most = 5 // "4 yd 17 1/2 in"
	for n := min(len(fields), most); n > 0; n-- {
		if l, err := measure.ParseLength(strings.Join(fields[:n], " ")); err == nil {
			return l, n
		}
	}
	return 0, 0
}
