package tui

import (
	"time"

	"millside/counter/session"
	"millside/tui/mill"
)

// ringer rings the terminal's bell in the rhythm of a cue. A newer cue ends an older one, so that what is heard
// belongs to what is shown.
type ringer struct {
	cues chan session.Cue
	done chan struct{}
}

func newRinger(ring func()) ringer {
	r := ringer{cues: make(chan session.Cue, 1), done: make(chan struct{})}
	go r.run(ring, time.After)
	return r
}

// sound asks for a cue, in place of one that still waits. It returns at once.
func (r ringer) sound(c session.Cue) {
	for {
		select {
		case r.cues <- c:
			return
		default:
		}
		select {
		case <-r.cues:
		default:
		}
	}
}

func (r ringer) stop() { close(r.done) }

// run rings until it is stopped. A bell that fails takes nothing with it.
func (r ringer) run(ring func(), after func(time.Duration) <-chan time.Time) {
	defer func() { _ = recover() }()
	var gaps []time.Duration
	var next <-chan time.Time
	for {
		select {
		case <-r.done:
			return
		case c := <-r.cues:
			gaps, next = mill.Rhythm(c), nil
			ring()
		case <-next:
			next = nil
			gaps = gaps[1:]
			ring()
		}
		if len(gaps) > 0 && next == nil {
			next = after(gaps[0])
		}
	}
}
