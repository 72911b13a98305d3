package recordout

import (
	"fmt"
	"io"

	"millside/cmd/millside/internal/planout"
	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/sheetout"
	"millside/counter"
	"millside/counter/journal"
	"millside/plan/wind"
)

// ShowText writes where a warp stands.
func ShowText(w io.Writer, record *journal.Record) {
	s := record.State()
	c := s.Current()
	fmt.Fprintf(w, "Warp \"%s\"\n\n", prose.Clean(s.Plan.Spec.Name))
	prose.PathRow(w, "Record", record.Path())
	if torn := record.Torn(); torn != "" {
		prose.Row(w, "Take care", "%s; count the groups at the pegs", torn)
	}
	prose.Row(w, "State", "%s", stateText(s))
	if len(s.Chains) > 1 {
		prose.Row(w, "In all", "%d of %s, %d of %s", s.PassesLaidAll(), prose.Count(s.Plan.Passes(), "pass"),
			s.EndsStandingAll(), prose.Count(s.Plan.EndsWound(), "end"))
		prose.Row(w, "Chain", "%d of %d: %s", s.Chain, len(s.Chains),
			s.Plan.WoundText(c.First, c.Last))
	}
	prose.Row(w, "Laid", "%d of %s, %d of %s", s.Laid(), prose.Count(len(c.Passes), "pass"), s.EndsStanding(),
		prose.Count(c.Ends(), "end"))
	if !s.Finished {
		millText(w, s)
		nextText(w, s)
		setUpRows(w, s)
	}
	prose.Row(w, "Last touched", "%s", prose.When(s.Last))
	if s.Finished {
		sheetout.PartText(w, record.HandOver(), false)
		return
	}
	historyText(w, s)
	troubleText(w, s)
	if s.Wound() {
		ticksText(w, s)
	}
}

func stateText(s counter.State) string {
	switch {
	case s.Finished:
		return "finished, off the mill"
	case s.Paused:
		return "paused"
	case s.Wound():
		return "wound, to be tied off"
	case s.PassesLaidAll() == 0:
		return "not begun"
	}
	return "being wound"
}

// millText writes what is seen on the mill if the count is right. A chain that has been tied off is partly
// taken from it, so then there is nothing to compare.
func millText(w io.Writer, s counter.State) {
	if s.Laid() == 0 || len(s.Chains[s.Chain-1].Ticked) > 0 {
		return
	}
	m := SeenOnMill(s)
	prose.Row(w, "On the mill", "%s over peg 1 of the counting cross and %s over peg 2; %s stand",
		prose.Count(m.OverPeg1, "group"),
		prose.Count(m.OverPeg2, "group"), prose.Count(m.EndsStanding, "end"))
	prose.Row(w, "Paddle", "%s; the last turn was %s", m.Paddle, m.LastTurn)
	if twist := s.TwistAdvice(); twist != "" {
		prose.Row(w, "Twist", "%s", twist)
	}
}

func nextText(w io.Writer, s counter.State) {
	pass, ok := s.NextPass()
	if !ok {
		if step, left := s.NextStep(); left {
			prose.Row(w, "Next", "%s", step.Title)
		}
		return
	}
	prose.Row(w, "Next", "pass %d, %s: %s in %s", pass.Number, pass.Direction,
		s.Plan.WoundText(pass.First, pass.Last), prose.Positions(pass.Carried))
	prose.Row(w, "Its way", "%s", pass.Way())
	for _, task := range s.Plan.Before(s.Current(), pass.Number) {
		prose.Row(w, "Before it", "%s", task.Text)
	}
	for _, task := range s.Plan.After(s.Current(), pass.Number) {
		prose.Row(w, "After it", "%s", task.Text)
	}
}

