// Command millside plans a warp and keeps the count at the warping mill.
//
// This package is the command line only: flags, text and JSON output, exit codes. What is said about a
// warp is asked of package plan, what is said about a half-wound one of package counter, and what needs
// keys and a screen is shown by package tui. One file holds one command; its text is made by pure
// functions in a file of the same name with "text" behind it.
//
// Answers go to standard output, messages to standard error; nothing is coloured, so that an answer can
// be piped, kept and compared. Names that come from records or from the command line are cleaned of
// control characters before a terminal sees them.
package main

import (
	"os"

	"github.com/spf13/cobra"
)

func main() {
	// A double click on the program's icon should open the home screen, not a lecture on terminals.
	cobra.MousetrapHelpText = ""
	os.Exit(newApp().run(os.Args[1:]))
}
