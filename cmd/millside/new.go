package main

import (
	"millside/plan"
	"millside/tui"

	"github.com/spf13/cobra"
)

const newLong = `Opens the form for a new warp on the screen. Whatever is given here stands in the
form already and can still be changed.

Without a screen, 'millside plan --ends N --save' makes a record.`

func (a *app) newCmd() *cobra.Command {
	ask := specAsk{spec: plan.DefaultSpec()}
	var stripes *stripeAsk
	cmd := &cobra.Command{
		Use: "new [options]", Short: "plan a new warp on the screen", Long: newLong + stripesLong,
		Example: "  millside new\n  millside new --ends 396 --name \"sea-blue tea towels\"", Args: args(0, 0, ""),
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE: func(cmd *cobra.Command, _ []string) error {
			project, _, err := a.project(cmd, &ask, stripes)
			if err != nil {
				return err
			}
			store, err := a.store()
			if err != nil {
				return err
			}
			if err := a.needTerminal("'millside plan --ends N --save' makes a record"); err != nil {
				return err
			}
			return a.open(cmd.Context(), tui.Options{Store: store, Spec: &project.Plan.Spec})
		},
	}
	specFlags(cmd, &ask)
	a.completeNames(cmd)
	a.sayFlag(cmd)
	stripes = stripeFlags(cmd)
	return cmd
}
