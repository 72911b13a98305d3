package recordout

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"

	"millside/cmd/millside/internal/prose"
	"millside/counter/journal"
	"millside/plan/times"
)

// ListText writes the records of a folder as a table.
// The pace gives the time of those that aren't finished.
func ListText(w io.Writer, dir string, list []journal.Summary, pace times.Pace) {
	if len(list) == 0 {
		fmt.Fprintf(w, "There are no records in %s.\n'millside practice' opens a practice warp, 'millside new' "+
			"plans one of your own.\n", prose.Clean(dir))
		return
	}
	rows := [][]any{{"File", "Passes", "Ends", "State", "Last touched", "Warp"}}
	for _, sum := range list {
		rows = append(rows, []any{prose.Clean(filepath.Base(sum.Path)), fmt.Sprintf("%d of %d", sum.Laid, sum.Passes),
			fmt.Sprintf("%d of %d", sum.Standing, sum.Ends), summaryState(sum), prose.When(sum.Last),
			prose.Clean(sum.Name)})
	}
	prose.Table(w, rows)
	unfinishedText(w, list, pace)
	finishedText(w, list)
	for _, sum := range list {
		if sum.Err != nil {
			fmt.Fprintf(w, "\n%s\n", prose.Wrap(prose.Clean(HelpDamaged(sum.Err, sum.Path).Error()), 0))
		} else if sum.Lost.Lines > 0 {
			text := fmt.Sprintf("%s: %s at the end can't be read: passes that were counted are missing; before you "+
				"go on, count the groups at the pegs",
				prose.Clean(sum.Path), sum.Lost)
			fmt.Fprintf(w, "\n%s\n", prose.Wrap(text, 0))
		} else if sum.Torn {
			fmt.Fprintf(w, "\n%s\n", prose.Wrap(prose.Clean(sum.Path)+
				": the end of the file was cut short, perhaps by a power cut; what was cut is left out", 0))
		}
	}
}

// unfinishedText writes the time that is planned for the warps that aren't off the mill.
func unfinishedText(w io.Writer, list []journal.Summary, pace times.Pace) {
	rows := [][]any{{"On the mill", "Time in all", "By"}}
	for _, sum := range list {
		if sum.Finished || sum.Err != nil {
			continue
		}
		rows = append(rows, []any{prose.Clean(filepath.Base(sum.Path)), sum.Spec.TimeOf(sum.Work, pace),
			sum.Spec.TimeSource(pace)})
	}
	if len(rows) > 1 {
		fmt.Fprintln(w)
		prose.Table(w, rows)
	}
}

// finishedText writes the pace and the yarn of the finished warps.
func finishedText(w io.Writer, list []journal.Summary) {
	rows := [][]any{{"Finished", "Pace", "Yarn used"}}
	for _, sum := range list {
		if !sum.Finished || sum.Err != nil {
			continue
		}
		pace := "-"
		if sum.Pace.Passes > 0 {
			pace = sum.Pace.String()
		}
		rows = append(rows, []any{prose.Clean(filepath.Base(sum.Path)), pace,
			prose.Length(sum.Yarn, sum.Spec.Units.Long())})
	}
	if len(rows) > 1 {
		fmt.Fprintln(w)
		prose.Table(w, rows)
	}
}

func summaryState(sum journal.Summary) string {
	var damage *journal.DamageError
	switch {
	case errors.As(sum.Err, &damage):
		return "damaged"
	case errors.Is(sum.Err, journal.ErrNewer):
		return "too new"
	case sum.Err != nil:
		return "can't be read"
	case sum.Finished:
		return "finished"
	case sum.Wound:
		return "wound, to be tied off"
	case sum.Laid == 0:
		return "not begun"
	}
	return "being wound"
}
