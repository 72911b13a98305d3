package pair

import (
	"math/big"

	"millside/plan"
	"millside/plan/cloth"
	"millside/plan/field"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
	"millside/plan/project"
)

// Held is how the second is held while the ground is on its beam.
type Held uint8

// The ways. WhatSuits is one beam where both warps weave up alike, and else a beam of its own or weights.
const (
	WhatSuits Held = iota
	OneBeam
	OwnBeam
	Weights
)

// String gives the word of the field.
func (h Held) String() string { return measure.OneOf(int(h), HeldField.Words...) }

// MarshalText writes the word.
func (h Held) MarshalText() ([]byte, error) { return []byte(h.String()), nil }

// UnmarshalText reads the word.
func (h *Held) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(string(b), HeldField.Words...)
	*h = Held(i)
	return err
}

// Lengths is how long each of two warps must be to weave the same cloth. Known is false where the ground isn't planned
// from its cloth: then only the planned lengths are known.
type Lengths struct {
	Known bool
	// Woven is the cloth of both, under no tension before washing.
	Woven measure.Length
	// Assumed says that the second's take-up isn't known, and that the ground's is taken.
	Assumed bool
	// TakeUp and TakeUpOf are those of each warp, Needed how long each must be, Planned how long its plan makes it.
	TakeUp          [2]measure.Percent
	TakeUpOf        [2]cloth.TakeUpOf
	Needed, Planned [2]measure.Length
}

// lengths works out what the second needs for the cloth of the ground: the same pieces, fringes and sample, with its
// own take-up, and with its own loom waste where its plan says one.
func lengths(ground, second plan.Spec, ask Ask) (Lengths, error) {
	l := Lengths{Planned: [2]measure.Length{ground.Length, second.Length}}
	if !ground.Cloth.Used {
		return l, nil
	}
	c := ground.Cloth.Length
	c.Units, c.Fibre = ground.Units, ground.Cloth.Width.Fibre
	first, err := c.Warp()
	if err != nil {
		return l, err
	}
	l.Known, l.Woven = true, first.Woven
	l.TakeUp[Ground], l.TakeUpOf[Ground], l.Needed[Ground] = c.TakeUp, c.TakeUpOf, first.Total
	if own := second.Cloth.Length; second.Cloth.Used {
		c.TakeUp, c.TakeUpOf, c.Waste, c.Knotting = own.TakeUp, own.TakeUpOf, own.Waste, own.Knotting
	}
	if ask.TakeUpSaid {
		c.TakeUp, c.TakeUpOf = ask.TakeUp, ground.Cloth.Length.TakeUpOf
	}
	l.Assumed = !ask.TakeUpSaid && !second.Cloth.Used
	other, err := c.Warp()
	if err != nil {
		return l, TakeUpField.In(err)
	}
	l.TakeUp[Second], l.TakeUpOf[Second], l.Needed[Second] = c.TakeUp, c.TakeUpOf, other.Total
	return l, nil
}

// SecondLength is how long a second warp must be for the cloth of a ground with its own take-up: what a plan of the
// second begins with. The error is a [*measure.FieldError]: for a ground that isn't planned from its cloth.
func SecondLength(ground plan.Spec, ask Ask) (measure.Length, error) {
	if !ground.Cloth.Used {
		return 0, field.FinishedLength.Wrong("", "a ground that is planned from its cloth, so that its woven length "+
			"is known")
	}
	l, err := lengths(ground, ground, ask)
	return l.Needed[Second], err
}

// SecondFor says what the second of a ground must be: its ends and its sett in an order, and its length. The sett is
// the zero value where the ground has none, or where the second lies beside it. The error is a [*measure.FieldError]:
// for an order that can't be read or that the ground doesn't fill, and that of [SecondLength].
func SecondFor(ground *project.Project, ask Ask) (ends int, sett measure.Sett, long measure.Length, err error) {
	s := ground.Plan.Spec
	if ask.Order == "" {
		return 0, sett, 0, OrderField.Missing()
	}
	repeat, err := readOrder(ask.Order, [2]string{s.Name, ""})
	if err != nil {
		return 0, sett, 0, err
	}
	var in [2]int
	for _, w := range repeat {
		in[w]++
	}
	n := ground.Plan.EndsWound()
	if in[Ground] == 0 || in[Second] == 0 {
		return 0, sett, 0, OrderField.Wrong(measure.Shortened(ask.Order), "an order with both warps in it")
	}
	if n < in[Ground] {
		return 0, sett, 0, OrderField.Wrong(measure.Shortened(ask.Order), "an order of at most the "+
			measure.Counted(n, "end", "ends")+" of the ground")
	}
	left := n
	for i := 0; ; i++ { // the order goes on until it asks for an end of the ground that isn't there
		if w := repeat[i%len(repeat)]; w == Second {
			ends++
		} else if left--; left < 0 {
			break
		}
	}
	if one := ground.SettInReed(); !one.IsZero() && !ask.Beside {
		if sett, err = measure.SettOf(ratio.Mul(one.Rat(), big.NewRat(int64(in[Second]), int64(in[Ground]))),
			one.Unit()); err != nil {
			return 0, sett, 0, OrderField.In(err)
		}
	}
	long, err = SecondLength(s, ask)
	return ends, sett, long, err
}

// alike says whether both warps weave up alike, as far as is known.
func (l Lengths) alike() bool {
	if !l.Known {
		return l.Planned[Ground] == l.Planned[Second]
	}
	return !l.Assumed && l.TakeUp[Ground] == l.TakeUp[Second] && l.TakeUpOf[Ground] == l.TakeUpOf[Second]
}
