package main

import (
	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/planout"
	"millside/cmd/millside/internal/prose"

	"github.com/spf13/cobra"
)

const draftLong = `Reads a weaving draft in the open format WIF (version 1.1) and tells what it says
about the warp: title, threads, shafts, colours, the sett that its spacing comes
to, and the stripes from left to right, as 'millside plan --stripes' takes them.
Nothing is planned and nothing is kept. What can't be read as it stands is told
with its section and line.

A draft doesn't say on which side its thread 1 is. Unless --thread-1 says so, both
ways are shown where they differ.

To a number of ends, or to the ends that the width of a cloth takes, the draft is
repeated, and its last time cut; --stripes-laid lays whole repeats only, or cuts
it once, or leaves it as it is drawn. --draft-edge adds ends at each side, and
--draft-edge rest adds what the width lacks. What is left over is told. The same
options lay it in 'millside plan' and 'millside new'.

--json prints for a program to read; 'millside schema millside-draft-1'
tells how it is made up.`

func (a *app) draftCmd() *cobra.Command {
	var (
		asJSON bool
		use    *asked.DraftAsk
		ask    = asked.SpecAsk{Units: a.newSpec().Units}
	)
	cmd := &cobra.Command{
		Use: "draft FILE [options]", Short: "tell what a draft says about the warp", Long: draftLong,
		Example: "  millside draft plaid.wif\n  millside draft plaid.wif --thread-1 right\n" +
			"  millside draft plaid.wif --finished-width \"20 in\" --sett \"16 an inch\" \\\n" +
			"    --stripes-laid whole-repeats --draft-edge rest\n" +
			"  millside plan --draft plaid.wif --thread-1 right",
		Args: asked.Args(1, 1, "the path of one draft"),
		RunE: func(cmd *cobra.Command, paths []string) error {
			d, err := asked.ReadDraft(paths[0], cmd.InOrStdin())
			if err != nil {
				return err
			}
			if err := use.Of(d); err != nil {
				return asked.Usage(cmd, err)
			}
			if err := asked.FitDraft(cmd, d, &ask); err != nil {
				return err
			}
			if _, err := d.Warp(d.Use.Side); err != nil {
				return asked.InDraftFlags(cmd, err)
			}
			if asJSON {
				out := planout.DraftToJSON(d)
				out.Format = planout.DraftFormat
				return prose.WriteJSON(a.out, out)
			}
			planout.DraftText(a.out, d)
			return nil
		},
	}
	use = asked.DraftFlags(cmd, &ask)
	cmd.Flags().BoolVar(&asJSON, "json", false, "print for a program to read")
	return cmd
}
