package pair

import (
	"errors"
	"fmt"
	"slices"

	"millside/plan/cloth"
	"millside/plan/field"
	"millside/plan/internal/ratio"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/project"
)

// Ask is what a weaver says of two warps that go together; see [Fields].
type Ask struct {
	Order  string
	Beside bool // the second lies beside the ground, in stripes of its own, and not between its ends
	Sett   measure.Sett
	Dents  loom.DentSections
	// TakeUp is that of the second where TakeUpSaid says so; else its plan or the ground's says it.
	TakeUp     measure.Percent
	TakeUpSaid bool
	Held       Held
	// Reed and Raddle take the place of those of the plans; zero values leave them.
	Reed   loom.Reed
	Raddle loom.Raddle
}

// Joint is two warps in one cloth. It never changes once made.
type Joint struct {
	Ask
	// Warps is the plan of each.
	Warps [2]*project.Project
	// Places is the order of all ends.
	Places *Places
	// Sett is that of both together, Width what they take in the reed.
	Sett  measure.Sett
	Width measure.Length
	// Raddled, Sley and Settled are nil where no raddle or no reed is known. Dents is what lies in each dent.
	Raddled *loom.RaddleTogether
	Sley    *loom.SleyList
	Settled *loom.Settled
	Dents   []Share
	// Lengths is how long each warp has to be.
	Lengths Lengths
	widths  []measure.Length // of each end from the left, where they differ
	taken   []int            // the ends in each dent, where the order of one warp alone is taken over
	takenOf Which
}

// New joins two warps. The error joins [measure.FieldError] values: an order that leaves ends over, widths that don't
// agree, two reeds.
func New(ground, second *project.Project, ask Ask) (*Joint, error) {
	j := &Joint{Ask: ask, Warps: [2]*project.Project{ground, second}}
	var n [2]int
	var names [2]string
	var first [2]loom.Side
	for w, pr := range j.Warps {
		n[w], names[w], first[w] = pr.Plan.EndsWound(), pr.Plan.Spec.Name, pr.Plan.Spec.Loom.FirstEnd
	}
	var err error
	if j.Places, err = Lay(ask.Order, n, names, first); err != nil {
		return nil, err
	}
	s := loom.Sleying{Ends: len(j.Places.Order)}
	if err := errors.Join(j.oneLoom(), j.edges(&s)); err != nil {
		return nil, err
	}
	if err := j.takeDents(s); err != nil {
		return nil, err
	}
	if err := j.setts(); err != nil {
		return nil, err
	}
	if err := errors.Join(j.sley(s), j.raddle()); err != nil {
		return nil, err
	}
	j.Lengths, err = lengths(ground.Plan.Spec, second.Plan.Spec, ask)
	return j, err
}

// oneLoom finds the reed and the raddle that both plans agree on.
func (j *Joint) oneLoom() error {
	var errs []error
	a, b := j.Warps[Ground].Plan.Spec.Loom, j.Warps[Second].Plan.Spec.Loom
	if j.Reed.IsZero() {
		j.Reed = a.Reed
		if a.Reed.IsZero() {
			j.Reed = b.Reed
		} else if !b.Reed.IsZero() && a.Reed.String() != b.Reed.String() {
			errs = append(errs, field.Reed.Wrong(b.Reed.String(), "one reed for both: the ground is planned for "+
				a.Reed.String()))
		}
	}
	if j.Raddle.Space == 0 {
		j.Raddle = a.Raddle
		if a.Raddle.Space == 0 {
			j.Raddle = b.Raddle
		} else if b.Raddle.Space != 0 && a.Raddle.Space != b.Raddle.Space {
			errs = append(errs, field.Raddle.Wrong(b.Raddle.Space.String(), "one raddle for both: the ground is "+
				"planned for "+a.Raddle.Space.String()))
		}
	}
	return errors.Join(errs...)
}

// sideBySide is the ends of both that take width: without the second ones of doubled pairs and floating selvedges.
func (j *Joint) sideBySide() int { return j.Warps[Ground].SideBySide() + j.Warps[Second].SideBySide() }

