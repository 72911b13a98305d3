package main

import (
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"

	"millside/plan"

	"github.com/spf13/cobra"
)

const settLong = `Offers a sett to begin a sample with, from the yarn's size and the weave, by
Ashenhurst's rule. It is a starting point for a sample, never an answer: only a sample
shows how a yarn and a weave behave.

Threads that lie side by side in an inch are a factor x the square root of the yards in
a pound. The published factors differ: 0.9 for most yarns, 0.95 for cotton, 0.84 for
soft woollen; --factor takes these or another, and the others are shown for comparison.
A weave leaves room for ends / (ends + intersections) of them, where intersections is
how often one pick passes between the faces over the ends of a repeat; three quarters
of that is a working sett.

YARN is a size such as "cotton 8/2", "worsted 2/28", "25 tex" or "3360 yd/lb", or the
name of a yarn at hand. Where a size can be read in more than one way, the answer lists
the readings.

--json prints one object with "format": "millside-sett-1", yarn, weave (name, ends,
intersections), factor_hundredths, rows, note, and others (for, source,
factor_hundredths, start).`

func (a *app) settCmd() *cobra.Command {
	units := plan.Imperial
	weave, factor, asJSON := "plain", "0.9", false
	cmd := &cobra.Command{
		Use: "sett YARN [options]", Short: "offer a sett to begin a sample with", Long: settLong,
		Example: "  millside sett \"cotton 8/2\"\n  millside sett \"worsted 2/28\" --weave \"2/2 twill\" --units metric\n  millside sett \"3360 yd/lb\" --weave \"6 ends, 2 intersections\" --factor 0.95",
		Args:    args(1, 1, "one yarn, in quotes if there is a space in it"), ValidArgsFunction: cobra.NoFileCompletions,
		RunE: func(cmd *cobra.Command, given []string) error {
			hand, err := a.atHand()
			if err != nil {
				return err
			}
			yarn, err := yarnOr(given[0], hand)
			if err != nil {
				return usage(cmd, plan.InField(err, "yarn"))
			}
			w, err := parseWeave(weave)
			if err != nil {
				return usage(cmd, plan.InField(err, "--weave"))
			}
			f, err := parseFactor(factor)
			if err != nil {
				return usage(cmd, plan.InField(err, "--factor"))
			}
			return a.printSett(cmd, settAsk{yarn.Size, w, f, units}, asJSON)
		},
	}
	f := cmd.Flags()
	f.SortFlags = false
	f.StringVar(&weave, "weave", weave, "the `weave`: "+strings.Join(weaveNames(), ", ")+", or such as \"6 ends, 2 intersections\"")
	_ = cmd.RegisterFlagCompletionFunc("weave", cobra.FixedCompletions(weaveNames(), cobra.ShellCompDirectiveNoFileComp))
	f.StringVar(&factor, "factor", factor, "the `factor` of the rule, 0.01 to 2 with at most two decimals")
	words(cmd, "units", &units, "units that setts are shown in", "imperial", "metric")
	f.BoolVar(&asJSON, "json", false, "print for a program to read")
	return cmd
}

// settAsk is what a sett is asked for.
type settAsk struct {
	yarn   plan.YarnSize
	weave  plan.Weave
	factor plan.DiameterFactor
	units  plan.LengthUnitSystem
}

func weaveNames() []string {
	var names []string
	for _, w := range plan.Weaves() {
		names = append(names, w.Name)
	}
	return names
}

// ownWeave is a weave that is told by its counts.
var ownWeave = regexp.MustCompile(`^([0-9]{1,4}) ends?,? (?:and )?([0-9]{1,4}) intersections?$`)

