package plan

import (
	"errors"
	"fmt"

	"millside/plan/field"
	"millside/plan/frame"
	"millside/plan/measure"
	"millside/plan/times"
	"millside/plan/wind"
)

// Spec is what the weaver decides about a warp. [DefaultSpec] gives one that can be wound as it is.
type Spec struct {
	// Name is what the weaver calls the warp: 1 to 60 printable characters.
	Name string `json:"name"`
	// Ends is the number of ends wanted, 1 to MaxEnds.
	Ends int `json:"ends"`
	// Group is the number of ends that the paddle carries on a pass, 1 to Positions.
	Group int `json:"group"`
	// Positions is the number of holes and slots in the paddle, 1 to MaxPositions.
	Positions int `json:"positions"`
	// Length is the wanted length of the warp, 10 cm to 1,000 m.
	Length measure.Length `json:"length"`
	// Mill is the mill that the warp is wound on.
	Mill frame.Mill `json:"mill"`
	// Units is the family of units that lengths are shown in.
	Units measure.LengthUnitSystem `json:"units"`
	// Hand is the layout, right or left.
	Hand wind.Hand `json:"hand"`
	// ReturnOrder is the order in which return passes lie in the lease.
	ReturnOrder wind.ReturnOrder `json:"return_order"`
	// Foot says whether the first or the last position lies at the foot of the peg on an outward pass.
	Foot wind.FootPosition `json:"foot,omitzero"`
	// LastPass is what to do when Group doesn't divide Ends.
	LastPass wind.LastPass `json:"last_pass"`
	// ChainEnds is the most ends in one chain, at least Group; 0 winds the warp as one chain.
	ChainEnds int `json:"chain_ends,omitempty"`
	// EvenChains splits the warp into chains as even as whole passes allow, but for a boundary that is near: of
	// sections of the raddle, of repeats, of stripes. Old records haven't got it, and keep the split that prefers
	// chains which stop at the lease. ChainCount is the number of chains asked for, 0 for as few as ChainEnds
	// allows; it needs EvenChains.
	EvenChains bool `json:"even_chains,omitzero"`
	ChainCount int  `json:"chain_count,omitzero"`
	// TieEvery is the number of ends between two count ties, 1 to MaxEnds; 0 asks for none.
	TieEvery int `json:"tie_every"`
	// Guard is the shortest time between two passes that are counted.
	Guard times.Guard `json:"guard_ms"`
	// RestMinutes is how long the weaver winds before a reminder to rest the hands, in minutes, 1 to 240;
	// 0 asks for none.
	RestMinutes int `json:"rest_minutes,omitempty"`
	// Times is how long each kind of work takes the weaver; the zero value is the usual times.
	Times times.HandTimes `json:"hand_times,omitzero"`
	// Dyed says that the warp will be dyed, so that ties are loose.
	Dyed bool `json:"dyed"`
	// Painted lists the sections of a warp that is painted, from the lease on; empty for none. They are together at
	// most as long as the warp.
	Painted frame.Sections `json:"painted,omitzero"`
	// Dressing is which end of the warp the loom takes first.
	Dressing Dressing `json:"dressing"`
	// Board is the warping board that the warp is wound on, in place of a mill; empty for a mill.
	Board frame.Board `json:"board,omitzero"`
	// Pegs is the room on the pegs.
	Pegs Pegs `json:"pegs,omitzero"`
	// Cloth is the cloth that the warp is planned from, Yarn what it is wound of, Loom what it is handed
	// over to. See [project.New].
	Cloth Cloth    `json:"cloth,omitzero"`
	Yarn  WarpYarn `json:"yarn,omitzero"`
	Loom  Loom     `json:"loom,omitzero"`
	// Stripes is the stripe order in the notation of package stripe, empty for a plain warp. Schedule is
	// that order cut into passes for ReturnOrder, Other the same for the other return order, in case the
	// weaver sees at the mill that it is that one.
	Stripes  string    `json:"stripes,omitzero"`
	Schedule *Schedule `json:"schedule,omitzero"`
	Other    *Schedule `json:"other_schedule,omitzero"`
	// StripesFrom is the side from which Stripes is written.
	StripesFrom WrittenFrom `json:"stripes_from,omitzero"`
	// GoesWith names the other warp of the cloth, where two go through one raddle and one reed, and how both lie, as
	// [pair.Kept] writes it: see [measure.CheckGoesWith].
	GoesWith string `json:"goes_with,omitzero"`
	// Asked is what is asked of the way to wind the stripes.
	Asked wind.Asked `json:"stripes_asked,omitzero"`
}

// WithOrder is the spec with another return order, and with the schedule that was made for it.
func (s Spec) WithOrder(order wind.ReturnOrder) Spec {
	if s.ReturnOrder == order {
		return s
	}
	s.ReturnOrder = order
	if s.Schedule != nil && s.Other != nil {
		s.Schedule, s.Other = s.Other, s.Schedule
	}
	return s
}

// DefaultSpec is a plain warp on a mill of two yards round, with what the table of fields begins with.
func DefaultSpec() Spec {
	return Spec{
		Name: "new warp", Ends: field.Ends.Count, Group: field.Group.Count, Positions: field.Positions.Count,
		Length:   field.Length.Length,
		Mill:     frame.Mill{Circumference: field.Circumference.Length, PegStep: field.PegStep.Length},
		TieEvery: field.TieEvery.Count, Guard: times.Guard(field.Guard.Time),
	}
}

// Check reports every field that is out of its range, as joined [measure.FieldError] values, or nil.
func (s Spec) Check() error {
	errs := []error{field.Name.In(measure.CheckName(s.Name))}
	errs = append(errs, field.Ends.Check(s.Ends))
	if err := field.Positions.Check(s.Positions); err != nil {
		errs = append(errs, err, field.Group.Check(s.Group))
	} else {
		errs = append(errs, field.Group.CheckFrom(s.Group, 1, s.Positions, " (the positions of the paddle)"))
	}
	errs = append(errs, field.Length.CheckLength(s.Length))
	errs = append(errs, s.Mill.Check()...)
	errs = append(errs, field.ChainEnds.CheckFrom(s.ChainEnds, max(s.Group, 1), measure.MaxEnds, ""))
	errs = append(errs, field.ChainCount.Check(s.ChainCount))
	if s.ChainCount > 0 && !s.EvenChains {
		errs = append(errs, field.ChainCount.Wrong(fmt.Sprint(s.ChainCount), "chains that are split evenly"))
	}
	errs = append(errs, field.TieEvery.Check(s.TieEvery), s.Guard.Check(),
		field.Rest.Check(s.RestMinutes))
	errs = append(errs, s.Times.Check()...)
	errs = append(errs, field.Units.CheckWord(int(s.Units)), field.Hand.CheckWord(int(s.Hand)),
		field.ReturnOrder.CheckWord(int(s.ReturnOrder)), field.Foot.CheckWord(int(s.Foot)),
		field.LastPass.CheckWord(int(s.LastPass)), field.Dressing.CheckWord(int(s.Dressing)),
		field.StripesFrom.CheckWord(int(s.StripesFrom)))
	return errors.Join(append(errs, s.checkWhole()...)...)
}

// WithFoot is the spec with the other end of the paddle at the foot. The stripes stay as they are: the
// schedules are turned round with the paddle.
func (s Spec) WithFoot(foot wind.FootPosition) Spec {
	if s.Foot == foot {
		return s
	}
	s.Foot = foot
	s.Schedule, s.Other = s.Schedule.reflected(), s.Other.reflected()
	return s
}
