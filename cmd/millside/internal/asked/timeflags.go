package asked

import (
	"github.com/spf13/cobra"

	"millside/plan"
	"millside/plan/times"
)

// timeFlags adds a flag for each of the weaver's times. They show the usual ones until they are given.
func timeFlags(cmd *cobra.Command, t *times.HandTimes) {
	f := cmd.Flags()
	if *t == (times.HandTimes{}) {
		*t = times.DefaultHandTimes()
	}
	f.Var(unset(minutesValue{&t.Pass}), "minutes-pass",
		"minutes that a whole pass takes, whatever the turns; goes before handling, turn and your own pace")
	f.Var(minutesValue{&t.Handling}, "minutes-handling", "minutes that a pass takes at its two ends")
	f.Var(minutesValue{&t.Turn}, "minutes-turn", "minutes that a turn of the mill takes")
	f.Var(minutesValue{&t.Halt}, "minutes-halt", "minutes to halt at a peg, however much is done there")
	f.Var(minutesValue{&t.Cut}, "minutes-cut", "minutes to cut off an end")
	f.Var(minutesValue{&t.Tie}, "minutes-tie", "minutes to tie on an end")
	f.Var(minutesValue{&t.Thread}, "minutes-thread", "minutes to thread a package")
	f.Var(minutesValue{&t.Far}, "minutes-far", "minutes more to finish a chain at the counting cross")
}

// settleTimes leaves the usual times out of the spec, so that a plan file holds only what was given.
func settleTimes(s *plan.Spec) {
	if s.Times == times.DefaultHandTimes() {
		s.Times = times.HandTimes{}
	}
}
