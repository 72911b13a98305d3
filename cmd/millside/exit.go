package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"syscall"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/tui"
)

// The exit codes; exitHelp tells them to the weaver.
const (
	exitOK      = 0
	exitFailure = 1
	exitUsage   = 2
	// exitSignal and the signal's number added, as shells count: 130 is Ctrl-C.
	exitSignal = 128
)

const exitHelp = `Exit codes:
  0    it went well
  1    it could not be done; the message says why
  2    the command line is wrong: an unknown command or option, or a value that
       won't do
  130  you stopped it (Ctrl-C)
  129, 131, 143
       the system stopped it (hang-up, quit, end); what was counted is kept`

// report tells what went wrong and gives the exit code.
func report(w io.Writer, err error) int {
	if err == nil {
		return exitOK
	}
	var signal *tui.SignalError
	switch {
	case errors.As(err, &signal):
		return exitSignal + int(signal.Signal)
	case errors.Is(err, tui.ErrInterrupted), errors.Is(err, context.Canceled):
		return exitSignal + int(syscall.SIGINT)
	}
	for line := range strings.SplitSeq(strings.TrimSpace(err.Error()), "\n") {
		fmt.Fprintln(w, "millside:", prose.Clean(line))
	}
	var wrong *asked.UsageError
	if !errors.As(err, &wrong) {
		return exitFailure
	}
	fmt.Fprintf(w, "millside: see '%s --help'\n", wrong.Command)
	return exitUsage
}
