package journal

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"millside/counter"
	"millside/plan"
	"millside/plan/measure"
)

// add makes a record in a store with some events, and gives its path.
func add(t *testing.T, s Store, name string, events ...counter.Event) string {
	t.Helper()
	spec := plan.DefaultSpec()
	spec.Name, spec.Ends = name, 40
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	r, err := s.Create(p)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range events {
		if _, err := r.Append(e); err != nil {
			t.Fatal(err)
		}
	}
	if err := r.Close(); err != nil {
		t.Fatal(err)
	}
	return r.Path()
}

func TestStoreCreate(t *testing.T) {
	s := Store{Dir: filepath.Join(t.TempDir(), "a", "b"), FS: fake()}
	for _, want := range []string{"blue-check.millside", "blue-check-2.millside", "blue-check-3.millside"} {
		if got := filepath.Base(add(t, s, "Blue check")); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	for _, dir := range []string{s.Dir, filepath.Dir(s.Dir)} {
		if info, err := os.Stat(dir); err != nil || info.Mode().Perm() != 0o700 {
			t.Errorf("%s: %v, %v", dir, info.Mode(), err)
		}
	}
	if _, err := s.Create(nil); err == nil {
		t.Error("a record without a plan was made")
	}
	s.Dir = add(t, s, "a file")
	if _, err := s.Create(testPlan(t, 40, 10, 0)); err == nil {
		t.Error("a record was made in a file")
	}
}

func TestStoreList(t *testing.T) {
	s := Store{Dir: filepath.Join(t.TempDir(), "records"), FS: fake()}
	if list, err := s.List(); len(list) != 0 || err != nil {
		t.Errorf("missing folder: %v, %v", list, err)
	}
	whole := windAll(testPlan(t, 40, 10, 0))
	add(t, s, "done", whole...)
	add(t, s, "older", laid(1, 1))
	add(t, s, "newer", laid(1, 1), laid(1, 2))
	add(t, s, "wound", whole[:4]...)
	damaged := add(t, s, "damaged", laid(1, 1), laid(1, 2))
	data := bytes.Replace(readBack(t, damaged), []byte("pass=1"), []byte("pass=3"), 1)
	if err := os.WriteFile(damaged, data, 0o600); err != nil {
		t.Fatal(err)
	}
	long := at(0).Add(-24 * time.Hour)
	if err := os.Chtimes(damaged, long, long); err != nil {
		t.Fatal(err)
	}
	torn := add(t, s, "torn", laid(1, 1))
	if err := os.WriteFile(torn, readBack(t, torn)[:len(readBack(t, torn))-2], 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(torn, long.Add(-time.Hour), long.Add(-time.Hour)); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(s.Dir, "other.txt"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(s.Dir, "folder"+Extension), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(filepath.Join(s.Dir, "folder"+Extension), at(500), at(500)); err != nil {
		t.Fatal(err)
	}
	list, err := s.List()
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"folder", "wound", "newer", "older", "damaged", "torn", "done"}
	for i, sum := range list {
		if i >= len(want) || sum.Name != want[i] {
			t.Errorf("place %d: %s, want %v", i, sum.Name, want)
		}
		if sum.Passes != 4 && sum.Name != "folder" {
			t.Errorf("%+v", sum)
		}
	}
	var de *DamageError
	if !errors.Is(list[0].Err, ErrNotPlain) || !errors.As(list[4].Err, &de) || de.Line != 2 || !list[5].Torn ||
		list[1].Torn {
		t.Errorf("%v, %v, torn %v", list[0].Err, list[4].Err, list[5].Torn)
	}
	if n := list[2]; n.Laid != 2 || n.Ends != 40 || n.Standing != 20 || n.Wound || n.Finished ||
		!n.Started.Equal(at(1)) || !n.Last.Equal(at(2)) || n.Spec.Ends != 40 {
		t.Errorf("%+v", n)
	}
	if w, d := list[1], list[6]; !w.Wound || w.Finished || !d.Wound || !d.Finished {
		t.Errorf("%+v, %+v", w, d)
	}
}

func TestStoreFind(t *testing.T) {
	s := Store{Dir: t.TempDir(), FS: fake()}
	if _, err := s.Find("any"); err == nil || !strings.Contains(err.Error(), "there are none in "+s.Dir) {
		t.Errorf("%v", err)
	}
	blue := add(t, s, "Blue check")
	red := add(t, s, "Red")
	red2 := add(t, s, "red")
	tests := []struct{ name, want, err string }{
		{"blue-check", blue, ""},
		{"blue-check.millside", blue, ""},
		{"BLUE CHECK", blue, ""},
		{blue, blue, ""},
		{"red.millside", red, ""},
		{"red-2", red2, ""},
		{"red", "", "red-2.millside (red), red.millside (Red)"},
		{"green", "", "blue-check.millside (Blue check)"},
		{filepath.Join(s.Dir, "green.millside"), "", "one of"},
		{"", "", "one of"},
	}
	for _, tt := range tests {
		got, err := s.Find(tt.name)
		var fe *measure.FieldError
		if got != tt.want || (err != nil) != (tt.err != "") || err != nil &&
			(!errors.As(err, &fe) || !containsAll(err.Error(), tt.err)) {
			t.Errorf("%q: %q, %v", tt.name, got, err)
		}
	}
}

// containsAll says whether a message names everything in a list, in any order.
func containsAll(s, list string) bool {
	for part := range strings.SplitSeq(list, ", ") {
		if !strings.Contains(s, part) {
			return false
		}
	}
	return true
}

func TestFindNamesTenAtMost(t *testing.T) {
	s := Store{Dir: t.TempDir(), FS: fake()}
	for range 12 {
		add(t, s, "same")
	}
	if _, err := s.Find("other"); err == nil || !strings.HasSuffix(err.Error(), "and 2 more") {
		t.Errorf("%v", err)
	}
}

func TestListThatFails(t *testing.T) {
	s := Store{Dir: writeFile(t, nil)}
	if _, err := s.List(); !errors.Is(err, syscall.ENOTDIR) {
		t.Errorf("%v", err)
	}
	if _, err := s.Find("x"); err == nil {
		t.Error("found in a file")
	}
}

func TestSlug(t *testing.T) {
	tests := []struct{ name, want string }{
		{"Blue check", "blue-check"},
		{"  4 tea-towels (linen) ", "4-tea-towels-linen"},
		{"Grün & weiß", "grün-weiß"},
		{"e\u0301toffe", "e\u0301toffe"},
		{"経糸", "経糸"},
		{"../../etc/passwd", "etc-passwd"},
		{".hidden", "hidden"},
		{"a/b\\c:d", "a-b-c-d"},
		{"CON", "warp-con"},
		{"!?", "warp"},
		{"", "warp"},
		{strings.Repeat("ab ", 30), strings.Repeat("ab-", 13) + "a"},
		{strings.Repeat("x", 60), strings.Repeat("x", 40)},
	}
	for _, tt := range tests {
		if got := slug(tt.name); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.name, got, tt.want)
		}
	}
}

// A finished record is listed with the pace over all its passes, another with that of the latest.
func TestSummaryPace(t *testing.T) {
	p := testPlan(t, 300, 10, 0) // 30 passes
	events := windAll(p)
	for i := range events {
		events[i].At = at(i*30 + min(i, 15)*20) // 50 s apart at first
	}
	path := writeFile(t, fileOf(t, p, events))
	if got := (Store{}).Summarize(path).Pace; got.Passes != 29 || got.High <= got.Low {
		t.Errorf("finished: %+v", got)
	}
	path = writeFile(t, fileOf(t, p, events[:30]))
	if got := (Store{}).Summarize(path).Pace; got.Passes != 20 {
		t.Errorf("being wound: %+v", got)
	}
}