// setts finds how close the ends of both lie together, and whether both fill one width.
func (j *Joint) setts() error {
	if !j.Ask.Sett.IsZero() || len(j.Ask.Dents) > 0 {
		j.Sett = j.Ask.Sett
		if len(j.taken) > 0 {
			return j.settOn(j.taken)
		}
		return j.settOfDents()
	}
	var setts [2]measure.Sett
	for w, pr := range j.Warps {
		if setts[w] = pr.SettInReed(); setts[w].IsZero() {
			return SettField.Wrong("", fmt.Sprintf("it: the plan of the %s has no sett", Which(w)))
		}
	}
	unit := setts[Ground].Unit()
	if j.Beside {
		return j.besides(setts, unit)
	}
	if len(j.taken) > 0 {
		return errors.Join(j.settOn(j.taken), j.oneWidth(setts))
	}
	sum, err := measure.SettOf(ratio.Add(setts[Ground].Rat(), setts[Second].In(unit).Rat()), unit)
	if err != nil {
		return SettField.In(err)
	}
	j.Sett = sum
	return j.oneWidth(setts)
}

// settOfDents is the sett on average where only the dents are given.
func (j *Joint) settOfDents() error {
	switch {
	case len(j.Ask.Dents) == 0 || !j.Sett.IsZero():
		return nil
	case j.Reed.IsZero():
		return field.Reed.Wrong("", "it: the dents are those of a reed")
	}
	dents, err := j.Ask.Dents.Fill(len(j.Places.Order))
	if err != nil {
		return DentsField.In(err)
	}
	return j.settOn(dents)
}

// settOn is the sett on average of ends that lie so in the dents.
func (j *Joint) settOn(dents []int) (err error) {
	per := j.Reed.Dents(j.Warps[Ground].Plan.Spec.Units.SettUnit())
	j.Sett, err = measure.SettOf(ratio.Quo(ratio.Mul(per.Rat(), ratio.Of(len(j.Places.Order))), ratio.Of(len(dents))),
		per.Unit())
	return DentsField.In(err)
}

// oneWidth refuses two warps between one another that are of different widths: by more than a repeat of their order,
// which may be broken off, and the ends of one that lie alone at the edges.
func (j *Joint) oneWidth(setts [2]measure.Sett) error {
	var wide [2]measure.Length
	for w, pr := range j.Warps {
		wide[w] = setts[w].WidthOf(pr.SideBySide())
	}
	if len(j.taken) > 0 { // it is as wide as its dents make it
		wide[j.takenOf] = measure.Length(0)
		for _, width := range j.Reed.Widths(j.taken) {
			wide[j.takenOf] += width
		}
	}
	off := max(wide[Ground]-wide[Second], wide[Second]-wide[Ground])
	repeat := 1
	if j.Places.Times > 1 {
		repeat = j.Places.Repeat
	}
	outer, of := j.Places.alone()
	if off <= j.Sett.WidthOf(repeat)+setts[of].WidthOf(outer)+measure.Millimetre {
		return nil
	}
	unit := j.Warps[Ground].Plan.Spec.Units.Short()
	want := setts[Second].EndsUp(wide[Ground])
	return &measure.FieldError{Field: "width in the reed of the second", Value: wide[Second].As(unit, 2).String(),
		Want: fmt.Sprintf("that of the ground, %s, which takes about %d ends of the second at %s; or say the sett "+
			"of both together or their dents, or that the second lies beside the "+
			"ground", wide[Ground].As(unit, 2), want,
			setts[Second])}
}

// besides gives each end the width that it takes at its own warp's sett.
func (j *Joint) besides(setts [2]measure.Sett, unit measure.SettUnit) error {
	var one [2]measure.Length
	for w := range setts {
		one[w], _ = measure.LengthOf(ratio.Nearest, ratio.Quo(ratio.Of(1), setts[w].PerNanometre()))
	}
	if one[Ground] == one[Second] {
		j.Sett = setts[Ground]
		return nil
	}
	whole := measure.Length(0)
	for _, w := range j.Places.Order {
		j.widths = append(j.widths, one[w])
		whole += one[w]
	}
	var err error
	j.Sett, err = measure.SettOf(ratio.Quo(ratio.Mul(ratio.Of(len(j.widths)), ratio.Of(unit.Width())),
		ratio.Of(whole)), unit)
	return SettField.In(err)
}

