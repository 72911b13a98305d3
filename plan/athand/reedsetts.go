package athand

import (
	"cmp"
	"slices"

	"millside/plan/loom"
	"millside/plan/measure"
)

// ReedSetts is what a reed gives near a sett, with the names that it has.
type ReedSetts struct {
	// Names are those of reeds at hand that are alike; none for a reed that isn't at hand.
	Names string
	// Planned says that it is the reed of the plan.
	Planned bool
	loom.ReedSetts
}

// Alike names reeds that are the same once: "ten, old ten".
func Alike(reeds []NamedReed) []NamedReed {
	var list []NamedReed
	for _, n := range reeds {
		if i := slices.IndexFunc(list, func(m NamedReed) bool { return m.Reed == n.Reed }); i >= 0 {
			list[i].Name += ", " + n.Name
			continue
		}
		list = append(list, n)
	}
	return list
}

// SettsOf lists what the reed of a plan, which may be the zero value, gives near a sett, and then what each reed at
// hand gives; see [loom.SettsOf].
func SettsOf(reeds []NamedReed, planned loom.Reed, wanted measure.Sett, ends int) []ReedSetts {
	alike := Alike(reeds)
	all, at := []loom.Reed{}, map[loom.Reed]ReedSetts{}
	known := planned.IsZero()
	for _, n := range alike {
		same := n.Reed == planned
		all, at[n.Reed], known = append(all, n.Reed), ReedSetts{Names: n.Name, Planned: same}, known || same
	}
	if !known {
		all, at[planned] = append(all, planned), ReedSetts{Planned: true}
	}
	var list []ReedSetts
	for _, setts := range loom.SettsOf(all, wanted, ends) {
		one := at[setts.Reed]
		one.ReedSetts = setts
		list = append(list, one)
	}
	slices.SortStableFunc(list, func(a, b ReedSetts) int {
		switch {
		case a.Planned == b.Planned:
			return 0
		case a.Planned:
			return -1
		default:
			return 1
		}
	})
	return list
}

// Title names the reed in a table: by its names, or by its dents where it isn't at hand.
func (r ReedSetts) Title() string {
	text := cmp.Or(r.Names, r.Reed.String())
	if r.Planned {
		text += ", this plan's"
	}
	return text
}
