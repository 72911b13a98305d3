package stripe

import (
	"context"
	"crypto/sha256"
	"encoding/json"
	"slices"
	"sync"

	"millside/plan/stripe/schedule"
)

// A search takes seconds and finds the same each time, so what was found lately is kept while the program runs: who
// looks at one way to wind after another, or plans from the same stripes anew with another length, waits once.
const (
	mostRemembered = 512    // searches; beside each plan stand some forty quick figures
	endsRemembered = 60_000 // of all of them together: a few megabytes
)

// remembered is one search and what it found.
type remembered struct {
	what  [sha256.Size]byte
	ends  int
	found schedule.Found
}

// memory keeps the searches that were made last.
type memory struct {
	sync.Mutex
	list []remembered // the oldest first
	ends int
}

var lately memory

// search is [schedule.Make], which isn't asked twice for the same. What is remembered is told to progress once, as the
// best. A search that was broken off isn't remembered, and none that found nothing.
func (m *memory) search(ctx context.Context, ends []int, l schedule.Limits, t schedule.Times,
	progress func(*schedule.Schedule)) (schedule.Found, error) {
	text, err := json.Marshal([]any{ends, l, t})
	if err != nil {
		return schedule.Make(ctx, ends, l, t, progress)
	}
	what := sha256.Sum256(text)
	if found, ok := m.recall(what); ok {
		if progress != nil {
			progress(found.Taken)
		}
		return found, nil
	}
	found, err := schedule.Make(ctx, ends, l, t, progress)
	if err == nil && ctx.Err() == nil {
		m.keep(remembered{what, len(ends), found})
	}
	return found, err
}

// recall is what a search found; false where it isn't remembered.
func (m *memory) recall(what [sha256.Size]byte) (schedule.Found, bool) {
	m.Lock()
	defer m.Unlock()
	for i := len(m.list) - 1; i >= 0; i-- {
		if m.list[i].what == what {
			return own(m.list[i].found), true
		}
	}
	return schedule.Found{}, false
}

// keep remembers a search, and forgets the oldest ones where there are too many.
func (m *memory) keep(r remembered) {
	m.Lock()
	defer m.Unlock()
	r.found = own(r.found)
	m.list = append(m.list, r)
	m.ends += r.ends
	for len(m.list) > mostRemembered || m.ends > endsRemembered && len(m.list) > 1 {
		m.ends -= m.list[0].ends
		m.list = slices.Delete(m.list, 0, 1)
	}
}

// own is what was found for one caller alone, who may change it.
func own(found schedule.Found) schedule.Found {
	return schedule.Found{Taken: ownSchedule(found.Taken), Cheapest: ownSchedule(found.Cheapest)}
}

func ownSchedule(s *schedule.Schedule) *schedule.Schedule {
	if s == nil {
		return nil
	}
	one := *s
	one.Passes, one.SetUps = slices.Clone(s.Passes), make([][]int, len(s.SetUps))
	for i, set := range s.SetUps {
		one.SetUps[i] = slices.Clone(set)
	}
	return &one
}
