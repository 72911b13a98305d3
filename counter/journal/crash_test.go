package journal

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"millside/counter"
	"millside/counter/disk/simdisk"
)

// The crash harness: what is done to a record is done on a simulated disk, and the power goes at every moment at which
// it can, with every choice of what the disk has kept. Then the record is opened, as a weaver would.

const (
	crashDir  = "/r"
	crashPath = crashDir + "/warp" + Extension
)

// walk is one way through the life of a record.
type walk struct {
	name string
	// begin is what is on the disk before it.
	begin map[string][]byte
	// script is what happens at the mill, in order; the walk adds as much of it as it likes.
	script []counter.Event
	// run does it. It tells acked how many events of the script are acknowledged: shown as counted.
	run func(d *simdisk.Disk, w *crashed)
	// made says that the record was acknowledged before the walk begins.
	made int
	// path is the record, if it is another than crashPath.
	path string
	// also looks at an image besides.
	also func(i simdisk.Image) error
}

// crashed counts what was walked, and knows what was acknowledged so far.
type crashed struct {
	t             *testing.T
	walk          walk
	acked, begun  int // events acknowledged, and begun; -1: not even the record
	points, found int
	now           string
	failing       string
}

// tally sums up over walks.
type tally struct{ points, images int }

// step is a moment at which the power may go.
func (c *crashed) step(d *simdisk.Disk, what string) {
	c.points++
	c.now = what
	d.Images(func(i simdisk.Image) bool {
		c.found++
		if err := c.recover(i); err != nil {
			c.t.Errorf("%s%s, power cut after %s (point %d, %d acknowledged): %v", c.walk.name, c.failing, what,
				c.points, c.acked, err)
			for name, data := range i {
				c.t.Logf("%s: %q", name, data)
			}
			return false
		}
		return true
	})
}

// recover opens what is left and goes on winding.
func (c *crashed) recover(i simdisk.Image) error {
	if c.walk.also != nil {
		if err := c.walk.also(i); err != nil {
			return err
		}
	}
	d := i.Disk(crashDir)
	path := cmp.Or(c.walk.path, crashPath)
	r, err := Open(d, path)
	if err != nil {
		var de *DamageError
		if c.acked < 0 && (errors.Is(err, os.ErrNotExist) || errors.As(err, &de) && de.Line == 1 &&
			de.Why == errUnmade.Error()) {
			return nil
		}
		return err
	}
	defer r.Close()
	events := r.Events()
	if err := c.follows(events); err != nil {
		return err
	}
	if len(events) < len(c.walk.script) {
		next, more := c.walk.script[len(events)], 1
		if r.Lost().Lines > 0 { // it goes on the record first
			next, more = c.walk.script[len(events)+1], 2
		}
		if _, err := r.Append(next); err != nil {
			return fmt.Errorf("going on: %w", err)
		}
		if err := r.Close(); err != nil {
			return err
		}
		again, err := OpenReadOnly(d, path)
		if err != nil || again.Torn() != "" || len(again.Events()) != len(events)+more {
			return fmt.Errorf("not mended: %v", err)
		}
	}
	return nil
}

// follows says whether what was recovered is the beginning of the script, with at least what was acknowledged and at
// most what was begun.
func (c *crashed) follows(events []counter.Event) error {
	if len(events) < c.acked {
		return fmt.Errorf("%d acknowledged, %d recovered", c.acked, len(events))
	}
	if len(events) > c.begun {
		return fmt.Errorf("%d begun, %d recovered", c.begun, len(events))
	}
	for i, e := range events {
		if e != c.walk.script[i].Normal() {
			return fmt.Errorf("event %d is %+v", i, e)
		}
	}
	return nil
}

// wind adds the rest of the script, as a weaver would: where the record can't be written it is tried again twice.
func (c *crashed) wind(r *Record, upTo int) {
	for {
		n := r.State().Events
		c.acked, c.begun = max(c.acked, n), max(c.begun, n)
		if n >= upTo {
			break
		}
		c.begun = max(c.begun, n+1)
		if _, err := r.Append(c.walk.script[n]); err == nil {
			continue
		}
		next, err := r.Reopen()
		for range 2 {
			if err != nil {
				next, err = r.Reopen()
			}
		}
		if err != nil {
			break
		}
		r = next
	}
	_ = r.Close()
}

