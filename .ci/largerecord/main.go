// Command largerecord writes a sound record of many events, for the check of what such a record costs: passes laid and
// taken back over the whole of a warp. Nothing is synced on the way: it is quick, and the file is only a trial.
package main

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"time"

	"millside/counter"
	"millside/counter/disk"
	"millside/counter/journal"
	"millside/plan"
)

func main() {
	if len(os.Args) != 3 {
		fmt.Fprintln(os.Stderr, "usage: largerecord FILE.millside EVENTS")
		os.Exit(2)
	}
	n, err := strconv.Atoi(os.Args[2])
	if err == nil {
		err = write(os.Args[1], n)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "largerecord:", err)
		os.Exit(1)
	}
}

func write(path string, events int) (err error) {
	spec := plan.DefaultSpec()
	spec.Name = filepath.Base(path)
	p, err := plan.New(spec)
	if err != nil {
		return err
	}
	record, err := journal.Create(unsynced{disk.OS()}, path, p)
	if err != nil {
		return err
	}
	defer func() {
		if closed := record.Close(); err == nil {
			err = closed
		}
	}()
	passes := len(p.Chains[0].Passes)
	at := time.Date(2026, time.November, 25, 9, 0, 0, 0, time.UTC)
	for i := range events {
		e := counter.Event{At: at.Add(time.Duration(i) * 30 * time.Second), Kind: counter.Laid, Chain: 1, Pass: i%(2*passes) + 1}
		if e.Pass > passes { // and back again
			e.Kind, e.Pass = counter.Undone, 2*passes+1-e.Pass
		}
		if _, err := record.Append(e); err != nil {
			return fmt.Errorf("event %d: %w", i+1, err)
		}
	}
	return nil
}

// unsynced is the real file system without its syncs.
type unsynced struct{ disk.FS }

func (u unsynced) OpenFile(path string, flag int, perm fs.FileMode) (disk.File, error) {
	f, err := u.FS.OpenFile(path, flag, perm)
	if err != nil {
		return nil, err
	}
	return unsyncedFile{f}, nil
}

type unsyncedFile struct{ disk.File }

func (unsyncedFile) Sync() error { return nil }
