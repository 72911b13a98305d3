package session

import (
	"fmt"
	"strconv"
	"strings"

	"millside/counter"
	"millside/plan"
	"millside/plan/measure"
)

// Ask is something that takes a few short answers: a note, a mark with its place, a recount. It says what to ask, what
// the answers as they stand would mean, and which [Intent] they make. The texts are those of its fields, in order.
type Ask interface {
	// Title is what is asked for, in capital letters.
	Title() string
	// Labels names the fields.
	Labels() []string
	// Begin is what the fields hold to begin with.
	Begin(s Session) []string
	// Changed gives the texts after field at was changed: what was typed in one may fill in another.
	Changed(s Session, texts []string, at int) []string
	// Preview says what the answers as they stand would mean; it may be empty.
	Preview(s Session, texts []string) string
	// Intent is what the answers ask for. The problem is empty if they will do; else it names the field, what
	// was typed, and what would do.
	Intent(s Session, texts []string) (in Intent, problem string)
}

// plainAsk is an [Ask] whose fields don't fill each other in.
type plainAsk struct{}

func (plainAsk) Changed(_ Session, texts []string, _ int) []string { return texts }

// AskNote asks for a note.
type AskNote struct{ plainAsk }

// Title is what is asked for.
func (AskNote) Title() string { return "NOTE" }

// Labels names the field.
func (AskNote) Labels() []string { return []string{"note"} }

// Begin begins empty.
func (AskNote) Begin(Session) []string { return []string{""} }

// Preview says what the note is kept with.
func (AskNote) Preview(s Session, _ []string) string { return "kept with " + s.passOrBeginning() }

// Intent is a [Note].
func (AskNote) Intent(_ Session, t []string) (Intent, string) {
	if t[0] == "" {
		return nil, "note: write a few words"
	}
	return Note{t[0]}, ""
}

func (s Session) passOrBeginning() string {
	if s.st.Laid() == 0 {
		return "the beginning"
	}
	return fmt.Sprintf("pass %d", s.st.Laid())
}

// AskReopen asks why the finished warp is opened again.
type AskReopen struct{ plainAsk }

// Title is what is asked for.
func (AskReopen) Title() string { return "OPEN THE RECORD AGAIN" }

// Labels names the field.
func (AskReopen) Labels() []string { return []string{"why"} }

// Begin begins empty.
func (AskReopen) Begin(Session) []string { return []string{""} }

// Preview says what comes of it.
func (AskReopen) Preview(Session, []string) string {
	return "The reason stands in the record. Then steps and passes can be taken back, and marks added."
}

// Intent is a [Reopen].
func (AskReopen) Intent(_ Session, t []string) (Intent, string) {
	if t[0] == "" {
		return nil, "why: say why, so that the record can be read later"
	}
	return Reopen{t[0]}, ""
}

// AskMark asks for what went wrong with one end, or with a whole pass.
type AskMark struct {
	plainAsk
	What counter.What
}

// Title is what is asked for.
func (q AskMark) Title() string { return strings.ToUpper(q.What.Words()) }

// Labels names the fields.
func (q AskMark) Labels() []string {
	labels := []string{"pass", "where: length from the lease, or turns"}
	if q.What.OfEnd() {
		return append([]string{"position"}, labels...)
	}
	return labels
}

// Begin names the pass in hand.
func (q AskMark) Begin(s Session) []string {
	texts := []string{fmt.Sprint(s.InHand()), ""}
	if q.What.OfEnd() {
		return append([]string{""}, texts...)
	}
	return texts
}

