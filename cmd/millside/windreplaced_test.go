//go:build unix

package main

import (
	"os"
	"strings"
	"testing"

	"millside/counter/journal"
)

// The record is moved away while it is wound: the screen stops, n saves all that was counted as a new record, and
// winding goes on there. Who leaves without that leaves with status 1.
func TestScreenRecordMovedAway(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path := saved(t, dir, nil)
	term := start(t, 80, 24, dir, "wind", path)
	term.see("0 of 40 passes laid")
	term.wind(0, 3, 40)
	if err := os.Rename(path, path+"-moved"); err != nil {
		t.Fatal(err)
	}
	term.press("space")
	term.see("NOT SAVED")
	term.press("r")
	term.reads("not saved")
	term.press("space", "n")
	term.see("3 of 40")
	beside := strings.TrimSuffix(path, journal.Extension) + "-saved" + journal.Extension
	term.until("the record beside", func() bool {
		rec, err := journal.OpenReadOnly(journal.OS(), beside)
		return err == nil && rec.State().Laid() == 3
	})
	if err := os.Remove(beside); err != nil {
		t.Fatal(err)
	}
	term.press("space")
	term.see("NOT SAVED")
	term.press("q")
	if code := term.exit(); code != 1 || !strings.Contains(term.written(),
		"left while the record could not be written") {
		t.Errorf("status %d", code)
	}
}
