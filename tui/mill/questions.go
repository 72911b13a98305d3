package mill

import (
	"fmt"
	"strconv"
	"strings"

	"millside/counter"
	"millside/plan"
	"millside/plan/measure"
)

// noteQuestion keeps a few words with the pass.
type noteQuestion struct{}

func (noteQuestion) title() string                                           { return "NOTE" }
func (noteQuestion) labels() []string                                        { return []string{"note"} }
func (noteQuestion) changed(_ counter.State, texts []string, _ int) []string { return texts }
func (noteQuestion) preview(st counter.State, _ []string) string             { return "kept with " + passWords(st) }
func (noteQuestion) event(st counter.State, t []string) (counter.Event, string) {
	if t[0] == "" {
		return counter.Event{}, "write a few words, or press esc"
	}
	return counter.Event{Kind: counter.Noted, Pass: st.Laid(), Text: t[0]}, ""
}

func passWords(st counter.State) string {
	if st.Laid() == 0 {
		return "the beginning"
	}
	return fmt.Sprintf("pass %d", st.Laid())
}

// countOf reads a whole number from low to high; a problem names the field and what would do.
func countOf(name, text string, low, high int) (int, string) {
	n, err := strconv.Atoi(text)
	if err != nil || n < low || n > high {
		return 0, fmt.Sprintf("%s: %q won't do; give %d to %d", name, text, low, high)
	}
	return n, ""
}

// endQuestion notes a broken end or a knot.
type endQuestion struct{ what counter.What }

func (q endQuestion) title() string { return strings.ToUpper(q.what.Words()) }
func (endQuestion) labels() []string {
	return []string{"position", "pass", "where: length from the lease, or turns"}
}
func (endQuestion) changed(_ counter.State, texts []string, _ int) []string { return texts }

// nowPass is the pass that something happens on: the one being laid, or the last one of a wound chain.
func nowPass(st counter.State) int { return min(st.Laid()+1, len(st.Current().Passes)) }

func (q endQuestion) preview(st counter.State, t []string) string {
	e, problem := q.event(st, t)
	if problem != "" {
		if t[0] == "" {
			return "Which position of the paddle? Where along the warp may stay empty."
		}
		return ""
	}
	pass := st.Current().Passes[e.Pass-1]
	end := pass.EndAt(e.Position)
	text := fmt.Sprintf("That is end %d of the warp", end)
	if st.Plan.Striped() {
		text += ", " + st.Plan.ColourText(st.Plan.EndColour(end))
	}
	return text + ". It will stand on the hand-over."
}

func (q endQuestion) event(st counter.State, t []string) (counter.Event, string) {
	e := counter.Event{Kind: counter.Incident, What: q.what}
	var problem string
	if e.Pass, problem = countOf("pass", t[1], 1, nowPass(st)); problem != "" {
		return e, problem
	}
	if e.Position, problem = countOf("position", t[0], 1, measure.MaxPositions); problem != "" {
		return e, problem
	}
	if pass := st.Current().Passes[e.Pass-1]; !pass.Carried.Has(e.Position) {
		return e, fmt.Sprintf("position: pass %d carries positions %s", e.Pass, pass.Carried)
	}
	if t[2] == "" {
		return e, ""
	}
	place, err := placeOf(st.Plan, t[2])
	if err != nil {
		return e, "where: " + err.Error()
	}
	e.Place, e.HasPlace = place, true
	return e, ""
}

// placeOf reads a length from the lease, or a number of turns of the mill.
func placeOf(p *plan.Plan, text string) (measure.Length, error) {
	place, err := measure.ParseLength(text)
	if turns, ok := strings.CutSuffix(strings.TrimSuffix(text, "s"), "turn"); ok {
		place, err = p.Path.AtTurns(strings.TrimSpace(turns))
	}
	if err == nil && place > p.Path.Length {
		err = &measure.FieldError{Value: text, Want: "at most " + p.Path.Length.In(p.Spec.Units.Long(), 2) + ", the length of the warp"}
	}
	return place, err
}

// coneQuestion puts in a cone.
type coneQuestion struct{}

