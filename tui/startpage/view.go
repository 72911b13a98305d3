package startpage

import (
	"cmp"
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"millside/plan/athand"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/start"
	"millside/tui/keys"
	"millside/tui/look"
)

// wide is the width from which the answer stands beside the lines and not below them.
const wide = 76

// View draws the page at exactly w by h cells.
func (m Model) View(w, h int) string {
	s := m.Styles
	head := []string{"", "  " + s.Title.Render("MILLSIDE") +
		s.Dim.Render(look.Fit("   a warp from what you know", max(w-12, 0)))}
	foot := append([]string{""}, s.KeyLinesAnd(w, 1, m.ListKey(), m.footKeys(w)...)...)
	if m.problem != "" {
		foot = append(look.Painted(look.Wrap("! "+m.problem, w-2), s.Alarm), foot...)
	}
	room := max(h-len(head)-len(foot), 1)
	if w >= wide {
		left := min(46, w/2+4)
		answer := m.lines.Turned(m.answer(w-left-4), m.scroll, room-1)
		beside := look.Beside(m.lines.View(left, room), append([]string{""}, answer...), left, 2)
		return look.WithFoot(append(head, beside...), foot, w, h)
	}
	below := max((room-1)/2, 4)
	lines := append(head, m.lines.ViewOver(w, room-below)...)
	return look.WithFoot(append(lines, look.Indent(m.lines.Turned(m.answer(w-4), m.scroll, below), 2)...), foot, w, h)
}

// footKeys are the keys that work.
func (m Model) footKeys(w int) []key.Binding {
	k := m.Keys
	list := []key.Binding{keys.As(k.Begin, "plan it"), k.NextField}
	if len(m.lines.At().Words) > 0 {
		list = append(list, k.Right)
	}
	list = append(list, keys.As(k.Back, "home"))
	if w >= wide {
		list = append(list, k.PrevField)
	}
	return append(list, keys.As(k.Rest, "more"))
}

// ListKey is the key that lists all keys.
func (m Model) ListKey() key.Binding { return m.lines.ListKey() }

// AllKeys are the keys of the page in the words of the page that lists them.
func (m Model) AllKeys() []key.Binding {
	list := append([]key.Binding{keys.As(m.Keys.Begin, "plan it")}, m.lines.AllKeys()...)
	return append(list, keys.As(m.Keys.Back, "home"))
}

// answer says what was found and how, or what is wanted.
func (m Model) answer(w int) []string {
	var out []string
	add := func(text string) { out = append(out, look.Wrap(text, w)...) }
	switch r := m.result; {
	case m.waits:
		if m.said(field.StripesOf) {
			add("It is being worked out: the stripes are cut into passes, which takes some seconds. You may type on.")
		} else {
			add("It is being worked out.")
		}
	case m.err != nil:
		list := measure.FieldErrors(m.err)
		if len(list) == 0 {
			add("! " + measure.Clean(m.err.Error()))
		}
		for _, fe := range list {
			text := fe.Error()
			if fe.Value == "" {
				text = fe.Field + ": give " + fe.Want
			}
			add("! " + measure.Clean(text))
		}
		out = look.Painted(out, m.Styles.Alarm)
	case r == nil:
		add("Type what you know and leave the rest empty: one thing is found from the others.")
		add("Such as the yarn on hand, its size and the ends: how long a warp does it give?")
	default:
		out = look.Painted(look.Wrap(r.Find.String()+": "+r.Answer.String(), w), m.Styles.Strong)
		if r.Short {
			out = append(out, look.Painted(look.Wrap("! the yarn on hand doesn't suffice", w), m.Styles.Alarm)...)
		}
		for _, p := range packages(r) {
			add(p)
		}
		for _, n := range r.Notes {
			add(n)
		}
		add(athand.AssumedText(m.assumed))
		for _, l := range r.Lines {
			add(l.Name + ": " + l.Value.String())
			how := cmp.Or(l.How.WithNumbers.String(), l.How.Formula)
			out = append(out, look.Painted(look.Indent(look.Wrap(how, w-2), 2), m.Styles.Dim)...)
		}
	}
	return out
}

// packages says of each package what it gives and what is left of it, or what it must hold. Those that are alike
// and stand together are told once.
func packages(r *start.Result) []string {
	long, light := r.Spec.Units.Long(), r.Spec.Units.Light()
	var out []string
	last, from := "", 0
	for i, u := range r.Packages {
		number := i + 1
		var text string
		used := u.Used.As(long, 1).String()
		switch {
		case !r.OnHand():
			text = "must hold " + used
			if u.UsedMass != 0 {
				text += ", " + u.UsedMass.AtLeast(light, 2).String()
			}
		case u.Short != 0:
			text = used + " used, " + u.Short.As(long, 1).String() + " too little"
		default:
			text = used + " used, " + u.Left.As(long, 1).String() + " left"
			if u.LeftMass != 0 {
				text += " (" + u.LeftMass.AtMost(light, 2).String() + ")"
			}
		}
		if text = strings.TrimSpace(measure.Clean(u.Package.Colour) + " " + text); text == last {
			out[len(out)-1] = fmt.Sprintf("packages %d to %d: %s", from, number, text)
			continue
		}
		last, from = text, number
		out = append(out, fmt.Sprintf("package %d: %s", number, text))
	}
	return out
}
