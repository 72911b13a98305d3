package main

import (
	"errors"
	"fmt"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/planout"
	"millside/cmd/millside/internal/prose"
	"millside/counter/disk"
	"millside/counter/journal"
	"millside/plan"
	"millside/plan/athand"
	"millside/plan/project"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

const planLong = `Works out a warp and prints it: passes, turns round the mill, the real length,
the yarn, the count ties, and other ways to reach the same number of ends. What
is not given has the value that stands in the list below.

The time is one figure: each pass by the turns of the mill and the handling at its
ends, and what is cut off, tied on and threaded at the pegs, by the --minutes options.
Once warps have been finished, a pass is that of your own pace, scaled to the turns: of
the last five warps of which four passes or more were timed. The work at the pegs is
then by your own halts, of the last five warps of which four or more were timed:
all its minutes change by one factor, since a halt is timed as a whole.

--passes adds every pass: the ends it lays, the opening that goes first over the
first lease peg, the peg of the counting cross that the group goes over, and the
way round the end peg afterwards. --save makes a record of the plan, which
'millside wind' then winds, and prints its path.

A warp may also be planned from its cloth: --finished-width, --finished-length and
--sett with the allowances give the ends and the length. --sheet prints the whole
plan as the sheet for the studio wall; 'millside sheet --help' tells about its formats.
A mill, board, paddle, raddle, reed or yarn may be named as 'millside at-hand' shows it.

Lengths have a unit: yd, ft, in, m, cm or mm. "4 yd 18 in", "7 1/2 yd" and "6,4 m"
are read too. A length is rounded up to what the pegs of the mill can give.

--json prints for a program to read; 'millside schema millside-plan-2' tells how it
is made up.`

const planExample = `  millside plan --ends 396
  millside plan --ends 396 --length "7 1/2 yd" --rise "3 in" --passes
  millside plan --ends 650 --chain-ends 220 --dyed --save --name "grey scarves"
  millside plan --ends 396 --json
  millside plan --finished-width "20 in" --finished-length "28 in" --pieces 4 \
    --sett "20 an inch" --draw-in 8% --take-up 8% --loom-waste "30 in" --sheet
  millside plan --stripes "8 white, 21 times (4 red, 14 white), 20 red" --finish-at-lease
  millside plan --draft plaid.wif --thread-1 right --passes`

// planFlags are the flags that say what to do with the plan.
type planFlags struct {
	json, passes, save, sheet bool
	inPlaceOf                 string // the record whose plan this one replaces; "" makes a new one
	assumed                   []athand.Assumed
}

func (p *planFlags) add(cmd *cobra.Command, sheet *sheetFlags) {
	f := cmd.Flags()
	f.BoolVar(&p.passes, "passes", false, "add every pass and all that is done after the last")
	f.BoolVar(&p.json, "json", false, "print for a program to read")
	f.BoolVar(&p.save, "save", false, "make a record of it, to wind later")
	f.StringVar(&p.inPlaceOf, "in-place-of", "",
		"with --save: put it in the place of the plan of `NAME`, of which nothing is wound")
	f.BoolVar(&p.sheet, "sheet", false, "print the whole plan as a sheet, as 'millside sheet' does")
	sheet.add(cmd)
}

// givenWarp says whether the flags give a number of ends, stripes or a cloth.
func givenWarp(f *pflag.FlagSet) bool {
	for _, name := range []string{"ends", "stripes", "draft", "from-cloth", "finished-width", "finished-length"} {
		if f.Changed(name) {
			return true
		}
	}
	return false
}

// check settles how a sheet is written, and refuses its flags where none is asked for.
func (p *planFlags) check(cmd *cobra.Command, sheet *sheetFlags) error {
	if p.inPlaceOf != "" && !p.save {
		return asked.Usage(cmd, errors.New("--in-place-of belongs to a plan that is kept: give --save too"))
	}
	if sheet.wall && p.sheet {
		return asked.Usage(cmd, errors.New("--sheet is the whole plan and --wall the wall sheet: give one of them"))
	}
	if sheet.wall {
		p.sheet = true
	}
	if p.sheet && p.json {
		return asked.Usage(cmd, errors.New("--json prints the plan; for the sheet give --sheet --format json"))
	}
	if p.sheet {
		sheet.passes = p.passes
		return sheet.check(cmd)
	}
	for _, name := range []string{"format", "output", "force", "how", "date"} {
		if cmd.Flags().Changed(name) {
			return asked.Usage(cmd, fmt.Errorf("--%s belongs to a sheet: give --sheet too", name))
		}
	}
	return nil
}

// planSheet prints the sheet of a plan, and makes a record of it where that is asked for. The record's
// path is a message, so that the sheet can be piped.
func (a *app) planSheet(project *project.Project, made *asked.Striped, flags planFlags, sheet sheetFlags) error {
	if err := a.printSheet(project, sheet, planout.OthersPart(made)); err != nil || !flags.save {
		return err
	}
	path, err := a.savePlan(project.Plan, flags.inPlaceOf)
	if err == nil {
		fmt.Fprintf(a.errOut, "Record: %s\n", prose.Clean(path))
	}
	return err
}

func (a *app) planCmd() *cobra.Command {
	ask := asked.SpecAsk{Units: a.newSpec().Units, NoEnds: true}
	var flags planFlags
	var sheet sheetFlags
	var stripes *asked.StripeAsk
	cmd := &cobra.Command{
		Use: "plan --ends N [options]", Short: "work out a warp and print it",
		Long: planLong + asked.StripesLong, Example: planExample, Args: asked.Args(0, 0, ""),
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if !givenWarp(cmd.Flags()) {
				return asked.Usage(cmd, errors.New("how many ends? give --ends, such as --ends 396, the --stripes, "+
					"or a cloth with --finished-width, --finished-length and --sett"))
			}
			if err := flags.check(cmd, &sheet); err != nil {
				return err
			}
			project, made, err := a.project(cmd, &ask, stripes)
			if err != nil {
				return err
			}
			if made != nil && !sheet.wall {
				hand, err := a.atHand()
				if err != nil {
					return err
				}
				made.TryOthers(cmd.Context(), hand)
			}
			sheet.assumed, flags.assumed = ask.Assumed, ask.Assumed
			if flags.sheet {
				return a.planSheet(project, made, flags, sheet)
			}
			return a.printPlan(project, made, stripes.Draft(), flags)
		},
	}
	stripes = asked.PlanFlags(cmd, &ask)
	a.completeNames(cmd)
	asked.About(cmd.Flags(), "What is printed and kept", func() { flags.add(cmd, &sheet) })
	return cmd
}

