package plan

import (
	"errors"
	"fmt"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/measure"
	"millside/plan/wind"
)

// Extras is the yarn that goes into a warp beside its length. Both are 0 to 100 m.
type Extras struct {
	// PerPass is what each end takes at the end pegs on a pass.
	PerPass measure.Length `json:"per_pass"`
	// PerTie is what an end takes that is tied on and cut off again: the tails of its two knots, and the
	// paddle's distance from the peg.
	PerTie measure.Length `json:"per_tie"`
	// Given says that the weaver said so; else the usual ones hold, see [Spec.Extras].
	Given bool `json:"given,omitzero"`
}

// DefaultExtras is a guess to begin with: 2 in a pass and half a yard for each end that is tied on. It is the
// project's own judgement, not a measured value.
func DefaultExtras() Extras { return Extras{PerPass: 2 * measure.Inch, PerTie: 18 * measure.Inch} }

// Extras is what the warp takes beside its length: as the weaver says, which may be nothing, else the usual.
func (s Spec) Extras() Extras {
	if s.Yarn.Extras.Given {
		return s.Yarn.Extras
	}
	return DefaultExtras()
}

func (x Extras) check() error {
	return errors.Join(field.PegYarn.CheckLength(x.PerPass), field.Tails.CheckLength(x.PerTie))
}

// Cone is one package of yarn, which feeds one position of the paddle.
type Cone struct {
	// Position is the position that it feeds, 1 to [measure.MaxPositions].
	Position int `json:"position"`
	// Colour is what the weaver calls it: up to 60 printable characters.
	Colour string `json:"colour"`
	// Yarn is its size.
	Yarn measure.YarnSize `json:"yarn"`
	// Gross is its weight with the tube, Tube that of the empty tube. A Gross of nothing says that it
	// wasn't weighed.
	Gross measure.Mass `json:"gross,omitempty"`
	Tube  measure.Mass `json:"tube,omitempty"`
	// FromPass and ToPass are the first and the last pass that it feeds, counted from 1 over all chains;
	// 0 means the first and the last of the warp.
	FromPass int `json:"from_pass,omitempty"`
	ToPass   int `json:"to_pass,omitempty"`
}

// feeds says whether the cone is in its position on a pass, counted from 1 over all chains.
func (c Cone) feeds(pass int) bool {
	return pass >= c.FromPass && (c.ToPass == 0 || pass <= c.ToPass)
}

// net is the weight of the yarn on the cone.
func (c Cone) net() measure.Mass { return c.Gross - c.Tube }

func (c Cone) check(name string) error {
	if c.Colour != "" {
		if err := measure.CheckName(c.Colour); err != nil {
			return &measure.FieldError{Field: name + " colour", Value: c.Colour,
				Want: fmt.Sprintf("up to %d printable characters", measure.MaxName)}
		}
	}
	switch {
	case c.Position < 1 || c.Position > measure.MaxPositions:
		return measure.Outside(name+" position", c.Position, 1, measure.MaxPositions, "")
	case c.Yarn.IsZero():
		return &measure.FieldError{Field: name + " yarn", Value: "", Want: measure.YarnWants}
	case c.Gross < 0 || c.Gross > measure.MaxMass:
		return &measure.FieldError{Field: name + " weight", Value: c.Gross.String(), Want: "0 to " +
			measure.MaxMass.String()}
	case c.Tube < 0 || c.Gross != 0 && c.Tube > c.Gross:
		return &measure.FieldError{Field: name + " empty tube", Value: c.Tube.String(),
			Want: "0 to the weight of the full cone"}
	case c.FromPass < 0:
		return measure.Outside(name+" first pass", c.FromPass, 0, measure.MaxEnds, "")
	case c.ToPass < 0 || c.ToPass != 0 && c.ToPass < c.FromPass:
		return measure.Outside(name+" last pass", c.ToPass, c.FromPass, measure.MaxEnds,
			", or 0 for the last of the warp")
	}
	return nil
}

// ConeUse is what a cone gives to a warp.
type ConeUse struct {
	Cone Cone
	// Passes is the number of passes that it feeds, Ties how often its yarn is tied on for that.
	Passes, Ties int
	// Used and UsedMass are what it needs to give; the mass is rounded up to a nanogram.
	Used     measure.Length
	UsedMass measure.Mass
	// Weighed says that the cone's weight is known. If so, Holds is the yarn on it, rounded down to a
	// nanometre, Left what remains and Short what is missing; one of these two is nothing.
	Weighed            bool
	Holds, Left, Short measure.Length
	// RunsOut is where the yarn ends, if it doesn't suffice; nil if it does or isn't known.
	RunsOut *Place
	// How says how Used was reached.
	How measure.How
}

// YarnTotal is what a warp takes of one yarn in one colour.
type YarnTotal struct {
	Colour string
	Yarn   measure.YarnSize
	// Ends is the number of ends of the warp, Cones the number of packages.
	Ends, Cones int
	Length      measure.Length
	// Mass is the sum of the cones' masses, each rounded up to a nanogram.
	Mass measure.Mass
}

// YarnUse is the yarn of a whole warp. The totals are in the order in which the cones name them, and
// Ends is the number of ends of the warp.
type YarnUse struct {
	Cones  []ConeUse
	Totals []YarnTotal
	Ends   int
	Length measure.Length
	Mass   measure.Mass
	// AtPegs is the part of Length that the ends take at the end pegs. Ties is how many ends are tied on, and
	// Tails the part of Length that their tails take. Extras is what both are reckoned with.
	AtPegs measure.Length
	Ties   int
	Tails  measure.Length
	Extras Extras
}

