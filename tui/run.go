// Package tui is a stand-in: only the types that the command line needs until the screens are merged.
package tui

import (
	"context"
	"errors"
	"fmt"
	"os"
	"syscall"

	"millside/counter"
	"millside/plan"
)

// Options says what the screen shows.
type Options struct {
	Store    counter.Store
	Open     string
	Spec     *plan.Spec
	ReadOnly bool
	Now      counter.Clock
	In       *os.File
	Out      *os.File
	NoColor  bool
}

// SignalError says which signal ended the screen.
type SignalError struct{ Signal syscall.Signal }

// Error names the signal.
func (e *SignalError) Error() string { return fmt.Sprintf("stopped by a signal (%v)", e.Signal) }

// Run shows nothing yet.
func Run(context.Context, Options) error { return errors.New("the screen is not built yet") }
