package session

import (
	"strings"
	"testing"
	"time"
	"unicode"

	"pgregory.net/rapid"

	"millside/counter"
	"millside/plan"
	"millside/plan/times"
	"millside/plan/wind"
)

// drawBench draws a small warp of any kind that the conversation treats in its own way.
func drawBench(rt *rapid.T, t *testing.T) *bench {
	b := newBench(t, func(s *plan.Spec) {
		if rapid.IntRange(0, 3).Draw(rt, "striped") == 0 {
			stripedSpec(s)
		} else {
			s.Group = rapid.IntRange(1, 12).Draw(rt, "group")
			s.Ends = rapid.IntRange(1, 90).Draw(rt, "ends")
			s.TieEvery = rapid.SampledFrom([]int{0, 20, 30}).Draw(rt, "ties")
			if chain := rapid.IntRange(0, 40).Draw(rt, "chain"); chain >= s.Group {
				s.ChainEnds = chain
			}
			s.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(rt, "order"))
			s.Foot = wind.FootPosition(rapid.IntRange(0, 1).Draw(rt, "foot"))
		}
		s.Guard = times.Guard(rapid.SampledFrom([]time.Duration{0, 2 * time.Second, 5 * time.Second}).Draw(rt, "guard"))
		s.RestMinutes = rapid.SampledFrom([]int{0, 3}).Draw(rt, "rest")
	})
	return b
}

func drawIntent(rt *rapid.T) Intent {
	numbers := rapid.IntRange(-1, 13)
	switch rapid.IntRange(0, 26).Draw(rt, "intent") {
	case 0, 1:
		return TakeBack{}
	case 2:
		return Redo{}
	case 3:
		return Pause{}
	case 4:
		return GoOn{}
	case 5:
		return Recount{Passes: numbers.Draw(rt, "passes"),
			Reason: rapid.SampledFrom([]string{"", "why", "\x1b[2J"}).Draw(rt, "reason")}
	case 6:
		what := rapid.SampledFrom([]counter.What{counter.Broken, counter.Knot, counter.MissedOpening, counter.WrongPeg,
			"mouse"}).Draw(rt, "what")
		return Mark{What: what, Pass: numbers.Draw(rt, "pass"), Position: numbers.Draw(rt, "position")}
	case 7:
		return WrongTurn{}
	case 8:
		return Righted{}
	case 9:
		return NewPackage{Position: numbers.Draw(rt, "position"), Pass: numbers.Draw(rt, "pass")}
	case 10:
		return DropMark{Number: rapid.IntRange(-1, 30).Draw(rt, "number")}
	case 11:
		return Note{rapid.StringN(0, 10, -1).Draw(rt, "note")}
	case 12:
		return TieMade{}
	case 13:
		return rapid.SampledFrom([]Intent{TieBack{}, TieOff{}}).Draw(rt, "tie")
	case 14:
		return Answer{Says(rapid.IntRange(0, 2).Draw(rt, "answer"))}
	case 15:
		return Foot{wind.FootPosition(rapid.IntRange(0, 1).Draw(rt, "foot"))}
	case 16:
		return rapid.SampledFrom([]Intent{WorkDone{}, StepDone{}, LookAgain{}, Reopen{"why"}}).Draw(rt, "other")
	}
	return Press{}
}

// Whatever is pressed and however fast: the count is that of the record, two passes are never counted sooner
// than a hand winds them, every press of the pass key counts, is refused with a sound and a word, or does
// what its page announced with another sound; nothing panics; and the record can be folded anew to the same state.
func TestNoPressVanishes(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		b := drawBench(rt, t)
		guard := b.plan.Spec.Guard.Duration()
		var lastLaid time.Time
		for range rapid.IntRange(1, 60).Draw(rt, "intents") {
			gap := rapid.SampledFrom([]time.Duration{33 * time.Millisecond, 700 * time.Millisecond, 3 * time.Second,
				30 * time.Second, 11 * time.Minute}).Draw(rt, "gap")
			in := drawIntent(rt)
			if rapid.IntRange(0, 40).Draw(rt, "crash") == 0 {
				b.reopen()
			}
			before, stage, laid, events := b.s, b.s.Stage(b.clock.Add(gap)), b.laid(), len(b.events)
			r := b.after(gap, in)
			if len(b.events) > events+1 {
				rt.Fatalf("%T wrote %d events", in, len(b.events)-events)
			}
			wrote := counter.Kind("")
			if len(b.events) > events {
				wrote = b.events[events].Kind
			}
			if wrote == counter.Laid {
				if at := b.events[events].At; !lastLaid.IsZero() && at.Sub(lastLaid) < guard {
					rt.Fatalf("two passes %v apart", at.Sub(lastLaid))
				}
				lastLaid = b.clock
			}
			if _, ok := in.(Press); ok {
				pressed(rt, before, stage, r, wrote)
			}
			checkSaid(rt, in, r)
			if wrote == "" && b.laid() != laid {
				rt.Fatalf("%T moved the count without an event", in)
			}
			views(rt, b)
		}
		st, err := fold(b.plan, b.events)
		if err != nil {
			rt.Fatal(err)
		}
		if st.Laid() != b.laid() || st.Chain != b.s.State().Chain || st.Finished != b.s.State().Finished {
			rt.Fatalf("folded anew: %d of chain %d, the session has %d of chain %d", st.Laid(), st.Chain, b.laid(),
				b.s.State().Chain)
		}
	})
}

