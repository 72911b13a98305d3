package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/sheetout"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/pair"
	"millside/plan/project"
	"millside/plan/sheet"

	"github.com/spf13/cobra"
)

const togetherLong = `Plans two warps that go through one raddle and one reed: a ground and a pile or a
supplementary warp, the tight and the slack stripes of a seersucker, the two layers of a
double weave. Each is planned, wound, paused and finished by itself, in its own record;
this says where the ends of both come to lie.

The order is written from the left, with the words ground and second or the names of the
warps, as stripes are: "2 ground, 1 second", "4 ground, 100 times (2 ground, 1 second),
4 ground". It goes on over and over until all ends are laid, and may break off where both
warps are used up; an order that leaves ends over is refused, with how many and of which.

The second lies between the ends of the ground, and both fill the same width: the setts
add up. With --lie beside it lies in stripes of its own, each warp at its own sett. Where
neither is so, --sett or --dents say how both lie together.

Both must weave the same cloth, each with its own take-up. With the ground alone it finds
what the second must be, and ends with the command that plans it.

The formats are those of 'millside sheet'; json has "format": "millside-together-1".`

const togetherExample = `  millside together ground pile --order "2 ground, 1 second" --take-up 40%
  millside together tight slack --order "12 ground, 12 second" --lie beside
  millside together ground --order "2 ground, 1 second" --take-up 40%
  millside together upper lower -o both.html`

func (a *app) togetherCmd() *cobra.Command {
	var flags sheetFlags
	var ask asked.TogetherAsk
	cmd := &cobra.Command{
		Use: "together GROUND [SECOND] [options]", Short: "plan two warps in one raddle and one reed",
		Long: togetherLong, Example: togetherExample,
		Args:              asked.Args(1, 2, "the record of the ground, and that of the second"),
		ValidArgsFunction: a.completeTwo,
		RunE: func(cmd *cobra.Command, given []string) error {
			if err := flags.check(cmd); err != nil {
				return err
			}
			said, err := ask.Ask(cmd)
			if err != nil {
				return err
			}
			ground, err := a.planned(given[0])
			if err != nil {
				return err
			}
			if len(given) == 1 {
				return a.secondFor(cmd, ground, said)
			}
			second, err := a.planned(given[1])
			if err != nil {
				return err
			}
			joint, err := pair.New(ground, second, said)
			if err != nil {
				return asked.TogetherUsage(cmd, err)
			}
			return a.printTogether(joint, flags)
		},
	}
	asked.TogetherFlags(cmd, &ask)
	asked.About(cmd.Flags(), "What is printed", func() { flags.addPrinted(cmd) })
	return cmd
}

// completeTwo offers a record for each of the two warps.
func (a *app) completeTwo(cmd *cobra.Command, given []string, begun string) ([]cobra.Completion,
	cobra.ShellCompDirective) {
	if len(given) > 1 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return a.completeRecords(cmd, nil, begun)
}

// planned is the plan of a record as it is wound, worked out.
func (a *app) planned(nameOrPath string) (*project.Project, error) {
	record, err := a.look(nameOrPath)
	if err != nil {
		return nil, err
	}
	pr, err := project.Of(record.State().Plan, a.ownPace())
	if err != nil {
		return nil, fmt.Errorf("working out the plan: %w", err)
	}
	return pr, nil
}

// printTogether writes the sheet of both warps to where the flags say.
func (a *app) printTogether(joint *pair.Joint, flags sheetFlags) error {
	both := joint.Sheet()
	both.Date = sheet.DayText(flags.day.Or(a.today()))
	return a.writeSheet(flags, func(w io.Writer) error {
		return sheetout.WriteTogether(w, joint, both, flags.format, flags.how)
	})
}

// secondFor says what the second of a ground must be, and the command that plans it.
func (a *app) secondFor(cmd *cobra.Command, ground *project.Project, said pair.Ask) error {
	n, sett, length, err := pair.SecondFor(ground, said)
	if err != nil {
		return asked.TogetherUsage(cmd, err)
	}
	s := ground.Plan.Spec
	long := wholeHundredths(length, s.Units.Long())
	words := []string{"millside plan", "--" + field.Name.Flag, prose.Quoted(measure.Shortened(s.Name + ", second")),
		"--" + field.Ends.Flag, strconv.Itoa(n), "--" + field.Length.Flag, prose.Quoted(long)}
	fmt.Fprintf(a.out, "The second of %s:\n\nends    %d\nlength  %s\n", prose.Clean(s.Name), n, long)
	if !sett.IsZero() {
		fmt.Fprintf(a.out, "sett    %s\n", sett)
		words = append(words, "--"+field.SettOf.Flag, prose.Quoted(sett.String()))
	}
	fmt.Fprintf(a.out, "\nTo plan it:\n  %s --save\n", strings.Join(words, " "))
	return nil
}
