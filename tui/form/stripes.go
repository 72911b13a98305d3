package form

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"millside/plan"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/stripe"
	"millside/plan/stripe/schedule"
	"millside/plan/wind"
	"millside/tui/look"
)

// stripeKey is what a schedule depends on. A schedule can take a second or two, so it is worked out
// beside the keys: the form shows the stripes at once and the passes when they are there.
type stripeKey struct {
	text      string
	positions int
	order     wind.ReturnOrder
	foot      wind.FootPosition
	turned    bool
	ends      int            // of the stripes as they are laid
	times     schedule.Times // they depend on the mill and on the length too
	asked     string
}

// key is what the schedule of the form's stripes depends on.
func (m Model) key() stripeKey {
	asked := m.spec.Asked
	asked.Laid = wind.Laying{How: asked.Laid.How} // the rest of it follows from the schedule
	return stripeKey{strings.TrimSpace(m.spec.Stripes), m.spec.Positions, m.spec.ReturnOrder, m.spec.Foot,
		m.spec.StripesTurned(), m.order.Size(), stripe.TimesOf(m.spec), askedKey(asked)}
}

// askedKey tells what is asked of the way to wind apart.
func askedKey(a wind.Asked) string {
	text, err := json.Marshal(a)
	if err != nil { // it holds words and numbers only
		return fmt.Sprint(a)
	}
	return string(text)
}

// stripes reads the stripes as typed and takes over their schedule, if it is there already.
func (m Model) stripes() Model {
	m.written, m.order, m.stripesAt = stripe.Order{}, stripe.Order{}, nil
	m.spec.Schedule, m.spec.Other = nil, nil
	if plain(m.spec) {
		return m
	}
	written, order, err := stripe.Written(m.spec)
	var unread *stripe.TextError
	if err != nil && !errors.As(err, &unread) { // the cloth has no width, or they can't be laid so
		for _, fe := range measure.FieldErrors(err) {
			m.note(fe, fe.Field)
		}
		return m
	}
	if err != nil {
		m.problems["stripes"] = err.Error()
		m.stripesAt = err
		return m
	}
	m.written, m.order = written, order
	if m.made.key != m.key() {
		return m
	}
	if m.made.err != nil {
		for _, fe := range measure.FieldErrors(m.made.err) {
			if f := field.Named(fe.Field); f != nil && f.Part == field.Stripes {
				m.note(fe, f.Name)
				return m
			}
		}
		m.note(m.made.err, field.StripesOf.Name)
		return m
	}
	made := m.made.made.Spec
	m.spec.Schedule, m.spec.Other, m.spec.Ends, m.spec.Group, m.spec.LastPass = made.Schedule, made.Other, made.Ends,
		made.Group, made.LastPass
	m.spec.Asked.Laid = made.Asked.Laid
	return m
}

// stripesResult draws the stripes as typed and says how they are wound.
func (m Model) stripesResult(w int) []string {
	if plain(m.spec) {
		return look.Wrap("A plain warp. Write the stripes from end 1 on, and they are drawn here as you type.", w)
	}
	out := m.orderBar(w)
	out = append(out, m.colourLines(w)...)
	if m.project == nil || m.made.made == nil {
		return out
	}
	return append(append(out, ""), m.scheduleLines(w)...)
}

// orderPlan lends the drawings of a plan to an order that has no schedule yet.
func (m Model) orderPlan() *plan.Plan {
	s := &plan.Schedule{Colours: stripe.PlanColours(m.order.Colours)}
	return &plan.Plan{Spec: plan.Spec{Schedule: s}}
}

// orderBar is the stripe order across the pane.
func (m Model) orderBar(w int) []string {
	drawn, said := m.order.Drawn(w)
	if len(drawn.Cells) == 0 {
		return nil
	}
	bar := look.StripeCells(m.Styles, m.orderPlan(), len(drawn.Cells), func(x int) int { return drawn.Cells[x].Colour })
	out := []string{bar, bar}
	if said != "" {
		out = append(out, look.Wrap(said, w)...)
	}
	return out
}

// colourLines lists the colours with their ends.
func (m Model) colourLines(w int) []string {
	ends, err := m.order.Ends()
	if err != nil {
		return nil
	}
	count := map[int]int{}
	for _, c := range ends {
		count[c]++
	}
	p := m.orderPlan()
	var out []string
	for i := range m.order.Colours {
		out = append(out, look.Fit(m.Styles.Named(p, i+1)+": "+measure.Counted(count[i+1], "end", "ends"), w))
	}
	out = append(out, fmt.Sprintf("%d ends in all", len(ends)))
	if laid := m.spec.Asked.Laid.Text(); laid != "" {
		out = append(out, look.Wrap("laid: "+laid, w)...)
	}
	return out
}

// scheduleLines says how the stripes are cut into passes, how good that is, and what else there would be.
func (m Model) scheduleLines(w int) []string {
	s, made := m.Styles, m.made.made
	p := m.project.Plan
	out := look.Wrap(fmt.Sprintf("%s of %s: %s; %s", measure.Counted(p.Passes(), "pass", "passes"),
		measure.Counted(made.Schedule.Kinds, "kind", "kinds"), p.WorkSum(), m.timeText()), w)
	for i := range out {
		out[i] = s.Strong.Render(out[i])
	}
	for _, l := range look.Wrap(made.Schedule.Proof.Why, w) {
		out = append(out, s.Dim.Render(l))
	}
	if m.made.better != nil {
		out = append(out, s.Dim.Render("a better one is being looked for"))
	}
	out = append(out, "")
	out = append(out, m.wayLines(w)...)
	return append(out, m.besideLines(w)...)
}