func (coneQuestion) title() string    { return "NEW CONE" }
func (coneQuestion) labels() []string { return []string{"position", "weight with its tube"} }
func (coneQuestion) changed(_ counter.State, texts []string, _ int) []string {
	return texts
}
func (coneQuestion) preview(st counter.State, _ []string) string {
	return fmt.Sprintf("It feeds from pass %d on. The weight may stay empty. Tie it in at an end peg, where the knot does no harm.", nowPass(st))
}
func (coneQuestion) event(st counter.State, t []string) (counter.Event, string) {
	e := counter.Event{Kind: counter.NewCone, Pass: nowPass(st)}
	var problem string
	if e.Position, problem = countOf("position", t[0], 1, st.Plan.Spec.Positions); problem != "" || t[1] == "" {
		return e, problem
	}
	weight, err := measure.ParseMass(t[1])
	if err != nil {
		return e, "weight: " + err.Error()
	}
	e.Weight = weight
	return e, ""
}

// recountQuestion leads through the counting cross. What is typed at the pegs fills in the number of
// passes, if it goes together; the number can be typed as well.
type recountQuestion struct{}

func (recountQuestion) title() string { return "RECOUNT  ·  trust the pegs, not the memory" }
func (recountQuestion) labels() []string {
	return []string{"groups over peg 1", "groups over peg 2", "last group: o outward, r return", "groups after the last tie", "passes on the mill", "why"}
}

const (
	atPeg1 = iota
	atPeg2
	atWay
	atLoose
	atPasses
	atWhy
)

// seen is what has been typed of the pegs.
func (recountQuestion) seen(st counter.State, t []string) (counter.Seen, string) {
	seen := counter.NothingSeen()
	for i, at := range []*int{&seen.OverPeg1, &seen.OverPeg2} {
		if t[i] == "" {
			continue
		}
		n, problem := countOf(recountQuestion{}.labels()[i], t[i], 0, measure.MaxEnds)
		if problem != "" {
			return seen, problem
		}
		*at = n
	}
	switch way := strings.ToLower(t[atWay]); {
	case way == "":
	case strings.HasPrefix("outward", way):
		seen.LastWay = counter.WayOutward
	case strings.HasPrefix("return", way):
		seen.LastWay = counter.WayReturn
	default:
		return seen, fmt.Sprintf("last group: %q won't do; give o or r", way)
	}
	if t[atLoose] != "" {
		n, problem := countOf("groups after the last tie", t[atLoose], 0, measure.MaxEnds)
		if problem != "" {
			return seen, problem
		}
		seen.TiedGroups, seen.LooseGroups = lastTie(st), n
	}
	return seen, ""
}

// lastTie is the number of groups within the count ties that were made.
func lastTie(st counter.State) int {
	for i := len(st.Ties) - 1; i >= 0; i-- {
		if st.Ties[i].Chain == st.Chain {
			return st.Ties[i].Pass
		}
	}
	return 0
}

func (q recountQuestion) changed(st counter.State, t []string, at int) []string {
	if at >= atPasses {
		return t
	}
	seen, problem := q.seen(st, t)
	if problem != "" {
		return t
	}
	if r := counter.Reconcile(st.Current(), st.Laid(), seen); r.Best >= 0 {
		t[atPasses] = strconv.Itoa(r.Best)
	}
	return t
}

func (q recountQuestion) preview(st counter.State, t []string) string {
	seen, problem := q.seen(st, t)
	if problem != "" {
		return problem
	}
	r := counter.Reconcile(st.Current(), st.Laid(), seen)
	if len(r.Disagree) > 0 {
		return strings.Join(r.Disagree, " ")
	}
	n, problem := countOf("passes", t[atPasses], 0, len(st.Current().Passes))
	if problem != "" {
		return problem
	}
	cross := counter.CrossOf(n)
	text := fmt.Sprintf("%s: %d over peg 1 and %d over peg 2, %d ends. Now the count says %d; both numbers are kept.",
		measure.Counted(n, "pass", "passes"), cross.OverPeg1, cross.OverPeg2, st.Current().EndsAfter(n), st.Laid())
	if tie := lastTie(st); tie > 0 {
		text += fmt.Sprintf(" The last tie was made after pass %d.", tie)
	}
	return text
}

func (q recountQuestion) event(st counter.State, t []string) (counter.Event, string) {
	n, problem := countOf("passes", t[atPasses], 0, len(st.Current().Passes))
	if problem != "" {
		return counter.Event{}, problem
	}
	if t[atWhy] == "" {
		return counter.Event{}, "say why, so that the record can be read later"
	}
	why := t[atWhy]
	if t[atPeg1] != "" || t[atPeg2] != "" {
		why += fmt.Sprintf(" (%s over peg 1, %s over peg 2)", orDash(t[atPeg1]), orDash(t[atPeg2]))
	}
	return counter.Event{Kind: counter.Recounted, Pass: n, Text: why}, ""
}

func orDash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}
