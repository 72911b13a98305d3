package counter

import (
	"path/filepath"
	"testing"

	"millside/plan"
	"millside/plan/wind"
)

// manyEvents is a list of 100,000 events: passes laid and taken back over the whole of a warp.
func manyEvents(p *plan.Plan) []Event {
	const n = 100_000
	events := make([]Event, 0, n)
	passes := len(p.Chains[0].Passes)
	for len(events) < n {
		for k := 1; k <= passes && len(events) < n; k++ {
			events = append(events, laid(1, k))
		}
		for k := passes; k >= 1 && len(events) < n; k-- {
			events = append(events, Event{At: at(k), Kind: Undone, Chain: 1, Pass: k})
		}
	}
	return events
}

func BenchmarkFold100k(b *testing.B) {
	p := testPlan(b, 1000, 10, 0)
	events := manyEvents(p)
	for b.Loop() {
		if _, err := Fold(p, events); err != nil {
			b.Fatal(err)
		}
	}
}

// The slowest kinds: notes, which gather, and the lease seen in one order and the other.
func BenchmarkFold100kNotes(b *testing.B) {
	p := testPlan(b, 1000, 10, 0)
	var events []Event
	for i := range 50_000 {
		events = append(events, Event{At: at(i), Kind: Noted, Chain: 1, Text: "a knot"},
			Event{At: at(i), Kind: LeaseSeen, Order: wind.ReturnOrder(i % 2)})
	}
	for b.Loop() {
		if _, err := Fold(p, events); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkOpen100k(b *testing.B) {
	p := testPlan(b, 1000, 10, 0)
	path := writeFile(b, fileOf(b, p, manyEvents(p)))
	for b.Loop() {
		r, err := Open(OS(), path)
		if err != nil {
			b.Fatal(err)
		}
		if r.State().Events != 100_000 {
			b.Fatal(r.State().Events)
		}
		if err := r.Close(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAppend(b *testing.B)     { benchmarkAppend(b, fake()) }
func BenchmarkAppendSync(b *testing.B) { benchmarkAppend(b, OS()) }

func benchmarkAppend(b *testing.B, fsys FS) {
	r, err := Create(fsys, filepath.Join(b.TempDir(), "warp"+Extension), testPlan(b, 1000, 10, 0))
	if err != nil {
		b.Fatal(err)
	}
	defer r.Close()
	for i := 0; b.Loop(); i++ {
		e := laid(1, 1)
		if i%2 == 1 {
			e.Kind = Undone
		}
		if _, err := r.Append(e); err != nil {
			b.Fatal(err)
		}
	}
}

// Incidents that gather, while passes come and go under them and the lease is seen in one order and the
// other.
func BenchmarkFold100kIncidents(b *testing.B) {
	p := testPlan(b, 1000, 10, 0)
	var events []Event
	for i := range 25_000 {
		events = append(events, laid(1, 1),
			Event{At: at(i), Kind: Incident, Chain: 1, Pass: 1, Position: 1, What: Knot},
			Event{At: at(i), Kind: LeaseSeen, Order: wind.ReturnOrder(i % 2)},
			Event{At: at(i), Kind: Undone, Chain: 1, Pass: 1})
	}
	for b.Loop() {
		if _, err := Fold(p, events); err != nil {
			b.Fatal(err)
		}
	}
}
