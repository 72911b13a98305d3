package journal

import (
	"bytes"
	"errors"
	"sync"
	"testing"

	"millside/counter"
	"millside/plan"
)

// FuzzRead gives the reader any bytes: it never panics, finds nothing but damage or a newer version
// wrong with them, and what it takes for sound is, written again, the same bytes.
func FuzzRead(f *testing.F) {
	p := testPlan(f, 40, 10, 0)
	data := fileOf(f, p, sample())
	f.Add(data)
	f.Add(fileOf(f, p, trouble()))
	f.Add(data[:len(data)-1])
	f.Add(data[:len(data)-9])
	f.Add(append(bytes.Clone(data), 0, 0, 0))
	f.Add(bytes.ReplaceAll(data, []byte("\n"), []byte("\r\n")))
	f.Add([]byte(nil))
	keepHeads(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		got, err := read("x", data)
		var de *DamageError
		if err != nil && !errors.As(err, &de) && !errors.Is(err, ErrNewer) {
			t.Fatal(err)
		}
		if got.fold == nil {
			return
		}
		again, _ := written(got.head, got.events.all())
		if got.unended {
			again = bytes.TrimSuffix(again, []byte{'\n'})
		}
		if !got.foreign && !bytes.Equal(again, data[:got.end]) {
			t.Fatalf("%q is written as %q", data[:got.end], again)
		}
		clean, err := read("x", again)
		if err != nil || clean.foreign || clean.torn != "" || clean.events.len() != got.events.len() ||
			clean.sum != got.sum {
			t.Fatalf("written clean it is read as %d events in place of %d, %v", clean.events.len(), got.events.len(),
				err)
		}
	})
}

// keepHeads reads each first line once: working a plan out takes longer than all the rest.
func keepHeads(f *testing.F) {
	type head struct {
		p   *plan.Plan
		err error
	}
	var mu sync.Mutex
	kept := map[string]head{}
	headOf = func(body []byte) (*plan.Plan, error) {
		mu.Lock()
		defer mu.Unlock()
		h, ok := kept[string(body)]
		if !ok {
			h.p, h.err = parseHead(body)
			kept[string(body)] = h
		}
		return h.p, h.err
	}
	f.Cleanup(func() { headOf = parseHead })
}

// FuzzLine gives the reader of single lines any text, without a checksum that the fuzzer would have to
// guess.
func FuzzLine(f *testing.F) {
	for _, e := range append(sample(), trouble()...) {
		f.Add(string(counter.AppendEvent(nil, 2, e.Normal())))
	}
	f.Fuzz(func(t *testing.T, line string) {
		e, err := counter.ParseEvent([]byte(line), 2)
		if err != nil {
			return
		}
		if again := string(counter.AppendEvent(nil, 2, e)); again != line {
			t.Fatalf("%q is written as %q", line, again)
		}
		if e != e.Normal() {
			t.Fatalf("%+v is not normal", e)
		}
	})
}

// FuzzHead does the same for the first line.
func FuzzHead(f *testing.F) {
	head, err := appendHead(nil, testPlan(f, 40, 10, 0).Spec)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(string(head))
	f.Fuzz(func(t *testing.T, line string) {
		p, err := parseHead([]byte(line))
		if err != nil {
			return
		}
		if again, err := appendHead(nil, p.Spec); err != nil || string(again) != line {
			t.Fatalf("%q is written as %q, %v", line, again, err)
		}
	})
}
