package asked

import (
	"errors"
	"strings"

	"millside/plan/athand"
	"millside/plan/entry"
	"millside/plan/field"
	"millside/plan/measure"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// SpecAsk is what the flags of a plan say.
type SpecAsk struct {
	// Units is the family of units that holds where none is asked for.
	Units measure.LengthUnitSystem
	// NoEnds leaves the default of the ends out of the help, where they must be given.
	NoEnds bool
	// Assumed is what was taken because there is only one of it at hand, once the flags are settled.
	Assumed []athand.Assumed
	given   given
}

// mayBeNamed are the fields whose flag takes the name of a thing at hand as well.
var mayBeNamed = map[*field.Field]bool{
	field.YarnOf: true, field.Weft: true, field.Reed: true, field.Raddle: true, field.Board: true,
}

// PlanFlags adds a flag for each field of the table, part by part in the order in which a weaver decides.
func PlanFlags(cmd *cobra.Command, ask *SpecAsk) *StripeAsk {
	f := cmd.Flags()
	f.SortFlags = false
	ask.given = given{texts: map[*field.Field]string{}, begin: entry.NewSpec(ask.Units)}
	if ask.NoEnds {
		ask.given.begin.Ends = 0
	}
	stripes := &StripeAsk{use: &DraftAsk{}}
	for fd := range field.All() {
		if fd.Flag == "" {
			continue
		}
		e, inSpec := entry.Of(fd)
		switch own := stripes.value(fd); {
		case own != nil:
			addFlag(cmd, fd, own)
		case inSpec:
			addFlag(cmd, fd, &entryValue{e, &ask.given, mayBeNamed[fd]})
		default:
			addFlag(cmd, fd, nameValue{fd, &ask.given})
		}
	}
	return stripes
}

// About puts the flags that add adds under a heading of the help.
func About(f *pflag.FlagSet, heading string, add func()) {
	had := map[string]bool{}
	f.VisitAll(func(flag *pflag.Flag) { had[flag.Name] = true })
	add()
	f.VisitAll(func(flag *pflag.Flag) {
		if !had[flag.Name] {
			flag.Annotations = withHeading(flag.Annotations, heading)
		}
	})
}

// Words adds a flag that takes one of a few words, and completes them.
func Words(cmd *cobra.Command, name string, of textValue, help string, choices ...string) {
	cmd.Flags().Var(wordValue{of}, name, help+": "+strings.Join(choices, " or "))
	// The error would say that there is no such flag, or that it is completed already.
	_ = cmd.RegisterFlagCompletionFunc(name, cobra.FixedCompletions(choices, cobra.ShellCompDirectiveNoFileComp))
}

// FlagFor names the flag of what an error calls a field, "" where there is none.
func FlagFor(name string) string {
	if f := field.Named(name); f != nil {
		return f.Flag
	}
	return ""
}

// NamedFlags makes a usage error of an error about fields, and names their flags instead. Two fields may
// have one message; it is told once. Another error stays as it is.
func NamedFlags(cmd *cobra.Command, err error) error { return NamedBy(cmd, err, FlagFor) }

// NamedBy is [NamedFlags] for a command with fields of its own.
func NamedBy(cmd *cobra.Command, err error, flagOf func(name string) string) error {
	wrong := measure.FieldErrors(err)
	if len(wrong) == 0 {
		return err
	}
	var all []error
	told := map[string]bool{}
	for _, fe := range wrong {
		named := *fe
		if flag := flagOf(fe.Field); flag != "" {
			named.Field = "--" + flag
		}
		if !told[named.Error()] {
			told[named.Error()] = true
			all = append(all, &named)
		}
	}
	return Usage(cmd, errors.Join(all...))
}
