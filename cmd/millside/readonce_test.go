package main

import (
	"bufio"
	"bytes"
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"time"

	"millside/counter/disk"
	"millside/counter/journal"
	"millside/plan"
	"millside/tui"
)

// countingFS counts how often each file is opened to be read.
type countingFS struct {
	journal.FS
	opened map[string]int // by the file's name
}

func (c countingFS) OpenFile(path string, flag int, perm fs.FileMode) (disk.File, error) {
	if flag&(os.O_CREATE|os.O_WRONLY) == 0 {
		c.opened[filepath.Base(path)]++
	}
	return c.FS.OpenFile(path, flag, perm)
}

// A command reads each record once, its own pace, lists and names included. Only what is wound by the
// name of its warp is read twice: to be found, and under its lock.
func TestARecordIsReadOnce(t *testing.T) {
	dir := t.TempDir()
	store := journal.Store{Dir: dir, FS: journal.OS()}
	for _, name := range []string{"tea towels", "grey scarves", practiceName} {
		s := plan.DefaultSpec()
		s.Name = name
		p, err := plan.New(s)
		if err != nil {
			t.Fatal(err)
		}
		record, err := store.Create(p)
		if err != nil {
			t.Fatal(err)
		}
		if err := record.Close(); err != nil {
			t.Fatal(err)
		}
	}
	const towels = "tea-towels.millside"
	for _, tt := range []struct {
		args []string
		own  int // times that the record of the tea towels is opened
		all  int // times that every other record is
	}{
		{[]string{}, 1, 1},
		{[]string{"list"}, 1, 1},
		{[]string{"show", towels}, 1, 0},
		{[]string{"show", "tea towels"}, 1, 1},
		{[]string{"show", filepath.Join(dir, towels)}, 1, 0},
		{[]string{"sheet", towels}, 1, 1},
		{[]string{"sheet", "tea-towels"}, 1, 1},
		{[]string{"plan", "--ends", "60"}, 1, 1},
		{[]string{"new"}, 1, 1},
		{[]string{"wind", towels}, 1, 1},
		{[]string{"wind", towels, "--look"}, 1, 1},
		{[]string{"wind", "tea towels", "--look"}, 1, 1},
		{[]string{"wind", "tea towels"}, 2, 1},
		{[]string{"__complete", "wind", ""}, 1, 1},
	} {
		var out, errOut bytes.Buffer
		counting := countingFS{journal.OS(), map[string]int{}}
		a := &app{
			in: os.Stdin, tty: os.Stdout, out: bufio.NewWriter(&out), errOut: &errOut, fs: counting,
			env: func(string) string { return "" }, now: func() time.Time { return time.Time{} },
			terminal: func(*os.File) bool { return true },
			screen:   func(context.Context, tui.Options) error { return nil },
		}
		if code := a.run(append([]string{"--records", dir}, tt.args...)); code != 0 {
			t.Fatalf("%q: exit status %d: %s", tt.args, code, &errOut)
		}
		for _, entry := range []string{towels, "grey-scarves.millside"} {
			want := tt.all
			if entry == towels {
				want = tt.own
			}
			if got := counting.opened[entry]; got != want {
				t.Errorf("%q opens %s %d times, not %d", tt.args, entry, got, want)
			}
		}
	}
}
