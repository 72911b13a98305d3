package journal

import (
	"iter"
	"math"
	"millside/counter"
	"slices"
	"time"
)

// history is the events of a record in little room: most of them are passes, which need no more than their time and
// two numbers. A record of 800,000 events takes some 13 MB so, and more than ten times that as a list of
// [counter.Event].
type history struct {
	short []short
	long  []counter.Event // those that need more
}

// short is an event of a kind, a time, a chain and a pass.
type short struct {
	at    int64 // thousandths of a second since 1970
	pass  uint32
	chain uint16
	kind  uint8 // an index into shortKinds, or longKind: then pass is an index into long
}

const longKind = math.MaxUint8

// shortKinds are the kinds that need no more. Nothing but this package's memory depends on the order.
var shortKinds = []counter.Kind{counter.Laid, counter.Undone, counter.Redone, counter.Paused, counter.Resumed,
	counter.WorkDone, counter.WorkUndone, counter.WrongTurn, counter.Righted, counter.TieMade, counter.TieWaved,
	counter.LeaseLeft, counter.Finished}

// add adds an event, which must be normal.
func (h *history) add(e counter.Event) {
	kind := slices.Index(shortKinds, e.Kind)
	s := short{at: e.At.UnixMilli(), pass: uint32(e.Pass), chain: uint16(e.Chain), kind: uint8(kind)}
	if kind < 0 || s.event() != e {
		s = short{pass: uint32(len(h.long)), kind: longKind}
		h.long = append(h.long, e)
	}
	h.short = append(h.short, s)
}

func (s short) event() counter.Event {
	return counter.Event{At: time.UnixMilli(s.at).UTC(), Kind: shortKinds[s.kind], Chain: int(s.chain),
		Pass: int(s.pass)}
}

func (h *history) len() int { return len(h.short) }

// all goes through the events in their order.
func (h *history) all() iter.Seq[counter.Event] { return h.first(h.len()) }

// first goes through the first n.
func (h *history) first(n int) iter.Seq[counter.Event] {
	some, long := h.short[:n], h.long
	return func(yield func(counter.Event) bool) {
		for _, s := range some {
			e := counter.Event{}
			if s.kind == longKind {
				e = long[s.pass]
			} else {
				e = s.event()
			}
			if !yield(e) {
				return
			}
		}
	}
}

// list is all of them as a list of its own.
func (h *history) list() []counter.Event {
	if h.len() == 0 {
		return nil
	}
	return slices.AppendSeq(make([]counter.Event, 0, h.len()), h.all())
}

// with is another history with more behind it. The one before stays as it is.
func (h history) with(events ...counter.Event) history {
	h.short, h.long = slices.Clip(h.short), slices.Clip(h.long)
	for _, e := range events {
		h.add(e)
	}
	return h
}
