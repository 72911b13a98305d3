package start

import (
	"errors"

	"millside/plan/cloth"
	"millside/plan/field"
	"millside/plan/measure"
)

// way is the way of a warp on the mill or the board: the length rounded up to what the pegs give. It is false where a
// board is too short.
func (s *solver) way(length measure.Length) (measure.Length, bool) {
	if len(s.spec.Board) == 0 {
		return s.spec.Mill.Path(length).Length, true
	}
	p, err := s.spec.Board.Path(length, s.spec.Units)
	return p.Length, err == nil && p.Fits
}

// longest is the longest warp that a condition on its way allows, rounded down to whole steps; 0 where there is none
// of a length that can be wound.
func (s *solver) longest(step measure.Length, allowed func(way measure.Length) bool) measure.Length {
	fits := func(n measure.Length) bool {
		way, ok := s.way(n * step)
		return ok && allowed(way)
	}
	low, high := measure.Length(0), field.Length.Most/step+1 // low fits, high doesn't
	for high-low > 1 {
		if mid := (low + high) / 2; fits(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	if low*step < field.Length.Least {
		return 0
	}
	return low * step
}

// warpOf is the length that so many pieces take.
func (s *solver) warpOf(pieces int) (*cloth.WarpLength, error) {
	l := s.spec.Cloth.Length
	l.Piece, l.Pieces, l.Units, l.Fibre = s.k.FinishedLength, pieces, s.spec.Units, s.spec.Cloth.Width.Fibre
	return l.Warp()
}

// knownLength works out the length from what says so.
func (s *solver) knownLength() error {
	k := s.k
	s.spec.Cloth.Length.Piece, s.spec.Cloth.Length.Pieces = k.FinishedLength, max(k.Pieces, 1)
	if k.Length != 0 {
		s.spec.Length, s.HasLength = k.Length, true
	}
	if !k.pieces() {
		return nil
	}
	w, err := s.warpOf(k.Pieces)
	if err != nil {
		return err
	}
	if k.Length != 0 {
		if w.Total > k.Length {
			return &measure.FieldError{Field: field.Length.Name, Value: k.Length.String(),
				Want: "at least " + atLeast(w.Total, s.spec.Units.Long()).String() +
					", which the pieces take; or leave it out"}
		}
		return nil
	}
	s.Lines = append(s.Lines, w.Rows(s.spec.Units)...)
	s.spec.Length, s.HasLength = w.Total, true
	return errors.Join(field.Length.CheckLength(w.Total))
}
