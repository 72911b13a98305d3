package journal

import (
	"bytes"
	"errors"
	"os"
	"testing"

	"millside/counter"
	"millside/counter/disk/simdisk"
)

// A new name is kept in the record, before winding begins, on the way and after; the file keeps its name, and what
// stood in it stays.
func TestRename(t *testing.T) {
	s := Store{Dir: t.TempDir()}
	r, err := s.Create(testPlan(t, 400, 10, 0))
	if err != nil {
		t.Fatal(err)
	}
	path := r.Path()
	if err := s.Rename(path, "Blue rug", at(1)); !errors.Is(err, ErrLocked) {
		t.Errorf("while it is wound: %v", err)
	}
	if err := r.Close(); err != nil {
		t.Fatal(err)
	}
	before, _ := os.ReadFile(path)
	if err := s.Rename(path, "Blue rug", at(1)); err != nil {
		t.Fatal(err)
	}
	after, _ := os.ReadFile(path)
	if !bytes.HasPrefix(after, before) {
		t.Errorf("%q, had %q", after, before)
	}
	list, err := s.List()
	if err != nil || len(list) != 1 || list[0].Name != "Blue rug" || list[0].Begun || !list[0].Started.IsZero() {
		t.Fatalf("%+v, %v", list, err)
	}
	if found, err := s.Find("blue rug"); err != nil || found != path {
		t.Errorf("%s, %v", found, err)
	}
	if err := s.Rename(path, "a\x1bb", at(2)); err == nil {
		t.Error("a name that acts on a terminal")
	}
	if again, _ := os.ReadFile(path); !bytes.Equal(again, after) {
		t.Errorf("%q", again)
	}
}

// The plan of a warp that isn't begun can be changed, also after it got another name; of one that is begun it stays.
func TestReplan(t *testing.T) {
	s := Store{Dir: t.TempDir()}
	r, err := s.Create(testPlan(t, 400, 10, 0))
	if err != nil {
		t.Fatal(err)
	}
	path := r.Path()
	other := testPlan(t, 396, 12, 0)
	if _, err := s.Replan(path, other); !errors.Is(err, ErrLocked) {
		t.Errorf("while it is open elsewhere: %v", err)
	}
	if err := r.Close(); err != nil {
		t.Fatal(err)
	}
	if err := s.Rename(path, "Blue rug", at(1)); err != nil {
		t.Fatal(err)
	}
	if r, err = s.Replan(path, other); err != nil {
		t.Fatal(err)
	}
	if st := r.State(); st.Plan.Spec.Ends != 396 || st.Begun() {
		t.Errorf("%+v", st.Plan.Spec)
	}
	if _, err := r.Append(laid(1, 1)); err != nil { // it can be wound at once
		t.Fatal(err)
	}
	if err := r.Close(); err != nil {
		t.Fatal(err)
	}
	had, _ := os.ReadFile(path)
	if want := fileOf(t, other, []counter.Event{laid(1, 1)}); !bytes.Equal(had, want) {
		t.Errorf("%q, want %q", had, want)
	}
	if _, err := s.Replan(path, testPlan(t, 400, 10, 0)); !errors.Is(err, ErrBegun) {
		t.Errorf("a warp that is begun: %v", err)
	}
	if now, _ := os.ReadFile(path); !bytes.Equal(had, now) {
		t.Errorf("%q", now)
	}
	if files, _ := os.ReadDir(s.Dir); len(files) != 1 {
		t.Errorf("left behind: %v", files)
	}
}

// Wherever the power goes while a plan is changed, and whichever call fails, the record holds the old plan or the new
// one, whole.
func TestReplanAtEveryCrashPoint(t *testing.T) {
	older, newer := testPlan(t, 400, 10, 0), testPlan(t, 396, 12, 0)
	was, is := fileOf(t, older, nil), fileOf(t, newer, nil)
	run := func(failing int) int {
		d := simdisk.New(crashDir)
		d.Put(crashPath, was)
		done := false
		look := func(what string) {
			d.Images(func(i simdisk.Image) bool {
				got := i[crashPath]
				if !bytes.Equal(got, is) && (done || !bytes.Equal(got, was)) {
					t.Errorf("call %d fails, power cut after %s: %q", failing, what, got)
					return false
				}
				return true
			})
		}
		d.After = look
		d.Fail = func(n int, _ string) error {
			if n == failing {
				return simdisk.ErrIO
			}
			return nil
		}
		r, err := Store{Dir: crashDir, FS: d}.Replan(crashPath, newer)
		if done = err == nil; done {
			look("the end")
			_ = r.Close()
		}
		return d.Calls()
	}
	for n, calls := 0, 1; n <= calls; n++ {
		if got := run(n); n == 0 {
			calls = got
		}
	}
}
