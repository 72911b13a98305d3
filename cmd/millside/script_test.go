package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"millside/counter"
	"millside/counter/journal"
	"millside/plan/finishing"
	"millside/tui"

	"github.com/rogpeppe/go-internal/testscript"
)

// The commands are tested as a weaver uses them, by the scripts in testdata/script. UPDATE_SCRIPTS=1 writes
// what comes out into them; read the difference before you keep it. Under the race detector only those run in which a
// warp is wound, a page shown or two programs meet: the rest do one thing after another in one goroutine.
func TestScripts(t *testing.T) {
	dir, files := filepath.Join("testdata", "script"), []string(nil)
	if raced {
		for _, name := range []string{"chaincolours", "handover", "keep", "plain", "screen", "stdin", "wind"} {
			files = append(files, filepath.Join(dir, name+".txt"))
		}
		dir = ""
	}
	testscript.Run(t, testscript.Params{
		Dir:           dir,
		Files:         files,
		UpdateScripts: os.Getenv("UPDATE_SCRIPTS") != "",
		Setup: func(env *testscript.Env) error {
			env.Setenv("TZ", "UTC")
			env.Setenv("SOURCE_DATE_EPOCH", "1795608000") // 25 November 2026
			// With -race each program would sleep for a second before it ends.
			env.Setenv("GORACE", "atexit_sleep_ms=0")
			// Relative to the script's folder, so that what is printed is the same everywhere.
			env.Setenv("MILLSIDE_RECORDS", "records")
			env.Setenv("MILLSIDE_AT_HAND", "at-hand.txt")
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": cmdExits, "json": cmdJSON, "waitfor": cmdWaitFor,
		},
	})
}

// TestMain makes this test binary stand in for the programs that the scripts run.
func TestMain(m *testing.M) {
	// The tests that drive the real program spend their time waiting, as hands do between two passes: more of them
	// run at a time than there are cores, unless the command says how many.
	if err := flag.Set("test.parallel", "24"); err != nil {
		panic(err)
	}
	testscript.Main(m, map[string]func(){
		"millside": main,
		// The program with a screen that always is a terminal and only tells what it was asked to show.
		"millside-screen": func() {
			a := newApp()
			a.terminal = func(*os.File) bool { return true }
			a.screen = toldScreen
			os.Exit(a.run(os.Args[1:]))
		},
		"journal": func() { exitOn(writeEvents(os.Args[1], os.Args[2:])) },
		"damage":  func() { exitOn(damage(os.Args[1], os.Args[2])) },
		"speak":   func() { exitOn(speak(os.Args[1:])) },
		"hold":    func() { exitOn(hold(os.Args[1], os.Args[2])) },
	})
}

func exitOn(err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	os.Exit(0)
}

// toldScreen stands in for the full screen.
func toldScreen(_ context.Context, o tui.Options) error {
	if n, _ := strconv.Atoi(os.Getenv("SCREEN_SIGNAL")); n != 0 {
		return fmt.Errorf("winding: %w", &tui.SignalError{Signal: syscall.Signal(n)})
	}
	fmt.Fprintf(o.Out, "records %s\nlook only %v\nno colour %v\n", filepath.ToSlash(o.Store.Dir), o.Record != nil &&
		o.Record.ReadOnly(), o.NoColor)
	if o.In == nil || o.Now == nil {
		return errors.New("no keyboard or no clock")
	}
	if o.Say != nil {
		fmt.Fprintln(o.Out, "says to a command")
		o.Say("on the screen")
	}
	if o.Spec != nil {
		fmt.Fprintf(o.Out, "form %q %d ends\n", o.Spec.Name, o.Spec.Ends)
	}
	if o.HandFault != "" {
		fmt.Fprintln(o.Out, "told", o.HandFault)
	}
	if o.Record == nil {
		return nil
	}
	fmt.Fprintf(o.Out, "open %s at pass %d\n", filepath.Base(o.Record.Path()), o.Record.State().Laid())
	return o.Record.Close()
}

// writeEvents adds events to a record, half a minute apart: laid, undone, paused, resumed, seen=ORDER,
// recount=N:REASON, note=TEXT, broken=POSITION and knot=POSITION (of the pass just laid), wrong-turn, righted,
// tie-made, tick=STEP, ticks (the next step), finished; laid*3 is three of them.
func writeEvents(path string, words []string) error {
	r, err := journal.Open(journal.OS(), path)
	if err != nil {
		return err
	}
	at := time.Date(2026, time.November, 25, 9, 0, 0, 0, time.UTC)
	for _, word := range words {
		verb, rest, _ := strings.Cut(word, "=")
		verb, times, _ := strings.Cut(verb, "*")
		n, _ := strconv.Atoi(times)
		for range max(n, 1) {
			e, err := eventFor(r.State(), verb, rest)
			if err != nil {
				return err
			}
			at = at.Add(30 * time.Second)
			e.At = at
			if _, err := r.Append(e); err != nil {
				return err
			}
		}
	}
	return r.Close()
}

