package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"millside/counter"
	"millside/plan"
)

// lookAfter is how long nothing may have happened before an empty line counts a pass without a look at
// the mill first: our own choice, no source. A slow pass takes less.
const lookAfter = 10 * time.Minute

// plain is a conversation over a record: one line in, some sentences out. It knows nothing of where the
// lines come from. Every change goes through the record first.
type plain struct {
	rec   *counter.Record
	st    counter.State
	now   counter.Clock
	guard counter.Guard
	look  bool // what stands on the mill has to be seen before anything is counted
	moved bool // something was added since the record was opened
	rest  bool // the reminder to rest was given in this stretch
}

func newPlain(rec *counter.Record, now counter.Clock) *plain {
	st := rec.State()
	return &plain{rec: rec, st: st, now: now,
		guard: counter.NewGuard(time.Duration(st.Plan.Spec.GuardMillis) * time.Millisecond),
		look:  st.Events > 0 && !st.Finished}
}

// stage is what an empty line means.
type stage uint8

const (
	stageWind   stage = iota // the pass is laid
	stageLook                // what stands on the mill is as it was said
	stageLease               // the second group lies as planned
	stageFinish              // the step is done
	stageDone                // nothing: the record is closed
)

func (p *plain) stage() stage {
	switch {
	case p.st.Finished:
		return stageDone
	case p.look || p.st.Paused:
		return stageLook
	case p.asksLease():
		return stageLease
	case p.st.Wound():
		return stageFinish
	}
	return stageWind
}

// asksLease says whether the winder should look at the lease now. It is too late once the finishing has
// begun.
func (p *plain) asksLease() bool {
	return p.asksLeaseAfter(p.st.Laid()) && len(p.st.Chains[p.st.Chain-1].Ticked) == 0
}

// asksLeaseAfter says whether the look at the lease comes after a pass.
func (p *plain) asksLeaseAfter(pass int) bool {
	return !p.st.LeaseSeen && slices.ContainsFunc(p.st.Plan.After(p.st.Current(), pass),
		func(t plan.Task) bool { return t.Kind == plan.CheckLease })
}

// begin is what is said first.
func (p *plain) begin() []string {
	said := []string{fmt.Sprintf("Warp \"%s\".", p.st.Plan.Spec.Name)}
	if torn := p.rec.Torn(); torn != "" {
		said = append(said, "Take care: "+torn+". Count the groups at the pegs.")
	}
	if p.st.Events == 0 {
		said = append(said, "An empty line means that the pass is laid. Type help for the other words.")
	}
	return append(said, p.announce()...)
}

// lookAgain asks for a look at the mill, as after a time away.
func (p *plain) lookAgain() []string {
	if p.st.Events > 0 && !p.st.Finished {
		p.look = true
	}
	return p.announce()
}

// take acts on a line. Over says that the conversation has come to its end. An error means that nothing
// more can be counted.
func (p *plain) take(line string) (said []string, over bool, err error) {
	word, rest, _ := strings.Cut(strings.TrimSpace(line), " ")
	word, rest = strings.ToLower(word), strings.TrimSpace(rest)
	if word == "" {
		said, err = p.goOn()
		return said, p.st.Finished, err
	}
	if word == "leave" {
		return p.leave()
	}
	for _, w := range typedWords() {
		if w.word == word {
			said, err = w.act(p, rest)
			return said, false, err
		}
	}
	return []string{unknown(word)}, false, nil
}

// leave pauses the warp, unless it stands still already or was only looked at.
func (p *plain) leave() (said []string, over bool, err error) {
	if p.moved && !p.st.Paused && !p.st.Finished {
		if said, err = p.add(counter.Event{Kind: counter.Paused}); err != nil || said != nil {
			return said, true, err
		}
	}
	return []string{fmt.Sprintf("Left with %s laid. All of it is on the disk.", count(p.st.Laid(), "pass"))}, true, nil
}

// goOn is an empty line.
func (p *plain) goOn() ([]string, error) {
	switch p.stage() {
	case stageLook:
		p.guard = p.guard.Counted(p.now())
		return p.then(counter.Event{Kind: counter.Resumed}, func() []string {
			p.look = false
			return p.announce()
		})
	case stageLease:
		return p.confirm(counter.Event{Kind: counter.LeaseSeen, Order: p.st.Plan.Spec.ReturnOrder}, "The lease is as planned.")
	case stageFinish:
		if step, more := p.st.NextStep(); more {
			return p.confirm(counter.Event{Kind: counter.Ticked, Step: step.ID}, "Done.")
		}
		return p.confirm(counter.Event{Kind: counter.Finished}, "")
	case stageDone:
		return p.announce(), nil
	}
	return p.lay()
}

// lay counts a pass, unless the line came faster than a hand can wind or after a long time away.
func (p *plain) lay() ([]string, error) {
	if p.st.NeedsLook(p.now(), lookAfter) {
		return append([]string{"Not counted: nothing has happened for a long time."}, p.lookAgain()...), nil
	}
	next, _ := p.st.NextPass()
	return p.confirm(counter.Event{Kind: counter.Laid, Pass: next.Number}, "")
}

// confirm adds an event for an empty line, unless it came too soon after the last.
func (p *plain) confirm(e counter.Event, before string) ([]string, error) {
	next, ok := p.guard.Press(p.now())
	if p.guard = next; !ok {
		return []string{fmt.Sprintf("Not counted: sooner than %s after the last.", time.Duration(p.st.Plan.Spec.GuardMillis)*time.Millisecond)}, nil
	}
	return p.then(e, func() []string {
		said := p.announce()
		if before != "" {
			said = append([]string{before}, said...)
		}
		return append(said, p.restWords()...)
	})
}

// then adds an event and says something if it was taken.
func (p *plain) then(e counter.Event, say func() []string) ([]string, error) {
	if said, err := p.add(e); err != nil || said != nil {
		return said, err
	}
	return say(), nil
}

// add appends an event of the chain in hand. One that doesn't follow is explained; a record that can't be
// written is an error.
func (p *plain) add(e counter.Event) (said []string, err error) {
	if e.At = p.now(); e.Chain == 0 {
		e.Chain = p.st.Chain
	}
	st, err := p.rec.Append(e)
	switch {
	case errors.Is(err, counter.ErrBroken):
		return nil, fmt.Errorf("the count did not move, %s laid on the disk: %w", count(p.st.Laid(), "pass"), err)
	case err != nil:
		return []string{"Not done: " + err.Error() + "."}, nil
	}
	p.st, p.moved = st, true
	return nil, nil
}
