package project

import (
	"fmt"

	"millside/plan"
	"millside/plan/measure"
	"millside/plan/wind"
)

// Label names the choice in a few words.
func (c Choice) Label() string {
	switch c.Kind {
	case ShortPass:
		return fmt.Sprintf("group of %d, last pass of %d", c.Group, c.LastEnds)
	case SpareEnds:
		return fmt.Sprintf("group of %d, %s", c.Group, measure.Counted(c.Spares, "spare end", "spare ends"))
	default:
		return fmt.Sprintf("group of %d, all full", c.Group)
	}
}

// reasons says what is good and what is bad about the choice: how much it is, its troubles in the order of
// the ranking, and its time.
func (c Choice) reasons(s plan.Spec) []string {
	list := []string{measure.Counted(c.Passes, "pass", "passes"), c.lastPassReason(), c.finishReason()}
	if c.Flicks > 0 {
		list = append(list, fmt.Sprintf("the paddle is flicked once more round the near peg, %s in all",
			measure.Counted(c.Flicks, "time", "times")))
	}
	list = append(list, c.packageReason())
	if text := c.raddleReason(s); text != "" {
		list = append(list, text)
	}
	text := c.Time.String()
	if c.Slow {
		text += ", far longer than the quickest way"
	}
	return append(list, text)
}

func (c Choice) lastPassReason() string {
	switch {
	case c.Kind == SpareEnds:
		return measure.Counted(c.Spares, "spare end is wound", "spare ends are wound")
	case c.Kind == Divides:
		return "every pass is full"
	case c.CutShort == 0:
		return fmt.Sprintf("the only pass carries %d", c.LastEnds)
	default:
		return fmt.Sprintf("the last pass carries %d, so %s cut off at the %s before it", c.LastEnds,
			measure.Counted(c.CutShort, "end is", "ends are"), c.CutAt)
	}
}

func (c Choice) finishReason() string {
	switch {
	case c.AtCross == 0 && c.Chains > 1:
		return allChains(c.Chains) + " stop at the lease"
	case c.Chains > 1:
		return fmt.Sprintf("%d of %s at the counting cross, where the last group is harder to fasten", c.AtCross,
			measure.Counted(c.Chains, "chain stops", "chains stop"))
	case c.AtCross > 0:
		return "stops at the counting cross: the last group is fastened at the far end, which is harder"
	case c.CutShort > 0 && c.CutAt == wind.FarPeg:
		return "stops at the lease, where it began"
	default:
		return "stops at the lease, where it began: nothing is left at the far end"
	}
}

func (c Choice) packageReason() string {
	text := measure.Counted(c.Work.Threads, "package", "packages")
	if c.Lacking > 0 {
		return text + fmt.Sprintf(", %d more than are at hand", c.Lacking)
	}
	return text
}

func allChains(n int) string {
	if n == 2 {
		return "both chains"
	}
	return fmt.Sprintf("all %d chains", n)
}
