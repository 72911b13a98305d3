package journal

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"millside/counter"
	"millside/plan"
)

var update = flag.Bool("update", false, "write the record in testdata anew")

// A record of version 1, kept. If this fails, records that weavers have can't be opened any more: see
// the package comment on new fields of a plan. Never write it anew unless the format has not yet been
// released.
func TestRecordOfVersion1(t *testing.T) {
	path := filepath.Join("testdata", "version1"+Extension)
	p := testPlan(t, 40, 10, 0)
	if *update {
		if err := os.WriteFile(path, fileOf(t, p, sample()), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	r, err := OpenReadOnly(OS(), path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(readBack(t, path), fileOf(t, p, sample())) {
		t.Error("the same events are written in another way now")
	}
	want, err := Fold(p, sample())
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(want, r.State(), same); d != "" {
		t.Error(d)
	}
}

func TestWriteReadRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		events := drawHistory(t, p)
		data := fileOf(t, p, events)
		got, err := read("x", data)
		if err != nil || got.torn != "" || got.unended || got.end != len(data) || got.foreign {
			t.Fatalf("%v, torn %q", err, got.torn)
		}
		want, err := Fold(p, events)
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(want, got.state(), same); d != "" {
			t.Fatal(d)
		}
		for i, e := range got.events.list() {
			if e != events[i].Normal() {
				t.Fatalf("%+v, want %+v", e, events[i].Normal())
			}
		}
	})
}

// The checksum is the CRC-32C of RFC 3720: appendix B.4 gives, for 32 bytes of nought, the bytes aa 36
// 91 8a, which is the number 8a9136aa with the lowest byte first.
func TestChecksumAgainstRFC3720(t *testing.T) {
	if _, sum := seal(make([]byte, 32), 0); sum != 0x8a9136aa {
		t.Errorf("%08x", sum)
	}
}

// statesAfter lists the state after each number of events.
func statesAfter(t *testing.T, p *plan.Plan, events []counter.Event) []counter.State {
	t.Helper()
	states := []counter.State{counter.NewState(p)}
	for _, e := range events {
		s, err := states[len(states)-1].Apply(e.Normal())
		if err != nil {
			t.Fatal(err)
		}
		states = append(states, s)
	}
	return states
}

// Cut at every byte, a file gives the events whose lines are whole, line feed or not, and is reported
// torn where a part of a line is left. Opening mends it so that it reads the same afterwards.
func TestCutAtEveryByte(t *testing.T) {
	cutAtEveryByte(t, sample())
	cutAtEveryByte(t, trouble())
}

func cutAtEveryByte(t *testing.T, events []counter.Event) {
	t.Helper()
	p := testPlan(t, 40, 10, 0)
	data := fileOf(t, p, events)
	states := statesAfter(t, p, events)
	head := bytes.IndexByte(data, '\n')
	for n := range len(data) + 1 {
		cut := data[:n]
		path := writeFile(t, cut)
		r, err := Open(fake(), path)
		if n < head {
			var de *DamageError
			if !errors.As(err, &de) || de.Line != 1 {
				t.Fatalf("cut at %d: %v", n, err)
			}
			if !bytes.Equal(readBack(t, path), cut) {
				t.Fatalf("cut at %d: a damaged file was changed", n)
			}
			continue
		}
		if err != nil {
			t.Fatalf("cut at %d: %v", n, err)
		}
		whole := bytes.Count(cut, []byte{'\n'}) // lines with their line feed
		torn := n > 0 && cut[n-1] != '\n'
		if torn && data[n] == '\n' { // only the line feed is missing
			whole, torn = whole+1, false
		}
		if d := cmp.Diff(states[whole-1], r.State(), same); d != "" || (r.Torn() != "") != torn {
			t.Fatalf("cut at %d: torn %q, %s", n, r.Torn(), d)
		}
		if err := r.Close(); err != nil {
			t.Fatal(err)
		}
		if again, err := OpenReadOnly(OS(), path); err != nil || again.Torn() != "" || again.State().Events != whole-1 {
			t.Fatalf("cut at %d: not mended: %v", n, err)
		}
	}
}

// Every byte changed in several ways gives damage on its line, or a torn tail that is reported, or the
// same state; never another state without a word.
func TestFlipEveryByte(t *testing.T) {
	flipEveryByte(t, sample())
	flipEveryByte(t, trouble())
}

