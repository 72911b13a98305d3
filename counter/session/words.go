package session

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"millside/plan/measure"
)

// Announce is the page in long words, in the order in which the winder needs them.
func (s Session) Announce(now time.Time) []string {
	said := s.announce(now)
	if lost, ok := s.missingItem(); ok && !slices.Contains(said, sentence(lost.Text)) {
		said = append([]string{sentence(lost.Text)}, said...)
	}
	return said
}

// announce is the page by itself.
func (s Session) announce(now time.Time) []string {
	switch s.Stage(now) {
	case Done:
		return []string{fmt.Sprintf("The warp is finished and off the mill: %s.",
			measure.Counted(s.st.EndsStandingAll(), "end", "ends"))}
	case Looking:
		return append(s.Standing().Words(), "If it is so, press the pass key to go on. If not, count at the pegs.")
	case AtPeg:
		return s.stopWords(now)
	case AtQuestion:
		return s.questionWords(now)
	case Finishing:
		return s.stepWords(now)
	case Failed:
		return s.brokenPage()
	}
	return s.passWords(now)
}

// passWords is the pass to be laid, what is due before it and what comes after it.
func (s Session) passWords(now time.Time) []string {
	in, ok := s.Instruction(now)
	if !ok {
		return s.stepWords(now) // only looking at a warp that is wound
	}
	chain := ""
	if in.Chains > 1 {
		chain = fmt.Sprintf(" of chain %d", in.Chain)
		if c, ok := s.st.Plan.Colour(s.st.Plan.ChainColour(in.Chain)); ok {
			chain += ", " + c.Name
		}
	}
	var said []string
	if k := in.Pass.Number - 1; k > 0 {
		said = append(said, fmt.Sprintf("Pass %d is laid, %s.", k, endsStand(in.Standing)))
	}
	kind := ""
	if in.Kind != 0 {
		kind = ", " + KindWords(in.Kind)
	}
	said = append(said, fmt.Sprintf("Pass %d of %d%s, %s%s: %s.", in.Pass.Number, in.Of, chain, in.Pass.Direction, kind,
		in.Words()))
	if in.Round != RoundNone {
		said = append(said, sentence(in.Round.String()))
	}
	if len(in.Now) > 0 {
		said = append(said, "Now: "+joined(in.Now)+".")
	}
	said = append(said, reminded(in.Reminders)...)
	return append(said, "Next: "+joined(in.Next)+".")
}

// reminded puts what stays open into sentences of its own.
func reminded(items []Item) []string {
	var said []string
	for _, r := range items {
		if r.Kind != ItemRest { // said once in a stretch of winding, see [Session.laid]
			said = append(said, sentence(r.Text))
		}
	}
	return said
}

func joined(items []Item) string {
	texts := make([]string, len(items))
	for i, item := range items {
		texts[i] = item.Words()
	}
	return strings.Join(texts, "; ")
}

// stopWords is the work at the peg.
func (s Session) stopWords(now time.Time) []string {
	stop, _ := s.Stop()
	said := []string{fmt.Sprintf("Stop at the %s before pass %d: %s.", stop.Work.Peg, stop.Work.Before, stop.Title)}
	if k := s.st.Laid(); k > 0 {
		said = append([]string{fmt.Sprintf("Pass %d is laid, %s.", k, endsStand(s.st.EndsStanding()))}, said...)
	}
	for _, l := range stop.Lines {
		said = append(said, sentence(l.Text))
	}
	if stop.Stays != "" {
		said = append(said, sentence(stop.Stays))
	}
	if stop.Work.Starts() {
		said = append(said, s.kindsWords()...)
	} else if stop.Then != "" {
		said = append(said, sentence("Then "+stop.Then))
	}
	said = append(append(said, stop.How), reminded(s.Reminders(now))...)
	return append(said, "The pass key confirms that it is done, and counts no pass.")
}

