package mill

import (
	"fmt"
	"strconv"
	"strings"

	"millside/counter"
	"millside/counter/session"
	"millside/plan"
	"millside/plan/measure"
)

// noteQuestion keeps a few words with the pass.
type noteQuestion struct{}

func (noteQuestion) title() string                                           { return "NOTE" }
func (noteQuestion) labels() []string                                        { return []string{"note"} }
func (noteQuestion) changed(_ counter.State, texts []string, _ int) []string { return texts }
func (noteQuestion) preview(st counter.State, _ []string) string             { return "kept with " + passWords(st) }
func (noteQuestion) intent(_ counter.State, t []string) (session.Intent, string) {
	if t[0] == "" {
		return nil, "write a few words, or go back"
	}
	return session.Note{Text: t[0]}, ""
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
type endQuestion struct {
	what   counter.What
	inHand int // the pass that it is about where no other is given
}

func (q endQuestion) title() string { return strings.ToUpper(q.what.Words()) }
func (q endQuestion) labels() []string {
	return []string{"position", "pass", "where: length from the lease, or turns"}
}
func (endQuestion) changed(_ counter.State, texts []string, _ int) []string { return texts }

func (q endQuestion) preview(st counter.State, t []string) string {
	mark, problem := q.mark(st, t)
	if problem != "" {
		if t[0] == "" {
			return fmt.Sprintf("Which position of the paddle? It is about pass %d, which is in hand, if you give no "+
				"other. Where along the warp may stay empty.", q.inHand)
		}
		return ""
	}
	end := st.Current().Passes[mark.Pass-1].EndAt(mark.Position)
	text := fmt.Sprintf("That is end %d of the warp", end)
	if st.Plan.Striped() {
		text += ", " + st.Plan.ColourText(st.Plan.EndColour(end))
	}
	return text + ". It will stand on the hand-over."
}

func (q endQuestion) intent(st counter.State, t []string) (session.Intent, string) {
	mark, problem := q.mark(st, t)
	if problem != "" {
		return nil, problem
	}
	return mark, ""
}

func (q endQuestion) mark(st counter.State, t []string) (session.Mark, string) {
	mark := session.Mark{What: q.what, Pass: q.inHand}
	var problem string
	if t[1] != "" {
		if mark.Pass, problem = countOf("pass", t[1], 1, q.inHand); problem != "" {
			return mark, problem
		}
	}
	if mark.Position, problem = countOf("position", t[0], 1, measure.MaxPositions); problem != "" {
		return mark, problem
	}
	if pass := st.Current().Passes[mark.Pass-1]; !pass.Carried.Has(mark.Position) {
		return mark, fmt.Sprintf("position: pass %d carries positions %s", mark.Pass, pass.Carried)
	}
	if t[2] == "" {
		return mark, ""
	}
	place, err := placeOf(st.Plan, t[2])
	if err != nil {
		return mark, "where: " + err.Error()
	}
	mark.Place, mark.HasPlace = place, true
	return mark, ""
}

// placeOf reads a length from the lease, or a number of turns of the mill.
func placeOf(p *plan.Plan, text string) (measure.Length, error) {
	place, err := measure.ParseLength(text)
	if turns, ok := strings.CutSuffix(strings.TrimSuffix(text, "s"), "turn"); ok {
		place, err = p.Path.AtTurns(strings.TrimSpace(turns))
	}
	if err == nil && place > p.Path.Length {
		err = &measure.FieldError{Value: text, Want: "at most " + p.Path.Length.As(p.Spec.Units.Long(), 2).String() +
			", the length of the warp"}
	}
	return place, err
}

// packageQuestion puts in another package.
type packageQuestion struct{ inHand int }

func (packageQuestion) title() string    { return "ANOTHER PACKAGE" }
func (packageQuestion) labels() []string { return []string{"position", "weight with its tube"} }
func (packageQuestion) changed(_ counter.State, texts []string, _ int) []string {
	return texts
}
func (q packageQuestion) preview(counter.State, []string) string {
	return fmt.Sprintf("It feeds from pass %d on. The weight may stay empty. Tie it in at an end peg, where the "+
		"knot does no harm.", q.inHand)
}
func (q packageQuestion) intent(st counter.State, t []string) (session.Intent, string) {
	in := session.NewPackage{Pass: q.inHand}
	var problem string
	if in.Position, problem = countOf("position", t[0], 1, st.Plan.Spec.Positions); problem != "" {
		return nil, problem
	}
	if t[1] == "" {
		return in, ""
	}
	weight, err := measure.ParseMass(t[1])
	if err != nil {
		return nil, "weight: " + err.Error()
	}
	in.Weight = weight
	return in, ""
}

// reopenQuestion opens a finished warp again.
type reopenQuestion struct{}

func (reopenQuestion) title() string                                           { return "OPEN THE RECORD AGAIN" }
func (reopenQuestion) labels() []string                                        { return []string{"why"} }
func (reopenQuestion) changed(_ counter.State, texts []string, _ int) []string { return texts }
func (reopenQuestion) preview(counter.State, []string) string {
	return "The last finishing step can then be taken back, and passes before it. The reason is kept in the record."
}
func (reopenQuestion) intent(_ counter.State, t []string) (session.Intent, string) {
	return session.Reopen{Reason: t[0]}, ""
}

// recountQuestion leads through the counting cross. What is typed at the pegs fills in the number of
// passes, if it goes together; the number can be typed as well.
type recountQuestion struct{}

func (recountQuestion) title() string { return "RECOUNT  ·  trust the pegs, not the memory" }
func (recountQuestion) labels() []string {
	return []string{"groups over peg 1", "groups over peg 2", "last group: o outward, r return",
		"groups after the last tie", "passes on the mill", "why"}
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
		seen.TiedGroups, seen.LooseGroups = st.LastTie(), n
	}
	return seen, ""
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
	if tie := st.LastTie(); tie > 0 {
		text += fmt.Sprintf(" The last count tie holds %d groups.", tie)
	}
	return text
}

func (q recountQuestion) intent(st counter.State, t []string) (session.Intent, string) {
	n, problem := countOf("passes", t[atPasses], 0, len(st.Current().Passes))
	if problem != "" {
		return nil, problem
	}
	if t[atWhy] == "" {
		return nil, "say why, so that the record can be read later"
	}
	seen, problem := q.seen(st, t)
	if problem != "" {
		return nil, problem
	}
	return session.Recount{Passes: n, Reason: t[atWhy], Seen: seen}, ""
}

// recountPrompt asks for what lies on the pegs; the number of passes begins with what is believed.
func (m Model) recountPrompt() prompt {
	return newPrompt(m.Deps, recountQuestion{}, "", "", "", "", fmt.Sprint(m.s.State().Laid()), "counted on the pegs")
}