func flipEveryByte(t *testing.T, events []counter.Event) {
	t.Helper()
	p := testPlan(t, 40, 10, 0)
	data := fileOf(t, p, events)
	states := statesAfter(t, p, events)
	last := len(states) - 1
	changes := []func(byte) byte{
		func(byte) byte { return 0 }, func(byte) byte { return '\n' }, func(byte) byte { return ' ' },
		func(b byte) byte { return b + 1 }, func(b byte) byte { return b ^ 0x20 },
	}
	for bit := range 8 {
		changes = append(changes, func(b byte) byte { return b ^ 1<<bit })
	}
	for i := range data {
		for c, change := range changes {
			bad := bytes.Clone(data)
			if bad[i] = change(data[i]); bad[i] == data[i] {
				continue
			}
			got, err := read("x", bad)
			var de *DamageError
			switch {
			case errors.As(err, &de):
				if want := lineOf(data, i); de.Line != want {
					t.Fatalf("byte %d, change %d: damage on line %d, want %d", i, c, de.Line, want)
				}
			case err != nil:
				t.Fatalf("byte %d, change %d: %v", i, c, err)
			case got.foreign: // a line end or a blank of another system: nothing may be missing
				if got.events.len() != last || cmp.Diff(states[last], got.state(), same) != "" {
					t.Fatalf("byte %d, change %d: %d events", i, c, got.events.len())
				}
			case got.torn == "":
				t.Fatalf("byte %d, change %d was not noticed", i, c)
			default: // in the last line or in the line end before it: what is left out is reported
				n := got.events.len()
				if n < last-2 || n < last && lineOf(data, i) < n+2 || cmp.Diff(states[n], got.state(), same) != "" {
					t.Fatalf("byte %d, change %d: %d events", i, c, n)
				}
				if n < last-1 && got.lost.Lines < 2 {
					t.Fatalf("byte %d, change %d: %d events, and %d lines said to be missing", i, c, n, got.lost.Lines)
				}
			}
		}
	}
}

func TestLinesTakenOutPutInSwapped(t *testing.T) {
	p := testPlan(t, 200, 10, 0)
	var events []counter.Event
	for k := range 12 {
		events = append(events, laid(1, k+1))
	}
	lines := bytes.SplitAfter(fileOf(t, p, events), []byte{'\n'})
	lines = lines[:len(lines)-1]
	join := func(parts ...[][]byte) []byte {
		var all []byte
		for _, part := range parts {
			all = append(all, bytes.Join(part, nil)...)
		}
		return all
	}
	wantDamage := func(what string, data []byte, line int) {
		t.Helper()
		got, err := read("x", data)
		if err == nil && got.lost.Lines == 1 &&
			got.tornLine == line { // one line at the end can't be read, and it is said
			return
		}
		var de *DamageError
		if !errors.As(err, &de) || de.Line != line {
			t.Errorf("%s: %v, want damage on line %d", what, err, line)
		}
	}
	for i := range lines {
		if i < len(lines)-1 { // a missing last line can't be told from one that was never written
			wantDamage(fmt.Sprintf("line %d taken out", i+1), join(lines[:i], lines[i+1:]), i+1)
			wantDamage(fmt.Sprintf("line %d swapped with the next", i+1),
				join(lines[:i], lines[i+1:i+2], lines[i:i+1], lines[i+2:]), i+1)
		}
		wantDamage(fmt.Sprintf("line %d doubled", i+1), join(lines[:i+1], lines[i:]), i+2)
		if i > 0 {
			wantDamage(fmt.Sprintf("an empty line before %d", i+1), join(lines[:i], [][]byte{{'\n'}}, lines[i:]), i+1)
		}
	}
}

