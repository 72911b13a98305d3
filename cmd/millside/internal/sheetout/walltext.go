package sheetout

import (
	"fmt"
	"io"
	"strings"

	"millside/cmd/millside/internal/prose"
	"millside/plan/sheet"

	"github.com/charmbracelet/x/ansi"
)

// wallText writes the wall sheet, at most 80 columns wide.
func wallText(w io.Writer, s *sheet.Wall) error {
	title := prose.Wrap(prose.Clean(s.Title), 0)
	fmt.Fprintf(w, "%s\n%s\n", title, strings.Repeat("=", min(ansi.StringWidth(title), prose.TextWidth)))
	if s.Date != "" {
		fmt.Fprintln(w, prose.Clean(s.Date))
	}
	fmt.Fprintln(w, prose.Wrap(cellText(s.Summary()), 0))
	if s.Striped() {
		heading(w, "Stripes")
		for _, c := range s.Colours {
			fmt.Fprintln(w, prose.Wrap(prose.Clean(c.String()), 2))
		}
		fmt.Fprintf(w, "\n%s\n", prose.Wrap(stripesText(s), 0))
	}
	heading(w, "Thread")
	fmt.Fprintf(w, "%s\n%s\n", prose.Wrap(prose.Clean(s.Thread.Text), 0), sentence(s.Thread.Foot))
	heading(w, "Over the pegs and round them")
	for _, way := range s.Ways {
		fmt.Fprintln(w, prose.Wrap(way.Title()+": "+way.String(), 2))
	}
	for _, c := range s.Wound {
		chainText(w, s, c)
	}
	for _, e := range s.After {
		heading(w, e.Heading(s.Chains))
		for _, step := range e.Steps {
			fmt.Fprintf(w, "[ ] %s\n", prose.Wrap(step, 4))
		}
	}
	if len(s.Beside) > 0 {
		heading(w, sheet.BesideHeading)
		for _, line := range s.Beside {
			fmt.Fprintf(w, "[ ] %s\n", prose.Wrap(line, 4))
		}
	}
	if s.Picked != nil {
		heading(w, sheet.PickedHeading)
		fmt.Fprintln(w, prose.Wrap(prose.Clean(s.Picked.String()), 0))
		for _, b := range s.Picked.Blocks {
			fmt.Fprintf(w, "[ ] %s\n", prose.Wrap(b.Ends()+": "+b.String(), 4))
		}
	}
	heading(w, "Take care")
	for _, caution := range s.Cautions {
		fmt.Fprintf(w, "- %s\n", prose.Wrap(caution, 2))
	}
	fmt.Fprintln(w)
	for _, line := range s.Key() {
		fmt.Fprintln(w, prose.Wrap(line, 0))
	}
	return nil
}

func heading(w io.Writer, text string) {
	fmt.Fprintf(w, "\n%s\n%s\n", strings.ToUpper(text), strings.Repeat("-", ansi.StringWidth(text)))
}

// stripesText writes the stripes in the weaver's notation, or in letters: "8 A, 4 B".
func stripesText(s *sheet.Wall) string {
	if s.Stripes != "" {
		return prose.Clean(s.Stripes)
	}
	var parts []string
	for _, r := range s.Runs {
		letter := "·"
		if r.Colour > 0 {
			letter = s.Colours[r.Colour-1].Letter
		}
		parts = append(parts, fmt.Sprintf("%d %s", r.Ends(), letter))
	}
	return "From end 1 on: " + strings.Join(parts, ", ")
}

func chainText(w io.Writer, s *sheet.Wall, c sheet.Chain) {
	heading(w, c.Heading(s.Chains))
	for _, b := range c.Blocks {
		indent := ""
		if b.Times > 1 {
			fmt.Fprintln(w, b.TimesText())
			indent = "  "
		}
		for _, step := range b.Steps {
			if step.Work != "" {
				fmt.Fprintf(w, "%s* %s\n", indent, prose.Wrap(prose.Clean(step.Work), len(indent)+2))
			}
			carried := step.Carried()
			if step.Letters != "" {
				carried += ": " + step.Letters
			}
			fmt.Fprintf(w, "%s%s\n", indent, prose.Wrap(carried, len(indent)))
			for _, line := range boxLines(s.Passes, step.Passes, prose.TextWidth-len(indent)) {
				fmt.Fprintf(w, "%s%s\n", indent, line)
			}
		}
	}
	if len(c.Ties) > 0 {
		fmt.Fprintln(w, "Count ties at the counting cross:")
	}
	for _, t := range c.Ties {
		fmt.Fprintf(w, "  [ ] %s\n", prose.Wrap(t.String(), 6))
	}
}

// boxLines writes boxes to tick, each with its pass, in lines of at most so many columns. What is laid in one
// go stands together; a wider gap is where there is work at the peg.
func boxLines(all int, rounds [][]int, width int) []string {
	var lines []string
	line := ""
	for _, passes := range rounds {
		gap := "  "
		for _, b := range makeBoxes(all, passes) {
			text := "[ ] " + b.Text
			switch {
			case line == "":
				line = text
			case len(line)+len(gap)+len(text) > width:
				lines = append(lines, line)
				line = text
			default:
				line += gap + text
			}
			gap = " "
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// sentence makes a sentence of words that may also stand behind others.
func sentence(words string) string { return strings.ToUpper(words[:1]) + words[1:] + "." }
