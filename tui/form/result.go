package form

import (
	"fmt"
	"strings"

	"millside/plan"
	"millside/plan/beside"
	"millside/plan/figure"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/tui/look"
)

// resultLines says what the fields come to: the whole warp in a few words, then what belongs to the
// section. The most needed comes first, since a small window shows the first lines only.
func (m Model) resultLines(w, room int) []string {
	s := m.Styles
	if m.waits() {
		return append([]string{s.Warn.Render(look.Fit(" working out the passes ", w)), ""}, m.stripesResult(w)...)
	}
	if m.project == nil && m.section() == secStripes {
		return append(look.Painted(look.Wrap(" not yet: "+m.wrongFields()+" ", w), s.Warn), m.stripesResult(w)...)
	}
	if m.project == nil {
		out := append(look.Painted(look.Wrap(" not yet: "+m.wrongFields()+" ", w), s.Warn), m.reedSetts(w)...)
		return append(out, look.Wrap("The result stands here as soon as every field will do.", w)...)
	}
	p := m.project.Plan
	title := fmt.Sprintf("%d ends, %s", p.EndsWound(), measure.Counted(p.Passes(), "pass", "passes"))
	out := []string{s.Title.Render(title) + ", " + p.BoutsText()}
	if look.Wide(out[0]) > w {
		out = append([]string{s.Title.Render(title) + ","}, look.Wrap(p.BoutsText(), w)...)
	}
	var part []string
	switch m.section() {
	case secStripes:
		part = m.stripesResult(w)
	case secCloth:
		part = m.clothResult(w)
	case secYarn:
		part = m.yarnResult(w)
	case secPaddle:
		part = m.paddleResult(w, room-1-len(out))
	case secMill:
		part = m.millResult(w)
	case secChains:
		part = m.chainsResult(w)
	case secLoom:
		part = m.loomResult(w)
	case secWinding:
		part = m.windingResult(w)
	default:
		part = m.warpResult(w, room-len(out))
		return append(out, part...)
	}
	if room > 8 {
		out = append(out, "")
	}
	return append(out, part...)
}

// timeText is the one time of the plan, and whose pace it is where it is the weaver's own.
func (m Model) timeText() string {
	text := m.project.Plan.Time(m.project.Pace).String()
	if m.project.Pace.Passes > 0 {
		text += ", by " + m.project.Plan.Spec.TimeSource(m.project.Pace)
	}
	return text
}

// warpResult is the warp in a few lines, and the choices of group.
func (m Model) warpResult(w, room int) []string {
	pr := m.project
	p := pr.Plan
	lines := []string{lastPassText(p) + ", stops " + p.Chains[len(p.Chains)-1].Finish().String(), lengthText(p)}
	if pr.Room != nil {
		lines = append(lines, fmt.Sprintf("%s of the mill", p.Path.InTurns()))
	}
	lines = append(lines, fmt.Sprintf("%s of yarn in the ends", p.WarpYarn().As(p.Spec.Units.Long(), 0)), "time: "+
		m.timeText())
	if n := len(p.Chains); n > 1 {
		lines = append(lines, fmt.Sprintf("%d chains of %s ends", n,
			figure.Range{First: smallest(p), Last: largest(p)}))
	}
	var out []string
	for _, l := range lines {
		out = append(out, look.Wrap(l, w)...)
	}
	if rows := beside.Painted(p); len(rows) > 0 {
		out = append(append(out, ""), m.rows(rows, w)...)
	}
	if room <= len(out)+3 || !plain(m.spec) {
		return out
	}
	return append(append(out, ""), m.choiceLines(w, room-len(out)-1)...)
}

// lastPassText says what is special about the last pass.
func lastPassText(p *plan.Plan) string {
	passes := p.Chains[len(p.Chains)-1].Passes
	last := passes[len(passes)-1]
	switch {
	case last.Spares > 0:
		return "the last pass has " + measure.Counted(last.Spares, "spare end", "spare ends")
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
		return p.Path.Length.As(unit, 2).String() + " long, as wanted"
	}
	return fmt.Sprintf("%s long: %s rounded up to the next peg", p.Path.Length.As(unit, 2), p.Spec.Length.As(unit, 2))
}

