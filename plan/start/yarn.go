package start

import (
	"cmp"
	"math/big"
	"slices"
	"strings"

	"millside/plan"
	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/measure"
)

// yarn finds the yarn that the warp takes, and what is left of that on hand.
func (s *solver) yarn() error {
	s.packagesAsked()
	p, err := s.planOf(s.spec.Ends, s.spec.Length, false)
	if err != nil {
		return err
	}
	way, ok := s.way(s.spec.Length)
	if !ok {
		return field.Length.Wrong(s.spec.Length.String(), "a length that the board gives")
	}
	s.tellWarp(s.spec.Length, "rounded up to what the pegs give")
	if err := s.tellYarn(p, way); err != nil {
		return err
	}
	if len(s.k.OnHand) > 0 {
		return s.use(p, way)
	}
	slots, err := slotsOf(p)
	if err != nil {
		return err
	}
	x := p.Spec.Extras()
	for _, slot := range slots {
		u := Use{Package: Package{Colour: slot.colour}, Passes: slot.passes, Ties: slot.ties, Used: slot.needs(way, x)}
		s.Packages = append(s.Packages, u)
	}
	slices.SortStableFunc(s.Packages, func(a, b Use) int {
		return cmp.Or(strings.Compare(a.Package.Colour, b.Package.Colour), cmp.Compare(b.Used, a.Used))
	})
	return nil
}

// tellYarn shows the yarn of the whole warp, by the rules of the plan's own lines.
func (s *solver) tellYarn(p *plan.Plan, way measure.Length) error {
	long, short, x := s.spec.Units.Long(), s.spec.Units.Short(), p.Spec.Extras()
	n, ties := p.EndsWound(), p.WorkSum().Ties
	total := way.Times(n) + p.PegYarn(x) + p.TailYarn(x)
	if n != s.spec.Ends {
		s.note("%d ends are wound, %s", n, measure.Counted(n-s.spec.Ends, "spare end", "spare ends"))
	}
	s.step("yarn in the ends", cell(atLeast(way.Times(n), long)), "ends x length on the "+s.frame(),
		figure.Say("%d x %s = %s", n, way.As(long, 2), atLeast(way.Times(n), long)))
	if x.PerPass > 0 {
		s.step("at the pegs", cell(atLeast(p.PegYarn(x), long)), "ends x extra a pass",
			figure.Say("%d x %s = %s", n, x.PerPass.As(short, 1), atLeast(p.PegYarn(x), long)))
	}
	if x.PerTie > 0 {
		s.step("in tails", cell(atLeast(p.TailYarn(x), long)), "ends tied on x tails",
			figure.Say("%d x %s = %s", ties, x.PerTie.As(short, 1), atLeast(p.TailYarn(x), long)))
	}
	s.step("yarn", cell(atLeast(total, long)), "the sum, rounded up", figure.Say("%s + %s + %s = %s",
		atLeast(way.Times(n), long), atLeast(p.PegYarn(x), long), atLeast(p.TailYarn(x), long), atLeast(total, long)))
	s.Answer = cell(atLeast(total, long))
	if s.spec.Yarn.Size.IsZero() {
		return nil
	}
	use, err := p.Yarn(unweighed(p), x)
	if err != nil {
		return err
	}
	heavy := s.spec.Units.Heavy()
	s.step("it weighs", cell(use.Mass.AtLeast(heavy, 3)), "yarn / length in a weight, rounded up",
		figure.Say("%s / %s = %s", atLeast(total, long), s.spec.Yarn.Size.PerMass(s.spec.Units),
			use.Mass.AtLeast(heavy, 3)))
	s.Answer = s.Answer.And(", %s", use.Mass.AtLeast(heavy, 3))
	return nil
}

// unweighed lists the plan's cones without weights.
func unweighed(p *plan.Plan) []plan.Cone {
	cones := p.Cones()
	for i := range cones {
		cones[i].Gross, cones[i].Tube = 0, 0
	}
	return cones
}

// checkYarn says what is left of the yarn on hand where the warp follows from something else.
func (s *solver) checkYarn() error {
	if len(s.k.OnHand) == 0 || !s.HasEnds || !s.HasLength {
		return nil
	}
	s.packagesAsked()
	p, err := s.planOf(s.spec.Ends, s.spec.Length, false)
	if err != nil {
		return err
	}
	way, ok := s.way(s.spec.Length)
	if !ok {
		return field.Length.Wrong(s.spec.Length.String(), "a length that the board gives")
	}
	return s.use(p, way)
}

// use gives the packages on hand to a warp, enough or not.
func (s *solver) use(p *plan.Plan, way measure.Length) error {
	f, err := s.feed(p)
	if err != nil {
		return err
	}
	uses, ok := f.at(way)
	s.Packages, s.Short = uses, !ok
	if u, any := limiting(uses, func(u Use) *big.Rat { return big.NewRat(int64(u.Left-u.Short), 1) }); any {
		s.tellHeld(u)
		long, short := s.spec.Units.Long(), s.spec.Units.Short()
		name, value := "left on it", atMost(u.Left, long)
		if u.Short > 0 {
			name, value = "short on it", atLeast(u.Short, long)
		}
		s.step(name, cell(value), "yarn - passes x (warp + extra a pass) - times tied on x tails",
			figure.Say("%s - %d x (%s + %s) - %d x %s = %s", atMost(u.Holds, long), u.Passes, way.As(long, 2),
				f.extras.PerPass.As(short, 1), u.Ties, f.extras.PerTie.As(short, 1), atMost(u.Holds-u.Used, long)))
	}
	return nil
}

// weigh adds the weights to the uses.
func (s *solver) weigh() error {
	y := s.spec.Yarn
	if y.Size.IsZero() {
		return nil
	}
	for i := range s.Packages {
		u := &s.Packages[i]
		var err error
		if u.UsedMass, err = y.Size.MassOf(u.Used); err != nil {
			return err
		}
		if u.Package.Gross > 0 {
			u.LeftMass = max(u.Package.net(y)-u.UsedMass, 0)
		}
	}
	return nil
}

// byNeed is the packages that feed the warp, those that give most first, as the positions of a plain warp take them.
func (s *solver) byNeed() []Use {
	list := slices.DeleteFunc(slices.Clone(s.Packages), func(u Use) bool { return u.Passes == 0 })
	slices.SortStableFunc(list, func(a, b Use) int {
		return cmp.Or(cmp.Compare(b.Used, a.Used), cmp.Compare(b.Holds, a.Holds))
	})
	return list
}
