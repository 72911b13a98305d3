package main

import (
	"millside/plan"

	"github.com/spf13/cobra"
)

// completeHand offers the names of the things at hand to a shell.
func (a *app) completeHand(names func(plan.AtHand) []string) cobra.CompletionFunc {
	return func(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
		path, err := a.atHandPath()
		if err != nil {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		hand, _, _ := readAtHand(path) // what can be read of it will do
		return names(hand), cobra.ShellCompDirectiveNoFileComp
	}
}

// completeNames lets a shell complete the flags that take the name of a thing at hand.
func (a *app) completeNames(cmd *cobra.Command) {
	for flag, names := range map[string]func(plan.AtHand) []string{
		"mill": func(h plan.AtHand) []string { return namesOf(h.Mills, func(n plan.NamedMill) string { return n.Name }) },
		"board": func(h plan.AtHand) []string {
			return namesOf(h.Boards, func(n plan.NamedBoard) string { return n.Name })
		},
		"paddle": func(h plan.AtHand) []string {
			return namesOf(h.Paddles, func(n plan.NamedPaddle) string { return n.Name })
		},
		"reed": func(h plan.AtHand) []string { return namesOf(h.Reeds, func(n plan.NamedReed) string { return n.Name }) },
		"raddle": func(h plan.AtHand) []string {
			return namesOf(h.Raddles, func(n plan.NamedRaddle) string { return n.Name })
		},
		"yarn": namesOfYarns, "weft": namesOfYarns,
	} {
		_ = cmd.RegisterFlagCompletionFunc(flag, a.completeHand(names)) // fails only for a flag that doesn't exist
	}
}

func namesOfYarns(h plan.AtHand) []string {
	return namesOf(h.Yarns, func(n plan.NamedYarn) string { return n.Name })
}

func namesOf[T any](list []T, name func(T) string) []string {
	var names []string
	for _, t := range list {
		names = append(names, clean(name(t)))
	}
	return names
}
