package asked

import (
	"strings"

	"millside/cmd/millside/internal/prose"

	"github.com/spf13/pflag"
)

// headingKey is where a flag keeps the heading that it stands under in the help.
const headingKey = "millside-heading"

func withHeading(annotations map[string][]string, heading string) map[string][]string {
	if annotations == nil {
		annotations = map[string][]string{}
	}
	annotations[headingKey] = []string{heading}
	return annotations
}

// HeadingOf is the heading of a flag, "" for none.
func HeadingOf(flag *pflag.Flag) string {
	if h := flag.Annotations[headingKey]; len(h) > 0 {
		return h[0]
	}
	return ""
}

// FlagUsages lists flags for the help, wrapped at the width of a terminal: those without a heading first,
// then the others under theirs.
func FlagUsages(flags *pflag.FlagSet) string {
	var headings []string
	under := map[string]*pflag.FlagSet{}
	flags.VisitAll(func(flag *pflag.Flag) {
		h := HeadingOf(flag)
		if under[h] == nil {
			under[h] = pflag.NewFlagSet(h, pflag.ContinueOnError)
			under[h].SortFlags = false
			headings = append(headings, h)
		}
		under[h].AddFlag(flag)
	})
	var b strings.Builder
	if plain := under[""]; plain != nil {
		b.WriteString(plain.FlagUsagesWrapped(prose.TextWidth))
	}
	for _, h := range headings {
		if h != "" {
			b.WriteString("\n " + h + ":\n" + under[h].FlagUsagesWrapped(prose.TextWidth))
		}
	}
	return b.String()
}
