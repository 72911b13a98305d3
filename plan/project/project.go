package project

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"millside/plan"
	"millside/plan/cloth"
	"millside/plan/entry"
	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/frame"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/times"
)

// Project is the whole plan worked out: from the cloth to the raddle and the reed. What isn't known is
// nil. It never changes once made.
type Project struct {
	Plan *plan.Plan
	// Ends and Warp say how the ends and the length follow from the cloth.
	Ends *cloth.Ends
	Warp *cloth.WarpLength
	// Room is the way of the warp on the mill; nil on a board. Board is that on the board; nil on a mill.
	Room  *frame.MillRoom
	Board *frame.BoardPath
	// Pegs is how many ends a peg takes, where its length and the yarn are known.
	Pegs *frame.PegRoom
	// Yarn is what each cone gives, Weft the estimate for the weft.
	Yarn *plan.YarnUse
	Weft *cloth.WeftYarn
	// Raddle and Sley hand the warp over to the loom.
	Raddle *loom.RaddleList
	Sley   *loom.SleyList
	Order  loom.SleyOrder
	// Settled is what the reed makes of the sett; nil where either isn't known.
	Settled *loom.Settled
	// Beam is the warp on a sectional beam; nil where the weaver has none.
	Beam *loom.Beam
	// Faced is a sett to begin with where the warp or the weft is to show, and the yarn is known; nil otherwise.
	Faced *measure.SettHelp
	// Choices ranks the sizes of group; nil in a striped warp.
	Choices []Choice
	// Pace is the pace that times are reckoned with.
	Pace times.Pace
	// refused says that the sett, the reed and the order in it contradict one another: a new plan is refused, one
	// that was made before stays as it is.
	refused error
	// counted says that the ends were counted at the sett that the reed gives.
	counted bool
}

// FromCloth takes over the ends and the length that follow from the cloth, if the spec is planned from
// one; the ends of a striped warp are those of its stripes. The error joins one [measure.FieldError] for each
// field that is out of its range, or says that no count near the wanted one fits.
func FromCloth(s plan.Spec) (plan.Spec, error) {
	if !s.Cloth.Used {
		return s, nil
	}
	s = entry.WithAssumed(s)
	ends, warp, err := ofCloth(s, countedWidth(s))
	if err != nil {
		return s, err
	}
	s.Length = warp.Total
	if s.Schedule != nil { // the stripes say how many ends there are
		return s, nil
	}
	s.Ends, err = fitted(s, ends)
	return s, err
}

// fitted is the count near the wanted one that the spec asks for.
func fitted(s plan.Spec, ends *cloth.Ends) (int, error) {
	for _, fit := range ends.Fits {
		if suits(s.Cloth.Fit, fit) {
			return fit.Ends, nil
		}
	}
	return 0, &measure.FieldError{Field: field.Fit.Name, Value: s.Cloth.Fit.String(),
		Want: fmt.Sprintf("another choice: no count near %d ends fits so", ends.Wanted)}
}

// EndsOf is how many ends the width of the spec's cloth takes, and how that follows. The error is that of [FromCloth].
func EndsOf(s plan.Spec) (int, *cloth.Ends, error) {
	s = entry.WithAssumed(s)
	ends, err := countedWidth(s).Ends()
	if err != nil {
		return 0, nil, err
	}
	n, err := fitted(s, ends)
	return n, ends, err
}

// WidthText says how many ends the width of the spec's cloth takes, and from what that follows.
func WidthText(s plan.Spec, ends int) string {
	text := fmt.Sprintf("%s: a finished width of %s at %s", measure.Counted(ends, "end", "ends"),
		s.Cloth.Width.Finished, s.Loom.Sett)
	var assumed []string
	for _, f := range []*field.Field{field.ShrinkageWidth, field.DrawIn} {
		if value := entry.AssumedValue(s, f); value != "" {
			assumed = append(assumed, f.Name+" "+value)
		}
	}
	if len(assumed) > 0 {
		text += "; assumed: " + strings.Join(assumed, ", ")
	}
	return text
}

// widthOf is the width of the cloth with what the rest of the plan says.
func widthOf(s plan.Spec) cloth.Width {
	width := s.Cloth.Width
	width.Sett, width.Group, width.Units = s.Loom.Sett, s.Group, s.Units
	if s.Schedule != nil { // its passes carry what suits the colours
		width.Group = 0
	}
	return width
}

