package counter_test

import (
	"testing"

	"millside/counter"
	"millside/plan/wind"
)

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
	var events []counter.Event
	for i := range 50_000 {
		events = append(events, counter.Event{At: at(i), Kind: counter.Noted, Chain: 1, Text: "a knot"},
			counter.Event{At: at(i), Kind: counter.LeaseSeen, Order: wind.ReturnOrder(i % 2)})
	}
	for b.Loop() {
		if _, err := Fold(p, events); err != nil {
			b.Fatal(err)
		}
	}
}

// Incidents that gather, while passes come and go under them and the lease is seen in one order and the
// other.
func BenchmarkFold100kIncidents(b *testing.B) {
	p := testPlan(b, 1000, 10, 0)
	var events []counter.Event
	for i := range 25_000 {
		events = append(events, laid(1, 1),
			counter.Event{At: at(i), Kind: counter.Incident, Chain: 1, Pass: 1, Position: 1, What: counter.Knot},
			counter.Event{At: at(i), Kind: counter.LeaseSeen, Order: wind.ReturnOrder(i % 2)},
			counter.Event{At: at(i), Kind: counter.Undone, Chain: 1, Pass: 1})
	}
	for b.Loop() {
		if _, err := Fold(p, events); err != nil {
			b.Fatal(err)
		}
	}
}
