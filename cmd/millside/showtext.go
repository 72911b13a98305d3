package main

import (
	"fmt"
	"io"

	"millside/counter"
	"millside/plan"
)

// showText writes where a warp stands.
func showText(w io.Writer, record *counter.Record) {
	s := record.State()
	c := s.Current()
	fmt.Fprintf(w, "Warp \"%s\"\n\n", clean(s.Plan.Spec.Name))
	pathRow(w, "Record", record.Path())
	if torn := record.Torn(); torn != "" {
		row(w, "Take care", "%s; count the groups at the pegs", torn)
	}
	row(w, "State", "%s", stateText(s))
	if len(s.Chains) > 1 {
		row(w, "In all", "%d of %s, %d of %s", s.PassesLaidAll(), count(s.Plan.Passes(), "pass"), s.EndsStandingAll(), count(s.Plan.EndsWound(), "end"))
		row(w, "Chain", "%d of %d: ends %d to %d", s.Chain, len(s.Chains), c.First, c.Last)
	}
	row(w, "Laid", "%d of %s, %d of %s", s.Laid(), count(len(c.Passes), "pass"), s.EndsStanding(), count(c.Ends(), "end"))
	if !s.Finished {
		millText(w, s)
		nextText(w, s)
		setUpRows(w, s)
	}
	row(w, "Last touched", "%s", when(s.Last))
	if s.Finished {
		partText(w, counter.HandOver(s, record.Events()), false)
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
	m := seenOnMill(s)
	row(w, "On the mill", "%s over peg 1 of the counting cross and %s over peg 2; %s stand", count(m.OverPeg1, "group"),
		count(m.OverPeg2, "group"), count(m.EndsStanding, "end"))
	row(w, "Paddle", "%s; the last turn was %s", m.Paddle, m.LastTurn)
	if twist := s.TwistAdvice(); twist != "" {
		row(w, "Twist", "%s", twist)
	}
}

func nextText(w io.Writer, s counter.State) {
	pass, ok := s.NextPass()
	if !ok {
		if step, left := s.NextStep(); left {
			row(w, "Next", "%s", step.Title)
		}
		return
	}
	row(w, "Next", "pass %d, %s: ends %d to %d in %s", pass.Number, pass.Direction, pass.First, pass.Last, positions(pass.Carried))
	row(w, "Its way", "%s", wayText(pass))
	for _, task := range s.Plan.Before(s.Current(), pass.Number) {
		row(w, "Before it", "%s", task.Text)
	}
	for _, task := range s.Plan.After(s.Current(), pass.Number) {
		row(w, "After it", "%s", task.Text)
	}
}

// wayText tells what the group meets on a pass, in the order in which it meets it.
func wayText(pass plan.Pass) string {
	lease := fmt.Sprintf("%s over lease peg %s, then %s over peg %s", pass.FirstOpening, pass.FirstPeg(),
		pass.FirstOpening.Other(), pass.FirstPeg().Other())
	cross := fmt.Sprintf("over peg %d and under peg %d of the counting cross", pass.CrossOver(), pass.CrossUnder())
	if pass.Direction.Far() {
		return fmt.Sprintf("%s; %s; round the far end peg %s", lease, cross, pass.TurnAfter)
	}
	return fmt.Sprintf("%s; %s; round the near end peg %s", cross, lease, pass.TurnAfter)
}

// historyText writes recounts and notes.
func historyText(w io.Writer, s counter.State) {
	if len(s.Recounts) > 0 {
		fmt.Fprint(w, "\nRecounts:\n")
	}
	for _, r := range s.Recounts {
		noteLine(w, when(r.At), fmt.Sprintf("chain %d, from %d to %d laid: %s", r.Chain, r.From, r.To, r.Reason))
	}
	if len(s.Notes) > 0 {
		fmt.Fprint(w, "\nNotes:\n")
	}
	for _, n := range s.Notes {
		noteLine(w, when(n.At), fmt.Sprintf("chain %d, %d laid: %s", n.Chain, n.Pass, n.Text))
	}
}

func noteLine(w io.Writer, at, text string) {
	const indent = 20 // two, the time, two
	fmt.Fprintf(w, "  %s  %s\n", at, wrap(clean(text), indent))
}

// ticksText writes the finishing steps of the current chain, ticked and not.
func ticksText(w io.Writer, s counter.State) {
	fmt.Fprint(w, "\nFinishing:\n")
	for _, step := range s.Steps() {
		if s.Chains[s.Chain-1].Has(step.ID) {
			fmt.Fprintf(w, "  [x]  %s\n", step.Title)
		} else {
			stepText(w, "[ ]", step)
		}
	}
}

// eventsText writes everything that happened.
func eventsText(w io.Writer, events []counter.Event) {
	fmt.Fprint(w, "\nEvents:\n")
	var rows [][]any
	for _, e := range events {
		rows = append(rows, []any{"  " + e.At.Local().Format("2006-01-02 15:04:05"), e.Kind, clean(eventText(e))})
	}
	table(w, rows)
}

func eventText(e counter.Event) string {
	switch e.Kind {
	case counter.Laid, counter.Undone, counter.WrongTurn:
		return fmt.Sprintf("chain %d, pass %d", e.Chain, e.Pass)
	case counter.Recounted, counter.Noted:
		return fmt.Sprintf("chain %d, %d laid: %s", e.Chain, e.Pass, e.Text)
	case counter.TieMade:
		return fmt.Sprintf("chain %d, %d laid", e.Chain, e.Pass)
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

// onMill is what is seen on the mill if the count of the chain in hand is right.
type onMill struct {
	PassesLaid, EndsStanding, OverPeg1, OverPeg2 int
	Paddle, LastTurn                             string
}

func seenOnMill(s counter.State) onMill {
	cross := s.Cross()
	m := onMill{PassesLaid: s.Laid(), EndsStanding: s.EndsStanding(), OverPeg1: cross.OverPeg1, OverPeg2: cross.OverPeg2, Paddle: plan.AtLease.String()}
	if m.PassesLaid == 0 {
		return m
	}
	last := s.Current().Passes[m.PassesLaid-1]
	if last.Direction.Far() {
		m.Paddle = plan.AtCountingCross.String()
	}
	m.LastTurn = last.TurnAfter.String()
	return m
}
