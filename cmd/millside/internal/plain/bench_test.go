package plain

import (
	"millside/counter"
	"millside/counter/journal"
	"millside/counter/session"
	"millside/plan"
	"millside/tui/keys"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// bench is a conversation in plain mode with a clock that the test moves.
type bench struct {
	t    testing.TB
	p    *Talk
	rec  *journal.Record
	time time.Time
	fs   journal.FS
}

// newBench makes a record of a warp of 36 ends by ten, four passes, with the guard at two seconds.
func newBench(t testing.TB, change func(*plan.Spec)) *bench {
	t.Helper()
	return newBenchIn(t, journal.OS(), change)
}

func newBenchIn(t testing.TB, fsys journal.FS, change func(*plan.Spec)) *bench {
	t.Helper()
	s := plan.DefaultSpec()
	s.Name, s.Ends, s.TieEvery = "Runner", 36, 20
	if change != nil {
		change(&s)
	}
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	rec, err := journal.Create(fsys, filepath.Join(t.TempDir(), "runner.millside"), p)
	if err != nil {
		t.Fatal(err)
	}
	tk := &bench{t: t, time: time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC), fs: fsys}
	tk.with(rec)
	return tk
}

func (tk *bench) with(rec *journal.Record) {
	tk.t.Cleanup(func() { _ = rec.Close() })
	tk.rec = rec
	tk.p = New(rec, session.Opening{State: rec.State(), Events: rec.Events(), Torn: rec.Torn()}, keys.Default())
}

// types types lines half a minute apart and gives what is said to the last.
func (tk *bench) types(lines ...string) string {
	tk.t.Helper()
	var last session.Reply
	for _, line := range lines {
		tk.time = tk.time.Add(30 * time.Second)
		r, err := tk.p.Line(line, tk.time)
		if err != nil {
			tk.t.Fatalf("%q: %v", line, err)
		}
		last = r
	}
	return said(last)
}

// presses presses keys half a minute apart, by the names that the screen has for them.
func (tk *bench) presses(names ...string) string {
	tk.t.Helper()
	var last session.Reply
	for _, name := range names {
		tk.time = tk.time.Add(30 * time.Second)
		r, err := tk.p.Key(name, tk.time)
		if err != nil {
			tk.t.Fatalf("%q: %v", name, err)
		}
		last = r
	}
	return said(last)
}

func said(r session.Reply) string { return strings.Join(r.Said, "\n") }

// reopen leaves the record as it is and comes back to it.
func (tk *bench) reopen() string {
	tk.t.Helper()
	path := tk.rec.Path()
	if err := tk.rec.Close(); err != nil {
		tk.t.Fatal(err)
	}
	rec, err := journal.Open(tk.fs, path)
	if err != nil {
		tk.t.Fatal(err)
	}
	tk.with(rec)
	return tk.begins()
}

func (tk *bench) begins() string { return said(tk.p.Begin(tk.time, false)) }

func (tk *bench) wants(got string, parts ...string) {
	tk.t.Helper()
	for _, part := range parts {
		if !strings.Contains(got, part) {
			tk.t.Errorf("not said: %q, but\n%s", part, got)
		}
	}
}

func (tk *bench) state() counter.State { return tk.p.Session().State() }