// walks are all of them.
func walks(t *testing.T) []walk {
	p := testPlan(t, 400, 10, 0)
	var script []counter.Event
	for k := 1; k <= 6; k++ {
		script = append(script, laid(1, k))
	}
	script = append(script[:4:4], append([]counter.Event{{At: at(4), Kind: counter.Noted, Chain: 1, Pass: 4,
		Text: strings.Repeat("knot ", 99) + "¾"}}, script[4:]...)...)
	for k := 7; k <= 20; k++ {
		script = append(script, laid(1, k))
	}
	head := fileOf(t, p, nil)
	few := fileOf(t, p, script[:3])
	resume := func(upTo int) func(*simdisk.Disk, *crashed) {
		return func(d *simdisk.Disk, c *crashed) {
			r, err := Open(d, crashPath)
			for range 2 {
				if err != nil {
					r, err = Open(d, crashPath)
				}
			}
			if err == nil {
				c.wind(r, upTo)
			}
		}
	}
	lostTail := fileOf(t, p, script[:20])
	clear(lostTail[len(lostTail)-300:])
	left, lines := 0, 0
	if got, err := read("x", lostTail); err != nil || got.lost.Lines == 0 {
		t.Fatal(err)
	} else {
		left, lines = got.events.len(), got.lost.Lines
	}
	// After the loss the record goes on with the event that tells of it.
	withLoss := append(script[:left:left], counter.Event{At: at(99), Kind: counter.Lost, Lines: lines},
		counter.Event{At: at(99), Kind: counter.Paused}, counter.Event{At: at(100), Kind: counter.Resumed})
	hurt := bytes.Replace(fileOf(t, p, script[:5]), []byte("pass=3"), []byte("pass=8"), 1)
	const together = "the second of 'ground'"
	joined := append(script[:3:3], counter.Event{At: at(60), Kind: counter.Joined, Text: together},
		counter.Event{At: at(61), Kind: counter.Paused})
	return []walk{
		{name: "going with another", begin: map[string][]byte{crashPath: few}, script: joined, made: 3,
			run: func(d *simdisk.Disk, c *crashed) {
				c.begun = 4
				for range 2 { // said again where it failed
					if err := (Store{Dir: crashDir, FS: d}).Join(crashPath, together, at(60)); err == nil {
						c.acked = 4
						break
					}
				}
			}},
		{name: "creating", script: script, made: -1, run: func(d *simdisk.Disk, c *crashed) {
			r, err := Create(d, crashPath, p)
			for range 2 {
				if err != nil {
					r, err = Create(d, crashPath, p)
				}
			}
			if err == nil {
				c.acked = 0
				c.wind(r, 1)
			}
		}},
		{name: "winding", begin: map[string][]byte{crashPath: head}, script: script, run: resume(9)},
		{name: "going on", begin: map[string][]byte{crashPath: few}, script: script, made: 3, run: resume(5)},
		{name: "mending a torn line", begin: map[string][]byte{crashPath: few[:len(few)-20]}, script: script, made: 2,
			run: resume(4)},
		{name: "mending a line end", begin: map[string][]byte{crashPath: few[:len(few)-1]}, script: script, made: 3,
			run: resume(4)},
		{name: "mending empty bytes", begin: map[string][]byte{crashPath: append(bytes.Clone(few),
			make([]byte, 60)...)}, script: script, made: 3, run: resume(4)},
		{name: "writing clean", begin: map[string][]byte{crashPath: bytes.ReplaceAll(few, []byte("\n"),
			[]byte("\r\n"))}, script: script, made: 3, run: resume(5)},
		{name: "noting a loss", begin: map[string][]byte{crashPath: lostTail}, script: withLoss, made: left,
			run: func(d *simdisk.Disk, c *crashed) {
				r, err := Open(d, crashPath)
				if err != nil {
					return
				}
				c.begun = left + 2
				if _, err := r.Append(withLoss[left+1]); err == nil {
					c.acked = left + 2
				}
				_ = r.Close()
			}},
		{name: "salvaging", begin: map[string][]byte{crashDir + "/old": hurt},
			script: append(script[:2:2], counter.Event{At: at(50), Kind: counter.Lost, Lines: 3},
				counter.Event{At: at(51), Kind: counter.Paused}),
			made: -1, run: func(d *simdisk.Disk, c *crashed) {
				c.begun = 3
				if _, err := Salvage(d, crashDir+"/old", crashPath, at(50)); err == nil {
					c.acked = 3
				}
			}, also: func(i simdisk.Image) error {
				if !bytes.Equal(i[crashDir+"/old"], hurt) {
					return errors.New("the damaged record was changed")
				}
				return nil
			}},
		{name: "saving beside", path: crashDir + "/warp-saved" + Extension,
			begin: map[string][]byte{crashDir + "/other" + Extension: few}, script: script, made: -1,
			run: func(d *simdisk.Disk, c *crashed) {
				r, err := Open(d, crashDir+"/other"+Extension)
				if err != nil {
					return
				}
				r.path = crashPath // where the new one is beside
				c.begun = 3
				if saved, err := r.SaveBeside(); err == nil {
					c.acked = 3
					c.wind(saved, 4)
				}
				_ = r.Close()
			}},
	}
}

// do goes one walk, with a call that fails or with none. It gives how many calls there were.
func (w walk) do(t *testing.T, failing int, sum *tally) int {
	d := simdisk.New(crashDir)
	for name, data := range w.begin {
		d.Put(name, data)
	}
	c := &crashed{t: t, walk: w, acked: w.made, begun: max(w.made, 0)}
	d.After = func(what string) { c.step(d, what) }
	if failing > 0 {
		d.Fail = func(n int, what string) error {
			if n == failing {
				c.failing = fmt.Sprintf(", call %d (%s) fails", n, what)
				return simdisk.ErrIO
			}
			return nil
		}
	}
	c.step(d, "nothing")
	w.run(d, c)
	c.step(d, "the end")
	sum.points += c.points
	sum.images += c.found
	return d.Calls()
}

// At every moment at which the power can go, what was acknowledged is recovered, and nothing that was not begun; and so
// it is when any one call fails before.
func TestEveryCrashPoint(t *testing.T) {
	var sum tally
	began := time.Now()
	for _, w := range walks(t) {
		t.Run(w.name, func(t *testing.T) {
			var own tally
			calls := w.do(t, 0, &own)
			for n := 1; n <= calls && !t.Failed(); n++ {
				if testing.Short() && n%5 != 0 {
					continue
				}
				w.do(t, n, &own)
			}
			t.Logf("%d calls, %d crash points, %d states recovered", calls, own.points, own.images)
			sum.points += own.points
			sum.images += own.images
		})
	}
	t.Logf("all: %d crash points, %d states recovered in %s", sum.points, sum.images,
		time.Since(began).Round(time.Second))
}
