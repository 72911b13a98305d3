package plan

import (
	"fmt"

	"millside/plan/cloth"
	"millside/plan/field"
	"millside/plan/loom"
	"millside/plan/measure"
)

// Cloth is the cloth that a warp is planned from. The zero value says that the ends and the length are
// given by the weaver.
type Cloth struct {
	// Used says that the ends and the length follow from the cloth.
	Used bool `json:"used"`
	// Assumed lists the fields of the allowances that the weaver didn't give, by their names in the table: usual
	// values were taken, see [entry.WithAssumed].
	Assumed []string `json:"assumed,omitzero"`
	// Fit says which of the counts near the wanted one is taken.
	Fit ClothFit `json:"fit"`
	// Width and Length are the finished cloth with its allowances. Their sett, group and units are taken
	// from the rest of the plan.
	Width  cloth.Width  `json:"width"`
	Length cloth.Length `json:"length"`
	// Picks is the picks in a unit of length on the loom; zero leaves the weft out.
	Picks measure.Sett `json:"picks,omitzero"`
	// WeftTakeUp is what a pick is longer than the width in the reed, 0 to 90 %.
	WeftTakeUp measure.Percent `json:"weft_take_up,omitzero"`
	// Weft is the weft's size; the zero value is the warp's.
	Weft measure.YarnSize `json:"weft,omitzero"`
	// WeftColours is how many picks of the pattern each colour of the weft has; it is empty where that isn't
	// known.
	WeftColours []cloth.WeftColour `json:"weft_colours,omitzero"`
}

// checkAssumed reports names that are no allowance's.
func (c Cloth) checkAssumed() []error {
	var errs []error
	for _, name := range c.Assumed {
		if f := field.Named(name); f == nil || !f.Assumed {
			errs = append(errs, &measure.FieldError{Field: "assumed", Value: measure.Shortened(name),
				Want: "the name of an allowance, such as " + field.TakeUp.Name})
		}
	}
	return errs
}

// ClothFit says which number of ends is taken for a cloth.
type ClothFit uint8

// The ways to fit the ends.
const (
	FitWanted  ClothFit = iota // the ends that the width takes
	FitRepeats                 // the nearest that ends with a whole pattern
	FitPasses                  // the nearest that fills every pass
	FitBoth                    // the nearest that does both
)

// String gives the name that a plan file uses.
func (f ClothFit) String() string {
	return measure.OneOf(int(f), field.Fit.Words...)
}

// MarshalText writes the name.
func (f ClothFit) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// UnmarshalText reads the name.
func (f *ClothFit) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(string(b), field.Fit.Words...)
	*f = ClothFit(i)
	return err
}

// WarpYarn is the yarn of the warp. The zero value says that it isn't known.
type WarpYarn struct {
	// Size is the yarn's size.
	Size measure.YarnSize `json:"size,omitzero"`
	// Colour is what the weaver calls it: up to 60 printable characters.
	Colour string `json:"colour,omitzero"`
	// Cones is the weight of each cone with its tube, in the order of the positions; where there are
	// more positions, the last stands for the rest. Empty says that they weren't weighed.
	Cones measure.Masses `json:"cones,omitzero"`
	// Tube is the weight of an empty tube.
	Tube measure.Mass `json:"tube,omitzero"`
	// Packages is the number of cones at hand, 0 where they weren't counted.
	Packages int `json:"packages,omitzero"`
	// Extras is the yarn beside the warp's length, where the weaver says it; see [Spec.Extras].
	Extras Extras `json:"extras,omitzero"`
}

// cones is one cone for each position of a group.
func (y WarpYarn) cones(group int) []Cone {
	cones := OneYarn(group, y.Colour, y.Size)
	if len(y.Cones) == 0 {
		return cones
	}
	for i := range cones {
		cones[i].Gross, cones[i].Tube = y.Cones[min(i, len(y.Cones)-1)], y.Tube
	}
	return cones
}

// Loom is what the warp is handed over to. The zero value says that nothing is known of it.
type Loom struct {
	// Sett is the ends in a unit of width in the reed.
	Sett measure.Sett `json:"sett,omitzero"`
	// Raddle is the raddle; a zero space leaves it out.
	Raddle loom.Raddle `json:"raddle,omitzero"`
	// SplitGroups lets the teeth of the raddle part a group. WholeGroups stands in old records: groups are kept
	// whole unless SplitGroups says otherwise.
	SplitGroups bool `json:"split_groups,omitzero"`
	WholeGroups bool `json:"whole_groups,omitzero"`
	// Reed is the reed; the zero value leaves it out.
	Reed loom.Reed `json:"reed,omitzero"`
	// Face is what shows in the cloth, which bears on the sett.
	Face cloth.Face `json:"face,omitzero"`
	// BeamSection is the width of a section of the sectional beam that takes the warp; 0 for a plain beam.
	BeamSection measure.Length `json:"beam_section,omitzero"`
	// Dents is how the ends are crammed and spaced, in sections from end 1 on that are repeated; it is empty where they
	// are sleyed evenly.
	Dents loom.DentSections `json:"dents,omitzero"`
	// EdgeDents is how many dents at each edge hold EdgeEnds ends each, 0 for none.
	EdgeDents int `json:"edge_dents,omitzero"`
	EdgeEnds  int `json:"edge_ends,omitzero"`
	// FirstEnd is the side of the loom on which end 1 lies.
	FirstEnd loom.Side `json:"first_end,omitzero"`
	// Threading is the shafts of each end from end 1 on, a repeat where it is shorter than the warp; it is
	// empty where it isn't known. Heddles is how many heddles are on each shaft, shaft 1 first.
	// ThreadingBegin and ThreadingEnd stand before the repeats and behind them, at end 1 and at the last end.
	ThreadingBegin loom.Threading `json:"threading_begin,omitzero"`
	ThreadingEnd   loom.Threading `json:"threading_end,omitzero"`
	Threading      loom.Threading `json:"threading,omitzero"`
	Heddles        []int          `json:"heddles,omitzero"`
	// Widths is the width that each end takes in the reed, from end 1 on, where a draft crams or spaces them;
	// it is empty where all are alike, and left out of account where it isn't as long as the warp has ends.
	Widths []measure.Length `json:"widths,omitzero"`
}