// Preview says which end of the warp it is.
func (q AskMark) Preview(s Session, t []string) string {
	in, problem := q.Intent(s, t)
	switch {
	case problem != "" && q.What.OfEnd() && t[0] == "":
		return "Which position of the paddle? Where along the warp may stay empty."
	case problem != "":
		return ""
	case !q.What.OfEnd():
		return "It will stand on the hand-over."
	}
	m := in.(Mark)
	end := s.st.Plan.EndOfWound(s.st.Current().Passes[m.Pass-1].EndAt(m.Position))
	text := fmt.Sprintf("That is end %d of the warp", end)
	if s.st.Plan.Striped() {
		text += ", " + s.st.Plan.ColourText(s.st.Plan.EndColour(end))
	}
	return text + ". It will stand on the hand-over."
}

// Intent is a [Mark].
func (q AskMark) Intent(s Session, t []string) (Intent, string) {
	m, problem := Mark{What: q.What}, ""
	position := ""
	if q.What.OfEnd() {
		position, t = t[0], t[1:]
	}
	if m.Pass = s.InHand(); t[0] != "" { // an empty field is the pass in hand
		if m.Pass, problem = CountOf("pass", t[0], 1, s.InHand()); problem != "" {
			return nil, problem
		}
	}
	if q.What.OfEnd() {
		if m.Position, problem = CountOf("position", position, 1, measure.MaxPositions); problem != "" {
			return nil, problem
		}
		if pass := s.st.Current().Passes[m.Pass-1]; !pass.Carried.Has(m.Position) {
			return nil, fmt.Sprintf("position: pass %d carries positions %s", m.Pass, pass.Carried)
		}
	}
	if t[1] == "" {
		return m, ""
	}
	place, err := PlaceOf(s.st.Plan, t[1])
	if err != nil {
		return nil, "where: " + err.Error()
	}
	m.Place, m.HasPlace = place, true
	return m, ""
}

// CountOf reads a whole number from low to high; the problem names the field, what was typed and what would do.
func CountOf(name, text string, low, high int) (int, string) {
	n, err := strconv.Atoi(text)
	if err != nil || n < low || n > high {
		return 0, fmt.Sprintf("%s: %q won't do; give %d to %d", name, shorten(text), low, high)
	}
	return n, ""
}

// shorten cuts what was typed for an answer.
func shorten(text string) string {
	const most = 40
	text = measure.Clean(text)
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "…"
	}
	return text
}

// PlaceOf reads a length from the lease, or a number of turns of the mill such as "3 turns", within the warp. The error
// is a [*measure.FieldError] without a field name.
func PlaceOf(p *plan.Plan, text string) (measure.Length, error) {
	place, err := measure.ParseLength(text)
	if turns, ok := strings.CutSuffix(strings.TrimSuffix(strings.ToLower(text), "s"), "turn"); ok {
		place, err = p.Path.AtTurns(strings.TrimSpace(turns))
	}
	if err == nil && place > p.Path.Length {
		err = &measure.FieldError{Value: text, Want: "at most " + p.Path.Length.As(p.Spec.Units.Long(), 2).String() +
			", the length of the warp"}
	}
	return place, err
}

// AskPackage asks for another package.
type AskPackage struct{ plainAsk }

// Title is what is asked for.
func (AskPackage) Title() string { return "ANOTHER PACKAGE" }

// Labels names the fields.
func (AskPackage) Labels() []string { return []string{"position", "weight with its tube"} }

// Begin begins empty.
func (AskPackage) Begin(Session) []string { return []string{"", ""} }

// Preview says from which pass on it feeds.
func (AskPackage) Preview(s Session, _ []string) string {
	return fmt.Sprintf("It feeds from pass %d on. The weight may stay empty. Tie it in at an end peg, where the "+
		"knot does no harm.", s.InHand())
}

// Intent is a [NewPackage].
func (AskPackage) Intent(s Session, t []string) (Intent, string) {
	in, problem := NewPackage{}, ""
	if in.Position, problem = CountOf("position", t[0], 1, s.st.Plan.Spec.Positions); problem != "" {
		return nil, problem
	}
	if t[1] != "" {
		weight, err := measure.ParseMass(t[1])
		if err != nil {
			return nil, "weight: " + err.Error()
		}
		in.Weight = weight
	}
	return in, ""
}
