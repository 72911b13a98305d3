package journal_test

import (
	"fmt"
	"os"
	"path/filepath"
	"time"

	"millside/counter"
	"millside/counter/journal"
	"millside/plan"
)

// A warp of four passes: two are laid, one of them is taken back, and the record is opened again.
func Example() {
	dir, err := os.MkdirTemp("", "records")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(dir)
	spec := plan.DefaultSpec()
	spec.Name, spec.Ends = "blue sample", 40
	p, err := plan.New(spec)
	if err != nil {
		panic(err)
	}

	r, err := journal.Store{Dir: dir}.Create(p)
	if err != nil {
		panic(err)
	}
	at := time.Date(2026, 11, 25, 9, 7, 0, 0, time.UTC)
	for _, e := range []counter.Event{
		{At: at, Kind: counter.Laid, Chain: 1, Pass: 1},
		{At: at.Add(40 * time.Second), Kind: counter.Laid, Chain: 1, Pass: 2},
		{At: at.Add(45 * time.Second), Kind: counter.Undone, Chain: 1, Pass: 2},
	} {
		if _, err := r.Append(e); err != nil {
			panic(err)
		}
	}
	_, err = r.Append(counter.Event{At: at, Kind: counter.Laid, Chain: 1, Pass: 3})
	fmt.Println(err)
	if err := r.Close(); err != nil {
		panic(err)
	}

	r, err = journal.OpenReadOnly(journal.OS(), r.Path())
	if err != nil {
		panic(err)
	}
	s := r.State()
	next, _ := s.NextPass()
	fmt.Println(filepath.Base(r.Path()), s.Laid(), "laid,", s.EndsStanding(), "ends stand, next", next.Direction)
	// Output:
	// pass 3 can't be counted: the next pass of chain 1 is 2
	// blue-sample.millside 1 laid, 10 ends stand, next return
}
