// Package ground keeps the terminal from being asked for the colour of its background.
//
// Bubble Tea v1 asks when it is loaded, for commands without a screen too, and waits five seconds where
// a terminal doesn't answer (a serial console, some braille displays). Millside draws with the
// terminal's own sixteen colours, which suit a light and a dark ground alike, so it has no use for the
// answer. The question is left out where the environment says CI, so this package says so while Bubble
// Tea is being loaded; [Restore] takes it back.
//
// It works because Go sets packages up in the order of their import paths as soon as all that they
// import is set up, and this package imports nothing but os. A test in cmd/millside fails if that ever
// changes.
package ground

import "os"

const name = "CI"

// lent says that the variable was not there before.
var lent = lend()

func lend() bool {
	if _, there := os.LookupEnv(name); there {
		return false
	}
	return os.Setenv(name, "true") == nil
}

// Restore puts the environment back as it was. Whoever imports Bubble Tea calls it once that is loaded.
func Restore() {
	if lent {
		_ = os.Unsetenv(name) // fails only for a name that is empty
	}
}
