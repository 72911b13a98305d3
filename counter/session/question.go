package session

import (
	"fmt"
	"slices"
	"time"

	"millside/counter"
	"millside/plan"
	"millside/plan/wind"
)

// Question is what the winder is asked about the lease.
type Question struct {
	// Foot says that it asks where position 1 lies, since both return orders make a sound lease; otherwise it asks
	// whether neighbours alternate where two groups meet.
	Foot bool
	// Pass is the return pass whose group is looked at.
	Pass int
	// Short is the question in few words, for a voice and for large letters.
	Short string
	// Text is the question, Yes and Other the two answers in words, Later what putting it off means.
	Text, Yes, Other, Later string
	// Seam is the place to look at.
	Seam Seam
	// PressDoes says what the pass key does on the question's page.
	PressDoes string
}

// Seam is the place on lease peg A where two groups meet, from foot to tip.
type Seam struct {
	// First are the last ends of the group of the pass before, Second the first ones of the group just laid,
	// as they lie if all is as planned: neighbours on different sides. Turned are the first ends of the group
	// just laid as they lie in the other return order.
	First, Second, Turned []SeamEnd
}

// SeamEnd is one end at the seam.
type SeamEnd struct {
	// Position is the position of the paddle that it comes from; Colour its colour, 0 in a plain warp.
	Position, Colour int
	// OverA says that it lies over peg A, and so under peg B.
	OverA bool
}

// seamEnds is how many ends of each group the seam shows at most.
const seamEnds = 4

// open says whether the look at the lease is still to be answered: from the return pass on that shows it.
func (s Session) open() bool {
	look, c := s.st.Plan.LeaseLook(), s.st.Chains[s.st.Chain-1]
	if look.Pass == 0 || s.st.LeaseSeen || len(c.Ticked) > 0 {
		return false
	}
	if s.st.Chain == look.Chain {
		return c.Laid >= look.Pass
	}
	// The order of a striped warp can be turned only while the first chain is wound that it changes.
	return s.st.Chain > look.Chain && !s.st.Plan.Striped() && c.Laid > 0
}

// asks says whether the question has its page: right after the pass that shows it, until it is answered or put off.
func (s Session) asks() bool {
	look := s.st.Plan.LeaseLook()
	return s.open() && s.st.Chain == look.Chain && s.st.Laid() == look.Pass && s.st.LeaseLeft == 0
}

// Question is what is asked about the lease; false where nothing is open.
func (s Session) Question() (Question, bool) {
	if !s.open() {
		return Question{}, false
	}
	look := s.st.Plan.LeaseLook()
	q := Question{
		Foot: look.Kind == plan.CheckFoot, Pass: look.Pass, Seam: s.seam(look),
		Later: "it stays open and is shown as a reminder", PressDoes: s.pressOnQuestion(),
	}
	if !q.Foot {
		q.Text = "Look at lease peg A where the last two groups meet: do the neighbours alternate there, one over " +
			"the peg and the next one under it?"
		q.Short = "Do neighbours alternate where the groups meet?"
		q.Yes, q.Other = "yes, they alternate", "no, two neighbours lie on the same side"
		return q, true
	}
	pass := s.st.Plan.Chains[look.Chain-1].Passes[look.Pass-1]
	here, there := placeOf(pass.Mirrored), placeOf(!pass.Mirrored)
	q.Text = fmt.Sprintf("Look at the group just laid on lease peg A: does its position %d lie %s?",
		pass.Carried.First(), here)
	q.Short = fmt.Sprintf("Does position %d lie %s?", pass.Carried.First(), here)
	q.Yes, q.Other = "yes, "+here, "no, "+there
	return q, true
}

// pressOnQuestion says what the pass key does on the question's page.
func (s Session) pressOnQuestion() string {
	_, stops := s.stopWork()
	switch {
	case stops:
		return "puts it off, and the work at the peg comes up"
	case s.st.Wound():
		return "puts it off, and the finishing begins"
	}
	return "counts the next pass; the question stays open"
}

// seam is where the group of the look meets the one before it.
func (s Session) seam(look plan.Look) Seam {
	passes := s.st.Plan.Chains[look.Chain-1].Passes
	before, last := passes[look.Pass-2], passes[look.Pass-1]
	lay := func(p wind.Pass, mirrored bool) []SeamEnd {
		var all []SeamEnd
		set := s.st.Plan.SetUpOf(p)
		for pos := range p.Carried.All() {
			end := SeamEnd{Position: pos, OverA: p.OverA(pos)}
			if pos <= len(set) {
				end.Colour = set[pos-1]
			}
			all = append(all, end)
		}
		if mirrored {
			slices.Reverse(all)
		}
		return all
	}
	first, second, turned := lay(before, before.Mirrored), lay(last, last.Mirrored), lay(last, !last.Mirrored)
	first = first[max(len(first)-seamEnds, 0):]
	return Seam{First: first, Second: second[:min(seamEnds, len(second))], Turned: turned[:min(seamEnds, len(turned))]}
}