func smallest(p *plan.Plan) int {
	n := p.Chains[0].Ends()
	for _, c := range p.Chains {
		n = min(n, c.Ends())
	}
	return n
}

func largest(p *plan.Plan) int {
	n := 0
	for _, c := range p.Chains {
		n = max(n, c.Ends())
	}
	return n
}

// rows draws amounts with their warnings; opened, also how each was reached.
func (m Model) rows(rows []measure.Row, w int) []string {
	s := m.Styles
	var out []string
	for _, r := range rows {
		name := max(min(24, w/2), 10)
		labels, values := look.Wrap(r.Name, name), look.Wrap(r.Value.String(), max(w-name-1, 8))
		for i := range max(len(labels), len(values)) {
			label, value := "", ""
			if i < len(labels) {
				label = labels[i]
			}
			if i < len(values) {
				value = values[i]
			}
			out = append(out, s.Dim.Render(look.Pad(label, name))+" "+s.Strong.Render(value))
		}
		if r.Warning != "" {
			out = append(out, look.Painted(look.Wrap("! "+r.Warning, w), s.Warn)...)
		}
		if m.how {
			out = append(out, m.howLines(r, w)...)
		}
	}
	return out
}

// howLines opens a number: its rule, the same with this warp's numbers, and the usual range.
func (m Model) howLines(r measure.Row, w int) []string {
	var out []string
	for _, text := range []string{r.How.Formula, r.How.WithNumbers.String(), usual(r.Usual)} {
		if text != "" {
			out = append(out, look.Indent(look.Painted(look.Wrap(text, w-3), m.Styles.Dim), 3)...)
		}
	}
	return out
}

func usual(text string) string {
	if text == "" {
		return ""
	}
	return "usual: " + strings.TrimPrefix(text, "usual ")
}

func (m Model) clothResult(w int) []string {
	pr := m.project
	if pr.Ends == nil {
		return append(m.rows(unwarned(pr.FacedRows()), w),
			look.Wrap("The ends and the length are given by hand. Choose “the cloth” on the first page to plan from "+
				"the finished cloth.", w)...)
	}
	out := m.rows(append(unwarned(pr.FacedRows()), pr.Ends.Rows...), w)
	out = append(out, m.fitLines(w)...)
	out = append(out, m.rows(pr.Warp.Rows(pr.Plan.Spec.Units), w)...)
	if pr.Weft != nil {
		out = append(out, m.rows([]measure.Row{m.weftRow()}, w)...)
	}
	return out
}

// fitLines lists the counts near the wanted one.
func (m Model) fitLines(w int) []string {
	var out []string
	for i, f := range m.project.Ends.Fits {
		mark := "  "
		if f.Ends == m.project.Plan.Spec.Ends {
			mark = "▸ "
		}
		if i == 4 {
			break
		}
		for j, l := range look.Wrap(fmt.Sprintf("%d: %s", f.Ends, f.Why), w-4) {
			if j > 0 {
				mark = "    "
			}
			out = append(out, mark+l)
		}
	}
	return out
}

func (m Model) weftRow() measure.Row {
	units, weft := m.project.Plan.Spec.Units, m.project.Weft
	value := figure.Cell{weft.Length.As(units.Long(), 0)}
	if weft.Mass > 0 {
		value = value.And(", %s", weft.Mass.AtLeast(units.Heavy(), 2))
	}
	return measure.Row{Name: "weft, an estimate", Value: value, How: weft.How}
}

func (m Model) yarnResult(w int) []string {
	pr := m.project
	var packages []measure.Row
	if row, told := pr.PackagesRow(); told {
		packages = append(packages, row)
	}
	if pr.Yarn == nil {
		return append(m.rows(packages, w), look.Wrap("Say which yarn it is, with its system (8/2 cotton, 2/28 Nm, "+
			"60 tex), and its weight and each cone stand here.", w)...)
	}
	units := pr.Plan.Spec.Units
	out := m.rows(append([]measure.Row{
		{Name: "whole warp", Value: figure.Say("%s, %s", pr.Yarn.Length.As(units.Long(), 0),
			pr.Yarn.Mass.AtLeast(units.Heavy(), 2))},
		{Name: "the yarn", Value: figure.Say("%s", pr.Plan.Spec.Yarn.Size.PerMass(units))},
	}, packages...), w)
	out = append(out, m.coneLines(w)...)
	if pr.Plan.Spec.Loom.Sett.IsZero() {
		out = append(out, m.settLines(w)...)
	}
	return out
}