// printPlan prints a plan. The draft is nil where the warp was made of none.
func (a *app) printPlan(project *project.Project, stripes *asked.Striped, draft *asked.DraftFile,
	flags planFlags) error {
	p, path := project.Plan, ""
	if flags.save {
		var err error
		if path, err = a.savePlan(p, flags.inPlaceOf); err != nil {
			return err
		}
	}
	if flags.json {
		out := planout.PlanToJSON(project)
		out.Record, out.Assumed = path, planout.AssumedToJSON(p.Spec, flags.assumed)
		if !project.SettInReed().IsZero() {
			hand, err := a.atHand()
			if err != nil {
				return err
			}
			out.TakeReeds(project, hand.Reeds)
		}
		if stripes != nil {
			out.Stripes = planout.StripesToJSON(p, stripes)
		}
		if stripes == nil && draft != nil {
			d := planout.DraftToJSON(draft)
			out.Draft = &d
		}
		return prose.WriteJSON(a.out, out)
	}
	planout.PlanText(a.out, project)
	if stripes != nil {
		planout.StripesText(a.out, p, stripes)
	} else if draft != nil {
		planout.DraftRows(a.out, draft)
	}
	if err := planout.WholeText(a.out, project, flags.assumed); err != nil {
		return err
	}
	if flags.passes {
		planout.PassesText(a.out, p)
		planout.FinishingText(a.out, p)
	} else {
		planout.StepTitles(a.out, p)
	}
	if path != "" {
		fmt.Fprintf(a.out, "\nRecord: %s\n", prose.Clean(path))
	}
	return nil
}

// savePlan makes a record, or puts the plan in the place of that of another of which nothing is wound, and gives its
// path.
func (a *app) savePlan(p *plan.Plan, inPlaceOf string) (string, error) {
	store, err := a.store()
	if err != nil {
		return "", err
	}
	store.FS = disk.WithoutLocks(store.FS)
	make := store.Create
	if inPlaceOf != "" {
		path, err := store.Find(inPlaceOf)
		if err != nil {
			return "", err
		}
		make = func(p *plan.Plan) (*journal.Record, error) { return store.Replan(path, p) }
	}
	record, err := make(p) // it is closed again at once: nobody winds it yet
	if err != nil {
		return "", err
	}
	return record.Path(), record.Close()
}
