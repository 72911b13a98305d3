package tui

import (
	"fmt"
	"strings"

	"millside/plan"
)

// resultLines says what the fields come to, the most needed first: a small window shows the first
// lines only.
func (m form) resultLines(w, room int) []string {
	s := m.styles
	if m.plan == nil {
		return append([]string{s.warn.Render(fit(" not yet: "+m.wrongFields()+" ", w))}, wrap("The result stands here as soon as every field will do.", w)...)
	}
	p := m.plan
	lines := []string{
		s.title.Render(fmt.Sprintf("%d passes", p.Passes())) + ", " + bouts(p),
		lastPassText(p),
		"stops " + p.Chains[len(p.Chains)-1].Finish().String(),
		fmt.Sprintf("%s turns of the mill", p.Path.Turns()),
		lengthText(p),
		fmt.Sprintf("%s of yarn in all", p.WarpYarn().In(p.Spec.Units.Long(), 0)),
	}
	if n := len(p.Chains); n > 1 {
		lines = append(lines, fmt.Sprintf("%d chains of %d to %d ends", n, smallest(p), p.Chains[0].Ends()))
	}
	var out []string
	for _, l := range lines {
		out = append(out, wrap(l, w)...)
	}
	if room <= len(out)+3 {
		return out
	}
	return append(append(out, ""), m.choiceLines(w, room-len(out)-1)...)
}

func bouts(p *plan.Plan) string {
	n := 0
	for _, c := range p.Chains {
		n += len(c.Passes) / 2
	}
	text := fmt.Sprintf("%d bouts", n)
	if n == 1 {
		text = "1 bout"
	}
	if p.Passes()%2 == 1 {
		text += " and one pass"
	}
	return text
}

// lastPassText says what is special about the last pass.
func lastPassText(p *plan.Plan) string {
	passes := p.Chains[len(p.Chains)-1].Passes
	last := passes[len(passes)-1]
	switch {
	case last.Spares > 0:
		return fmt.Sprintf("the last pass has %d spare ends", last.Spares)
	case last.Ends() < p.Spec.Group:
		return fmt.Sprintf("the last pass carries %d", last.Ends())
	default:
		return "every pass is full"
	}
}

// lengthText gives the real length and says which way it was rounded.
func lengthText(p *plan.Plan) string {
	unit := p.Spec.Units.Long()
	if p.Path.Length == p.Spec.Length {
		return p.Path.Length.In(unit, 2) + " long, as wanted"
	}
	return fmt.Sprintf("%s long: %s rounded up to the next peg", p.Path.Length.In(unit, 2), p.Spec.Length.In(unit, 2))
}

func smallest(p *plan.Plan) int {
	n := p.Chains[0].Ends()
	for _, c := range p.Chains {
		n = min(n, c.Ends())
	}
	return n
}

// choiceLines lists the ranked choices of group with their reasons, as many as find room.
func (m form) choiceLines(w, room int) []string {
	s, list := m.styles, m.choices()
	at := m.current(list)
	out := []string{s.dim.Render(fit("choices, the least trouble first", w))}
	for i, c := range list {
		mark, style := "  ", s.plain
		if i == at {
			mark, style = "▸ ", s.strong
		}
		block := []string{mark + style.Render(fit(c.Label(), w-2))}
		if i == at || room > 24 {
			for _, l := range wrap(strings.Join(c.Reasons, "; "), w-4) {
				block = append(block, "    "+s.dim.Render(l))
			}
		} else {
			block[0] = mark + style.Render(fit(c.Label(), w-2)) + s.dim.Render(fit(fmt.Sprintf(": %d passes", c.Passes), max(w-2-len(c.Label()), 0)))
		}
		if len(out)+len(block) > room {
			break
		}
		out = append(out, block...)
	}
	return out
}
