package sheet

import (
	"fmt"
	"strings"

	"millside/plan"
	"millside/plan/measure"
)

// Picked is the order list of a chain for each colour: in what order the ends of the several leases go into the
// raddle or the reed.
type Picked struct {
	// Leases says for each colour which chains its ends are picked from, in the order of the letters.
	Leases []string `json:"leases"`
	// Blocks is the order from end 1 on, what repeats drawn together.
	Blocks []PickBlock `json:"blocks"`
	// FirstEnd says on which side of the loom end 1 lies: "left" or "right".
	FirstEnd string `json:"first_end"`
	// Picks is how many picks the order takes, each of neighbouring ends of one colour.
	Picks int `json:"picks"`
}

// PickBlock is some picks that are gone through so many times, over the ends from First to Last.
type PickBlock struct {
	First int    `json:"first" about:"its first end, by its number in the warp"`
	Last  int    `json:"last" about:"its last end, by its number in the warp"`
	Times int    `json:"times"`
	Picks []Pick `json:"picks"`
}

// Pick is so many ends from the lease of one colour.
type Pick struct {
	Ends   int    `json:"ends"`
	Colour int    `json:"colour" about:"counted from 1 in colours"`
	Letter string `json:"letter"`
}

// PickedHeading stands over the order list.
const PickedHeading = "Order list, for raddle or reed"

// picked is the order list of a warp with a chain for each colour; nil for any other.
func picked(p *plan.Plan) *Picked {
	if !p.ByColour() {
		return nil
	}
	list := &Picked{FirstEnd: p.Spec.Loom.FirstEnd.String()}
	var picks []Pick
	for _, run := range p.EndRuns() {
		picks = append(picks, Pick{run.Ends(), run.Colour, string(plan.Letter(run.Colour))})
	}
	list.Picks = len(picks)
	end := 0
	foldAlike(picks, func(a, b Pick) bool { return a == b }, func(times int, part []Pick) {
		block := PickBlock{First: end + 1, Times: times, Picks: part}
		for _, one := range part {
			end += times * one.Ends
		}
		block.Last = end
		list.Blocks = append(list.Blocks, block)
	})
	for _, use := range p.ColourUses() {
		var chains []int
		for _, c := range p.Chains {
			if p.ChainColour(c.Number) == use.Colour {
				chains = append(chains, c.Number)
			}
		}
		name := "chain "
		if len(chains) > 1 {
			name = "chains "
		}
		list.Leases = append(list.Leases, p.ColourText(use.Colour)+": "+name+plan.Listed(chains))
	}
	return list
}

// String says what the list is and where it is picked from.
func (l *Picked) String() string {
	return fmt.Sprintf("Pick from %s: %s. Within a colour in the order of its lease, the end at the foot of the peg "+
		"first, and of several chains the one after the other. End 1 lies on the %s of the loom.",
		measure.Counted(len(l.Leases), "lease", "leases"), strings.Join(l.Leases, "; "), l.FirstEnd)
}

// Ends names the ends of the block: "ends 1 to 68".
func (b PickBlock) Ends() string {
	if b.First == b.Last {
		return fmt.Sprintf("end %d", b.First)
	}
	return fmt.Sprintf("ends %d to %d", b.First, b.Last)
}

// String is the block in letters: "4 times (8 C, 9 D)".
func (b PickBlock) String() string {
	var parts []string
	for _, one := range b.Picks {
		parts = append(parts, fmt.Sprintf("%d %s", one.Ends, one.Letter))
	}
	text := strings.Join(parts, ", ")
	if b.Times > 1 {
		text = fmt.Sprintf("%d times (%s)", b.Times, text)
	}
	return text
}
