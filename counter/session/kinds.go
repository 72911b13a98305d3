package session

import (
	"fmt"

	"millside/plan"
	"millside/plan/measure"
)

// KindWords names a kind of pass by its number, as the winder learns it: "kind III"; empty for 0.
func KindWords(kind int) string {
	if kind == 0 {
		return ""
	}
	return "kind " + plan.KindName(kind)
}

// kindSpoken names a kind for the ear: a voice reads "III" letter by letter.
func kindSpoken(kind int) string { return fmt.Sprintf("kind %d", kind) }

// Kinds lists the kinds of pass of the warp where there are several, as many as there is room for, with that of the
// pass in hand among them; more is how many are left out.
func (s Session) Kinds(room int) (list []plan.PassKind, more int) {
	p := s.st.Plan
	if p.KindOf(1, 1) == 0 || room < 1 {
		return nil, 0
	}
	list = p.Kinds()
	if len(list) <= room {
		return list, 0
	}
	more = len(list) - room
	if next, ok := s.st.NextPass(); ok {
		if kind := p.KindOf(s.st.Chain, next.Number); kind > room {
			list[room-1] = list[kind-1]
		}
	}
	return list[:room], more
}

// inWords is how many kinds of pass are told in words before winding begins.
const inWords = 12

// kindsWords tells the kinds of pass, each once.
func (s Session) kindsWords() []string {
	list, more := s.Kinds(inWords)
	var said []string
	for _, k := range list {
		said = append(said, sentence(fmt.Sprintf("%s, %s: %s", KindWords(k.Number),
			measure.Counted(k.Passes, "pass", "passes"), s.st.Plan.KindText(k))))
	}
	if more > 0 {
		said = append(said, fmt.Sprintf("These are %d of %d kinds; what another carries is told when it comes.",
			len(list), len(list)+more))
	}
	return said
}

// kindInHand says what the kind of the pass in hand carries; empty where there are no kinds.
func (s Session) kindInHand() string {
	next, ok := s.st.NextPass()
	kind := s.st.Plan.KindOf(s.st.Chain, next.Number)
	if !ok || kind == 0 {
		return ""
	}
	return KindWords(kind) + ": " + s.st.Plan.KindText(plan.PassKind{First: next})
}