// historyText writes recounts and notes.
func historyText(w io.Writer, s counter.State) {
	if len(s.Recounts) > 0 {
		fmt.Fprint(w, "\nRecounts:\n")
	}
	for _, r := range s.Recounts {
		noteLine(w, prose.When(r.At), fmt.Sprintf("chain %d, from %d to %d laid: %s", r.Chain, r.From, r.To, r.Reason))
	}
	if len(s.Notes) > 0 {
		fmt.Fprint(w, "\nNotes:\n")
	}
	for _, n := range s.Notes {
		noteLine(w, prose.When(n.At), fmt.Sprintf("chain %d, %d laid: %s", n.Chain, n.Pass, n.Text))
	}
}

func noteLine(w io.Writer, at, text string) {
	const indent = 20 // two, the time, two
	fmt.Fprintf(w, "  %s  %s\n", at, prose.Wrap(prose.Clean(text), indent))
}

// ticksText writes the finishing steps of the current chain, ticked and not.
func ticksText(w io.Writer, s counter.State) {
	fmt.Fprint(w, "\nFinishing:\n")
	for _, step := range s.Steps() {
		if s.Chains[s.Chain-1].Has(step.ID) {
			fmt.Fprintf(w, "  [x]  %s\n", step.Title)
		} else {
			planout.StepText(w, "[ ]", step)
		}
	}
}

// EventsText writes everything that happened.
func EventsText(w io.Writer, events []counter.Event) {
	fmt.Fprint(w, "\nEvents:\n")
	var rows [][]any
	for _, e := range events {
		rows = append(rows, []any{"  " + e.At.Local().Format("2006-01-02 15:04:05"), e.Kind, prose.Clean(eventText(e))})
	}
	prose.Table(w, rows)
}

func eventText(e counter.Event) string {
	switch e.Kind {
	case counter.Laid, counter.Undone, counter.Redone, counter.WrongTurn:
		return fmt.Sprintf("chain %d, pass %d", e.Chain, e.Pass)
	case counter.Recounted, counter.Noted:
		return fmt.Sprintf("chain %d, %d laid: %s", e.Chain, e.Pass, e.Text)
	case counter.TieMade, counter.TieWaved:
		return fmt.Sprintf("chain %d, %d in ties", e.Chain, e.Pass)
	case counter.WorkDone, counter.WorkUndone:
		return fmt.Sprintf("chain %d, before pass %d", e.Chain, e.Pass)
	case counter.LeaseLeft:
		return fmt.Sprintf("chain %d, %d laid", e.Chain, e.Pass)
	case counter.NewCone:
		return fmt.Sprintf("chain %d, position %d, from pass %d on", e.Chain, e.Position, e.Pass)
	case counter.FootSeen:
		return "the " + e.Foot.String() + " position lies at the foot on outward passes"
	case counter.Reopened, counter.Renamed, counter.Joined:
		return e.Text
	case counter.Incident:
		return incidentEventText(e)
	case counter.Withdrawn:
		return fmt.Sprintf("number %d", e.Line)
	case counter.LeaseSeen:
		return "return passes lie in the " + e.Order.String() + " order"
	case counter.Ticked, counter.Unticked:
		return fmt.Sprintf("chain %d, %s", e.Chain, e.Step)
	}
	return ""
}

// OnMill is what is seen on the mill if the count of the chain in hand is right.
type OnMill struct {
	PassesLaid, EndsStanding, OverPeg1, OverPeg2 int
	Paddle, LastTurn                             string
}

// SeenOnMill is what stands on the mill by a state's count.
func SeenOnMill(s counter.State) OnMill {
	cross := s.Cross()
	m := OnMill{PassesLaid: s.Laid(), EndsStanding: s.EndsStanding(), OverPeg1: cross.OverPeg1,
		OverPeg2: cross.OverPeg2, Paddle: wind.AtLease.String()}
	if m.PassesLaid == 0 {
		return m
	}
	if s.Current().Passes[m.PassesLaid-1].Direction.Far() {
		m.Paddle = wind.AtCountingCross.String()
	}
	turn, _, _ := s.LastTurn() // as it was made
	m.LastTurn = turn.String()
	return m
}