// Yarn works out what each cone gives to the warp: passes x (length of the warp + extra a pass), and the
// tails of each time that it is tied on. On every pass each position that carries an end must be fed by exactly one of
// the cones. The error joins [measure.FieldError] values.
func (p *Plan) Yarn(cones []Cone, extras Extras) (*YarnUse, error) {
	errs := []error{extras.check()}
	for i, c := range cones {
		errs = append(errs, c.check(fmt.Sprintf("cone %d", i+1)))
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	if err := p.fedByOne(cones); err != nil {
		return nil, err
	}
	w := &YarnUse{Extras: extras}
	for i, c := range cones {
		u, err := p.coneUse(c, extras)
		if err != nil {
			return nil, measure.InField(err, fmt.Sprintf("cone %d", i+1))
		}
		w.add(u)
		w.Ties += u.Ties
		w.Tails += extras.PerTie.Times(u.Ties)
		w.AtPegs += extras.PerPass.Times(u.Passes)
	}
	return w, nil
}

// PegYarn is the part of the warp's yarn that its ends take at the end pegs.
func (p *Plan) PegYarn(extras Extras) measure.Length { return extras.PerPass.Times(p.EndsWound()) }

// TailYarn is the part of the warp's yarn that goes into tails: for each end that is tied on and cut off again
// as the ledger has it ([Plan.WorkSum]).
func (p *Plan) TailYarn(extras Extras) measure.Length { return extras.PerTie.Times(p.WorkSum().Ties) }

// OneYarn is a cone of the same yarn for each of the positions 1 to n, unweighed; n is held to 0 to
// [measure.MaxPositions].
func OneYarn(n int, colour string, yarn measure.YarnSize) []Cone {
	cones := make([]Cone, min(max(n, 0), measure.MaxPositions))
	for i := range cones {
		cones[i] = Cone{Position: i + 1, Colour: colour, Yarn: yarn}
	}
	return cones
}

// fedByOne checks that on each pass every carried position has one cone.
func (p *Plan) fedByOne(cones []Cone) error {
	number := 0
	for _, chain := range p.Chains {
		for _, pass := range chain.Passes {
			number++
			var fed wind.Positions
			for i, c := range cones {
				if !c.feeds(number) {
					continue
				}
				bit := wind.FirstPositions(c.Position).Without(wind.FirstPositions(c.Position - 1))
				if fed&bit != 0 {
					return &measure.FieldError{Field: fmt.Sprintf("cone %d position", i+1),
						Value: fmt.Sprint(c.Position),
						Want:  fmt.Sprintf("one cone at a time in a position; pass %d has two", number)}
				}
				fed |= bit
			}
			if bare := pass.Carried.Without(fed); bare != 0 {
				return &measure.FieldError{Field: field.Cones.Name, Value: fmt.Sprint(len(cones)),
					Want: fmt.Sprintf("a cone for %s on pass %d", wind.PositionsText(bare), number)}
			}
		}
	}
	return nil
}

// coneUse follows one cone through the passes.
func (p *Plan) coneUse(c Cone, extras Extras) (ConeUse, error) {
	u := ConeUse{Cone: c, Weighed: c.Gross > 0}
	var err error
	if u.Weighed {
		if u.Holds, err = c.Yarn.LengthOf(c.net()); err != nil {
			return u, err
		}
	}
	number := 0
	for _, chain := range p.Chains {
		tied := false
		for _, pass := range chain.Passes {
			number++
			if !c.feeds(number) || !pass.Carried.Has(c.Position) {
				tied = false
				continue
			}
			if !tied {
				u.Ties++
				u.Used += extras.PerTie
				tied = true
			}
			u.Passes++
			u.Used += p.Path.Length + extras.PerPass
			if u.Weighed && u.RunsOut == nil && u.Used > u.Holds {
				u.RunsOut = &Place{Chain: chain.Number, Pass: pass.Number, Position: c.Position}
			}
		}
	}
	if u.Weighed {
		u.Left, u.Short = max(u.Holds-u.Used, 0), max(u.Used-u.Holds, 0)
	}
	u.How = measure.How{Formula: "passes x (warp + extra a pass) + times tied on x tails",
		WithNumbers: figure.Say("%d x (%s + %s) + %d x %s = %s",
			u.Passes, p.Path.Length.As(p.Spec.Units.Long(), 2), extras.PerPass.As(p.Spec.Units.Short(), 1), u.Ties,
			extras.PerTie.As(p.Spec.Units.Short(), 1), u.Used.As(p.Spec.Units.Long(), 2))}
	u.UsedMass, err = c.Yarn.MassOf(u.Used)
	return u, err
}

// add counts a cone into the totals.
func (w *YarnUse) add(u ConeUse) {
	w.Cones = append(w.Cones, u)
	w.Ends += u.Passes
	w.Length += u.Used
	w.Mass += u.UsedMass
	for i := range w.Totals {
		if t := &w.Totals[i]; t.Colour == u.Cone.Colour && t.Yarn == u.Cone.Yarn {
			t.Ends += u.Passes
			t.Cones++
			t.Length += u.Used
			t.Mass += u.UsedMass
			return
		}
	}
	w.Totals = append(w.Totals, YarnTotal{Colour: u.Cone.Colour, Yarn: u.Cone.Yarn, Ends: u.Passes, Cones: 1,
		Length: u.Used, Mass: u.UsedMass})
}

// Cones lists the cones that the warp begins with, and, where stripes change a position's colour, those
// that follow. It is nil where the yarn's size isn't known.
func (p *Plan) Cones() []Cone {
	s := p.Spec
	switch {
	case s.Yarn.Size.IsZero():
		return nil
	case s.Schedule != nil:
		return s.Schedule.cones(s.Yarn)
	default:
		return s.Yarn.cones(s.Group)
	}
}
