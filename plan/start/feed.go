package start

import (
	"cmp"
	"slices"
	"strings"

	"millside/plan"
	"millside/plan/measure"
)

// slot is a place for one package in a warp: what a package gives that feeds it. A colour has as many as its
// packages are threaded at once.
type slot struct {
	colour       string
	passes, ties int
	until        int // the last pass that it is taken for, while slots are made
}

// needs is the yarn that a slot takes of its package on a way of the mill that is so long.
func (s slot) needs(way measure.Length, x plan.Extras) measure.Length {
	return (way + x.PerPass).Times(s.passes) + x.PerTie.Times(s.ties)
}

// anyYarn is a size for counting lengths only, where the size isn't known.
func anyYarn() measure.YarnSize {
	y, _ := measure.NewYarnSize(measure.MetresPerKilogram, 1000*measure.YarnNumberOne, 1)
	return y
}

// slotsOf lists the slots of a plan: each time a position is threaded with a colour, the first of its slots that is
// free then is taken. They depend on the passes and on nothing else.
func slotsOf(p *plan.Plan) ([]slot, error) {
	counted := *p
	counted.Spec.Yarn.Cones = nil
	if counted.Spec.Yarn.Size.IsZero() {
		counted.Spec.Yarn.Size = anyYarn()
	}
	use, err := counted.Yarn(counted.Cones(), p.Spec.Extras())
	if err != nil {
		return nil, err
	}
	cones := use.Cones
	slices.SortStableFunc(cones, func(a, b plan.ConeUse) int { return cmp.Compare(a.Cone.FromPass, b.Cone.FromPass) })
	var slots []slot
	for _, c := range cones {
		if c.Passes == 0 {
			continue
		}
		to := c.Cone.ToPass
		if to == 0 {
			to = p.Passes()
		}
		at := slices.IndexFunc(slots, func(s slot) bool {
			return s.colour == c.Cone.Colour && s.until < max(c.Cone.FromPass, 1)
		})
		if at < 0 {
			at = len(slots)
			slots = append(slots, slot{colour: c.Cone.Colour})
		}
		slots[at].passes += c.Passes
		slots[at].ties += c.Ties
		slots[at].until = to
	}
	return slots, nil
}

// Use is what one package gives to the warp.
type Use struct {
	// Package is what it is, Number its place among those on hand, counted from 1; 0 for one that is wound over, or
	// that there need only be.
	Package Package
	Number  int
	// Passes is how many passes it feeds, Ties how often it is tied on for that. Both are 0 for one that is left whole.
	Passes, Ties int
	// Holds is the yarn on it, 0 where it isn't on hand; Used is what it gives. Left remains, Short is missing: one
	// of these two is nothing.
	Holds, Used, Left, Short measure.Length
	// UsedMass is the weight of Used, rounded up to a nanogram, LeftMass that of Left, rounded down; 0 where the
	// yarn's size isn't known.
	UsedMass, LeftMass measure.Mass
}

// feeding gives each slot a package: of each colour the fullest package where most is taken. Packages beyond the
// slots are left whole; where there are fewer, they are wound over. No other way round of the same slots suffices
// where this one doesn't.
type feeding struct {
	slots    []slot
	packages []held
	extras   plan.Extras
}

// held is a package and the yarn on it.
type held struct {
	Package
	number int
	holds  measure.Length
}

// at gives the use of each package on a way that is so long; ok says that all suffice.
func (f feeding) at(way measure.Length) (uses []Use, ok bool) {
	ok = true
	slots := slices.Clone(f.slots)
	slices.SortStableFunc(slots, func(a, b slot) int {
		return cmp.Compare(b.needs(way, f.extras), a.needs(way, f.extras))
	})
	left := slices.Clone(f.packages)
	slices.SortStableFunc(left, func(a, b held) int { return cmp.Compare(b.holds, a.holds) })
	for _, s := range slots {
		i := slices.IndexFunc(left, func(p held) bool {
			return s.colour == "" || strings.EqualFold(p.Colour, s.colour)
		})
		if i < 0 {
			return nil, false
		}
		u := Use{Package: left[i].Package, Number: left[i].number, Passes: s.passes, Ties: s.ties, Holds: left[i].holds,
			Used: s.needs(way, f.extras)}
		u.Left, u.Short = max(u.Holds-u.Used, 0), max(u.Used-u.Holds, 0)
		ok = ok && u.Short == 0
		uses = append(uses, u)
		left = slices.Delete(left, i, i+1)
	}
	for _, p := range left {
		uses = append(uses, Use{Package: p.Package, Number: p.number, Holds: p.holds, Left: p.holds})
	}
	slices.SortStableFunc(uses, func(a, b Use) int { return cmp.Compare(a.Number, b.Number) })
	return uses, ok
}

// reach is the longest way for which the package of a use suffices, rounded down to a nanometre.
func (u Use) reach(x plan.Extras) measure.Length {
	return (u.Holds-x.PerTie.Times(u.Ties))/measure.Length(u.Passes) - x.PerPass
}
