package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/planout"
	"millside/cmd/millside/internal/prose"
	"millside/plan/field"
	"millside/plan/measure"
	starting "millside/plan/start" // the tests have a start of their own

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

const startLong = `Finds one thing about a warp from the others that you know: the length, the
ends, the width, the pieces or the yarn. Give what you know, and it finds what is missing;
--find says what, where that isn't plain. You may know a number of ends, a finished width
or a width in the reed with a sett, a finished piece to repeat (--finished-sett: the ends
counted in it), the length of the warp or of the pieces, stripes or a draft, and the yarn
on hand.

Each step is shown with its numbers. Yarn that is needed is rounded up; a warp that yarn
must suffice for is rounded down to what the mill gives, pieces and ends to whole ones.
The command that plans the warp stands at the end.

--json prints for a program to read; 'millside schema millside-start-1' tells how it is
made up.`

const startExample = `  millside start --finished-width "22 in" --sett "24 an inch"
  millside start --on-hand "250 g, 3 of 180 g" --yarn "cotton 8/2" --ends 120
  millside start --on-hand "2 of 1 lb" --yarn "cotton 8/2" --ends 300 \
    --finished-length "28 in"
  millside start --ends 400 --length "7 yd" --yarn "cotton 8/2"
  millside start --width-in-reed "7 in" --sett "8 an inch" --length "90 in"`

func (a *app) startCmd() *cobra.Command {
	ask := asked.StartAsk{SpecAsk: asked.SpecAsk{Units: a.newSpec().Units}}
	asJSON := false
	cmd := &cobra.Command{
		Use: "start [what you know]", Short: "find the length, ends, width, pieces or yarn from what you know",
		Long: startLong, Example: startExample, Args: asked.Args(0, 0, ""), ValidArgsFunction: cobra.NoFileCompletions,
		RunE: func(cmd *cobra.Command, _ []string) error {
			known, err := ask.Known(cmd, a.errOut, a.atHand)
			if err != nil {
				return startUsage(cmd, err)
			}
			a.tellAssumed(&ask.SpecAsk)
			found, err := starting.Solve(cmd.Context(), known)
			if err != nil {
				return startUsage(cmd, err)
			}
			command := planCommand(cmd.Flags(), found)
			if asJSON {
				return prose.WriteJSON(a.out, planout.StartToJSON(found, command, ask.Assumed))
			}
			planout.StartText(a.out, found, command)
			return nil
		},
	}
	asked.StartFlags(cmd, &ask)
	a.completeNames(cmd)
	asked.About(cmd.Flags(), "What is printed and kept", func() {
		cmd.Flags().BoolVar(&asJSON, "json", false, "print for a program to read")
	})
	return cmd
}

// startUsage names the flags of fields, those that only this command has too, and says of a flag that wasn't given that
// it is missing.
func startUsage(cmd *cobra.Command, err error) error {
	flagOf := func(name string) string {
		for _, f := range field.Known() {
			if f.Name == name {
				return f.Flag
			}
		}
		return asked.FlagFor(name)
	}
	var unclear *starting.UnclearError
	if errors.As(err, &unclear) {
		var flags []string
		for _, f := range unclear.Give {
			flags = append(flags, "--"+f.Flag)
		}
		return asked.Usage(cmd, fmt.Errorf("%w (%s)", unclear, strings.Join(flags, ", ")))
	}
	var missing, wrong []error
	for _, fe := range measure.FieldErrors(err) {
		if flag := cmd.Flags().Lookup(flagOf(fe.Field)); fe.Value == "" && flag != nil && !flag.Changed {
			missing = append(missing, fmt.Errorf("--%s is missing: give %s", flag.Name, fe.Want))
		} else {
			wrong = append(wrong, fe)
		}
	}
	if len(missing) == 0 {
		return asked.NamedBy(cmd, err, flagOf)
	}
	if len(wrong) > 0 {
		missing = append(missing, asked.NamedBy(cmd, errors.Join(wrong...), flagOf))
	}
	return asked.Usage(cmd, errors.Join(missing...))
}

// planCommand is the command that plans what was found; "" as long as the ends or the length aren't known. The cloth
// has led to both, so it isn't in it.
func planCommand(given *pflag.FlagSet, found *starting.Result) string {
	if !found.HasEnds || !found.HasLength {
		return ""
	}
	s := found.Spec
	words := []string{"millside plan"}
	add := func(name, value string) { words = append(words, "--"+name, prose.Quoted(value)) }
	if s.Stripes == "" {
		add(field.Ends.Flag, strconv.Itoa(s.Ends))
	}
	add(field.Length.Flag, wholeHundredths(s.Length, s.Units.Long()))
	given.Visit(func(f *pflag.Flag) {
		switch {
		case f.Name == field.Ends.Flag || f.Name == field.Length.Flag || f.Name == "json" || isStartFlag(f.Name) ||
			asked.HeadingOf(f) == field.Cloth.Heading() && f.Name != field.SettOf.Flag:
		case f.Value.Type() == "bool":
			words = append(words, "--"+f.Name+"="+f.Value.String())
		default:
			add(f.Name, f.Value.String())
		}
	})
	if !given.Changed(field.Group.Flag) && s.Stripes == "" && s.Group != 0 {
		add(field.Group.Flag, strconv.Itoa(s.Group))
	}
	return strings.Join(words, " ")
}

// wholeHundredths writes a length as it is typed, rounded up to a hundredth of the unit.
func wholeHundredths(l measure.Length, u measure.LengthUnit) string {
	unit, _ := u.Length()
	step := unit / 100
	return ((l + step - 1) / step * step).As(u, 2).String()
}

func isStartFlag(name string) bool {
	for _, f := range field.Known() {
		if f.Flag == name {
			return true
		}
	}
	return false
}