// answer answers the question.
func (s Session) answer(says Says, at time.Time) (Session, Reply) {
	switch {
	case s.st.Finished:
		return s.refuse("the warp is finished", "", at)
	case !s.open():
		return s.refuse("nothing is asked about the lease now", "Nothing is asked.", at)
	case s.guards.repeats(fmt.Sprintf("answer %d", says), at):
		return s.tooFast(at)
	}
	order := s.st.Plan.Spec.ReturnOrder
	switch says {
	case Yes:
		return s.write(counter.Event{Kind: counter.LeaseSeen, Order: order}, at)
	case Other:
		n, err := s.takenOff(order.Other())
		if err != nil {
			return s.refuse(s.layOtherWay(), "Lay it the other way round.", at)
		}
		if n > 1 && !s.sure {
			s.sure = true
			return s.refuse(fmt.Sprintf("not done yet: in the %s order the stripes lie wrong, and %d passes would "+
				"have to come off; answer once more if it is so",
				order.Other(), n), "", at)
		}
		return s.write(counter.Event{Kind: counter.LeaseSeen, Order: order.Other()}, at)
	}
	if s.st.Laid() == 0 || !s.asks() {
		return s.refuse("it stays open", "It stays open.", at)
	}
	return s.write(counter.Event{Kind: counter.LeaseLeft, Pass: s.st.Laid()}, at)
}

// layOtherWay says what the hands do where the stripes can't follow the order in which return passes lie, mostly since
// a chain that is off the mill would have been wound otherwise in that order.
func (s Session) layOtherWay() string {
	first := s.firstWide()
	pass := s.st.Plan.Chains[s.st.Chain-1].Passes[first-1]
	return fmt.Sprintf("the stripes can't follow that, with what is off the mill: take back to before pass %d, "+
		"and lay that return pass and those after it the other way round, with position %d %s", first,
		pass.Carried.First(), placeOf(pass.Mirrored))
}

// firstWide is the first return pass of the chain in hand that carries more than one end; there is one, since the
// question was asked.
func (s Session) firstWide() int {
	passes := s.st.Plan.Chains[s.st.Chain-1].Passes
	for k := 1; k < len(passes); k += 2 {
		if passes[k].Ends() > 1 {
			return k + 1
		}
	}
	return s.st.Plan.LeaseLook().Pass
}

// placeOf is where the first position of a pass lies on the peg.
func placeOf(mirrored bool) string {
	if mirrored {
		return "at the tip"
	}
	return "at the foot of the peg"
}

// takenOff is how many passes of a striped warp would have to come off if return passes lie in an order. The error
// says that the stripes can't follow that order.
func (s Session) takenOff(order wind.ReturnOrder) (int, error) {
	if !s.st.Plan.Striped() {
		return 0, nil
	}
	next, err := s.st.Apply(counter.Event{Kind: counter.LeaseSeen, Order: order})
	if err != nil {
		return 0, err
	}
	return s.st.Laid() - next.Laid(), nil
}

// answerByPress puts the question off, since the pass key can't count a pass here.
func (s Session) answerByPress(at time.Time) (Session, Reply) {
	if !s.guards.confirm(at) {
		return s.tooFast(at)
	}
	return s.write(counter.Event{Kind: counter.LeaseLeft, Pass: s.st.Laid()}, at)
}

// foot tells which end of the paddle lies at the foot.
func (s Session) foot(in Foot, at time.Time) (Session, Reply) {
	if s.guards.repeats("foot", at) {
		return s.tooFast(at)
	}
	return s.write(counter.Event{Kind: counter.FootSeen, Foot: in.Position}, at)
}

// saidOrder says what a look at the lease changed. Where the order is another than planned, passes that lie may have
// had the wrong opening first.
func (s Session) saidOrder(before counter.State) string {
	st := s.st
	if before.Plan.Spec.ReturnOrder == st.Plan.Spec.ReturnOrder {
		return "the lease is as planned"
	}
	text := fmt.Sprintf("return passes lie in the %s order from here on", st.Plan.Spec.ReturnOrder)
	if st.Laid() < before.Laid() {
		off := fmt.Sprintf("what lies beyond pass %d", st.Laid())
		if st.Laid() == 0 {
			off = "all that lies"
		}
		return fmt.Sprintf("%s, and the stripes follow it: take off %s, and lay pass %d anew", text, off, st.Laid()+1)
	}
	if wrong := st.Chains[st.Chain-1].WrongOpenings; len(wrong) > 0 {
		text += "; " + s.saidWrongOpenings(wrong)
	}
	return text
}

// saidWrongOpenings says what to do about passes that lie with the wrong opening first.
func (s Session) saidWrongOpenings(wrong []int) string {
	last := wrong[len(wrong)-1]
	if last == s.st.Laid() && len(wrong) == 1 {
		return fmt.Sprintf("pass %d had the wrong opening first: take it back and lay it anew, or wind on and mend "+
			"the lease at the loom", last)
	}
	return passesWords(wrong) + " had the wrong opening first: the lease is to be mended there, it stands on the " +
		"hand-over"
}

// passesWords lists passes: "pass 2", "passes 2, 4".
func passesWords(passes []int) string {
	text := "pass "
	if len(passes) > 1 {
		text = "passes "
	}
	for i, k := range passes {
		if i > 0 {
			text += ", "
		}
		text += fmt.Sprint(k)
	}
	return text
}
