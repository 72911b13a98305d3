package main

import (
	"fmt"
	"slices"
	"strings"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/planout"
	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/recordout"
	"millside/cmd/millside/internal/schema"
	"millside/cmd/millside/internal/sheetout"
	"millside/plan/measure"

	"github.com/spf13/cobra"
)

const schemaLong = `Prints the JSON Schema (draft 2020-12) of a format that --json or --format json prints;
without a format it lists them. What a schema doesn't name may be added to a format later,
so a reader should let unknown fields pass; no field is renamed or taken away under the
format's name.`

// formats lists the structures that are printed for programs.
func formats() []schema.Format {
	list := slices.Concat(planout.Formats(), recordout.Formats(), sheetout.Formats())
	return append(list, schema.Format{Name: atHandFormat, Value: atHandJSON{}, About: aboutAtHand})
}

const aboutAtHand = `One object with "format": "millside-at-hand-1", path, found (whether the
file is there), errors (texts) and at_hand: mills, boards, paddles, reeds, raddles and
yarns, those that there are.`

func (a *app) schemaCmd() *cobra.Command {
	var names []string
	for _, f := range formats() {
		names = append(names, f.Name)
	}
	return &cobra.Command{
		Use: "schema [FORMAT]", Short: "print the JSON Schema of what --json prints", Long: schemaLong,
		Example:           "  millside schema\n  millside schema millside-plan-2",
		Args:              asked.Args(0, 1, "the name of one format"),
		ValidArgsFunction: cobra.FixedCompletions(names, cobra.ShellCompDirectiveNoFileComp),
		RunE: func(cmd *cobra.Command, given []string) error {
			if len(given) == 0 {
				fmt.Fprintln(a.out, strings.Join(names, "\n"))
				return nil
			}
			for _, f := range formats() {
				if f.Name == given[0] {
					return prose.WriteJSON(a.out, f.Schema())
				}
			}
			return asked.Usage(cmd, &measure.FieldError{Field: "format", Value: given[0], Want: "one of " +
				strings.Join(names, ", ")})
		},
	}
}
