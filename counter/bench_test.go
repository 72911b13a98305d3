package counter

import (
	"testing"

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
