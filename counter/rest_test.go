package counter_test

import (
	"testing"
	"time"

	"millside/counter"
	"millside/plan"
)

func TestAway(t *testing.T) {
	p := testPlan(t, 40, 10, 0)
	s := foldOf(t, p, counter.Event{At: at(0), Kind: counter.Laid, Chain: 1, Pass: 1})
	tests := []struct {
		name  string
		s     counter.State
		now   time.Time
		away  time.Duration
		looks bool // after more than five minutes
	}{
		{"nothing wound", counter.NewState(p), at(10_000), 0, false},
		{"just now", s, at(1), time.Second, false},
		{"five minutes", s, at(300), 5 * time.Minute, false},
		{"a little more", s, at(301), 301 * time.Second, true},
		{"a clock set back", s, at(-1), 0, true},
		{"finished", foldOf(t, p, windAll(p)...), at(10_000), 8000 * time.Second, false},
		{"no plan", counter.State{}, at(10_000), 0, false},
	}
	for _, tt := range tests {
		if got := tt.s.Away(tt.now); got != tt.away {
			t.Errorf("%s: away %v", tt.name, got)
		}
		if got := tt.s.NeedsLook(tt.now, 5*time.Minute); got != tt.looks {
			t.Errorf("%s: needs a look: %v", tt.name, got)
		}
	}
}

func TestRestDue(t *testing.T) {
	spec := plan.DefaultSpec()
	spec.Ends, spec.RestMinutes = 1000, 30
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	wind := func(seconds ...int) (events []counter.Event) { // pass after pass, at these moments
		for i, s := range seconds {
			events = append(events, counter.Event{At: at(s), Kind: counter.Laid, Chain: 1, Pass: i + 1})
		}
		return events
	}
	const m = 60
	steady := wind(0, 5*m, 10*m, 15*m, 20*m, 25*m, 29*m)
	with := func(from, to int, note bool) []counter.Event { // a pause after the third pass
		events := append([]counter.Event{}, steady[:3]...)
		events = append(events, counter.Event{At: at(from), Kind: counter.Paused})
		if note {
			events = append(events, counter.Event{At: at(from + 1), Kind: counter.Noted, Chain: 1, Text: "tea"})
		}
		events = append(events, counter.Event{At: at(to), Kind: counter.Resumed})
		return append(events, steady[3:]...)
	}
	tests := []struct {
		name   string
		events []counter.Event
		now    int
		due    bool
	}{
		{"nothing wound", nil, 100 * m, false},
		{"not yet", steady, 30*m - 1, false},
		{"half an hour", steady, 30 * m, true},
		{"and on", append(wind(0, 5*m, 10*m, 15*m, 20*m, 25*m, 30*m),
			counter.Event{At: at(31 * m), Kind: counter.Noted, Chain: 1, Text: "a"}), 32 * m, true},
		{"a rest of two minutes", with(11*m, 13*m, false), 30 * m, false},
		{"with a note in it", with(11*m, 13*m, true), 30 * m, false},
		{"a look of one minute", with(11*m, 12*m, false), 30 * m, true},
		{"gone without a word", wind(0, 5*m, 10*m, 20*m, 25*m, 30*m, 34*m), 35 * m, false},
		{"nearly so", wind(0, 5*m, 10*m, 20*m-1, 25*m, 30*m, 34*m), 35 * m, true},
		{"gone now", steady, 39 * m, false},
		{"resting now", append(append([]counter.Event{}, steady...),
			counter.Event{At: at(30 * m), Kind: counter.Paused}), 31 * m, false},
		{"a clock set back", append(wind(0, 5*m, 10*m, 15*m),
			counter.Event{At: at(-60 * m), Kind: counter.Laid, Chain: 1, Pass: 5}), -50*m - 1, false},
		{"on both sides of a clock set back",
			append(wind(0, 5*m, 10*m, 15*m), counter.Event{At: at(-60 * m), Kind: counter.Laid, Chain: 1, Pass: 5},
				counter.Event{At: at(-52 * m), Kind: counter.Laid, Chain: 1, Pass: 6}), -45 * m, true},
		{"resumed after a crash", append(wind(0, 5*m), counter.Event{At: at(6 * m), Kind: counter.Resumed}), 7 * m,
			false},
	}
	for _, tt := range tests {
		s := foldOf(t, p, tt.events...)
		if got := s.RestDue(tt.events, at(tt.now)); got != tt.due {
			t.Errorf("%s: %v", tt.name, got)
		}
	}
	if s := foldOf(t, testPlan(t, 1000, 10, 0), steady...); s.RestDue(steady, at(60*m)) {
		t.Error("a rest is due where none was asked for")
	}
	done := windAll(p)
	if s := foldOf(t, p, done...); s.RestDue(done, at(2001)) {
		t.Error("a rest is due after the end")
	}
}
