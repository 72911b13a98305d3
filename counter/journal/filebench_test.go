package journal

import (
	"millside/counter"
	"path/filepath"
	"testing"
)

func BenchmarkOpen100k(b *testing.B) {
	p := testPlan(b, 1000, 10, 0)
	path := writeFile(b, fileOf(b, p, manyEvents(p)))
	for b.Loop() {
		r, err := Open(OS(), path)
		if err != nil {
			b.Fatal(err)
		}
		if r.State().Events != 100_000 {
			b.Fatal(r.State().Events)
		}
		if err := r.Close(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAppend(b *testing.B)     { benchmarkAppend(b, fake()) }
func BenchmarkAppendSync(b *testing.B) { benchmarkAppend(b, OS()) }

func benchmarkAppend(b *testing.B, fsys FS) {
	r, err := Create(fsys, filepath.Join(b.TempDir(), "warp"+Extension), testPlan(b, 1000, 10, 0))
	if err != nil {
		b.Fatal(err)
	}
	defer r.Close()
	for i := 0; b.Loop(); i++ {
		e := laid(1, 1)
		if i%2 == 1 {
			e.Kind = counter.Undone
		}
		if _, err := r.Append(e); err != nil {
			b.Fatal(err)
		}
	}
}