// Pegs is the room on the pegs of the mill, from which the most ends of a chain can be guessed.
type Pegs struct {
	// Length is how much of a peg the warp may cover, 0 where it isn't known.
	Length measure.Length `json:"length,omitzero"`
	// Layers is how many layers of yarn may lie on each other, 1 to 100.
	Layers int `json:"layers,omitzero"`
}

// checkWhole reports what is out of its range in the parts that [project.New] works out. What those parts
// check themselves isn't checked here again: a warp can be wound without it.
func (s Spec) checkWhole() []error {
	errs := measure.Faults(s.Pegs.Check())
	errs = append(errs, field.Colour.In(measure.CheckColour(s.Yarn.Colour)), field.Packages.Check(s.Yarn.Packages),
		field.Fit.CheckWord(int(s.Cloth.Fit)), field.FirstEnd.CheckWord(int(s.Loom.FirstEnd)))
	errs = append(append(errs, checkAsked(s.Asked)...), s.Cloth.checkAssumed()...)
	if err := s.Yarn.Extras.check(); err != nil {
		errs = append(errs, err)
	}
	errs = append(errs, measure.CheckGoesWith(s.GoesWith))
	errs = append(errs, s.Loom.Threading.Check(), field.ThreadingBegin.In(s.Loom.ThreadingBegin.Check()),
		field.ThreadingEnd.In(s.Loom.ThreadingEnd.Check()), cloth.CheckWeftColours(s.Cloth.WeftColours))
	errs = append(errs, s.Loom.Dents.Check(), field.Face.CheckWord(int(s.Loom.Face)),
		field.BeamSection.CheckLength(s.Loom.BeamSection))
	for _, w := range s.Loom.Widths {
		if w <= 0 || w > measure.Metre {
			errs = append(errs, &measure.FieldError{Field: "spacing of a thread", Value: w.String(),
				Want: "above 0, at most 1 m"})
			break
		}
	}
	if n := len(s.Loom.Heddles); n > loom.MaxShafts {
		errs = append(errs, field.Heddles.CheckFrom(n, 0, loom.MaxShafts, ""))
	}
	for i, n := range s.Loom.Heddles {
		errs.Count(fmt.Sprintf("heddles on shaft %d", i+1), n, 0, measure.MaxEnds, "")
	}
	return append(errs, s.checkStripes()...)
}

// checkStripes reports what keeps the stripes from being wound.
func (s Spec) checkStripes() []error {
	var errs []error
	if s.Schedule == nil && (s.Stripes != "" || s.Other != nil) {
		errs = append(errs, field.StripesOf.Wrong(s.Stripes, "a schedule for them"))
	}
	if len(s.Stripes) > MaxStripes || s.Stripes != "" && !measure.Printable(s.Stripes) {
		errs = append(errs, field.StripesOf.Wrong(s.Stripes,
			fmt.Sprintf("at most %d printable characters on one line", MaxStripes)))
	}
	return append(errs, s.Schedule.check(s.Ends, s.Positions), s.Other.check(s.Ends, s.Positions))
}

// Check reports what is out of its range.
func (p Pegs) Check() []error {
	return []error{field.PegLength.CheckLength(p.Length), field.Layers.Check(p.Layers)}
}

// MaxStripes is the most bytes that the notation of a stripe order may take: some 4,000 stripes written
// one by one, so that a draft of any usual size fits.
const MaxStripes = 50_000

// Dressing is which end of the warp the loom takes first.
type Dressing uint8

// The two ways to dress a loom.
const (
	RaddleFirst Dressing = iota // back to front: the counting cross goes into the raddle first
	ReedFirst                   // front to back: the lease goes to the reed first
)

// String gives "raddle first" or "reed first".
func (d Dressing) String() string { return measure.OneOf(int(d), field.Dressing.Words...) }

// MarshalText writes the name.
func (d Dressing) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads "raddle first" or "reed first".
func (d *Dressing) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(string(b), field.Dressing.Words...)
	*d = Dressing(i)
	return err
}
