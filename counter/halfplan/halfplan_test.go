package halfplan

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"millside/counter/disk/simdisk"
	"millside/plan"
)

var now = time.Date(2026, 3, 14, 9, 30, 0, 0, time.UTC)

func sample() Plan {
	s := plan.DefaultSpec()
	s.Name = "Blue rug"
	return Plan{Kept: now, At: "ends", Spec: s,
		Texts: map[string]string{"name": "Blue rug", "ends": "39x", "stripes": "4 red\n2 blue"}}
}

// What was kept is listed as it was, a changed plan in the place of the old one, the latest first.
func TestKeepAndList(t *testing.T) {
	s := In(t.TempDir(), nil)
	if list, err := s.List(); err != nil || len(list) != 0 {
		t.Fatalf("%v, %v", list, err)
	}
	first, second := sample(), sample()
	second.Kept, second.Of = now.Add(time.Hour), "rug.millside"
	for _, p := range []*Plan{&first, &second, &first} {
		var err error
		if p.Path, err = s.Keep(*p); err != nil {
			t.Fatal(err)
		}
	}
	list, err := s.List()
	if err != nil || len(list) != 2 || !reflect.DeepEqual(list[0], second) || !reflect.DeepEqual(list[1], first) {
		t.Fatalf("%+v, %v", list, err)
	}
	if err := s.Remove(first.Path); err != nil {
		t.Fatal(err)
	}
	if list, err := s.List(); err != nil || len(list) != 1 || list[0].Path != second.Path {
		t.Fatalf("%+v, %v", list, err)
	}
	if files, err := os.ReadDir(s.Dir); err != nil || len(files) != 1 {
		t.Errorf("left beside: %v, %v", files, err)
	}
}

// A plan that is dropped can be brought back, a broken one too, and never takes the place of another version.
func TestMove(t *testing.T) {
	dir := t.TempDir()
	s, dropped := In(dir, nil), In(filepath.Join(dir, "deleted"), nil)
	p := sample()
	path, err := s.Keep(p)
	if err != nil {
		t.Fatal(err)
	}
	data, _ := os.ReadFile(path)
	there, err := s.MoveTo(dropped, path)
	if err != nil {
		t.Fatal(err)
	}
	if list, _ := s.List(); len(list) != 0 {
		t.Errorf("still there: %v", list)
	}
	p.Path, p.Texts["ends"] = path, "400"
	if _, err := s.Keep(p); err != nil { // another window still has it
		t.Fatal(err)
	}
	again, err := s.MoveTo(dropped, path)
	if err != nil || again == there {
		t.Fatalf("%s, %v", again, err)
	}
	back, err := dropped.MoveTo(s, there)
	if got, _ := os.ReadFile(back); err != nil || !bytes.Equal(got, data) {
		t.Errorf("%q, %v", got, err)
	}
	if err := os.WriteFile(back, []byte("{"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := s.MoveTo(dropped, back); err != nil {
		t.Error(err)
	}
}

// What can't be read is told and stops nothing; what it says can't act on a terminal.
func TestBroken(t *testing.T) {
	s := In(t.TempDir(), nil)
	good, err := s.Keep(sample())
	if err != nil {
		t.Fatal(err)
	}
	data, _ := os.ReadFile(good)
	for name, text := range map[string]string{
		"empty":   "",
		"cut":     string(data[:len(data)/2]),
		"newer":   strings.Replace(string(data), "half-filled-1", "half-filled-2", 1),
		"unknown": strings.Replace(string(data), `"kept"`, `"kempt"`, 1),
		"more":    string(data) + "{}",
		"binary":  "\x00\x01\x02",
		"number":  strings.Replace(string(data), `"ends": `, `"ends": 1e99, "x": `, 1),
	} {
		if err := os.WriteFile(filepath.Join(s.Dir, name+Extension), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir(filepath.Join(s.Dir, "folder"+Extension), 0o700); err != nil {
		t.Fatal(err)
	}
	list, err := s.List()
	if err != nil || len(list) != 9 {
		t.Fatalf("%d, %v", len(list), err)
	}
	for _, p := range list {
		if (p.Err == nil) != (p.Path == good) {
			t.Errorf("%s: %v", p.Path, p.Err)
		}
	}
	p := sample()
	p.Texts["name"] = "a\x1b[2Jb"
	path, err := s.Keep(p)
	if err != nil {
		t.Fatal(err)
	}
	if got, err := s.read(path); err != nil || got.Name() != "a[2Jb" {
		t.Errorf("%q, %v", got.Name(), err)
	}
}

// Wherever the power goes and whichever call fails, the file is the old plan or the new one; and a plan that is moved
// is whole in one folder or in both.
func TestEveryCrashPoint(t *testing.T) {
	older, newer := sample(), sample()
	newer.Texts["ends"] = "396"
	const dir = "/r"
	path := dir + "/" + Folder + "/a" + Extension
	older.Path, newer.Path = path, path
	was, _ := older.text()
	is, _ := newer.text()
	moved := dir + "/deleted/" + Folder + "/a" + Extension
	points := 0
	walk := func(move bool, failing int) int {
		d := simdisk.New(dir)
		if err := d.Mkdir(dir+"/"+Folder, 0o700); err != nil {
			t.Fatal(err)
		}
		d.Put(path, was)
		whole := func(data []byte) bool { return bytes.Equal(data, was) || !move && bytes.Equal(data, is) }
		d.After = func(what string) {
			d.Images(func(i simdisk.Image) bool {
				points++
				here, there := i[path], i[moved]
				if here == nil && there == nil || here != nil && !whole(here) || there != nil && !whole(there) {
					t.Errorf("call %d fails, after %s: %q and %q", failing, what, here, there)
					return false
				}
				return true
			})
		}
		d.Fail = func(n int, _ string) error {
			if n == failing {
				return simdisk.ErrIO
			}
			return nil
		}
		s := In(dir, d)
		if move {
			_, _ = s.MoveTo(In(dir+"/deleted", d), path)
		} else if _, err := s.Keep(newer); err == nil {
			d.Images(func(i simdisk.Image) bool {
				if !bytes.Equal(i[path], is) {
					t.Errorf("call %d fails: said to be kept, and is not", failing)
				}
				return true
			})
		}
		return d.Calls()
	}
	for _, move := range []bool{false, true} {
		for n, calls := 0, 1; n <= calls; n++ {
			if got := walk(move, n); n == 0 {
				calls = got
			}
		}
	}
	t.Logf("%d states", points)
}

// Whatever stands in the fields is read as it was kept, but for what could act on a terminal.
func TestTextsComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := sample()
		p.Texts = rapid.MapOf(rapid.StringMatching("[a-z ]{1,9}"), rapid.String()).Draw(t, "texts")
		data, err := p.text()
		if err != nil {
			t.Fatal(err)
		}
		got, err := parse(data)
		if err != nil {
			t.Fatal(err)
		}
		for name, text := range p.Texts {
			if got.Texts[name] != cleanLines(strings.ToValidUTF8(text, "\ufffd")) {
				t.Errorf("%q: %q, kept %q", name, got.Texts[name], text)
			}
		}
	})
}