// questionWords asks about the lease.
func (s Session) questionWords(now time.Time) []string {
	q, _ := s.Question()
	said := append([]string{
		fmt.Sprintf("Pass %d is laid, %s.", s.st.Laid(), endsStand(s.st.EndsStanding()))},
		reminded(s.Reminders(now))...)
	return append(said, q.Text,
		fmt.Sprintf("Answer yes: %s; other: %s; or later: %s. The pass key %s.",
			strings.TrimPrefix(q.Yes, "yes, "), strings.TrimPrefix(q.Other, "no, "), q.Later, q.PressDoes))
}

// stepWords is the finishing step in hand.
func (s Session) stepWords(now time.Time) []string {
	step, more := s.st.NextStep()
	if !more {
		return []string{"All steps are done.", "The pass key closes the record: the warp is finished."}
	}
	done, all := len(s.st.Chains[s.st.Chain-1].Ticked), len(s.st.Steps())
	var said []string
	if done == 0 {
		said = append(said, fmt.Sprintf("Wound: %s in %s. Now tie it off; the pass key says that a step is done.",
			measure.Counted(s.st.EndsStanding(), "end", "ends"), measure.Counted(s.st.Laid(), "pass", "passes")))
		said = append(said, reminded(s.Reminders(now))...)
	}
	said = append(said, fmt.Sprintf("Step %d of %d. %s: %s", done+1, all, step.Title, step.Detail))
	if step.Caution != "" {
		said = append(said, "Take care: "+step.Caution)
	}
	return said
}

// Speak is the page in few words, what matters first.
func (s Session) Speak(now time.Time) string {
	switch s.Stage(now) {
	case Done:
		return "The warp is finished."
	case Looking:
		st := s.Standing()
		return fmt.Sprintf("Look at the mill. %s, %s.", measure.Counted(st.Laid, "pass", "passes"), endsStand(st.Ends))
	case AtPeg:
		return s.speakStop()
	case AtQuestion:
		q, _ := s.Question()
		return "Look at the lease. " + q.Short
	case Finishing:
		if step, more := s.st.NextStep(); more {
			return step.Title + "."
		}
		return "All steps are done."
	case Failed:
		return s.brokenSpoken()
	}
	return s.speakPass(now)
}

// speakPass is the pass in hand: what is due first, then the direction, the opening or the cross that comes first, and
// the turn.
func (s Session) speakPass(now time.Time) string {
	in, ok := s.Instruction(now)
	if !ok {
		return ""
	}
	text := ""
	for _, item := range append(in.Now, in.Reminders...) {
		if item.Level != Quiet && s.nowSpoken(item) {
			text += sentence(item.Short) + " "
		}
	}
	then := ""
	for _, item := range in.Next {
		if item.Level != Quiet {
			then += " " + sentence("then: "+item.Short)
		}
	}
	lease, kind := fmt.Sprintf("%s %s", in.Lease[0].Peg, in.Lease[0].Opening), ""
	if in.NewKind { // it is heard once
		kind = ", " + kindSpoken(in.Kind)
	}
	if in.Pass.Direction.Far() {
		return fmt.Sprintf("%sOutward %d%s: %s, over %d, %s.%s", text, in.Pass.Number, kind, lease, in.Over, in.Turn,
			then)
	}
	text += fmt.Sprintf("Return %d%s: over %d, %s, %s", in.Pass.Number, kind, in.Over, lease, in.Turn)
	if in.Round == RoundFlick {
		text += ", flick"
	}
	return text + "." + then
}

// speakStop is the work at the peg, position by position.
func (s Session) speakStop() string {
	stop, _ := s.Stop()
	text := fmt.Sprintf("Stop at the %s.", stop.Work.Peg)
	for _, l := range stop.Lines {
		text += " " + sentence(l.Text)
	}
	return text
}

// nowSpoken says whether what is due is spoken with this pass: a count tie only where the hands are at the counting
// cross, and the look at the lease only where they are at the lease, so that it isn't heard at every pass.
func (s Session) nowSpoken(item Item) bool {
	far := s.st.Laid()%2 == 1
	switch item.Kind {
	case ItemTie:
		return far
	case ItemQuestion:
		return !far
	}
	return true
}
