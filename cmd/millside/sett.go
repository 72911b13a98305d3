package main

import (
	"strings"

	"github.com/spf13/cobra"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/planout"
	"millside/cmd/millside/internal/prose"
	"millside/plan/cloth"
	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/measure"
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

--face says what shows in the cloth, in place of a weave: a balanced cloth is plain weave;
in a warp-faced one the ends lie side by side and cover the weft; in a weft-faced one two
threads of the weft find room between two ends, so that it can be beaten down over them
(both common practice, no source). --weft is the weft's yarn, the warp's if not said.

Where reeds are at hand, the setts that each of them gives near it stand below, with the
order of the ends in its dents.

YARN is a size such as "cotton 8/2", "worsted 2/28", "25 tex" or "3360 yd/lb", or the
name of a yarn at hand. Where a size can be read in more than one way, the answer lists
the readings.

--json prints for a program to read; 'millside schema millside-sett-1'
tells how it is made up.`

const settExample = `  millside sett "cotton 8/2"
  millside sett "worsted 2/28" --weave "2/2 twill" --units metric
  millside sett "3360 yd/lb" --weave "6 ends, 2 intersections" --factor 0.95
  millside sett "cotton 8/4" --face weft-faced --weft "500 yd/lb"`

func (a *app) settCmd() *cobra.Command {
	units := a.newSpec().Units
	weave, weft, factor, asJSON := "plain", "", figure.Signed("0.9"), false
	face := cloth.Balanced
	cmd := &cobra.Command{
		Use: "sett YARN [options]", Short: "offer a sett to begin a sample with", Long: figure.Signed(settLong),
		Example:           figure.Signed(settExample),
		Args:              asked.Args(1, 1, "one yarn, in quotes if there is a space in it"),
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE: func(cmd *cobra.Command, given []string) error {
			hand, err := a.atHand()
			if err != nil {
				return err
			}
			yarn, err := asked.YarnOr(given[0], hand)
			if err != nil {
				return asked.Usage(cmd, measure.InField(err, "yarn"))
			}
			w, err := asked.ParseWeave(weave)
			if err != nil {
				return asked.Usage(cmd, measure.InField(err, "--weave"))
			}
			f, err := asked.ParseFactor(factor)
			if err != nil {
				return asked.Usage(cmd, measure.InField(err, "--factor"))
			}
			ask := planout.SettAsk{Yarn: yarn.Size, Weave: w, Factor: f, Units: units, Face: face, Reeds: hand.Reeds}
			if face != cloth.Balanced && cmd.Flags().Changed("weave") {
				return asked.Usage(cmd, &measure.FieldError{Field: "--weave", Value: weave,
					Want: "either a weave or a face"})
			}
			if weft != "" {
				y, err := asked.YarnOr(weft, hand)
				if err == nil && face == cloth.Balanced {
					err = &measure.FieldError{Value: weft, Want: "a --face too: the weft matters where one yarn shows"}
				}
				if err != nil {
					return asked.Usage(cmd, measure.InField(err, "--weft"))
				}
				ask.Weft = y.Size
			}
			return a.printSett(cmd, ask, asJSON)
		},
	}
	f := cmd.Flags()
	f.SortFlags = false
	f.StringVar(&weave, "weave", weave, "the `weave`: "+strings.Join(asked.WeaveNames(), ", ")+
		", or such as \"6 ends, 2 intersections\"")
	_ = cmd.RegisterFlagCompletionFunc("weave",
		cobra.FixedCompletions(asked.WeaveNames(), cobra.ShellCompDirectiveNoFileComp))
	asked.Words(cmd, "face", &face, field.Face.Help, field.Face.Words...)
	f.StringVar(&weft, "weft", "", "the weft's `yarn`, where one yarn shows")
	f.StringVar(&factor, "factor", factor,
		figure.Signed("the `factor` of the rule, 0.01 to 2 with at most two decimals"))
	asked.Words(cmd, "units", &units, "units that setts are shown in", "imperial", "metric")
	f.BoolVar(&asJSON, "json", false, "print for a program to read")
	return cmd
}

func (a *app) printSett(cmd *cobra.Command, ask planout.SettAsk, asJSON bool) error {
	help, err := ask.Help(ask.Factor)
	if err != nil {
		return settUsage(cmd, err)
	}
	others, err := ask.Others()
	if err != nil {
		return settUsage(cmd, err)
	}
	if asJSON {
		return prose.WriteJSON(a.out, planout.SettToJSON(ask, help, others))
	}
	planout.SettText(a.out, ask, help, others)
	return nil
}

// settUsage names the flags of the fields that the rule refuses.
func settUsage(cmd *cobra.Command, err error) error {
	flags := map[string]string{"ends in the weave": "weave", "intersections in the weave": "weave",
		"factor in hundredths": "factor"}
	return asked.NamedBy(cmd, err, func(name string) string { return flags[name] })
}