func parseWeave(s string) (plan.Weave, error) {
	text := strings.ToLower(strings.Join(strings.Fields(s), " "))
	for _, w := range plan.Weaves() {
		if w.Name == text {
			return w, nil
		}
	}
	m := ownWeave.FindStringSubmatch(text)
	if m == nil {
		return plan.Weave{}, &plan.FieldError{Value: s, Want: "one of " + strings.Join(weaveNames(), ", ") + ", or such as \"6 ends, 2 intersections\""}
	}
	ends, _ := strconv.Atoi(m[1]) // four digits at the most
	between, _ := strconv.Atoi(m[2])
	return plan.Weave{Name: text, Ends: ends, Intersections: between}, nil
}

// factorParts parts the ones of a factor from its hundredths.
var factorParts = regexp.MustCompile(`^([0-2]?)(?:[.,]([0-9]{1,2}))?$`)

// parseFactor reads a factor exactly, and finds where it is published if it is.
func parseFactor(s string) (plan.DiameterFactor, error) {
	m := factorParts.FindStringSubmatch(strings.TrimSpace(s))
	wrong := &plan.FieldError{Value: s, Want: "0.01 to 2 with at most two decimals, such as 0.9"}
	if m == nil || m[1] == "" && m[2] == "" {
		return plan.DiameterFactor{}, wrong
	}
	n, _ := strconv.Atoi(m[1] + (m[2] + "00")[:2]) // three digits at the most
	if n < 1 || n > 200 {
		return plan.DiameterFactor{}, wrong
	}
	for _, f := range plan.DiameterFactors() {
		if f.Hundredths == n {
			return f, nil
		}
	}
	return plan.DiameterFactor{Hundredths: n, For: "your own factor", Source: "not a published one"}, nil
}

func (a *app) printSett(cmd *cobra.Command, ask settAsk, asJSON bool) error {
	help, err := plan.HelpSett(ask.yarn, ask.weave, ask.factor, ask.units)
	if err != nil {
		return settUsage(cmd, err)
	}
	others, err := ask.others()
	if err != nil {
		return settUsage(cmd, err)
	}
	if asJSON {
		return writeJSON(a.out, settToJSON(ask, help, others))
	}
	settText(a.out, ask, help, others)
	return nil
}

// settUsage names the flags of the fields that the rule refuses.
func settUsage(cmd *cobra.Command, err error) error {
	return namedFlags(cmd, err, map[string]string{"ends in the weave": "weave", "intersections in the weave": "weave", "factor in hundredths": "factor"})
}

// otherSett is what another published factor gives.
type otherSett struct {
	factor plan.DiameterFactor
	start  plan.Sett
}

func (ask settAsk) others() ([]otherSett, error) {
	var list []otherSett
	for _, f := range plan.DiameterFactors() {
		if f.Hundredths == ask.factor.Hundredths {
			continue
		}
		help, err := plan.HelpSett(ask.yarn, ask.weave, f, ask.units)
		if err != nil {
			return nil, err
		}
		list = append(list, otherSett{f, help.Start})
	}
	return list, nil
}

func settText(w io.Writer, ask settAsk, help *plan.SettHelp, others []otherSett) {
	fmt.Fprintf(w, "Yarn: %s, %s\n\n", clean(ask.yarn.Notation()), ask.yarn.PerMass(ask.units))
	for _, r := range help.Rows {
		note := r.Usual // here where the figure is from, or what it is good for
		r.Usual = ""
		rowText(w, r, true)
		if note != "" && note != help.Note {
			fmt.Fprintf(w, "    %s\n", wrap(clean(note), 4))
		}
	}
	fmt.Fprintf(w, "\n%s\n\n", wrap(fmt.Sprintf("This is %s: weave one, wash it, look.", help.Note), 0))
	fmt.Fprintln(w, "Other published factors:")
	for _, o := range others {
		fmt.Fprintf(w, "  %s\n", wrap(fmt.Sprintf("%s for %s: start at %s (%s)", hundredths(o.factor.Hundredths), o.factor.For, o.start.Shown(1), o.factor.Source), 4))
	}
}

// hundredths writes a factor.
func hundredths(n int) string { return fmt.Sprintf("%d.%02d", n/100, n%100) }
