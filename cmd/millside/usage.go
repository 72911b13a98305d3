package main

import (
	"errors"
	"fmt"
	"millside/plan"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

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
