package counter

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"time"

	"pgregory.net/rapid"

	"millside/counter/disk"
	"millside/plan"
	"millside/plan/finishing"
	"millside/plan/measure"
	"millside/plan/wind"
)

// testPlan is a warp with the given ends, group and ends in a chain (0 for one chain).
func testPlan(t testing.TB, ends, group, chainEnds int) *plan.Plan {
	t.Helper()
	spec := plan.DefaultSpec()
	spec.Name, spec.Ends, spec.Group, spec.ChainEnds = "test warp", ends, group, chainEnds
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// at is a moment so many seconds into a morning's winding.
func at(seconds int) time.Time {
	return time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC).Add(time.Duration(seconds) * time.Second)
}

func laid(chain, pass int) Event {
	return Event{At: at(pass), Kind: Laid, Chain: chain, Pass: pass}
}

// windAll is every event from the first pass of a plan to the end.
func windAll(p *plan.Plan) []Event {
	var events []Event
	for _, c := range p.Chains {
		for k := range c.Passes {
			events = append(events, laid(c.Number, k+1))
		}
		for _, step := range finishing.Steps(p, c) {
			events = append(events, Event{At: at(1000), Kind: Ticked, Chain: c.Number, Step: step.ID})
		}
	}
	return append(events, Event{At: at(2000), Kind: Finished})
}

// sample is one event of every kind, with a text that tries the quoting.
func sample() []Event {
	return []Event{
		laid(1, 1), laid(1, 2),
		{At: at(3), Kind: LeaseSeen, Order: wind.MirroredOrder},
		{At: at(4).Add(250 * time.Millisecond), Kind: Noted, Chain: 1, Pass: 2, Text: `knot "here" \ #00000000, Länge ½`},
		{At: at(5), Kind: Undone, Chain: 1, Pass: 2},
		{At: at(6), Kind: Paused}, {At: at(7), Kind: Resumed},
		{At: at(8), Kind: Recounted, Chain: 1, Pass: 4, Text: "counted at the pegs"},
		{At: at(9), Kind: Ticked, Chain: 1, Step: finishing.StepFasten},
		{At: at(10), Kind: Unticked, Chain: 1, Step: finishing.StepFasten},
	}
}

// trouble is one event of every kind for what goes wrong, with and without what may be left out. It
// follows the first two passes of a warp of four.
func trouble() []Event {
	return []Event{
		laid(1, 1), laid(1, 2),
		{At: at(3), Kind: Incident, Chain: 1, Pass: 2, Position: 4, What: Knot},
		{At: at(4), Kind: Incident, Chain: 1, Pass: 3, Position: 10, What: Broken, Place: 4*measure.Yard + 18*measure.Inch, HasPlace: true, Text: `mended, "blue"`},
		{At: at(5), Kind: Incident, Chain: 1, Pass: 1, What: MissedOpening, HasPlace: true},
		{At: at(6), Kind: Incident, Chain: 1, Pass: 2, What: WrongPeg, Text: "over both"},
		{At: at(7), Kind: Withdrawn, Line: 6},
		{At: at(8), Kind: WrongTurn, Chain: 1, Pass: 2},
		{At: at(9), Kind: Righted},
		{At: at(10), Kind: TieMade, Chain: 1, Pass: 2},
		{At: at(11), Kind: NewCone, Chain: 1, Pass: 3, Position: 4, Weight: 250 * measure.Gram},
		{At: at(12), Kind: NewCone, Chain: 1, Pass: 3, Position: 5},
	}
}

// fileOf is the bytes of a record.
func fileOf(t rapid.TB, p *plan.Plan, events []Event) []byte {
	t.Helper()
	head, err := appendHead(nil, p.Spec)
	if err != nil {
		t.Fatal(err)
	}
	data, sum := seal(head, 0)
	for i, e := range events {
		var line []byte
		line, sum = seal(appendEvent(nil, i+2, e.normal()), sum)
		data = append(data, line...)
	}
	return data
}

// lineOf is the number of the line, from 1, that a byte of a file belongs to.
func lineOf(data []byte, offset int) int { return bytes.Count(data[:offset], []byte{'\n'}) + 1 }

func writeFile(t testing.TB, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "test"+Extension)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func readBack(t testing.TB, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// fakeFS is the real file system with faults. A nil function does what the real one does, but for the
// syncs, which do nothing, so that tests with thousands of files are quick.
type fakeFS struct {
	FS
	write    func(f disk.File, p []byte) (int, error)
	sync     func() error
	syncDir  func(path string) error
	truncate func(f disk.File, size int64) error
	open     func(path string, flag int) error
	writeAt  func(f disk.File, p []byte, off int64) (int, error)
	lock     func(f disk.File) (bool, error)
}

func fake() *fakeFS { return &fakeFS{FS: OS()} }

func (f *fakeFS) OpenFile(path string, flag int, perm fs.FileMode) (disk.File, error) {
	if f.open != nil {
		if err := f.open(path, flag); err != nil {
			return nil, err
		}
	}
	file, err := f.FS.OpenFile(path, flag, perm)
	if err != nil {
		return nil, err
	}
	return &fakeFile{File: file, fs: f}, nil
}

func (f *fakeFS) SyncDir(path string) error {
	if f.syncDir == nil {
		return nil
	}
	return f.syncDir(path)
}

type fakeFile struct {
	disk.File
	fs *fakeFS
}

func (f *fakeFile) Write(p []byte) (int, error) {
	if f.fs.write == nil {
		return f.File.Write(p)
	}
	return f.fs.write(f.File, p)
}

func (f *fakeFile) WriteAt(p []byte, off int64) (int, error) {
	if f.fs.writeAt == nil {
		return f.File.WriteAt(p, off)
	}
	return f.fs.writeAt(f.File, p, off)
}

func (f *fakeFile) TryLock() (bool, error) {
	if f.fs.lock == nil {
		return f.File.TryLock()
	}
	return f.fs.lock(f.File)
}

func (f *fakeFile) Sync() error {
	if f.fs.sync == nil {
		return nil
	}
	return f.fs.sync()
}

func (f *fakeFile) Truncate(size int64) error {
	if f.fs.truncate == nil {
		return f.File.Truncate(size)
	}
	return f.fs.truncate(f.File, size)
}