// pressed checks what a press of the pass key did on a page.
func pressed(rt *rapid.T, before Session, stage Stage, r Reply, wrote counter.Kind) {
	if r.Cue == CueNone || r.Short == "" || len(r.Said) == 0 {
		rt.Fatalf("stage %d: a press vanished: %+v", stage, r)
	}
	if wrote == "" {
		if r.Cue != CueRefused {
			rt.Fatalf("stage %d: nothing was done and it isn't said: %+v", stage, r)
		}
		return
	}
	_, stops := before.stopWork()
	want := map[Stage][]counter.Kind{
		Winding: {counter.Laid}, Looking: {counter.Resumed}, AtPeg: {counter.WorkDone},
		AtQuestion: {counter.Laid}, Finishing: {counter.Ticked, counter.Finished},
	}[stage]
	if stage == AtQuestion && (stops || before.st.Wound()) {
		want = []counter.Kind{counter.LeaseLeft}
	}
	ok := false
	for _, k := range want {
		ok = ok || k == wrote
	}
	if !ok {
		rt.Fatalf("stage %d: a press wrote %s", stage, wrote)
	}
	if passCue := r.Cue != CueConfirmed && r.Cue != CueRefused; passCue != (wrote == counter.Laid) {
		rt.Fatalf("stage %d: %s sounds like %s", stage, wrote, r.Cue)
	}
}

// checkSaid looks for control characters and for silence.
func checkSaid(rt *rapid.T, in Intent, r Reply) {
	if r.Cue == CueNone || len(r.Said) == 0 {
		rt.Fatalf("%T: nothing was said: %+v", in, r)
	}
	_, typed := in.(Note) // a refusal repeats what was typed, whatever it was
	for _, s := range append(r.Said, r.Short) {
		if strings.ContainsFunc(s, unicode.IsControl) || !typed && strings.Contains(s, "%!") {
			rt.Fatalf("%T: %q", in, s)
		}
	}
}

// views draws everything that a skin may ask for.
func views(rt *rapid.T, b *bench) {
	in, ok := b.s.Instruction(b.clock)
	if ok && in.Last != (in.Pass.Number == in.Of) {
		rt.Fatal("last pass")
	}
	if b.stage() == AtQuestion {
		if q, ok := b.s.Question(); !ok || len(q.Seam.Second) == 0 {
			rt.Fatalf("%+v", q)
		}
	}
	if b.stage() == AtPeg {
		if stop, ok := b.s.Stop(); !ok || len(stop.Lines) == 0 {
			rt.Fatalf("%+v", stop)
		}
	}
	for _, said := range [][]string{b.s.Announce(b.clock), b.s.Where(b.clock), {b.s.Speak(b.clock)}} {
		if len(said) == 0 || said[0] == "" {
			rt.Fatal("nothing is said")
		}
	}
}

// Spoken, an ordinary pass has at most twelve words.
func TestSpokenPassIsShort(t *testing.T) {
	for _, group := range []int{9, 10} {
		for _, order := range []wind.ReturnOrder{wind.SameOrder, wind.MirroredOrder} {
			b := newBench(t, func(s *plan.Spec) {
				s.Ends, s.Group, s.ReturnOrder, s.TieEvery = 30*group, group, order,
					0
			})
			b.windTo(3)
			for range 24 {
				b.press(1)
				if n := len(strings.Fields(b.last.Short)); n > 12 || n < 6 {
					t.Errorf("%d words: %q", n, b.last.Short)
				}
			}
		}
	}
}
