package asked

import (
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// shortForms are the letters of the options that are typed most, the same for every command that has them.
var shortForms = map[string]string{
	"ends": "e", "length": "l", "name": "n", "stripes": "s", "group": "g", "yarn": "y", "units": "u",
	"json": "j", "wall": "w", "format": "f", "output": "o", "plain": "p", "records": "r",
}

// AddShortForms gives the options of the commands below a command their letters. Options that a command
// hands down must have theirs already.
func AddShortForms(cmd *cobra.Command) {
	for _, below := range cmd.Commands() {
		if !below.HasPersistentFlags() {
			shorten(below.Flags(), below.ResetFlags, below.Flags)
		}
		AddShortForms(below)
	}
}

// shorten puts the options of a set anew, since a set learns of a letter only when an option is added.
func shorten(set *pflag.FlagSet, empty func(), now func() *pflag.FlagSet) {
	var all []*pflag.Flag
	sorted := set.SortFlags
	set.SortFlags = false
	set.VisitAll(func(f *pflag.Flag) { all = append(all, f) })
	empty()
	for _, f := range all {
		if letter := shortForms[f.Name]; letter != "" {
			f.Shorthand = letter
		}
		now().AddFlag(f)
	}
	now().SortFlags = sorted
}
