package main

import (
	"errors"
	"strings"

	"millside/plan"

	"github.com/spf13/cobra"
)

// specFlags adds a flag for every field of a plan. The flags write into spec, which holds the values
// used for flags that are not given.
func specFlags(cmd *cobra.Command, spec *plan.Spec) {
	f := cmd.Flags()
	f.SortFlags = false // in the order in which a weaver decides
	f.StringVar(&spec.Name, "name", spec.Name, "what you call the warp: a `text` of 1 to 60 characters")
	f.Var(countValue{&spec.Ends}, "ends", "ends wanted, 1 to 100000")
	f.Var(countValue{&spec.Group}, "group", "ends carried by the paddle on a pass")
	f.Var(countValue{&spec.Positions}, "positions", "holes and slots in the paddle, 1 to 60")
	f.Var(lengthValue{&spec.Length}, "length", "length of the warp, such as \"5 yd\", \"7 1/2 yd\" or 6.4m")
	f.Var(lengthValue{&spec.Mill.Circumference}, "circumference", "once round the mill")
	f.Var(lengthValue{&spec.Mill.PegStep}, "peg-step", "from one place for the end pegs to the next, along the mill's round")
	f.Var(lengthValue{&spec.Mill.Rise}, "rise", "how far the warp climbs in one turn")
	words(cmd, "hand", &spec.Hand, "which hand leads the paddle", "right", "left")
	words(cmd, "return-order", &spec.ReturnOrder, "how a return pass lies in the lease", "same", "mirrored")
	words(cmd, "last-pass", &spec.LastPass, "the last pass where the group doesn't divide the ends; a full one lays spare ends", "short", "full")
	f.Var(countValue{&spec.ChainEnds}, "chain-ends", "most ends in one chain; 0 for one chain")
	f.Var(countValue{&spec.TieEvery}, "tie-every", "ends from one count tie to the next; 0 for none")
	f.Var(guardValue{&spec.GuardMillis}, "guard", "shortest time between two passes that are counted; 0 for none")
	f.Var(countValue{&spec.RestMinutes}, "rest", "minutes of winding before a reminder to rest the hands; 0 for none")
	f.BoolVar(&spec.Dyed, "dyed", spec.Dyed, "the warp will be dyed, so the ties are loose")
	words(cmd, "dressing", &spec.Dressing, "what the loom takes first", "raddle first", "reed first")
	words(cmd, "units", &spec.Units, "units that lengths are shown in", "imperial", "metric")
}

// words adds a flag that takes one of a few words, and completes them.
func words(cmd *cobra.Command, name string, of textValue, help string, choices ...string) {
	cmd.Flags().Var(wordValue{of}, name, help+": "+strings.Join(choices, " or "))
	// The error would say that there is no such flag, or that it is completed already.
	_ = cmd.RegisterFlagCompletionFunc(name, cobra.FixedCompletions(choices, cobra.ShellCompDirectiveNoFileComp))
}

// flagOf names the flag of each field that a plan may refuse.
var flagOf = map[string]string{
	"name": "name", "ends": "ends", "group": "group", "paddle positions": "positions", "length": "length",
	"mill circumference": "circumference", "peg step": "peg-step", "rise a turn": "rise",
	"ends in a chain": "chain-ends", "count tie every": "tie-every", "guard": "guard",
	"rest every": "rest",
}

// checkFlags works the plan out, and refuses values that are out of range by the names of their flags.
func checkFlags(cmd *cobra.Command, spec plan.Spec) (*plan.Plan, error) {
	p, err := plan.New(spec)
	wrong := plan.FieldErrors(err)
	if len(wrong) == 0 {
		return p, err
	}
	var all []error
	for _, fe := range wrong {
		named := *fe
		if flag, ok := flagOf[fe.Field]; ok {
			named.Field = "--" + flag
		}
		all = append(all, &named)
	}
	return nil, usage(cmd, errors.Join(all...))
}
