package mill

import (
	"fmt"
	"strings"
	"time"

	"millside/counter"
	"millside/plan"
	"millside/plan/sheet"
	"millside/tui/look"
)

// reckoning is what follows from the whole record and would be dear to work out for every picture: the
// pace, the cones, a rest that is due, and once the warp is finished the hand-over. It is made anew when an event has been written.
type reckoning struct {
	pace counter.PaceResult
	yarn *plan.YarnUse
	rest bool
	over sheet.Part
	// runs is the stripes of the plan it was made for; they are made anew only for another plan.
	of   *plan.Plan
	runs []plan.EndRun
}

func (m Model) reckon() reckoning {
	events := m.rec.Events()
	r := reckoning{pace: counter.Pace(events, m.st.Chain), rest: m.st.RestDue(events, m.at)}
	if cones := m.st.ConesInUse(); cones != nil {
		// Cones that can't be reckoned (a hand-made record, say) are no reason to stop winding.
		r.yarn, _ = m.st.Plan.Yarn(cones, plan.DefaultExtras())
	}
	if r.of, r.runs = m.reck.of, m.reck.runs; r.of != m.st.Plan {
		r.of, r.runs = m.st.Plan, m.st.Plan.EndRuns()
	}
	if m.st.Finished {
		r.over = counter.HandOver(m.st, events)
	}
	return r
}

// timeLeft says how long the rest of the chain takes at the winder's own pace; empty while too little is
// known.
func (m Model) timeLeft() string {
	if m.reck.pace.Passes < counter.FewestTimed || m.st.Wound() {
		return ""
	}
	left := m.reck.pace.Remaining(len(m.st.Current().Passes) - m.st.Laid())
	text := "about " + look.Roughly(left.Likely) + " left"
	if low, high := left.Low.Round(time.Minute), left.High.Round(time.Minute); low < high {
		text += fmt.Sprintf(" (%s to %s)", strings.TrimSuffix(look.Roughly(low), " min"), look.Roughly(high))
	}
	return text
}

// coneTasks says which cones run out on a pass of the current chain.
func (m Model) coneTasks(number int) []string {
	if m.reck.yarn == nil {
		return nil
	}
	var out []string
	for _, c := range m.reck.yarn.Cones {
		if at := c.RunsOut; at != nil && at.Chain == m.st.Chain && at.Pass == number {
			out = append(out, fmt.Sprintf("position %d runs out in the middle of pass %d: change the cone before it (y)", at.Position, number))
		}
	}
	return out
}

// troubleDue is what must be known now beside the tasks of the plan: twist, cones, a rest.
func (m Model) troubleDue() []string {
	var out []string
	if advice := m.st.TwistAdvice(); advice != "" {
		out = append(out, "w when the twist is out: "+advice)
	}
	out = append(out, m.coneTasks(m.st.Laid()+1)...)
	return out
}

// restText is the quiet reminder.
func (m Model) restText() string {
	if !m.reck.rest {
		return ""
	}
	return "a rest for hands, neck and shoulders? p pauses"
}
