package main

import (
	"fmt"
	"io"
	"path/filepath"
	"time"

	"millside/counter"

	"github.com/spf13/cobra"
)

const listLong = `Lists the records in the folder: those that are not finished first, and those
touched last before others. A damaged record is listed with what is wrong with it.
Of a finished warp it tells the time of a pass, breaks left out, and the yarn that went
into it: the length of all ends together, nothing added for waste.

--json prints one object with "format": "millside-list-1" and records, each with:
path, name, passes, passes_laid, ends, ends_standing, wound, finished, started and
last (times, left out if nothing has happened), cut_short, pace (low_ms, middle_ms,
high_ms, timed_passes) and yarn_used of a finished warp, error (left out if the record
is sound) and spec (left out if the plan can't be read).`

func (a *app) listCmd() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use: "list [--json]", Short: "list the records", Long: listLong,
		Example: "  millside list\n  millside list --records ./stick --json", Args: args(0, 0, ""),
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE: func(*cobra.Command, []string) error {
			store, err := a.store()
			if err != nil {
				return err
			}
			list, err := store.List()
			if err != nil {
				return err
			}
			if asJSON {
				return writeJSON(a.out, listToJSON(list))
			}
			listText(a.out, store.Dir, list)
			return nil
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print for a program to read")
	return cmd
}

func listText(w io.Writer, dir string, list []counter.Summary) {
	if len(list) == 0 {
		fmt.Fprintf(w, "There are no records in %s.\n'millside practice' opens a practice warp, 'millside new' plans one of your own.\n", clean(dir))
		return
	}
	rows := [][]any{{"File", "Passes", "Ends", "State", "Last touched", "Warp"}}
	for _, sum := range list {
		rows = append(rows, []any{clean(filepath.Base(sum.Path)), fmt.Sprintf("%d of %d", sum.Laid, sum.Passes),
			fmt.Sprintf("%d of %d", sum.Standing, sum.Ends), summaryState(sum), when(sum.Last), clean(sum.Name)})
	}
	table(w, rows)
	finishedText(w, list)
	for _, sum := range list {
		if sum.Err != nil {
			fmt.Fprintf(w, "\n%s\n", wrap(clean(helpDamaged(sum.Err, sum.Path).Error()), 0))
		} else if sum.Torn {
			fmt.Fprintf(w, "\n%s\n", wrap(clean(sum.Path)+": the end of the file was cut short, perhaps by a power cut; what was cut is left out", 0))
		}
	}
}

// finishedText writes the pace and the yarn of the finished warps.
func finishedText(w io.Writer, list []counter.Summary) {
	rows := [][]any{{"Finished", "Pace", "Yarn used"}}
	for _, sum := range list {
		if !sum.Finished || sum.Err != nil {
			continue
		}
		pace := "-"
		if sum.Pace.Passes > 0 {
			pace = sum.Pace.String()
		}
		rows = append(rows, []any{clean(filepath.Base(sum.Path)), pace, length(sum.Yarn, sum.Spec.Units.Long())})
	}
	if len(rows) > 1 {
		fmt.Fprintln(w)
		table(w, rows)
	}
}

func summaryState(sum counter.Summary) string {
	switch {
	case sum.Err != nil:
		return "damaged"
	case sum.Finished:
		return "finished"
	case sum.Wound:
		return "wound, to be tied off"
	case sum.Laid == 0:
		return "not begun"
	}
	return "being wound"
}

// when shows a time by the clock on the wall.
func when(t time.Time) string {
	if t.IsZero() {
		return "-"
	}
	return t.Local().Format("2006-01-02 15:04")
}
