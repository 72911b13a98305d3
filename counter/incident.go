package counter

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"millside/plan/measure"
	"millside/plan/wind"
)

// What is what went wrong. Records keep the names, so they are never changed or used again.
type What string

// What can go wrong. The first two happen to one end, the last two to the whole pass.
const (
	Broken        What = "broken"         // an end broke and was mended or not
	Knot          What = "knot"           // an end has a knot
	MissedOpening What = "missed-opening" // the pass lies in the lease without its openings, or with the wrong one
	WrongPeg      What = "wrong-peg"      // the pass went round or over another peg than it should have
)

// OfEnd says whether it happens to one end and not to the whole pass.
func (w What) OfEnd() bool { return w == Broken || w == Knot }

// known says whether it is one of the four.
func (w What) known() bool { return w.OfEnd() || w == MissedOpening || w == WrongPeg }

// Words says it as a weaver does: "broken end", "knot", "missed opening", "wrong peg".
func (w What) Words() string {
	switch w {
	case Broken:
		return "broken end"
	case MissedOpening:
		return "missed opening"
	case WrongPeg:
		return "wrong peg"
	}
	return string(w)
}

// IncidentState is something that went wrong on the way, as it stands now.
type IncidentState struct {
	// Number is the line of the record that notes it, and what takes it back: the first event stands on
	// line 2.
	Number int
	At     time.Time
	// Chain and Pass are counted from 1. Position is the position of the paddle, 0 if it happened to the
	// whole pass.
	Chain, Pass, Position int
	// End is the number of the end in the warp under the plan in force, 0 if it happened to the whole
	// pass or where that plan has no end in the position. It follows the return order that was seen in
	// the lease; a striped warp has another schedule in the other order.
	End  int
	What What
	// Place is how far from the lease along the warp, if HasPlace.
	Place    measure.Length
	HasPlace bool
	Text     string
	// Withdrawn says that it was noted by mistake.
	Withdrawn bool
	// Undone says that its pass is not on the mill: it was taken back, or a recount went below it, since
	// the incident was noted. It turns false again when the count reaches the pass again: the same yarn
	// lies there, most likely with the same knot. Who knows better takes the incident back. An incident
	// of the pass that is being laid is not undone.
	Undone bool
}

// Stands says whether the incident is in the warp, as far as is known: neither taken back nor on a pass
// that is undone.
func (i IncidentState) Stands() bool { return !i.Withdrawn && !i.Undone }

// Words says where it is and what it is, with its place in the unit for long lengths to two decimals,
// rounded to the nearest: "pass 17, position 4, end 164: knot, 2.5 yd from the lease (by the blue cone)".
func (i IncidentState) Words(units measure.LengthUnitSystem) string {
	text := fmt.Sprintf("pass %d", i.Pass)
	if i.What.OfEnd() {
		text += fmt.Sprintf(", position %d", i.Position)
	}
	if i.End != 0 {
		text += fmt.Sprintf(", end %d", i.End)
	}
	text += ": " + i.What.Words()
	if i.HasPlace {
		text += ", " + i.Place.As(units.Long(), 2).String() + " from the lease"
	}
	if i.Text != "" {
		text += " (" + i.Text + ")"
	}
	return text
}

// firstLine is the line of the first event; the plan stands on the line before it.
const FirstLine = 2

// incident notes something that went wrong, on a pass that is laid or being laid.
func (f *Folder) incident(e Event) error {
	e = e.Normal()
	if err := f.onMill(e.Chain, e.Pass); err != nil {
		return err
	}
	pass := f.s.Plan.Chains[e.Chain-1].Passes[e.Pass-1]
	if err := e.checkIncident(pass, f.s.Plan.Path.Length); err != nil {
		return err
	}
	f.s.Incidents = append(f.s.Incidents, IncidentState{
		Number: f.line(), At: e.At, Chain: e.Chain, Pass: e.Pass, Position: e.Position,
		What: e.What, Place: e.Place, HasPlace: e.HasPlace, Text: e.Text,
	})
	return nil
}

// onMill checks that a pass is laid or being laid. Later chains have not been begun.
func (f *Folder) onMill(chain, pass int) error {
	if chain < 1 || chain > f.s.Chain {
		return &measure.FieldError{Field: "chain", Value: fmt.Sprint(chain),
			Want: fmt.Sprintf("1 to %d, the chain in hand", f.s.Chain)}
	}
	last := min(f.s.Chains[chain-1].Laid+1, len(f.s.Plan.Chains[chain-1].Passes))
	if pass < 1 || pass > last {
		return &measure.FieldError{Field: "pass", Value: fmt.Sprint(pass),
			Want: fmt.Sprintf("1 to %d, a pass that is laid or being laid", last)}
	}
	return nil
}

