package asked

import (
	"errors"
	"fmt"
	"strings"

	"millside/plan/measure"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// UsageError is a command line that is wrong, and the command whose help would put it right.
type UsageError struct {
	Command string
	Err     error
}

// Error is the error's own text.
func (e *UsageError) Error() string { return e.Err.Error() }

// Unwrap gives the error itself.
func (e *UsageError) Unwrap() error { return e.Err }

// Usage makes a usage error of an error that lies with what was given to a command; nil stays nil.
func Usage(cmd *cobra.Command, err error) error {
	if err == nil {
		return nil
	}
	return &UsageError{Command: cmd.CommandPath(), Err: err}
}

// FlagError puts what the flag reader says into the words that the rest of the program uses.
func FlagError(cmd *cobra.Command, err error) error {
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
		err = fmt.Errorf("there is no option %s%s%s", dashes, unknown.GetSpecifiedName(), like(cmd, unknown))
	case errors.As(err, &missing):
		err = fmt.Errorf("--%s needs a %s after it", missing.GetFlag().Name, missing.GetFlag().Value.Type())
	case errors.As(err, &value):
		field := "--" + value.GetFlag().Name
		var wrong *measure.FieldError
		if errors.As(err, &wrong) {
			named := *wrong
			named.Field, err = field, &named
		} else {
			err = &measure.FieldError{Field: field, Value: value.GetValue(),
				Want: "true or false"} // all others are our own
		}
	}
	return Usage(cmd, err)
}

// like names the options that a mistyped one may be meant for: "; did you mean --length?".
func like(cmd *cobra.Command, unknown *pflag.NotExistError) string {
	typed := unknown.GetSpecifiedName()
	if letters := unknown.GetSpecifiedShortnames(); len(letters) > 1 { // a long name behind one dash
		typed = letters
	}
	// The library knows how to tell words that look alike, but only for commands.
	names := &cobra.Command{SuggestionsMinimumDistance: 2}
	cmd.Flags().VisitAll(func(f *pflag.Flag) {
		names.AddCommand(&cobra.Command{Use: f.Name, Run: func(*cobra.Command, []string) {}})
	})
	found := names.SuggestionsFor(typed)
	if len(found) == 0 || len([]rune(typed)) < 2 {
		return ""
	}
	return "; did you mean --" + strings.Join(found, " or --") + "?"
}

// Args makes a wrong number of arguments a usage error, in words of its own.
func Args(least, most int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, given []string) error {
		if len(given) >= least && len(given) <= most {
			return nil
		}
		if most == 0 {
			return Usage(cmd, fmt.Errorf("'%s' takes nothing more, but was given %q", cmd.CommandPath(), given[0]))
		}
		return Usage(cmd, fmt.Errorf("'%s' takes %s, not %d", cmd.CommandPath(), what, len(given)))
	}
}
