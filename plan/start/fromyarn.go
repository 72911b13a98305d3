package start

import (
	"fmt"
	"math"
	"math/big"
	"slices"

	"millside/plan/cloth"
	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// tries is how often a striped warp is cut into passes anew for the length that was found.
const tries = 4

// length finds the length: that of the cloth, or that for which the yarn on hand suffices.
func (s *solver) length() error {
	if s.HasLength {
		s.Answer = cell(s.spec.Length.As(s.spec.Units.Long(), 2))
		return s.checkYarn()
	}
	found, f, err := s.yarnReaches()
	if err != nil {
		return err
	}
	s.spec.Length, s.HasLength = found, true
	s.Answer = cell(found.As(s.spec.Units.Long(), 2))
	if err := s.tellReach(f, found); err != nil {
		return err
	}
	s.tellWarp(found, "rounded down to what the pegs give")
	return nil
}

// yarnReaches is the longest warp of the known ends for which the yarn on hand suffices. The passes of a striped warp
// may change with its length: then it is a length that suffices for its own passes.
func (s *solver) yarnReaches() (measure.Length, feeding, error) {
	s.packagesAsked()
	found, f, err := s.reachOf(field.Length.Start(s.spec.Units), s.k.striped())
	for try := 0; err == nil && s.k.striped() && try < tries; try++ {
		more, at, wrong := s.reachOf(found, false)
		if f, err = at, wrong; err != nil || more == found {
			break
		}
		if more > found { // the search for it was a short one: the longer warp, if its own passes allow it
			if again, longer, wrong := s.reachOf(more, false); wrong == nil && again >= more {
				return more, longer, nil
			}
			break
		}
		found = more
	}
	return found, f, err
}

// reachOf is the longest warp for the passes that a warp of another length has.
func (s *solver) reachOf(length measure.Length, rough bool) (measure.Length, feeding, error) {
	p, err := s.planOf(s.spec.Ends, length, rough)
	if err != nil {
		return 0, feeding{}, err
	}
	f, err := s.feed(p)
	if err != nil {
		return 0, f, err
	}
	found := s.longest(s.tidy(), func(way measure.Length) bool { _, ok := f.at(way); return ok })
	if found == 0 {
		err = s.tooLittle(fmt.Sprintf("for %s of the shortest warp", measure.Counted(s.spec.Ends, "end", "ends")))
	}
	return found, f, err
}

// tidy is what a length that is found is rounded down to: a hundredth of a yard or of a metre. Pieces are reckoned
// from what isn't rounded.
func (s *solver) tidy() measure.Length {
	if s.Find == ThePieces {
		return measure.Nanometre
	}
	unit, _ := s.spec.Units.Long().Length()
	return unit / 100
}

// tooLittle refuses the yarn on hand.
func (s *solver) tooLittle(what string) error {
	return field.OnHand.Wrong(measure.Shortened(OnHandText(s.k.OnHand)), "more yarn: it doesn't suffice "+what)
}

// tellReach shows how far the yarn reaches: by the package that is empty first.
func (s *solver) tellReach(f feeding, length measure.Length) error {
	way, _ := s.way(length)
	uses, ok := f.at(way)
	if !ok {
		return s.tooLittle("for the passes of this warp")
	}
	s.Packages = uses
	long, short, x := s.spec.Units.Long(), s.spec.Units.Short(), f.extras
	u, ok := limiting(uses, func(u Use) *big.Rat { return ratio.Of(u.reach(x)) })
	if !ok {
		return nil
	}
	s.tellHeld(u)
	s.step("how far it reaches", cell(atMost(u.reach(x), long)),
		"(yarn - times tied on x tails) / passes - extra a pass, rounded down",
		figure.Say("(%s - %d x %s) / %d - %s = %s", atMost(u.Holds, long), u.Ties, x.PerTie.As(short, 1), u.Passes,
			x.PerPass.As(short, 1), atMost(u.reach(x), long)))
	return nil
}

// tellWarp shows the length that is wound.
func (s *solver) tellWarp(length measure.Length, why string) {
	long := s.spec.Units.Long()
	way, _ := s.way(length)
	s.step("length on the "+s.frame(), cell(way.As(long, 2)), why,
		figure.Say("%s, which the pegs make %s", length.As(long, 2), way.As(long, 2)))
}

func (s *solver) frame() string {
	if len(s.spec.Board) > 0 {
		return "board"
	}
	return "mill"
}

// limiting is the use that allows least.
func limiting(uses []Use, allows func(Use) *big.Rat) (least Use, ok bool) {
	for _, u := range uses {
		if u.Passes > 0 && (!ok || allows(u).Cmp(allows(least)) < 0) {
			least, ok = u, true
		}
	}
	return least, ok
}

// tellHeld shows how much yarn the package has that is empty first, and how it was wound over.
func (s *solver) tellHeld(u Use) {
	y, long := s.spec.Yarn, s.spec.Units.Long()
	if n := s.slotsWound(u); n > 0 {
		s.note("the yarn%s is wound over into %d equal packages of %s, since each position takes its own",
			inColour(u.Package.Colour), n, u.Package.amount())
	}
	name := "yarn on the package that is empty first"
	if u.Package.Gross == 0 {
		s.step(name, cell(atMost(u.Holds, long)), "as you gave it", nil)
		return
	}
	light := s.spec.Units.Light()
	s.step(name, cell(atMost(u.Holds, long)), "(weight - empty tube) x length in a weight, rounded down",
		figure.Say("(%s - %s) x %s = %s", u.Package.Gross.As(light, 2), y.Tube.As(light, 2),
			y.Size.PerMass(s.spec.Units), atMost(u.Holds, long)))
}

func inColour(colour string) string {
	if colour == "" {
		return ""
	}
	return " in " + colour
}

// slotsWound is how many packages the colour of a use was wound over into; 0 where it wasn't.
func (s *solver) slotsWound(u Use) int {
	if u.Number > 0 && u.Number <= len(s.k.OnHand) && s.k.OnHand[u.Number-1] == u.Package {
		return 0
	}
	return len(slices.DeleteFunc(slices.Clone(s.Packages), func(v Use) bool { return v.Package != u.Package }))
}

// pieces finds how many pieces the length, or the yarn, gives.
func (s *solver) pieces() error {
	reach, why := s.k.Length, "the warp"
	var f feeding
	if reach == 0 {
		var err error
		if reach, f, err = s.yarnReaches(); err != nil {
			return err
		}
		if err := s.tellReach(f, reach); err != nil {
			return err
		}
		why = "how far it reaches"
		s.tellWarp(reach, "rounded down to what the pegs give")
	}
	one, err := s.warpOf(1)
	if err != nil {
		return err
	}
	n := s.mostPieces(one, reach)
	for ; n > 0; n-- {
		if ok, err := s.piecesFit(n, reach); err != nil || ok {
			if err != nil {
				return err
			}
			break
		}
	}
	if n == 0 {
		return field.FinishedLength.Wrong(s.k.FinishedLength.String(), "a shorter piece: one takes "+
			atLeast(one.Total, s.spec.Units.Long()).String()+" of warp, and there is "+
			atMost(reach, s.spec.Units.Long()).String())
	}
	s.tellPieces(one, reach, n, why)
	w, err := s.warpOf(n)
	if err != nil {
		return err
	}
	s.Lines = append(s.Lines, w.Rows(s.spec.Units)...)
	s.Answer = cell(figure.Counted(n, "piece", "pieces"))
	s.spec.Cloth.Length.Pieces = n
	if s.k.Length == 0 {
		s.spec.Length = w.Total
	}
	s.HasLength = true
	if !s.HasEnds {
		return nil
	}
	return s.checkYarn()
}

// once is the warp that is taken once, whatever the pieces; each is what a piece takes, exactly.
func (s *solver) perPiece(one *cloth.WarpLength) (each *big.Rat, once measure.Length) {
	l := s.spec.Cloth.Length
	once = l.Sample + l.Waste + l.Knotting
	cloth := ratio.Quo(ratio.Of(s.k.FinishedLength+2*l.Hem), l.Shrinkage.Left())
	if l.TakeUpOf == 0 {
		cloth = ratio.Quo(cloth, l.TakeUp.Left())
	} else {
		cloth = ratio.Mul(cloth, ratio.Add(ratio.Of(1), l.TakeUp.Of()))
	}
	return ratio.Add(cloth, ratio.Of(2*l.Fringe)), once
}

// mostPieces is the pieces in a length of warp, rounded down.
func (s *solver) mostPieces(one *cloth.WarpLength, reach measure.Length) int {
	each, once := s.perPiece(one)
	if reach <= once {
		return 0
	}
	n, ok := ratio.Down.Whole(ratio.Quo(ratio.Of(reach-once), each))
	if !ok {
		n = math.MaxInt32
	}
	return min(int(n), field.Pieces.High)
}

// piecesFit says whether so many pieces go into the warp that there may be, with the yarn that there is.
func (s *solver) piecesFit(n int, reach measure.Length) (bool, error) {
	w, err := s.warpOf(n)
	if err != nil || s.k.Length != 0 {
		return err == nil && w.Total <= reach, err
	}
	way, ok := s.way(w.Total)
	if !ok {
		return false, nil
	}
	p, err := s.planOf(s.spec.Ends, w.Total, false)
	if err != nil {
		return false, err
	}
	f, err := s.feed(p)
	if err != nil {
		return false, err
	}
	_, ok = f.at(way)
	return ok, nil
}

// tellPieces shows how the pieces follow from the length.
func (s *solver) tellPieces(one *cloth.WarpLength, reach measure.Length, n int, why string) {
	each, once := s.perPiece(one)
	u := s.spec.Units.Short()
	l := s.spec.Cloth.Length
	piece, _ := measure.LengthOf(ratio.Up, each)
	formula := "(piece + hem x 2) / (1 - shrinkage) / (1 - take-up) + fringe x 2"
	numbers := figure.Say("(%s + %s x 2) / (1 - %s) / (1 - %s) + %s x 2 = %s", s.k.FinishedLength.As(u, 2),
		l.Hem.As(u, 2), l.Shrinkage.As(), l.TakeUp.As(), l.Fringe.As(u, 2), piece.As(u, 2))
	if l.TakeUpOf != 0 {
		formula = "(piece + hem x 2) / (1 - shrinkage) x (1 + take-up) + fringe x 2"
		numbers = figure.Say("(%s + %s x 2) / (1 - %s) x (1 + %s) + %s x 2 = %s", s.k.FinishedLength.As(u, 2),
			l.Hem.As(u, 2), l.Shrinkage.As(), l.TakeUp.As(), l.Fringe.As(u, 2), piece.As(u, 2))
	}
	s.step("warp for one piece", cell(piece.As(u, 2)), formula, numbers)
	exact := new(big.Rat)
	if reach > once {
		exact = ratio.Quo(ratio.Of(reach-once), each)
	}
	s.step("pieces", cell(figure.Counted(n, "piece", "pieces")),
		"("+why+" - sample - loom waste - knotting on) / warp for one piece, rounded down",
		figure.Say("(%s - %s - %s - %s) / %s = %s, so %d", atMost(reach, s.spec.Units.Long()), l.Sample.As(u, 2),
			l.Waste.As(u, 2), l.Knotting.As(u, 2), piece.As(u, 2), figure.AtMost(exact, 2, ""), n))
}
