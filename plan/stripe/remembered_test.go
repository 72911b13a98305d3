package stripe

import (
	"context"
	"reflect"
	"testing"
	"time"

	"millside/plan/stripe/schedule"
)

// usualTimes are what a schedule is judged by in these tests.
var usualTimes = schedule.Times{Pass: time.Minute, Halt: 30 * time.Second, Cut: 10 * time.Second,
	Tie: 20 * time.Second, Thread: 15 * time.Second, Far: time.Minute}

// What is remembered is what the search finds, whoever changes what was given out; and what was asked otherwise in any
// way is searched anew.
func TestRememberedIsFound(t *testing.T) {
	ends := []int{1, 1, 2, 2, 1, 1, 3, 1, 1, 2, 2}
	halts := 3
	for name, change := range map[string]func(*schedule.Limits, *schedule.Times){
		"as it is":           func(*schedule.Limits, *schedule.Times) {},
		"more positions":     func(l *schedule.Limits, _ *schedule.Times) { l.Positions = 7 },
		"certain sizes":      func(l *schedule.Limits, _ *schedule.Times) { l.Sizes = []int{2, 3} },
		"few packages":       func(l *schedule.Limits, _ *schedule.Times) { l.Packages = []int{2, 1, 1} },
		"the other order":    func(l *schedule.Limits, _ *schedule.Times) { l.ReturnOrder = l.ReturnOrder.Other() },
		"the last at a foot": func(l *schedule.Limits, _ *schedule.Times) { l.FootLast = true },
		"few halts":          func(l *schedule.Limits, _ *schedule.Times) { l.MostHalts = &halts },
		"a figure":           func(l *schedule.Limits, _ *schedule.Times) { l.Figure = true },
		"slow hands":         func(_ *schedule.Limits, t *schedule.Times) { t.Thread = 3 * time.Minute },
	} {
		t.Run(name, func(t *testing.T) {
			l, w := schedule.Limits{Positions: 4}, usualTimes
			change(&l, &w)
			want, err := schedule.Make(context.Background(), ends, l, w, nil)
			if err != nil {
				t.Fatal(err)
			}
			for range 3 {
				told := 0
				got, err := lately.search(context.Background(), ends, l, w, func(*schedule.Schedule) { told++ })
				if err != nil || !reflect.DeepEqual(got, want) || told == 0 {
					t.Fatalf("%+v, %v, told %d times; want %+v", got.Taken, err, told, want.Taken)
				}
				got.Taken.Passes[0].Last, got.Taken.SetUps[0][0], got.Taken.Total = 99, 99, 0
			}
		})
	}
}

// A search that was broken off is made again, and the memory holds so many searches and so many ends at the most.
func TestMemoryIsBounded(t *testing.T) {
	var m memory
	broken, stop := context.WithCancel(context.Background())
	stop()
	if _, err := m.search(broken, []int{1, 2, 1}, schedule.Limits{Positions: 2}, usualTimes, nil); err != nil ||
		len(m.list) != 0 {
		t.Errorf("%d remembered, %v", len(m.list), err)
	}
	if _, err := m.search(context.Background(), []int{1, 2}, schedule.Limits{}, usualTimes, nil); err == nil ||
		len(m.list) != 0 {
		t.Errorf("%d remembered, no error", len(m.list))
	}
	for i := range 2 * mostRemembered {
		m.keep(remembered{what: [32]byte{byte(i), byte(i >> 8)}, ends: 1})
	}
	if _, ok := m.recall([32]byte{0}); ok || len(m.list) != mostRemembered || m.ends != mostRemembered {
		t.Errorf("%d remembered of %d ends, the first too: %v", len(m.list), m.ends, ok)
	}
	for range 3 {
		m.keep(remembered{what: [32]byte{1: 9, 2: 9}, ends: endsRemembered - 1})
	}
	if len(m.list) != 1 || m.ends >= endsRemembered {
		t.Errorf("%d remembered of %d ends", len(m.list), m.ends)
	}
}
