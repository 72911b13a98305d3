package journal

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"millside/counter"
	"millside/counter/disk/simdisk"
)

// What is put away or deleted is out of the list, comes back byte by byte, and never takes the place of another.
func TestShelves(t *testing.T) {
	s := Store{Dir: t.TempDir()}
	p := testPlan(t, 400, 10, 0)
	var had [][]byte
	for _, shelf := range []Shelf{PutAway, Deleted} {
		for n := range 2 { // the second has the name of the first
			r, err := s.Create(p)
			if err != nil {
				t.Fatal(err)
			}
			if n > 0 {
				if _, err := r.Append(laid(1, 1)); err != nil {
					t.Fatal(err)
				}
			}
			if _, err := s.Shelve(r.Path(), shelf); !errors.Is(err, ErrLocked) {
				t.Fatalf("a record that is being wound: %v", err)
			}
			if err := r.Close(); err != nil {
				t.Fatal(err)
			}
			data, err := os.ReadFile(r.Path())
			if err != nil {
				t.Fatal(err)
			}
			had = append(had, data)
			if _, err := s.Shelve(r.Path(), shelf); err != nil {
				t.Fatal(err)
			}
			if list, err := s.List(); err != nil || len(list) != 0 {
				t.Fatalf("%d in the list, %v", len(list), err)
			}
		}
		list, err := s.On(shelf).List()
		if err != nil || len(list) != 2 {
			t.Fatalf("%d on the shelf, %v", len(list), err)
		}
	}
	for _, shelf := range []Shelf{PutAway, Deleted} {
		list, _ := s.On(shelf).List()
		for _, sum := range list {
			if _, err := s.BringBack(sum.Path); err != nil {
				t.Fatal(err)
			}
		}
	}
	files, err := filepath.Glob(filepath.Join(s.Dir, "*"+Extension))
	if err != nil || len(files) != 4 {
		t.Fatalf("%q, %v", files, err)
	}
	for _, want := range had {
		found := false
		for _, f := range files {
			data, _ := os.ReadFile(f)
			found = found || bytes.Equal(data, want)
		}
		if !found {
			t.Error("a record has changed")
		}
	}
}

// Moving a record that is there already, or one that isn't there, changes nothing.
func TestShelvingWhatCantBe(t *testing.T) {
	s := Store{Dir: t.TempDir()}
	r, err := s.Create(testPlan(t, 400, 10, 0))
	if err != nil {
		t.Fatal(err)
	}
	if err := r.Close(); err != nil {
		t.Fatal(err)
	}
	if _, err := s.BringBack(r.Path()); err == nil {
		t.Error("brought back from where it is")
	}
	if _, err := s.Shelve(filepath.Join(s.Dir, "none"+Extension), Deleted); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("%v", err)
	}
	if list, err := s.List(); err != nil || len(list) != 1 {
		t.Errorf("%d records, %v", len(list), err)
	}
}

// Whenever the power goes, and whichever call fails, the whole record stands under one of its names or both; and
// moving it once more ends with one name.
func TestShelvingAtEveryCrashPoint(t *testing.T) {
	p := testPlan(t, 400, 10, 0)
	data := fileOf(t, p, []counter.Event{laid(1, 1), laid(1, 2)})
	shelved := crashDir + "/" + string(Deleted) + "/warp" + Extension
	points := 0
	run := func(failing int) int {
		d := simdisk.New(crashDir)
		d.Put(crashPath, data)
		look := func(what string) {
			points++
			d.Images(func(i simdisk.Image) bool {
				here, there := i[crashPath], i[shelved]
				if !bytes.Equal(here, data) && !bytes.Equal(there, data) || here != nil && !bytes.Equal(here, data) ||
					there != nil && !bytes.Equal(there, data) {
					t.Errorf("call %d fails, power cut after %s: %q and %q", failing, what, here, there)
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
		s := Store{Dir: crashDir, FS: d}
		for range 2 {
			if _, err := s.Shelve(crashPath, Deleted); err == nil {
				break
			}
		}
		look("the end")
		var list []Summary
		for _, at := range []Store{s, s.On(Deleted)} {
			some, err := at.List()
			if err != nil {
				t.Fatal(err)
			}
			list = append(list, some...)
		}
		if len(list) != 1 {
			t.Errorf("call %d fails: %s", failing, fmt.Sprint(len(list), " names"))
		}
		return d.Calls()
	}
	calls := run(0)
	for n := 1; n <= calls; n++ {
		run(n)
	}
	t.Logf("%d calls, %d crash points", calls, points)
}
