package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"syscall"

	"millside/plan"
	"millside/tui"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
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

// usageError is a command line that is wrong, and the command whose help would put it right.
type usageError struct {
	command string
	err     error
}

func (e *usageError) Error() string { return e.err.Error() }
func (e *usageError) Unwrap() error { return e.err }

func usage(cmd *cobra.Command, err error) error {
	if err == nil {
		return nil
	}
	return &usageError{command: cmd.CommandPath(), err: err}
}

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
		fmt.Fprintln(w, "millside:", clean(line))
	}
	var wrong *usageError
	if !errors.As(err, &wrong) {
		return exitFailure
	}
	fmt.Fprintf(w, "millside: see '%s --help'\n", wrong.command)
	return exitUsage
}

// flagError puts what the flag reader says into the words that the rest of the program uses.
func flagError(cmd *cobra.Command, err error) error {
	var (
		value   *pflag.InvalidValueError
		unknown *pflag.NotExistError
		missing *pflag.ValueRequiredError
	)
	switch {
	case errors.As(err, &unknown):
		dashes := "--"
		if unknown.GetSpecifiedShortnames() != "" {
			dashes = "-"
		}
		err = fmt.Errorf("there is no option %s%s", dashes, unknown.GetSpecifiedName())
	case errors.As(err, &missing):
		err = fmt.Errorf("--%s needs a %s after it", missing.GetFlag().Name, missing.GetFlag().Value.Type())
	case errors.As(err, &value):
		field := "--" + value.GetFlag().Name
		var wrong *plan.FieldError
		if errors.As(err, &wrong) {
			err = plan.InField(wrong, field)
		} else {
			err = &plan.FieldError{Field: field, Value: value.GetValue(), Want: "true or false"} // all others are our own
		}
	}
	return usage(cmd, err)
}

// args makes a wrong number of arguments a usage error, in words of its own.
func args(least, most int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, given []string) error {
		if len(given) >= least && len(given) <= most {
			return nil
		}
		if most == 0 {
			return usage(cmd, fmt.Errorf("'%s' takes nothing more, but was given %q", cmd.CommandPath(), given[0]))
		}
		return usage(cmd, fmt.Errorf("'%s' takes %s, not %d", cmd.CommandPath(), what, len(given)))
	}
}