func eventFor(s counter.State, verb, rest string) (counter.Event, error) {
	e := counter.Event{Kind: counter.Kind(verb), Chain: s.Chain, Pass: s.Laid()}
	switch verb {
	case "laid":
		e.Pass = s.Laid() + 1
	case "seen":
		e.Kind = counter.LeaseSeen
		return e, e.Order.UnmarshalText([]byte(rest))
	case "recount":
		n, why, _ := strings.Cut(rest, ":")
		e.Kind, e.Text = counter.Recounted, why
		var err error
		e.Pass, err = strconv.Atoi(n)
		return e, err
	case "broken", "knot":
		e.Kind, e.What = counter.Incident, counter.What(verb)
		var err error
		e.Position, err = strconv.Atoi(rest)
		return e, err
	case "note":
		e.Kind, e.Text = counter.Noted, rest
	case "tick":
		e.Kind, e.Step = counter.Ticked, finishing.StepID(rest)
	case "ticks":
		step, _ := s.NextStep()
		e.Kind, e.Step = counter.Ticked, step.ID
	}
	return e, nil
}

// damage changes one letter in a line of a record, or cuts the last line short ("cut").
func damage(path, line string) error {
	data, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	if line == "cut" {
		return os.WriteFile(path, data[:len(data)-5], 0o600)
	}
	n, err := strconv.Atoi(line)
	lines := strings.SplitAfter(string(data), "\n")
	if err != nil || n < 1 || n > len(lines) {
		return fmt.Errorf("no line %s: %v", line, err)
	}
	lines[n-1] = strings.Replace(lines[n-1], "a", "b", 1)
	return os.WriteFile(path, []byte(strings.Join(lines, "")), 0o600)
}

// speak stands in for a program that speaks: it adds its words to the file that comes first.
func speak(words []string) error {
	if len(words) < 3 {
		return errors.New("usage: speak FILE VOICE TEXT")
	}
	f, err := os.OpenFile(words[0], os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o600)
	if err != nil {
		return err
	}
	if _, err := fmt.Fprintln(f, strings.Join(words[1:], "|")); err != nil {
		return err
	}
	return f.Close()
}

// hold opens a record for winding, makes a file to say so, and keeps it until it is killed.
func hold(path, flag string) error {
	if _, err := journal.Open(journal.OS(), path); err != nil {
		return err
	}
	if err := os.WriteFile(flag, nil, 0o600); err != nil {
		return err
	}
	select {}
}

// cmdExits is the script command "exits CODE PROGRAM ...".
func cmdExits(ts *testscript.TestScript, neg bool, words []string) {
	if neg || len(words) < 2 {
		ts.Fatalf("usage: exits CODE PROGRAM ...")
	}
	err := ts.Exec(words[1], words[2:]...)
	code := 0
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		code = exit.ExitCode()
	} else {
		ts.Check(err)
	}
	if want := words[0]; strconv.Itoa(code) != want {
		ts.Fatalf("exit code %d, want %s", code, want)
	}
}

// cmdJSON is the script command "json FILE FORMAT": the file is one JSON object of that format.
func cmdJSON(ts *testscript.TestScript, neg bool, words []string) {
	if neg || len(words) != 2 {
		ts.Fatalf("usage: json FILE FORMAT")
	}
	var got struct{ Format string }
	if err := json.Unmarshal([]byte(ts.ReadFile(words[0])), &got); err != nil || got.Format != words[1] {
		ts.Fatalf("%s is no JSON of format %s: %q, %v", words[0], words[1], got.Format, err)
	}
}

// cmdWaitFor is the script command "waitfor FILE": another program makes the file when it is ready.
func cmdWaitFor(ts *testscript.TestScript, neg bool, words []string) {
	if neg || len(words) != 1 {
		ts.Fatalf("usage: waitfor FILE")
	}
	file, limit := ts.MkAbs(words[0]), time.After(10*time.Second)
	tick := time.NewTicker(5 * time.Millisecond)
	defer tick.Stop()
	for {
		if _, err := os.Stat(file); err == nil {
			return
		}
		select {
		case <-tick.C:
		case <-limit:
			ts.Fatalf("%s has not come in ten seconds", words[0])
		}
	}
}