// sley lays both in the reed.
func (j *Joint) sley(s loom.Sleying) (err error) {
	j.Width = j.Sett.WidthOf(j.sideBySide())
	if j.Reed.IsZero() {
		return nil
	}
	switch {
	case len(j.Ask.Dents) > 0:
		if s.EdgeDents > 0 || s.Doubled > 0 || s.Floating > 0 {
			return DentsField.Wrong(j.Ask.Dents.String(), "none beside selvedge dents, doubled or floating "+
				"selvedges: they would say what lies in each dent, the selvedges' too")
		}
		if s.Dents, err = j.Ask.Dents.Fill(s.Ends); err != nil {
			return DentsField.In(err)
		}
		j.widths = j.Reed.Widths(s.Dents)
		j.Settled, err = j.Reed.SettleDents(j.Sett, s.Dents, j.Ask.Dents)
	case len(j.taken) > 0:
		s.Dents, j.widths = j.taken, j.Reed.Widths(j.taken)
		j.Settled, err = j.Reed.SettleDents(j.Sett, s.Dents, nil)
	case len(j.widths) > 0:
		s.Dents, err = j.Reed.Denting(j.widths)
	default:
		if j.Settled, err = j.Reed.Settle(j.Sett); err == nil {
			s.Order = j.Settled.Order.Dents
		}
	}
	if err != nil {
		return measure.InField(err, SettField.Name)
	}
	if j.Sley, err = j.Reed.Sley(s); err != nil {
		return err
	}
	j.Width = j.Sley.Width
	j.share()
	return nil
}

// share says what lies in each dent.
func (j *Joint) share() {
	var before [2]int
	at := 1
	for _, n := range j.Sley.Dents {
		in := j.Places.count(at, at+n-1, before)
		before[Ground], before[Second] = before[Ground]+in.Ends[Ground], before[Second]+in.Ends[Second]
		j.Dents, at = append(j.Dents, in), at+n
	}
}

// edges takes the selvedges of the plans over. Doubled and floating ends must be the outer ones of both.
func (j *Joint) edges(s *loom.Sleying) error {
	for w, pr := range j.Warps {
		l, c := pr.Plan.Spec.Loom, cloth.Width{}
		if pr.Plan.Spec.Cloth.Used {
			c = pr.Plan.Spec.Cloth.Width
		}
		if s.EdgeDents == 0 {
			s.EdgeDents, s.EdgeEnds = l.EdgeDents, l.EdgeEnds
		}
		floating := c.FloatingIn()
		if c.Doubled == 0 && floating == 0 {
			continue
		}
		left, right := (floating+1)/2+2*c.Doubled, floating/2+2*c.Doubled
		n := len(j.Places.Order)
		outer := slices.Concat(j.Places.Order[:min(left, n)], j.Places.Order[max(n-right, 0):])
		if s.Doubled > 0 || s.Floating > 0 || slices.Contains(outer, Which(w).Other()) {
			return OrderField.Wrong(measure.Shortened(j.Places.Text), fmt.Sprintf("one that begins with %s "+
				"of the %s and stops with %s: its plan doubles or floats "+
				"them", measure.Counted(left, "end", "ends"), Which(w),
				measure.Counted(right, "end", "ends")))
		}
		s.Doubled, s.Floating = c.Doubled, floating
	}
	return nil
}

// raddle spreads both in the raddle.
func (j *Joint) raddle() (err error) {
	if j.Raddle.Space == 0 {
		return nil
	}
	var shares []loom.RaddleShare
	for w, pr := range j.Warps {
		l := pr.Plan.Spec.Loom
		shares = append(shares, loom.RaddleShare{Places: j.Places.of[w], Groups: pr.Plan.GroupSizes(),
			Split: l.SplitGroups, FirstEnd: l.FirstEnd})
	}
	j.Raddled, err = j.Raddle.FillTogether(loom.Raddling{Ends: len(j.Places.Order), Sett: j.Sett, Widths: j.widths},
		shares)
	return err
}

// DentOf is the dent of a warp's end, from the left of the cloth, counted from 1; 0 where it isn't known.
func (j *Joint) DentOf(w Which, end int) int {
	if j.Sley == nil {
		return 0
	}
	return j.Sley.DentOf(j.Places.Of(w, end))
}

// SectionOf is the section of the raddle in which a warp's end lies; false where it isn't known.
func (j *Joint) SectionOf(w Which, end int) (loom.RaddleSection, bool) {
	if j.Raddled == nil {
		return loom.RaddleSection{}, false
	}
	for _, s := range j.Raddled.Sections {
		if in := s[w]; in.Ends > 0 && in.First <= end && end <= in.Last {
			return in, true
		}
	}
	return loom.RaddleSection{}, false
}
