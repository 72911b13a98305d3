package start

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"millside/plan"
	"millside/plan/entry"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/stripe"
)

// solver is one question while it is worked out.
type solver struct {
	Result
	ctx  context.Context
	k    Known
	spec plan.Spec
	// order is one repeat of the stripes, where there are any.
	order stripe.Order
	// body is the ends that take width: those without doubled and floating selvedges.
	body int
	// fromCloth says that the ends follow from the finished width by a sett that was given.
	fromCloth bool
}

// Solve finds the one thing. The error joins one [measure.FieldError] for each field that is missing, out of its
// range or at odds with another; where more than one thing is unknown, an [*UnclearError] says what to give. A striped
// warp is cut into passes for it, which ctx may end early.
func Solve(ctx context.Context, k Known) (*Result, error) {
	s := &solver{ctx: ctx, k: k}
	if err := s.begin(); err != nil {
		return nil, err
	}
	var err error
	if s.Find, err = k.infer(); err != nil {
		return nil, err
	}
	s.k.Find = s.Find
	if err := errors.Join(s.k.missing(), s.k.surplus()); err != nil {
		return nil, err
	}
	if err := s.known(); err != nil {
		return nil, err
	}
	switch s.Find {
	case TheLength:
		err = s.length()
	case ThePieces:
		err = s.pieces()
	case TheYarn:
		err = s.yarn()
	default:
		err = s.ends()
	}
	if err == nil {
		err = s.settle()
	}
	if err != nil {
		return nil, err
	}
	return &s.Result, nil
}

// begin checks what is known by itself, and takes the usual where no allowance is given.
func (s *solver) begin() error {
	k := s.k
	s.spec = entry.WithAssumed(k.Spec)
	s.spec.Name = k.Spec.Name
	var errs []error
	check := func(given bool, err error) {
		if given {
			errs = append(errs, err)
		}
	}
	check(k.Ends != 0, field.Ends.Check(k.Ends))
	check(k.Length != 0, field.Length.CheckLength(k.Length))
	check(k.FinishedWidth != 0, field.FinishedWidth.CheckLength(k.FinishedWidth))
	check(k.ReedWidth != 0, field.ReedSpan.CheckLength(k.ReedWidth))
	check(k.FinishedLength != 0, field.FinishedLength.CheckLength(k.FinishedLength))
	check(k.Pieces != 0, field.Pieces.Check(k.Pieces))
	for _, p := range k.OnHand {
		_, err := p.holds(s.spec.Yarn)
		errs = append(errs, err)
		if err != nil {
			break
		}
	}
	if !k.striped() {
		errs = append(errs, s.oneColour())
		return errors.Join(errs...)
	}
	_, order, err := stripe.Written(s.spec)
	s.order = order
	if err == nil {
		errs = append(errs, s.colours())
	}
	return errors.Join(append(errs, err)...)
}

// oneColour takes the colour of a plain warp from its packages, and refuses several.
func (s *solver) oneColour() error {
	for _, p := range s.k.OnHand {
		switch {
		case s.spec.Yarn.Colour == "":
			s.spec.Yarn.Colour = p.Colour
		case p.Colour != "" && !strings.EqualFold(p.Colour, s.spec.Yarn.Colour):
			return field.OnHand.Wrong(p.words(), "yarn of one colour, or the stripes in which the colours lie")
		}
	}
	return nil
}

// colours refuses packages that no stripe uses, and stripes without a package where yarn is on hand.
func (s *solver) colours() error {
	if len(s.k.OnHand) == 0 {
		return nil
	}
	var names []string
	has := map[string]bool{}
	for _, c := range s.order.Colours {
		names = append(names, c.Name)
		has[strings.ToLower(c.Name)] = false
	}
	for _, p := range s.k.OnHand {
		if _, known := has[strings.ToLower(p.Colour)]; !known {
			return field.OnHand.Wrong(p.words(), "a colour of the stripes in front: "+strings.Join(names, ", "))
		}
		has[strings.ToLower(p.Colour)] = true
	}
	for _, name := range names {
		if !has[strings.ToLower(name)] {
			return field.OnHand.Wrong(OnHandText(s.k.OnHand), "packages of "+name+" too")
		}
	}
	return nil
}

// known works out the ends and the length, as far as they are known.
func (s *solver) known() error {
	s.group()
	return errors.Join(s.knownEnds(), s.knownLength())
}

// note adds what has to be said, once.
func (s *solver) note(format string, values ...any) {
	if text := fmt.Sprintf(format, values...); !slices.Contains(s.Notes, text) {
		s.Notes = append(s.Notes, text)
	}
}

// group is that of the packages on hand where none was given: each position has a package of its own.
func (s *solver) group() {
	n := len(s.k.OnHand)
	if s.k.striped() || s.k.GroupSaid || n < 2 {
		return
	}
	s.spec.Group = min(n, s.spec.Positions)
	s.note("the group is %d, one end from each package%s", s.spec.Group,
		map[bool]string{true: " that the paddle has a position for"}[n > s.spec.Positions])
}

// settle makes the spec that a plan goes on from.
func (s *solver) settle() error {
	s.Spec = s.spec
	out := &s.Spec
	out.Schedule, out.Other = nil, nil
	out.Cloth.Used = s.fromCloth && s.HasEnds && s.HasLength && s.k.FinishedLength != 0 && s.k.Length == 0
	if out.Cloth.Used {
		out.Cloth.Width.Finished = s.k.FinishedWidth
	} else {
		out.Cloth = plan.Cloth{}
	}
	if !s.HasLength {
		out.Length = field.Length.Start(out.Units)
		s.note("the length isn't known yet")
	}
	if !s.HasEnds {
		out.Ends = field.Ends.Count
		s.note("the ends aren't known yet")
	}
	s.packagesInPlan(out)
	return s.weigh()
}

// packagesInPlan puts the packages on hand where the plan has a place for them.
func (s *solver) packagesInPlan(out *plan.Spec) {
	if len(s.k.OnHand) == 0 || s.k.striped() {
		return
	}
	out.Yarn.Packages = max(len(s.k.OnHand), s.wound())
	out.Yarn.Cones = nil
	for _, u := range s.byNeed() {
		if u.Package.Gross == 0 {
			out.Yarn.Cones = nil
			s.note("packages that are told by length have no weight in the plan")
			break
		}
		out.Yarn.Cones = append(out.Yarn.Cones, u.Package.Gross)
	}
	if len(out.Yarn.Cones) > measure.MaxPositions {
		out.Yarn.Cones = out.Yarn.Cones[:measure.MaxPositions]
	}
}
