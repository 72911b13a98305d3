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

// Whenever the power goes, and whichever call fails, the whole record stands under one of its names or both, on a disk
// that knows links and on one that doesn't; and moving it once more ends with one name.
func TestShelvingAtEveryCrashPoint(t *testing.T) {
	p := testPlan(t, 400, 10, 0)
	data := fileOf(t, p, []counter.Event{laid(1, 1), laid(1, 2)})
	shelved := crashDir + "/" + string(Deleted) + "/warp" + Extension
	for _, m := range []struct {
		name     string
		links    bool
		from, to string
	}{
		{"deleted", true, crashPath, shelved},
		{"deleted without links", false, crashPath, shelved},
		{"back", true, shelved, crashPath},
		{"back without links", false, shelved, crashPath},
	} {
		t.Run(m.name, func(t *testing.T) {
			w := shelving{t: t, data: data, from: m.from, to: m.to, links: m.links}
			calls := w.run(0)
			for n := 1; n <= calls; n++ {
				w.run(n)
			}
			t.Logf("%d calls, %d crash points", calls, w.points)
		})
	}
}

// shelving moves a record on a disk of which the power goes.
type shelving struct {
	t        *testing.T
	data     []byte
	from, to string
	links    bool
	points   int
}

func (w *shelving) disk() *simdisk.Disk {
	d := simdisk.New(crashDir)
	_ = d.Mkdir(crashDir+"/"+string(Deleted), 0o700)
	if !w.links {
		d.NoLinks()
	}
	return d
}

// left is the disk that a power cut left. An image doesn't say what is one file: the whole record under both names is,
// where there are links.
func (w *shelving) left(i simdisk.Image) *simdisk.Disk {
	d := w.disk()
	_, first := i[w.from]
	for path, had := range i {
		if path != w.to || !first || !w.links {
			d.Put(path, had)
		}
	}
	if _, second := i[w.to]; first && second && w.links {
		if err := d.Link(w.from, w.to); err != nil {
			w.t.Fatal(err)
		}
	}
	return d
}

// move does it as a weaver would, who tries again while it is listed where it was.
func (w *shelving) move(d *simdisk.Disk) (err error) {
	s := Store{Dir: crashDir, FS: d}
	for range 2 {
		if w.from == crashPath {
			_, err = s.Shelve(w.from, Deleted)
		} else {
			_, err = s.BringBack(w.from)
		}
		if _, there := d.Files()[w.from]; err == nil || !there {
			return nil
		}
	}
	return err
}

// sound says where the whole record stands; a file that holds something else, and not nothing, is a fault.
func (w *shelving) sound(files map[string][]byte) (paths []string, err error) {
	for path, got := range files {
		switch {
		case filepath.Ext(path) != Extension: // what is being written has no record's name
		case bytes.Equal(got, w.data):
			paths = append(paths, path)
		case len(got) > 0 || path == w.from:
			return nil, fmt.Errorf("%s holds %q", path, got)
		}
	}
	if len(paths) == 0 {
		return nil, errors.New("the record is gone")
	}
	return paths, nil
}

func (w *shelving) run(failing int) int {
	d := w.disk()
	d.Put(w.from, w.data)
	look := func(what string) {
		w.points++
		d.Images(func(i simdisk.Image) bool {
			if _, err := w.sound(i); err != nil {
				w.t.Errorf("call %d fails, power cut after %s: %v", failing, what, err)
				return false
			}
			again := w.left(i)
			if _, there := i[w.from]; there {
				if err := w.move(again); err != nil {
					w.t.Errorf("call %d fails, power cut after %s: moved again: %v", failing, what, err)
				}
			}
			if paths, err := w.sound(again.Files()); err != nil || len(paths) != 1 || paths[0] == w.from {
				w.t.Errorf("call %d fails, power cut after %s: then at %q, %v", failing, what, paths, err)
			}
			return !w.t.Failed()
		})
	}
	d.After = look
	d.Fail = func(n int, _ string) error {
		if n == failing {
			return simdisk.ErrIO
		}
		return nil
	}
	if err := w.move(d); err != nil {
		w.t.Errorf("call %d fails: %v", failing, err)
	}
	look("the end")
	d.After = nil
	if files := d.Files(); len(files) != 1 || !bytes.Equal(files[w.to], w.data) {
		w.t.Errorf("call %d fails: %d files at the end, %q", failing, len(files), files[w.to])
	}
	return d.Calls()
}

// Without links a record still never takes the place of another of its name, nor of an empty file.
func TestShelvingWithoutLinksBesideOthers(t *testing.T) {
	p := testPlan(t, 400, 10, 0)
	one, two := fileOf(t, p, []counter.Event{laid(1, 1)}), fileOf(t, p, nil)
	dir := crashDir + "/" + string(PutAway)
	d := simdisk.New(crashDir)
	d.NoLinks()
	_ = d.Mkdir(dir, 0o700)
	d.Put(crashPath, one)
	d.Put(dir+"/warp"+Extension, two)
	d.Put(dir+"/warp-2"+Extension, nil)
	to, err := Store{Dir: crashDir, FS: d}.Shelve(crashPath, PutAway)
	files := d.Files()
	if want := dir + "/warp-3" + Extension; err != nil || to != want || !bytes.Equal(files[want], one) {
		t.Errorf("%s, %v", to, err)
	}
	if !bytes.Equal(files[dir+"/warp"+Extension], two) || len(files) != 3 {
		t.Errorf("%d files, or another's record was changed", len(files))
	}
}
