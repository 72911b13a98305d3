//go:build !race

package stripe

// RaceEnabled says that the race detector is on; see race_test.go.
const RaceEnabled = false