// A line that is sound by its checksum but says something that can't be.
func TestSealedNonsense(t *testing.T) {
	p := testPlan(t, 40, 10, 0)
	head, _ := appendHead(nil, p.Spec)
	good := "2 2026-11-25T09:00:01Z laid chain=1 pass=1"
	tests := []struct {
		name, head, line string
		bad              int // the damaged line, 0 for none
		why              string
	}{
		{"sound", "", good, 0, ""},
		{"wrong number", "", strings.Replace(good, "2 ", "3 ", 1), 2, "numbered"},
		{"two spaces", "", strings.Replace(good, "laid ", "laid  ", 1), 2, "no chain"},
		{"space at the end", "", good + " ", 2, "as this program writes"},
		{"one field more", "", good + " text=\"a\"", 2, "as this program writes"},
		{"fields in another order", "", "2 2026-11-25T09:00:01Z laid pass=1 chain=1", 2, "no chain"},
		{"a nought in front", "", strings.Replace(good, "pass=1", "pass=01", 1), 2, "as this program writes"},
		{"no number", "", strings.Replace(good, "pass=1", "pass=", 1), 2, "can't be read"},
		{"huge number", "", strings.Replace(good, "pass=1", "pass=99999999999999999999", 1), 2, "can't be read"},
		{"unknown kind", "", strings.Replace(good, "laid", "lain", 1), 2, "no kind"},
		{"no time", "", strings.Replace(good, "09:00:01", "09:00", 1), 2, "time"},
		{"not in UTC", "", strings.Replace(good, "01Z", "01+01:00", 1), 2, "as this program writes"},
		{"too fine a time", "", strings.Replace(good, "01Z", "01.2345Z", 1), 2, "as this program writes"},
		{"noughts after the time", "", strings.Replace(good, "01Z", "01.500Z", 1), 2, "as this program writes"},
		{"doesn't follow", "", strings.Replace(good, "pass=1", "pass=2", 1), 2, "follow"},
		{"text not quoted", "", "2 2026-11-25T09:00:01Z noted chain=1 pass=0 text=knot", 2, "can't be read"},
		{"text in back quotes", "", "2 2026-11-25T09:00:01Z noted chain=1 pass=0 text=`knot`", 2,
			"as this program writes"},
		{"control character", "", `2 2026-11-25T09:00:01Z noted chain=1 pass=0 text="a\x1bb"`, 2, "follow"},
		{"order", "", "2 2026-11-25T09:00:01Z lease-seen order=Same", 2, "as this program writes"},
		{"not a record", "hello", good, 1, "not the first line"},
		{"version 0", strings.Replace(string(head), " 1 ", " 0 ", 1), good, 1, "not the first line"},
		{"version 01", strings.Replace(string(head), " 1 ", " 01 ", 1), good, 1, "not the first line"},
		{"unknown field", strings.Replace(string(head), `{"name"`, `{"beads":1,"name"`, 1), good, 1, "unknown field"},
		{"field in other letters", strings.Replace(string(head), `"ends"`, `"Ends"`, 1), good, 1,
			"as this program writes"},
		{"more behind the plan", string(head) + "{}", good, 1, "as this program writes"},
		{"no ends", strings.Replace(string(head), `"ends":40`, `"ends":0`, 1), good, 1, "can't be wound"},
	}
	for _, tt := range tests {
		if tt.head == "" {
			tt.head = string(head)
		}
		data, sum := seal([]byte(tt.head), 0)
		line, _ := seal([]byte(tt.line), sum)
		for _, data := range [][]byte{append(data, line...), append(data, line[:len(line)-1]...)} {
			_, err := read("x", data)
			var de *DamageError
			if tt.bad == 0 && err != nil || tt.bad > 0 &&
				(!errors.As(err, &de) || de.Line != tt.bad || !strings.Contains(de.Why, tt.why)) {
				t.Errorf("%s: %v", tt.name, err)
			}
		}
	}
}

func TestNewerVersion(t *testing.T) {
	data, _ := seal([]byte(`millside-record 2 of a kind that nobody knows yet`), 0)
	path := writeFile(t, data)
	_, openErr := Open(OS(), path)
	_, lookErr := OpenReadOnly(OS(), path)
	_, salvageErr := Salvage(OS(), path, path+"2", at(0))
	for _, err := range []error{openErr, lookErr, salvageErr} {
		if !errors.Is(err, ErrNewer) || !strings.Contains(err.Error(), "written by a newer Millside") {
			t.Errorf("%v", err)
		}
	}
}

