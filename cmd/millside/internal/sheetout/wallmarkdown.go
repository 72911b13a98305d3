package sheetout

import (
	"fmt"
	"io"
	"strings"

	"millside/plan/sheet"
)

// wallMarkdown writes the wall sheet as Markdown.
func wallMarkdown(w io.Writer, s *sheet.Wall) error {
	fmt.Fprintf(w, "# %s\n", escaped(s.Title))
	if s.Date != "" {
		fmt.Fprintf(w, "\n%s\n", escaped(s.Date))
	}
	fmt.Fprintf(w, "\n%s\n", cellMarkdown(s.Summary()))
	if s.Striped() {
		fmt.Fprint(w, "\n## Stripes\n\n")
		for _, c := range s.Colours {
			fmt.Fprintf(w, "- %s\n", escaped(c.String()))
		}
		fmt.Fprintf(w, "\n%s\n", escaped(stripesText(s)))
	}
	fmt.Fprintf(w, "\n## Thread\n\n%s. %s\n\n## Over the pegs and round them\n\n", escaped(s.Thread.Text),
		escaped(sentence(s.Thread.Foot)))
	for _, way := range s.Ways {
		fmt.Fprintf(w, "- **%s**: %s\n", escaped(way.Title()), escaped(way.String()))
	}
	for _, c := range s.Wound {
		chainMarkdown(w, s, c)
	}
	for _, e := range s.After {
		fmt.Fprintf(w, "\n## %s\n\n", escaped(e.Heading(s.Chains)))
		for _, step := range e.Steps {
			fmt.Fprintf(w, "- %s\n", escaped("[ ] "+step))
		}
	}
	if len(s.Beside) > 0 {
		fmt.Fprintf(w, "\n## %s\n\n", sheet.BesideHeading)
		for _, line := range s.Beside {
			fmt.Fprintf(w, "- %s\n", escaped("[ ] "+line))
		}
	}
	if s.Picked != nil {
		fmt.Fprintf(w, "\n## %s\n\n%s\n\n", sheet.PickedHeading, escaped(s.Picked.String()))
		for _, b := range s.Picked.Blocks {
			fmt.Fprintf(w, "- %s\n", escaped("[ ] "+b.Ends()+": "+b.String()))
		}
	}
	fmt.Fprint(w, "\n## Take care\n\n")
	for _, caution := range s.Cautions {
		fmt.Fprintf(w, "- %s\n", escaped(caution))
	}
	fmt.Fprintf(w, "\n%s\n", escaped(strings.Join(s.Key(), " ")))
	return nil
}

func chainMarkdown(w io.Writer, s *sheet.Wall, c sheet.Chain) {
	fmt.Fprintf(w, "\n## %s\n\n", escaped(c.Heading(s.Chains)))
	for _, b := range c.Blocks {
		indent := ""
		if b.Times > 1 {
			fmt.Fprintf(w, "- %s\n", escaped(b.TimesText()))
			indent = "  "
		}
		for _, step := range b.Steps {
			text := "**" + escaped(step.Carried()) + "**"
			if step.Letters != "" {
				text += ": " + escaped(step.Letters)
			}
			if step.Work != "" {
				text = escaped(step.Work) + " " + text
			}
			fmt.Fprintf(w, "%s- %s\n", indent, text)
			for _, passes := range step.Passes {
				fmt.Fprintf(w, "%s  - %s\n", indent,
					escaped(strings.Join(boxLines(s.Passes, [][]int{passes}, 1<<30), " ")))
			}
		}
	}
	if len(c.Ties) > 0 {
		fmt.Fprint(w, "\nCount ties at the counting cross:\n\n")
	}
	for _, t := range c.Ties {
		fmt.Fprintf(w, "- %s\n", escaped("[ ] "+t.String()))
	}
}
