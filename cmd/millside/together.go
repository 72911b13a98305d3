package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/sheetout"
	"millside/counter"
	"millside/counter/disk"
	"millside/counter/journal"
	"millside/plan/field"
	"millside/plan/figure"
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

--keep writes into both records with which warp each goes, begun or not: its sheet and
'millside show' then say where its ends lie among those of the other. Given again without
a second or an order, what is kept is taken; --apart takes it back.

The formats are those of 'millside sheet'; json has "format": "millside-together-1".`

const togetherExample = `  millside together ground pile --order "2 ground, 1 second" --take-up 40%
  millside together tight slack --order "12 ground, 12 second" --lie beside
  millside together ground --order "2 ground, 1 second" --take-up 40%
  millside together upper lower --keep -o both.html
  millside together upper`

func (a *app) togetherCmd() *cobra.Command {
	var flags sheetFlags
	var ask asked.TogetherAsk
	keep, apart := false, false
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
			if keep && (apart || len(given) < 2) || apart && ask.Given() {
				return asked.Usage(cmd, errors.New("--keep wants two warps, and --apart nothing that is said of them"))
			}
			var records []*journal.Record
			for _, name := range given {
				record, err := a.look(name)
				if err != nil {
					return err
				}
				records = append(records, record)
			}
			switch {
			case apart:
				return a.apart(records)
			case len(given) == 1:
				return a.together1(cmd, records[0], &ask, said, flags)
			}
			joint, err := a.joint([2]*journal.Record{records[0], records[1]}, said)
			if err != nil {
				return asked.TogetherUsage(cmd, err)
			}
			if keep {
				if err := a.keepTogether(records[0].Path(), records[1].Path(), ask.Texts()); err != nil {
					return asked.TogetherUsage(cmd, err)
				}
			}
			return a.printTogether(joint, flags)
		},
	}
	asked.TogetherFlags(cmd, &ask)
	asked.About(cmd.Flags(), "What is printed and kept", func() {
		flags.addPrinted(cmd)
		cmd.Flags().BoolVar(&keep, "keep", false, "write into both records with which warp each goes")
		cmd.Flags().BoolVar(&apart, "apart", false, "take back what was kept")
	})
	return cmd
}

// together1 is the command with one warp: the sheet of both where it is kept with which other it goes, and else what
// the second of this ground must be.
func (a *app) together1(cmd *cobra.Command, record *journal.Record, ask *asked.TogetherAsk, said pair.Ask,
	flags sheetFlags) error {
	if record.State().Plan.Spec.GoesWith != "" && !ask.Given() {
		joint, _, err := a.keptJoint(record)
		if err != nil {
			return asked.TogetherUsage(cmd, err)
		}
		return a.printTogether(joint, flags)
	}
	ground, err := a.planOf(record)
	if err != nil {
		return err
	}
	return a.secondFor(cmd, ground, said)
}

// joint joins the plans of two records.
func (a *app) joint(records [2]*journal.Record, said pair.Ask) (*pair.Joint, error) {
	var warps [2]*project.Project
	for w, record := range records {
		var err error
		if warps[w], err = a.planOf(record); err != nil {
			return nil, err
		}
	}
	return pair.New(warps[pair.Ground], warps[pair.Second], said)
}

// keptJoint is a warp with the other one that its record names, and which of both it is itself.
func (a *app) keptJoint(record *journal.Record) (*pair.Joint, pair.Which, error) {
	kept, err := pair.ParseKept(record.State().Plan.Spec.GoesWith)
	if err != nil {
		return nil, 0, err
	}
	own := kept.With.Other()
	said, err := kept.Ask()
	if err != nil {
		return nil, own, err
	}
	other, err := a.look(filepath.Join(filepath.Dir(record.Path()), kept.File))
	if err != nil {
		return nil, own, err
	}
	var both [2]*journal.Record
	both[own], both[kept.With] = record, other
	joint, err := a.joint(both, said)
	return joint, own, err
}

// goesWith is the part of a warp's own sheet that says with which other it goes; nothing where it goes with none. A
// record of the other that can't be read is told there.
func (a *app) goesWith(record *journal.Record) sheet.Part {
	s := record.State()
	if s.Plan.Spec.GoesWith == "" {
		return sheet.Part{}
	}
	joint, own, err := a.keptJoint(record)
	if err != nil {
		return sheet.Part{ID: pair.PartWith, Title: "Goes with another warp", Rows: []measure.Row{{Name: "the other " +
			"warp",
			Value: figure.Say("%s", s.Plan.Spec.GoesWith), Warning: "where the ends lie beside its own isn't known: " +
				err.Error()}}}
	}
	var marked []int
	for _, i := range s.Incidents {
		if !i.Withdrawn && !i.Undone && i.End > 0 {
			marked = append(marked, i.End)
		}
	}
	slices.Sort(marked)
	return joint.With(own, slices.Compact(marked))
}

// unlocked gives the folder of the records, whose files are written where there are no locks too.
func (a *app) unlocked() (journal.Store, error) {
	store, err := a.store()
	store.FS = disk.WithoutLocks(store.FS)
	return store, err
}

// keepTogether writes into the records of a ground and a second with which warp each goes.
func (a *app) keepTogether(ground, second string, said map[*field.Field]string) error {
	store, err := a.unlocked()
	if err != nil {
		return err
	}
	if err := store.KeepTogether(ground, second, said, a.now()); err != nil {
		return err
	}
	fmt.Fprintf(a.errOut, "Record: %s\nRecord: %s\n", prose.Clean(ground), prose.Clean(second))
	return nil
}

// apart writes into records that each goes with no other.
func (a *app) apart(records []*journal.Record) error {
	store, err := a.unlocked()
	if err != nil {
		return err
	}
	for _, record := range records {
		if err := store.Join(record.Path(), counter.Apart, a.now()); err != nil {
			return err
		}
		fmt.Fprintf(a.errOut, "Record: %s\n", prose.Clean(record.Path()))
	}
	return nil
}

// completeTwo offers a record for each of the two warps.
func (a *app) completeTwo(cmd *cobra.Command, given []string, begun string) ([]cobra.Completion,
	cobra.ShellCompDirective) {
	if len(given) > 1 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return a.completeRecords(cmd, nil, begun)
}

// planOf is the plan of a record as it is wound, worked out.
func (a *app) planOf(record *journal.Record) (*project.Project, error) {
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
