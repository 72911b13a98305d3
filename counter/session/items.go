package session

import (
	"fmt"
	"time"

	"millside/plan"
	"millside/plan/measure"
	"millside/plan/wind"
)

// Item is one thing that must be done or known.
type Item struct {
	Kind  ItemKind
	Level Level
	// Text is the whole of it in words, without a capital letter or a full stop; Short is what is spoken and
	// what a small screen shows.
	Text, Short string
	// Then is what may be said behind either where there is room: the kind of pass that follows; empty where that is
	// no other.
	Then string
}

func item(kind ItemKind, level Level, text, short string) Item {
	return Item{Kind: kind, Level: level, Text: text, Short: short}
}

// Words are the whole of the item with what follows it.
func (i Item) Words() string {
	if i.Then == "" {
		return i.Text
	}
	return i.Text + "; " + i.Then
}

// ItemKind is what an item is about.
type ItemKind uint8

// The kinds of item.
const (
	ItemCarry    ItemKind = iota // which positions are carried or left out
	ItemDress                    // the paddle is threaded, the group tied on
	ItemFoot                     // which position goes to the foot of the peg
	ItemLast                     // the last pass
	ItemTie                      // a count tie
	ItemPackage                  // a package runs out
	ItemTurn                     // twist behind the paddle, and how it is taken out
	ItemOpening                  // a pass lies with the wrong opening first
	ItemQuestion                 // the look at the lease
	ItemWork                     // work at the peg
	ItemFinish                   // the chain is wound
	ItemPass                     // an ordinary pass
	ItemRest                     // a rest
	ItemLost                     // lines are missing from the record
)

// dueNow is what must be done or known for the pass in hand.
func (s Session) dueNow(p wind.Pass) []Item {
	var items []Item
	add := func(kind ItemKind, level Level, text, short string) {
		items = append(items, item(kind, level, text, short))
	}
	c := s.st.Current()
	if p.Number == len(c.Passes) {
		add(ItemLast, Due, fmt.Sprintf("last pass: %s, then tie off", measure.Counted(p.Ends(), "end", "ends")),
			"Last pass")
	}
	if carry, ok := s.carryItem(p); ok {
		items = append(items, carry)
	}
	if w, ok := s.work(); ok && w.Starts() {
		text := "tie the group on at the near end peg, beside the lease"
		if s.st.Plan.LeftOut(p) != 0 {
			text = "tie on " + positionsWords(w.Tie) + " at the near end peg, beside the lease"
		}
		if n := len(w.Thread); n > 0 {
			text = fmt.Sprintf("thread the paddle: %s, one end in each; ",
				measure.Counted(n, "position", "positions")) + text
		}
		add(ItemDress, Due, text, "tie the group on")
	}
	if p.Number == 1 {
		add(ItemFoot, Due, fmt.Sprintf("position %d goes to the foot of the peg", p.FootPosition()),
			fmt.Sprintf("position %d at the foot", p.FootPosition()))
	}
	items = append(items, s.packageItems(p.Number)...)
	if wrong := s.st.Chains[s.st.Chain-1].WrongOpenings; len(wrong) > 0 && wrong[len(wrong)-1] == s.st.Laid() {
		add(ItemOpening, Due, s.saidWrongOpenings(wrong), fmt.Sprintf("pass %d had the wrong opening", s.st.Laid()))
	}
	return items
}

// carryItem says which positions carry no end on the pass, loudly where that is new.
func (s Session) carryItem(p wind.Pass) (Item, bool) {
	out := s.st.Plan.LeftOut(p)
	if out == 0 {
		return Item{}, false
	}
	carry := Item{Kind: ItemCarry, Level: Quiet, Text: "leave out " + positionsWords(out)}
	if s.st.Plan.Striped() {
		carry.Text = "carry only " + positionsWords(p.Carried)
	}
	carry.Short = carry.Text
	if p.Number == 1 || s.st.Current().Passes[p.Number-2].Carried != p.Carried {
		carry.Level = Due
	}
	return carry, true
}

// packageItems are the packages that run out on a pass.
func (s Session) packageItems(pass int) []Item {
	var items []Item
	for _, position := range s.RunsOut(pass) {
		items = append(items, item(ItemPackage, Due,
			fmt.Sprintf("position %d runs out in the middle of pass %d: change the package before it", position, pass),
			fmt.Sprintf("package %d runs out", position)))
	}
	return items
}

// Reminders are what stays open until it is done, at whichever end the paddle is.
func (s Session) Reminders(now time.Time) []Item {
	var items []Item
	if lost, ok := s.missingItem(); ok {
		items = append(items, lost)
	}
	if t, ok := s.DueTie(); ok {
		items = append(items, item(ItemTie, Due, t.String(), fmt.Sprintf("count tie, %d ends", t.Total)))
	}
	if advice := s.st.TwistAdvice(); advice != "" {
		items = append(items, item(ItemTurn, Due, "wrong turn: "+measure.Capital(advice), "wrong turn is open"))
	}
	if s.open() && !s.asks() {
		q, _ := s.Question()
		items = append(items, item(ItemQuestion, Due, "the look at the lease is open: "+q.Text,
			"the lease is still to be looked at"))
	}
	if s.RestDue(now) {
		items = append(items, item(ItemRest, Quiet, s.restWords(), "time for a rest"))
	}
	return items
}

// restWords is the reminder to rest. It is a sentence.
func (s Session) restWords() string {
	return fmt.Sprintf("%s without a break: rest your hands, neck and shoulders.",
		measure.Counted(s.st.Plan.Spec.RestMinutes, "minute", "minutes"))
}

// comingAfter is what follows the pass in hand, announced one pass ahead.
func (s Session) comingAfter(p wind.Pass) []Item {
	var items []Item
	add := func(kind ItemKind, level Level, text, short string) {
		items = append(items, item(kind, level, text, short))
	}
	c, next := s.st.Current(), p.Number+1
	if look := s.st.Plan.LeaseLook(); !s.st.LeaseSeen && look.Chain == s.st.Chain && look.Pass == p.Number {
		add(ItemQuestion, Due, "a look at the lease", "a look at the lease")
	}
	for _, t := range s.st.Plan.After(c, p.Number) {
		switch t.Kind {
		case plan.CountTie:
			add(ItemTie, Due, t.Text, fmt.Sprintf("count tie, %d ends", t.Total))
		case plan.TieOff:
			add(ItemFinish, Due, t.Text, "stop, the chain is wound")
		case plan.LastPassIsNext:
			add(ItemLast, Due, t.Text, "last pass")
		case plan.TwoPassesLeft:
			add(ItemPass, Quiet, t.Text, t.Text)
		}
	}
	if w := s.st.Plan.WorkBefore(s.st.Chain, next); w.Halt() {
		add(ItemWork, Due, fmt.Sprintf("stop at the %s: %s; there the pass key confirms the work", w.Peg, workWords(w)),
			"stop at the peg: "+workWords(w))
		if to := s.st.Plan.KindOf(s.st.Chain, next); to != s.st.Plan.KindOf(s.st.Chain, p.Number) {
			items[len(items)-1].Then = "then " + KindWords(to)
		}
	}
	items = append(items, s.packageItems(next)...)
	if len(items) > 0 || next > len(c.Passes) {
		return items
	}
	text := fmt.Sprintf("pass %d, %s", next, c.Passes[next-1].Direction)
	if tie := s.st.Plan.NextTie(c, next); tie > 0 {
		text += fmt.Sprintf("; count tie after pass %d", tie)
	}
	add(ItemPass, Quiet, text, "")
	return items
}
