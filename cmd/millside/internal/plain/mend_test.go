package plain

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"millside/counter/journal"
	"millside/counter/session"
)

// brokenTalk is a conversation key by key over a record that can't be written any more, with one pass counted; asked
// are the ways on that were tried, which fail while the disk is full.
func brokenTalk(t *testing.T) (tk *bench, disk *fullDisk, asked *[]session.Remedy) {
	t.Helper()
	disk, asked = &fullDisk{FS: journal.OS()}, &[]session.Remedy{}
	tk = newBenchIn(t, disk, nil)
	tk.p.Mend = func(way session.Remedy) (Record, session.Opening, error) {
		*asked = append(*asked, way)
		mend := tk.rec.Reopen
		if way == session.SaveBeside {
			mend = tk.rec.SaveBeside
		}
		next, err := mend()
		if err == nil && disk.full {
			err = errors.Join(errors.New("the disk is full still"), next.Close())
		}
		if err != nil {
			return nil, session.Opening{}, err
		}
		t.Cleanup(func() { _ = next.Close() })
		return next, session.Opening{State: next.State(), Events: next.Events()}, nil
	}
	tk.p.Begin(tk.time, true)
	tk.presses(" ")
	disk.full = true
	tk.wants(tk.presses(" "), "Not saved: the count did not move, 1 pass on the disk.", "Stop winding.",
		"The key r: try again; n: save as a new record; q: leave.")
	return tk, disk, asked
}

// Where the record can't be written, the keys of the screen try again and save what was counted beside, in plain mode
// too; nothing is counted before, and winding goes on where it was.
func TestMendedInPlainMode(t *testing.T) {
	for key, way := range map[string]session.Remedy{"r": session.TryAgain, "n": session.SaveBeside} {
		tk, disk, asked := brokenTalk(t)
		if got := tk.presses(" "); !strings.Contains(strings.ToLower(got), "nothing is counted") {
			t.Errorf("a press on a broken record: %q", got)
		}
		if way == session.TryAgain {
			tk.wants(tk.presses(key), "Still not saved: the count did not move.", "The key r: try again")
		}
		disk.full = false
		tk.wants(tk.presses(key), "1 of 4 passes laid")
		tk.presses(" ", " ")
		if got := tk.p.Session().State().Laid(); got != 2 {
			t.Errorf("%s: %d passes after it", way, got)
		}
		if last := (*asked)[len(*asked)-1]; last != way {
			t.Errorf("%s was tried", last)
		}
	}
}

// Who leaves a record that can't be written leaves with an error.
func TestLeftBroken(t *testing.T) {
	tk, _, _ := brokenTalk(t)
	r, err := tk.p.Key("q", tk.time.Add(time.Minute))
	if !r.Over || !errors.Is(err, journal.ErrFailed) || strings.Count(fmt.Sprint(err), "did not move") != 1 {
		t.Errorf("over %v: %v", r.Over, err)
	}
}

// Where the record can be written there is nothing to mend.
func TestNothingToMend(t *testing.T) {
	tk := newBench(t, nil)
	tk.wants(tk.types("beside"), "Nothing was done: the record can be written.")
	tk.wants(tk.types("again"), "Nothing was done: the record can be written.")
}
