package form

import (
	"fmt"
	"slices"

	"millside/plan"
	"millside/plan/athand"
)

// offer is one thing at hand: its name, and the fields that it fills in.
type offer struct {
	name   string
	fill   func(*plan.Spec)
	fields []string
}

// offers are the things at hand that suit the field being filled in.
func (m Model) offers() []offer {
	var list []offer
	hand := m.AtHand
	switch name := m.fields[m.at].Name; m.section() {
	case secMill, secChains:
		for _, n := range hand.Mills {
			list = append(list, offer{n.Name, func(s *plan.Spec) { s.Mill, s.Pegs, s.Board = n.Mill, n.Pegs, nil },
				[]string{"mill circumference", "peg step", "rise a turn", "mill height", "peg length",
					"layers on a peg", "board"}})
		}
		for _, n := range hand.Boards {
			list = append(list, offer{n.Name, func(s *plan.Spec) { s.Board = n.Board }, []string{"board"}})
		}
	case secPaddle:
		for _, n := range hand.Paddles {
			list = append(list, offer{n.Name, func(s *plan.Spec) {
				s.Positions = n.Positions
				s.Group = min(s.Group, n.Positions) // the form shows both, one below the other
			}, []string{"paddle positions", "group"}})
		}
	case secYarn:
		for _, n := range hand.Yarns {
			list = append(list, offer{n.Name, func(s *plan.Spec) { s.Yarn = n.Yarn },
				[]string{"yarn", "colour", "cones", "tube", "cones at hand"}})
		}
	case secLoom:
		if name == "raddle space" || name == "raddle spaces" {
			for _, n := range hand.Raddles {
				list = append(list, offer{n.Name, func(s *plan.Spec) { s.Loom.Raddle = n.Raddle },
					[]string{"raddle space", "raddle spaces"}})
			}
			return list
		}
		for _, n := range hand.Reeds {
			list = append(list, offer{n.Name, func(s *plan.Spec) { s.Loom.Reed = n.Reed },
				[]string{"reed", "reed width"}})
		}
	}
	return list
}

// takeOffer fills in the next thing at hand, round after the last.
func (m Model) takeOffer() Model {
	list := m.offers()
	if len(list) == 0 {
		return m
	}
	o := list[m.offered%len(list)]
	m.offered++
	spec := m.spec
	o.fill(&spec)
	m = m.setFields(spec, o.fields...)
	m.offer = o.name
	return m
}

// offerLine says what is at hand for the field.
func (m Model) offerLine() string {
	n, k := len(m.offers()), m.Keys.AtHand.Help().Key
	switch {
	case n == 0:
		return ""
	case m.offer != "":
		return fmt.Sprintf("at hand: %s (%s: the next of %d)", m.offer, k, n)
	default:
		return fmt.Sprintf("%s: %d at hand", k, n)
	}
}

// onlyOne is the thing that a field was filled in from because there is only one of it at hand; false where there is
// none, or another value stands there by now.
func (m Model) onlyOne(i int) (athand.Assumed, bool) {
	for _, a := range m.Assumed {
		f := m.fields[i]
		if slices.Contains(a.Fields, f.Field) && !m.own[i] && m.text(i) == f.Show(m.begun) {
			return a, true
		}
	}
	return athand.Assumed{}, false
}
