package athand

import (
	"fmt"
	"slices"
	"strings"

	"millside/plan"
	"millside/plan/field"
	"millside/plan/measure"
)

// Assumed is a thing that a plan takes because it is the only one of its kind at hand.
type Assumed struct {
	// Kind is what it is, such as "mill", Name what the weaver calls it.
	Kind, Name string
	// Fields are the fields of the plan that it fills in.
	Fields []*field.Field
}

// String says so: "assumed: the only mill at hand, floor mill".
func (a Assumed) String() string { return AssumedText([]Assumed{a}) }

// AssumedText says what is assumed in one line: "assumed: the only mill at hand, floor mill; the only paddle at hand,
// long"; "" where nothing is.
func AssumedText(list []Assumed) string {
	var parts []string
	for _, a := range list {
		parts = append(parts, fmt.Sprintf("the only %s at hand, %s", a.Kind, measure.Clean(a.Name)))
	}
	if len(parts) == 0 {
		return ""
	}
	return "assumed: " + strings.Join(parts, "; ")
}

// figureOf is a figure of a thing, and how it stands in a plan.
type figureOf struct {
	of   *field.Field
	fill func(*plan.Spec)
}

// Assume fills a plan in with what there is only one of at hand: the mill, the paddle, the loom, the reed. A figure
// that was given stays, and a thing isn't assumed where something else was given in its place: its name, a board or
// another circumference, positions, heddles, another reed. Nor is it where it would make the plan wrong, so that what
// is only assumed never refuses a plan: a paddle with fewer positions than the groups that were asked for, a reed that
// doesn't give the sett. A group that wasn't given is no larger than the paddle, whoever said how large that is.
func (h AtHand) Assume(s plan.Spec, given func(*field.Field) bool) (plan.Spec, []Assumed) {
	var list []Assumed
	take := func(kind, name string, instead []*field.Field, figures ...figureOf) {
		if slices.ContainsFunc(instead, given) {
			return
		}
		a := Assumed{Kind: kind, Name: name}
		for _, f := range figures {
			if !given(f.of) {
				f.fill(&s)
				a.Fields = append(a.Fields, f.of)
			}
		}
		list = append(list, a)
	}
	if len(h.Mills) == 1 {
		m := h.Mills[0]
		take(kindMill, m.Name, []*field.Field{field.MillName, field.Board, field.Circumference}, millFigures(m)...)
	}
	if p := h.Paddles; len(p) == 1 && largestGroup(s, given) <= p[0].Positions {
		take(kindPaddle, p[0].Name, []*field.Field{field.PaddleName, field.Positions},
			figureOf{field.Positions, func(s *plan.Spec) { s.Positions = p[0].Positions }})
	}
	if !given(field.Group) && s.Positions > 0 {
		s.Group = min(s.Group, s.Positions)
	}
	if l := h.Looms; len(l) == 1 {
		take(kindLoom, l[0].Name, []*field.Field{field.LoomName, field.Heddles},
			figureOf{field.Heddles, func(s *plan.Spec) { s.Loom.Heddles = slices.Clone(l[0].Heddles) }})
	}
	if r := h.Reeds; len(r) == 1 {
		if _, err := r[0].Reed.Settle(s.Loom.Sett); err == nil {
			take(kindReed, r[0].Name, []*field.Field{field.Reed, field.Dents, field.ReedWidth},
				figureOf{field.Reed, func(s *plan.Spec) { s.Loom.Reed = r[0].Reed }})
		}
	}
	return s, list
}

// millFigures are the figures that a mill has.
func millFigures(m NamedMill) []figureOf {
	list := []figureOf{
		{field.Circumference, func(s *plan.Spec) { s.Mill.Circumference = m.Mill.Circumference }},
		{field.PegStep, func(s *plan.Spec) { s.Mill.PegStep = m.Mill.PegStep }},
	}
	add := func(has bool, f *field.Field, fill func(*plan.Spec)) {
		if has {
			list = append(list, figureOf{f, fill})
		}
	}
	add(m.Mill.Rise != 0, field.Rise, func(s *plan.Spec) { s.Mill.Rise = m.Mill.Rise })
	add(m.Mill.Height != 0, field.MillHeight, func(s *plan.Spec) { s.Mill.Height = m.Mill.Height })
	add(m.Pegs.Length != 0, field.PegLength, func(s *plan.Spec) { s.Pegs.Length = m.Pegs.Length })
	add(m.Pegs.Layers != 0, field.Layers, func(s *plan.Spec) { s.Pegs.Layers = m.Pegs.Layers })
	return list
}

// largestGroup is the largest group that was asked for, 0 where none was.
func largestGroup(s plan.Spec, given func(*field.Field) bool) int {
	n := 0
	if given(field.Group) {
		n = s.Group
	}
	for _, size := range s.Asked.Sizes {
		n = max(n, size)
	}
	return n
}