// LengthOf is how long a warp the pieces of the spec's cloth take. The error is that of [FromCloth].
func LengthOf(s plan.Spec) (*cloth.WarpLength, error) {
	length := s.Cloth.Length
	length.Units, length.Fibre = s.Units, s.Cloth.Width.Fibre
	return length.Warp()
}

// ofCloth works out the cloth with what the rest of the plan says.
func ofCloth(s plan.Spec, width cloth.Width) (*cloth.Ends, *cloth.WarpLength, error) {
	ends, err1 := width.Ends()
	warp, err2 := LengthOf(s)
	if s.Schedule != nil && ends != nil {
		ends.Take(width, s.Ends)
	}
	if text := entry.AssumedText(s); text != "" && ends != nil {
		ends.Rows = append(ends.Rows, measure.Row{Name: "assumed", Value: figure.Cell{figure.Text(text)},
			How: measure.How{Formula: "the usual for " + width.Fibre.Words() + ", where nothing is given",
				WithNumbers: figure.Cell{figure.Text("0 has to be said")}}})
	}
	return ends, warp, errors.Join(err1, err2)
}

// NewProject works out everything that the spec knows enough for. The pace may be zero: times are then
// the published range. The error joins one [measure.FieldError] for each field that is out of its range.
func New(s plan.Spec, pace times.Pace) (*Project, error) {
	s, err := FromCloth(s)
	if err != nil {
		return nil, errors.Join(err, s.Check())
	}
	p, err := plan.New(s)
	if err != nil {
		return nil, err
	}
	pr, err := Of(p, pace)
	if err == nil && pr.refused != nil {
		return nil, pr.refused
	}
	return pr, err
}

// Project works out everything else that the plan's spec knows enough for. The plan itself, such as that
// of a warp which is wound already, stays as it is. The error is that of [New].
func Of(p *plan.Plan, pace times.Pace) (*Project, error) {
	pr := &Project{Plan: p, Pace: pace}
	err := errors.Join(pr.fromCloth(), pr.onMill(), pr.yarn(), pr.loom(), pr.beam(), pr.faced(), pr.weft())
	if err != nil {
		return nil, err
	}
	pr.Choices, err = Choices(p, pace)
	return pr, err
}

func (pr *Project) fromCloth() (err error) {
	if pr.Plan.Spec.Cloth.Used {
		width := plannedWidth(pr.Plan.Spec)
		pr.counted = !width.RealSett.IsZero() && pr.Plan.Spec.Schedule == nil
		pr.Ends, pr.Warp, err = ofCloth(pr.Plan.Spec, width)
	}
	return err
}

func (pr *Project) onMill() (err error) {
	s := pr.Plan.Spec
	if len(s.Board) == 0 {
		pr.Room, err = s.Mill.Room(s.Length, s.Mill.Height, s.Units)
	} else {
		var b frame.BoardPath
		b, err = s.Board.Path(s.Length, s.Units)
		pr.Board = &b
	}
	if err != nil || s.Pegs.Length == 0 || s.Yarn.Size.IsZero() {
		return err
	}
	thread, err := measure.YarnDiameter(s.Yarn.Size, measure.DiameterFactors()[0])
	if err != nil {
		return err
	}
	room, err := frame.RoomOnPeg(s.Pegs.Length, thread, max(s.Pegs.Layers, 1), s.Units)
	pr.Pegs = &room
	return err
}

func (pr *Project) yarn() (err error) {
	if cones := pr.Plan.Cones(); cones != nil {
		pr.Yarn, err = pr.Plan.Yarn(cones, pr.Plan.Spec.Extras())
	}
	return err
}

func (pr *Project) weft() (err error) {
	c := pr.Plan.Spec.Cloth
	if pr.Ends == nil || c.Picks.IsZero() {
		return nil
	}
	yarn, width := c.Weft, pr.Ends.InReed
	if yarn.IsZero() {
		yarn = pr.Plan.Spec.Yarn.Size
	}
	if pr.Sley != nil {
		width = pr.Sley.Width
	}
	pr.Weft, err = cloth.Weft{Width: width, Layers: c.Width.Layers, Woven: pr.Warp.Woven, Picks: c.Picks,
		TakeUp: c.WeftTakeUp,
		Yarn:   yarn, Units: pr.Plan.Spec.Units}.Estimate()
	return err
}

