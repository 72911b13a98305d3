package main

import "testing"

// raced says that the tests run under the race detector.
var raced bool

// long leaves a test out of the short run: one that winds for a minute and more, what it shows of two things at once
// being shown by another.
func long(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("long")
	}
}

// alone leaves a test out under the race detector, which makes it some ten times slower: all that it does it does in
// one goroutine, so there is nothing to be found out.
func alone(t *testing.T) {
	t.Helper()
	if raced {
		t.Skip("one goroutine")
	}
}
