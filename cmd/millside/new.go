package main

import (
	"fmt"

	"millside/cmd/millside/internal/asked"
	"millside/counter/journal"
	"millside/plan/athand"
	"millside/plan/project"
	"millside/plan/times"
	"millside/tui"

	"github.com/spf13/cobra"
)

const newLong = `Opens the form for a new warp on the screen. Whatever is given here stands in the
form already and can still be changed.

Without a screen, 'millside plan --ends N --save' makes a record.`

func (a *app) newCmd() *cobra.Command {
	ask := asked.SpecAsk{Units: a.newSpec().Units}
	var stripes *asked.StripeAsk
	cmd := &cobra.Command{
		Use: "new [options]", Short: "plan a new warp on the screen", Long: newLong + asked.StripesLong,
		Example: "  millside new\n  millside new --ends 396 --name \"sea-blue tea towels\"", Args: asked.Args(0, 0, ""),
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE: func(cmd *cobra.Command, _ []string) error {
			project, _, err := a.project(cmd, &ask, stripes)
			if err != nil {
				return err
			}
			if err := a.needTerminal("'millside plan --ends N --save' makes a record"); err != nil {
				return err
			}
			return a.open(cmd.Context(), tui.Options{Spec: &project.Plan.Spec, Assumed: ask.Assumed})
		},
	}
	stripes = asked.PlanFlags(cmd, &ask)
	a.completeNames(cmd)
	a.sayFlag(cmd)
	return cmd
}

// project works the whole plan out, and refuses values that won't do by the names of their flags. What the
// stripes were chosen from is nil in a plain warp.
func (a *app) project(cmd *cobra.Command, ask *asked.SpecAsk, stripes *asked.StripeAsk) (*project.Project,
	*asked.Striped, error) {
	spec, err := ask.Settle(cmd.Flags(), a.atHand)
	if err != nil {
		return nil, nil, asked.NamedFlags(cmd, err)
	}
	a.tellAssumed(ask)
	made, err := stripes.Fill(cmd, a.errOut, &spec)
	if err != nil {
		return nil, nil, err
	}
	p, err := project.New(spec, a.ownPace())
	return p, made, asked.NamedFlags(cmd, err)
}

// tellAssumed says what was taken because there is only one of it at hand.
func (a *app) tellAssumed(ask *asked.SpecAsk) {
	if text := athand.AssumedText(ask.Assumed); text != "" {
		fmt.Fprintln(a.errOut, "millside:", text)
	}
}

// ownPace is the pace that times are reckoned with: the weaver's own, from the finished warps in the
// folder of records, or the published range. A folder that can't be read is no reason to plan no warp, and
// what is printed says whose pace it is. The practice warp is wound without yarn, so it doesn't count.
func (a *app) ownPace() times.Pace {
	folder, err := a.records()
	if err != nil {
		return times.PublishedPace()
	}
	list, err := folder.Latest()
	if err != nil {
		return times.PublishedPace()
	}
	return journal.OwnPace(list, practiceName)
}