func (pr *Project) loom() error {
	s, n := pr.Plan.Spec, pr.Plan.EndsWound()
	l := s.Loom
	if l.Sett.IsZero() {
		return nil
	}
	var errs []error
	if l.Raddle.Space != 0 {
		list, err := l.Raddle.Fill(loom.Raddling{Ends: n, Sett: SettOf(s), Groups: pr.Plan.GroupSizes(),
			Split: l.SplitGroups, FirstEnd: l.FirstEnd, Widths: pr.widths(n)})
		pr.Raddle = list
		errs = append(errs, err)
	}
	if !l.Reed.IsZero() {
		errs = append(errs, pr.sley(l, n))
	}
	if pr.Settled != nil {
		pr.Settled.Counted = pr.counted
	}
	if pr.Ends != nil && pr.Sley != nil {
		pr.Ends = pr.Ends.Sleyed(s.Cloth.Width, pr.Sley.Width)
	}
	return errors.Join(errs...)
}

// widths is the width of each end in the reed where they differ.
func (pr *Project) widths(ends int) []measure.Length {
	l := pr.Plan.Spec.Loom
	if len(l.Dents) > 0 && !l.Reed.IsZero() {
		if dents, err := l.Dents.Fill(ends); err == nil {
			return l.Reed.Widths(dents)
		}
	}
	if len(l.Widths) == ends {
		return l.Widths
	}
	return nil
}

func (pr *Project) sley(l plan.Loom, ends int) (err error) {
	switch {
	case len(l.Dents) > 0:
		return pr.dentSections(l, ends)
	case len(l.Widths) == ends:
		return pr.dent(l, ends)
	}
	if pr.Settled, pr.refused = l.Reed.Settle(SettOf(pr.Plan.Spec)); pr.Settled == nil {
		return pr.refused
	}
	pr.Order = pr.Settled.Order
	width := pr.Plan.Spec.Cloth.Width
	pr.Sley, err = l.Reed.Sley(loom.Sleying{Ends: ends, Order: pr.Order.Dents, EdgeDents: l.EdgeDents,
		EdgeEnds: l.EdgeEnds, Doubled: width.Doubled, Floating: width.FloatingIn(), FirstEnd: l.FirstEnd})
	if err != nil {
		return err
	}
	if row, ok := l.Reed.NearbyRow(SettOf(pr.Plan.Spec), pr.Order); ok {
		pr.Sley.Rows = append(pr.Sley.Rows, row)
	}
	return nil
}

// SettOf is the sett in the reed that a spec asks for, that of all layers of the cloth together; the zero value where
// it asks for none.
func SettOf(s plan.Spec) measure.Sett {
	if !s.Cloth.Used {
		return s.Loom.Sett
	}
	return s.Cloth.Width.InReed(s.Loom.Sett)
}

// SettInReed is the sett in the reed, that of all layers of the cloth together; the zero value where none is known.
func (pr *Project) SettInReed() measure.Sett { return SettOf(pr.Plan.Spec) }

// dent lays ends of different widths in the reed.
func (pr *Project) dent(l plan.Loom, ends int) error {
	widths := slices.Clone(l.Widths)
	if l.FirstEnd == loom.RightSide {
		slices.Reverse(widths)
	}
	dents, err := l.Reed.Denting(widths)
	if err != nil {
		return err
	}
	pr.Settled, _ = l.Reed.SettleDents(SettOf(pr.Plan.Spec), dents, nil)
	pr.Sley, err = l.Reed.Sley(loom.Sleying{Ends: ends, Dents: dents, FirstEnd: l.FirstEnd})
	return err
}

// dentSections lays ends in the sections of dents that the weaver gives.
func (pr *Project) dentSections(l plan.Loom, ends int) error {
	width := pr.Plan.Spec.Cloth.Width
	if l.EdgeDents > 0 || width.Doubled > 0 || width.FloatingIn() > 0 {
		return field.Dents.Wrong(l.Dents.String(), "none beside selvedge dents, doubled or floating selvedges: the "+
			"sections say what lies in each dent, the selvedges' too")
	}
	dents, err := l.Dents.Fill(ends)
	if err != nil {
		return err
	}
	if l.FirstEnd == loom.RightSide {
		slices.Reverse(dents)
	}
	pr.Settled, pr.refused = l.Reed.SettleDents(SettOf(pr.Plan.Spec), dents, l.Dents)
	pr.Sley, err = l.Reed.Sley(loom.Sleying{Ends: ends, Dents: dents, FirstEnd: l.FirstEnd})
	return err
}

// suits says whether a count is what the fit asks for.
func suits(f plan.ClothFit, e cloth.EndsFit) bool {
	switch f {
	case plan.FitRepeats:
		return e.WholeRepeats
	case plan.FitPasses:
		return e.WholePasses
	case plan.FitBoth:
		return e.WholeRepeats && e.WholePasses
	default:
		return true
	}
}
