package durability

import (
	"database/sql"
	"encoding/binary"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"
	"time"

	"go.etcd.io/bbolt"
	_ "modernc.org/sqlite" // the driver, in Go alone

	"millside/counter"
	"millside/counter/journal"
	"millside/plan"
)

// line is a line of a record, as Millside writes it for a pass.
const line = "%d 2026-11-25T09:%02d:00.125Z laid chain=1 pass=%d #8d1e22b0\n"

// rounds is how often each of them writes; $ROUNDS sets another number.
func rounds() int {
	if n, err := strconv.Atoi(os.Getenv("ROUNDS")); err == nil && n > 0 {
		return n
	}
	return 500
}

// kept is one way to keep a pass.
type kept struct {
	name  string
	write func(i int) error
}

func TestCostOfAPass(t *testing.T) {
	dir := t.TempDir()
	if own := os.Getenv("MILLSIDE_BENCH_DIR"); own != "" {
		dir = own
	}
	ways := []kept{bare(t, dir), millside(t, dir), lite(t, dir), bolt(t, dir)}
	times := make([][]time.Duration, len(ways))
	dice := rand.New(rand.NewPCG(1, 2))
	for i := range rounds() {
		for _, k := range dice.Perm(len(ways)) { // each comes first and behind each other as often
			began := time.Now()
			if err := ways[k].write(i); err != nil {
				t.Fatalf("%s: %v", ways[k].name, err)
			}
			times[k] = append(times[k], time.Since(began))
		}
	}
	medians := make([]float64, len(ways))
	for k, way := range ways {
		slices.Sort(times[k])
		at := func(part float64) time.Duration {
			return times[k][int(part*float64(len(times[k])-1))].Round(time.Microsecond)
		}
		medians[k] = float64(times[k][len(times[k])/2])
		t.Logf("%-28s median %8s   quartiles %8s %8s   99 %% %8s", way.name, at(0.5), at(0.25), at(0.75), at(0.99))
	}
	t.Logf("millside is %.2f times a bare write and sync, %.2f times SQLite, %.2f times bbolt",
		medians[1]/medians[0], medians[1]/medians[2], medians[1]/medians[3])
}

func bare(t *testing.T, dir string) kept {
	f, err := os.OpenFile(filepath.Join(dir, "bare"), os.O_CREATE|os.O_EXCL|os.O_RDWR|os.O_APPEND, 0o600)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = f.Close() })
	return kept{"bare write and sync", func(i int) error {
		if _, err := fmt.Fprintf(f, line, i+2, i%60, i+1); err != nil {
			return err
		}
		return f.Sync()
	}}
}

func millside(t *testing.T, dir string) kept {
	spec := plan.DefaultSpec()
	spec.Ends, spec.Group = 100_000, 10
	p, err := plan.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	rec, err := journal.Create(journal.OS(), filepath.Join(dir, "warp.millside"), p)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = rec.Close() })
	now := time.Date(2026, 11, 25, 9, 0, 0, 125_000_000, time.UTC)
	return kept{"Millside", func(i int) error {
		_, err := rec.Append(counter.Event{At: now.Add(time.Duration(i) * time.Minute), Kind: counter.Laid, Chain: 1, Pass: i + 1})
		return err
	}}
}

func lite(t *testing.T, dir string) kept {
	db, err := sql.Open("sqlite", "file:"+filepath.Join(dir, "sqlite.db")+"?_pragma=journal_mode(WAL)&_pragma=synchronous(FULL)")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = db.Close() })
	db.SetMaxOpenConns(1)
	var mode string
	var full int
	if err := db.QueryRow("PRAGMA journal_mode").Scan(&mode); err != nil || mode != "wal" {
		t.Fatalf("%q, %v", mode, err)
	}
	if err := db.QueryRow("PRAGMA synchronous").Scan(&full); err != nil || full != 2 {
		t.Fatalf("%d, %v", full, err)
	}
	if _, err := db.Exec("CREATE TABLE event (line INTEGER PRIMARY KEY, at TEXT, kind TEXT, chain INTEGER, pass INTEGER)"); err != nil {
		t.Fatal(err)
	}
	insert, err := db.Prepare("INSERT INTO event VALUES (?, ?, 'laid', 1, ?)")
	if err != nil {
		t.Fatal(err)
	}
	return kept{"SQLite, WAL, synchronous FULL", func(i int) error {
		_, err := insert.Exec(i+2, "2026-11-25T09:00:00.125Z", i+1)
		return err
	}}
}

func bolt(t *testing.T, dir string) kept {
	db, err := bbolt.Open(filepath.Join(dir, "bolt.db"), 0o600, nil)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = db.Close() })
	name := []byte("events")
	if err := db.Update(func(tx *bbolt.Tx) error { _, err := tx.CreateBucket(name); return err }); err != nil {
		t.Fatal(err)
	}
	return kept{"bbolt", func(i int) error {
		return db.Update(func(tx *bbolt.Tx) error {
			return tx.Bucket(name).Put(binary.BigEndian.AppendUint32(nil, uint32(i)), fmt.Appendf(nil, line, i+2, i%60, i+1))
		})
	}}
}