// coneLines says what each cone gives, and which one runs out where.
func (m Model) coneLines(w int) []string {
	units := m.project.Plan.Spec.Units
	var out []string
	for _, c := range m.project.Yarn.Cones {
		text := fmt.Sprintf("cone %d gives %s, %s", c.Cone.Position, c.Used.As(units.Long(), 0),
			c.UsedMass.AtLeast(units.Light(), 1))
		switch {
		case c.RunsOut != nil:
			text = fmt.Sprintf("! cone %d runs out on pass %d of chain %d: %s short", c.Cone.Position, c.RunsOut.Pass,
				c.RunsOut.Chain, c.Short.In(units.Long(), 0))
			out = append(out, m.Styles.Warn.Render(look.Fit(text, w)))
			continue
		case c.Weighed:
			text += ", " + c.Left.In(units.Long(), 0) + " left"
		}
		out = append(out, look.Fit(text, w))
	}
	return out
}

// settLines is the starting point for a sett, while none is given.
func (m Model) settLines(w int) []string {
	out, note := []string{"", "a start for a sett"}, ""
	if rows := m.project.FacedRows(); len(rows) > 0 {
		return append(out[:1], m.rows(rows, w)...)
	}
	for _, weave := range measure.Weaves()[:2] {
		help, err := measure.HelpSett(m.project.Plan.Spec.Yarn.Size, weave, measure.DiameterFactors()[0],
			m.project.Plan.Spec.Units)
		if err != nil {
			continue
		}
		out = append(out, look.Fit(fmt.Sprintf("%s: try %s", weave.Name, help.Start.Shown(0)), w))
		if m.how {
			out = append(out, m.rows(help.Rows, w)...)
		}
		note = help.Note
	}
	return append(out, look.Painted(look.Wrap(note, w), m.Styles.Dim)...)
}

func (m Model) millResult(w int) []string {
	pr := m.project
	if pr.Room == nil {
		b, err := pr.Plan.Spec.Board.Path(pr.Plan.Spec.Length, pr.Plan.Spec.Units)
		if err != nil {
			return look.Wrap(err.Error(), w)
		}
		return m.rows([]measure.Row{{Name: "on the board",
			Value: figure.Say("%s, round %s", b.Length.As(pr.Plan.Spec.Units.Long(), 2),
				figure.Counted(b.Distances+1, "peg", "pegs")), How: b.How}}, w)
	}
	return append(m.millDrawing(w), m.rows(pr.Room.Rows, w)...)
}

func (m Model) chainsResult(w int) []string {
	pr := m.project
	var out []string
	if pr.Pegs != nil {
		out = append(out, m.rows([]measure.Row{{Name: "a peg takes about",
			Value: figure.Cell{figure.Counted(pr.Pegs.Ends, "end", "ends")}, How: pr.Pegs.How}}, w)...)
	}
	if pr.Plan.SplitWhy != "" {
		out = append(out, look.Wrap(pr.Plan.SplitWhy, w)...)
	}
	for _, c := range pr.Plan.Chains {
		out = append(out, look.Wrap(fmt.Sprintf("chain %d: %s", c.Number, c.Why), w)...)
	}
	return out
}

func (m Model) windingResult(w int) []string {
	p := m.project.Plan
	var out []string
	for _, c := range p.Chains {
		ties := 0
		for range p.Ties(c) {
			ties++
		}
		out = append(out, look.Fit(fmt.Sprintf("chain %d: %s, %d finishing steps", c.Number,
			measure.Counted(ties, "count tie", "count ties"), len(finishing.Steps(p, c))), w))
	}
	return out
}
