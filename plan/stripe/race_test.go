//go:build race

package stripe

// RaceEnabled says that the race detector is on. It makes the search some ten times slower, and the
// search is the same whatever the case, so fewer and smaller cases do then.
const RaceEnabled = true
