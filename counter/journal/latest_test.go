package journal

import (
	"millside/counter"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// What is read of a folder for the pace is bounded, the latest records first.
func TestLatestIsBounded(t *testing.T) {
	s := Store{Dir: t.TempDir(), FS: fake()}
	var size int64
	for i, name := range []string{"old", "middle", "new"} {
		path := add(t, s, name, laid(1, 1))
		when := at(0).Add(time.Duration(i) * time.Hour)
		if err := os.Chtimes(path, when, when); err != nil {
			t.Fatal(err)
		}
		info, err := os.Stat(path)
		if err != nil {
			t.Fatal(err)
		}
		size = info.Size()
	}
	huge := filepath.Join(s.Dir, "huge"+Extension)
	if err := os.WriteFile(huge, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(huge, 1<<30); err != nil { // a hole: no bytes on the disk
		t.Fatal(err)
	}
	for most, want := range map[int64][]string{0: nil, 2*size + 10: {"new", "middle"},
		100 * size: {"new", "middle", "old"}} {
		list, err := s.Latest(most)
		var got []string
		for _, sum := range list {
			got = append(got, sum.Name)
		}
		if err != nil || len(got) != len(want) {
			t.Errorf("%d bytes: %v, %v, want %v", most, got, err, want)
			continue
		}
		for i := range want {
			if got[i] != want[i] {
				t.Errorf("%d bytes: %v, want %v", most, got, want)
			}
		}
	}
	if list, err := (Store{Dir: filepath.Join(s.Dir, "none")}).Latest(100); err != nil || list != nil {
		t.Errorf("%v, %v", list, err)
	}
}

// The memory's short form of an event gives the same event again.
func TestHistoryGivesTheSameEvents(t *testing.T) {
	events := append(sample(), trouble()...)
	events = append(events, counter.Event{At: at(9), Kind: counter.Laid, Chain: 70_000, Pass: 1},
		counter.Event{At: at(9), Kind: counter.Undone, Chain: 1, Pass: -1},
		counter.Event{At: time.Date(1, 1, 1, 0, 0, 0, 0, time.UTC), Kind: counter.Paused},
		counter.Event{At: time.Date(9999, 12, 31, 23, 59, 59, 999e6, time.UTC), Kind: counter.Finished},
		counter.Event{At: at(9), Kind: counter.Laid, Chain: 1, Pass: 1 << 40},
		counter.Event{At: at(10), Kind: counter.Lost, Lines: 9})
	var h history
	for _, e := range events {
		h.add(e.Normal())
	}
	for i, e := range h.list() {
		if e != events[i].Normal() {
			t.Errorf("%+v, want %+v", e, events[i].Normal())
		}
	}
	if h.len() != len(events) {
		t.Error(h.len())
	}
}