// checkIncident checks what an incident says against the pass that it happened on.
func (e Event) checkIncident(pass wind.Pass, length measure.Length) error {
	switch {
	case !e.What.known():
		return &measure.FieldError{Field: "incident", Value: measure.Shortened(string(e.What)),
			Want: "broken, knot, missed-opening or wrong-peg"}
	case e.What.OfEnd() && !pass.Carried.Has(e.Position):
		return &measure.FieldError{Field: "position", Value: fmt.Sprint(e.Position),
			Want: fmt.Sprintf("one that carries an end on pass %d: %s", pass.Number, pass.Carried)}
	case !e.What.OfEnd() && e.Position != 0:
		return &measure.FieldError{Field: "position", Value: fmt.Sprint(e.Position),
			Want: "0, since it happens to the whole pass"}
	case e.HasPlace && (e.Place < 0 || e.Place > length):
		return &measure.FieldError{Field: "place", Value: e.Place.String(), Want: "0 to " + length.String() +
			" from the lease"}
	case e.Text != "":
		return checkText("text", e.Text)
	}
	return nil
}

// withdrawn takes a mark back: an incident, a wrong turn or a count tie of the chain in hand, or a cone.
func (f *Folder) withdrawn(e Event) error {
	i, found := slices.BinarySearchFunc(f.s.Incidents, e.Line,
		func(in IncidentState, line int) int { return in.Number - line })
	if found {
		if f.s.Incidents[i].Withdrawn {
			return fmt.Errorf("the incident of line %d is taken back already", e.Line)
		}
		f.s.Incidents[i].Withdrawn = true
		return nil
	}
	c := &f.s.Chains[f.s.Chain-1]
	if i := slices.Index(c.TurnLines, e.Line); i >= 0 {
		return f.unmarkTurn(c, i)
	}
	if i := slices.IndexFunc(f.s.Ties, func(t Tie) bool { return t.Number == e.Line && t.Chain == f.s.Chain }); i >= 0 {
		f.s.Ties = slices.Delete(f.s.Ties, i, i+1)
		return nil
	}
	if i := slices.IndexFunc(f.s.Cones, func(c ConeState) bool { return c.Number == e.Line }); i >= 0 {
		f.s.Cones = slices.Delete(f.s.Cones, i, i+1)
		return nil
	}
	return &measure.FieldError{Field: "mark", Value: fmt.Sprint(e.Line), Want: "the number of the line that notes one"}
}

// unmarkTurn takes a wrong turn back that was noted by mistake. One whose twist was taken out was none.
func (f *Folder) unmarkTurn(c *ChainState, i int) error {
	if c.Surplus == 0 {
		return errors.New("the twist of that turn was taken out, so it was made")
	}
	c.Surplus += 2 * turnTwist(f.s.Current(), c.WrongTurns[i])
	c.WrongTurns, c.TurnLines = slices.Delete(c.WrongTurns, i, i+1), slices.Delete(c.TurnLines, i, i+1)
	if len(c.WrongTurns) == 0 {
		c.WrongTurns, c.TurnLines = nil, nil
	}
	return nil
}

// MarkKind is what a mark is about.
type MarkKind uint8

// The kinds of mark.
const (
	IncidentMark MarkKind = iota
	TurnMark              // a wrong turn
	TieMark               // a count tie
	ConeMark              // a new cone
)

// Mark is something that the winder marked and that [Withdrawn] takes back.
type Mark struct {
	// Number is the line of the record that notes it.
	Number int
	Kind   MarkKind
	// Pass is the pass that it is about; for a count tie the passes that it holds.
	Pass int
}

// LastMark is the mark of the chain in hand that was made last and still stands; false if there is none. An
// incident of any chain is among them, a wrong turn only while its twist is there.
func (s State) LastMark() (Mark, bool) {
	var last Mark
	take := func(number int, kind MarkKind, pass int) {
		if number > last.Number {
			last = Mark{number, kind, pass}
		}
	}
	for _, in := range s.Incidents {
		if in.Stands() {
			take(in.Number, IncidentMark, in.Pass)
		}
	}
	if !s.valid() {
		return last, last.Number > 0
	}
	if c := s.Chains[s.Chain-1]; c.Surplus != 0 {
		for i, line := range c.TurnLines {
			take(line, TurnMark, c.WrongTurns[i])
		}
	}
	for _, t := range s.Ties {
		if t.Chain == s.Chain {
			take(t.Number, TieMark, t.Pass)
		}
	}
	for _, c := range s.Cones {
		if c.Chain == s.Chain {
			take(c.Number, ConeMark, c.Pass)
		}
	}
	return last, last.Number > 0
}

// settled is the state with its incidents brought up to date. That is done once at the end and not with
// every event, so that the fold stays quick however the events come.
//
// An incident is noted when its pass is laid or being laid. If the count has been lowered since, and is
// below the pass now, it went below the pass with the last lowering at the latest, and has not reached
// it since.
func (f *Folder) State() State {
	for i := range f.s.Incidents {
		in := &f.s.Incidents[i]
		c := f.s.Chains[in.Chain-1]
		in.Undone = in.Pass > c.Laid && c.Lowered > in.Number
		in.End = 0
		if passes := f.s.Plan.Chains[in.Chain-1].Passes; in.Pass <= len(passes) { // as it is but for stripes
			in.End = f.s.Plan.EndOfWound(passes[in.Pass-1].EndAt(in.Position))
		}
	}
	return f.s
}
