// Package loomtest makes parts of a loom for tests of the rooms above package loom.
package loomtest

import (
	"millside/plan/internal/measuretest"
	"millside/plan/loom"
)

// Reed reads a reed, or ends the test.
func Reed(t measuretest.TB, text string) loom.Reed {
	t.Helper()
	r, err := loom.ParseReed(text)
	if err != nil {
		t.Fatal(err)
	}
	return r
}