func TestTails(t *testing.T) {
	p := testPlan(t, 40, 10, 0)
	data := string(fileOf(t, p, []counter.Event{laid(1, 1), laid(1, 2)}))
	nul := strings.Repeat("\x00", 4096)
	tests := []struct {
		name, data string
		events     int
		torn       bool
		bad        int
		lost       int
	}{
		{"whole", data, 2, false, 0, 0},
		{"NUL tail of a line", data + nul[:57], 2, true, 0, 0},
		{"NUL tail", data + nul, 2, true, 0, 77},
		{"line feed lost to NUL", data[:len(data)-1] + "\x00", 2, true, 0, 0},
		{"line feed and more lost to NUL", data[:len(data)-1] + nul, 2, true, 0, 77},
		{"half a line, then NUL", data[:len(data)-20] + nul[:20], 1, true, 0, 0},
		{"half a line, then more NUL", data[:len(data)-20] + nul, 1, true, 0, 78},
		{"last line changed", data[:len(data)-20] + "x" + data[len(data)-19:], 1, true, 0, 1},
		{"NUL inside", strings.Replace(data, "laid", "l\x00id", 1), 0, false, 2, 0},
		{"only NUL", nul, 0, false, 1, 0},
		{"empty", "", 0, false, 1, 0},
		{"half a first line", data[:30], 0, false, 1, 0},
		{"CRLF", strings.ReplaceAll(data, "\n", "\r\n"), 2, false, 0, 0},
		{"CR", strings.ReplaceAll(data, "\n", "\r"), 2, false, 0, 0},
		{"CRLF, the last one missing", strings.TrimSuffix(strings.ReplaceAll(data, "\n", "\r\n"), "\r\n"), 2, false, 0,
			0},
		{"CRLF, half of the last one missing", strings.TrimSuffix(strings.ReplaceAll(data, "\n", "\r\n"), "\n"), 2,
			false, 0, 0},
		{"CRLF and a torn line", strings.ReplaceAll(data, "\n", "\r\n") + "4 2026", 2, true, 0, 0},
		{"byte order mark", "\ufeff" + data, 2, false, 0, 0},
		{"blank lines at both ends", " \r\n\n" + data + "\n \n", 2, false, 0, 0},
		{"all of it", "\ufeff\r\n" + strings.ReplaceAll(data, "\n", "\r\n") + "\r\n", 2, false, 0, 0},
		{"blank line inside", strings.Replace(data, "\n", "\n\n", 1), 0, false, 2, 0},
		{"too long a line", data + strings.Repeat("x", maxLine) + "\n", 2, false, 4, 0},
		{"too long a tail", data + strings.Repeat("x", maxLine), 2, false, 4, 0},
		{"garbage as a tail", data + strings.Repeat("x", maxLine-1), 2, true, 0, 19784},
	}
	for _, tt := range tests {
		got, err := read("x", []byte(tt.data))
		var de *DamageError
		damage := errors.As(err, &de)
		if got.lost.Lines != tt.lost {
			t.Errorf("%s: %d lines said to be missing, want %d", tt.name, got.lost.Lines, tt.lost)
		}
		if damage != (tt.bad > 0) || damage && de.Line != tt.bad || got.events.len() != tt.events ||
			(got.torn != "") != tt.torn {
			t.Errorf("%s: %d events, torn %q, %v", tt.name, got.events.len(), got.torn, err)
		}
		if len(got.torn) > 300 {
			t.Errorf("%s: the report is %d bytes long", tt.name, len(got.torn))
		}
		if damage && !strings.HasPrefix(err.Error(), fmt.Sprintf("x is damaged at line %d: %s", tt.bad, de.Why)) {
			t.Errorf("%s: %v", tt.name, err)
		}
		if foreign := strings.ContainsAny(tt.data, "\r\ufeff") ||
			strings.HasPrefix(tt.name, "blank lines"); got.foreign != foreign {
			t.Errorf("%s: foreign %v", tt.name, got.foreign)
		}
	}
}

// A line that lies in two sectors of the disk may have lost the first of them to a power cut: that is the one line
// that was on its way, though it has its end. Empty bytes that stop anywhere else are no such trace.
func TestLineWithAnEmptySector(t *testing.T) {
	p := testPlan(t, 400, 10, 0)
	var events []counter.Event
	var data []byte
	from := 0
	for k := 1; len(data)/sector == from/sector || from%sector > sector-20 || len(data)%sector < 10; k++ {
		from = len(data)
		events = append(events, laid(1, k))
		data = fileOf(t, p, events)
	}
	from, boundary := len(fileOf(t, p, events[:len(events)-1])), len(data)/sector*sector
	for name, c := range map[string]struct{ until, lost int }{
		"up to the sector": {boundary, 0}, "short of it": {boundary - 3, 1}, "beyond it": {boundary + 3, 1},
	} {
		hurt := bytes.Clone(data)
		clear(hurt[from+5 : c.until])
		got, err := read("x", hurt)
		if err != nil || got.events.len() != len(events)-1 || got.torn == "" || got.lost.Lines != c.lost {
			t.Errorf("%s: %d events of %d, %d lost, %q, %v", name, got.events.len(), len(events), got.lost.Lines,
				got.torn,
				err)
		}
	}
}
