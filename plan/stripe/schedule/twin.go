package schedule

import (
	"context"
	"slices"
)

// Where the search ends by itself depends much on the lots that it draws: of two that may look at as much, the better
// comes a good deal nearer to the best that is known. (Whether one that may look at twice as much would come as near
// was not tried.) So a second search, the twin, runs beside the first, on another core where there is one; on one
// core the two take twice as long. It draws other lots and keeps fewer labels, so that it tries more changes of less
// use. What it found counts only when both have come to their end: so the result is the same whichever is the faster.

const (
	twinLots  = 500
	twinWidth = 3
)

// twin is the second search.
type twin struct {
	*maker
	stop func()
	done chan struct{}
}

// startTwin starts the twin, if there is to be one; else it gives nil. It begins with what is known.
func (m *maker) startTwin() *twin {
	if !m.paired {
		return nil
	}
	ctx, stop := context.WithCancel(m.ctx)
	t := &twin{stop: stop, done: make(chan struct{}), maker: &maker{
		problem: m.problem, ctx: ctx, lots: m.lots + twinLots, width: twinWidth, looked: m.looked, looks: m.looks,
		best: m.best, total: m.total, front: slices.Clone(m.front), bound: m.bound, leastHalts: m.leastHalts,
		figure: true, // the bound is left to the first
	}}
	go func() {
		defer close(t.done)
		t.lookAround()
	}()
	return t
}

// take takes what the twin found into account, unless nothing can be cheaper anyway.
func (m *maker) take(t *twin) {
	if t == nil {
		return
	}
	if m.least {
		t.stop()
	}
	<-t.done
	t.stop()
	if m.least {
		return
	}
	m.leastHalts = min(m.leastHalts, t.leastHalts)
	for _, f := range t.front {
		m.note(f.passes)
	}
}
