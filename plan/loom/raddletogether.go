package loom

import (
	"errors"
	"math"

	"millside/plan/field"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// RaddleShare is one of several warps that go through a raddle together.
type RaddleShare struct {
	// Places says where its ends lie among those of all warps, counted from the left, from 1: they rise.
	Places []int
	// Groups is the ends of each of its groups, from that of its end 1 on, as in [Raddling]; Split lets a tooth part
	// them. Its end 1 lies on the side FirstEnd.
	Groups   []int
	Split    bool
	FirstEnd Side
}

// raddling is the share by itself.
func (s RaddleShare) raddling(sett measure.Sett) Raddling {
	return Raddling{Ends: len(s.Places), Sett: sett, Groups: s.Groups, Split: s.Split, FirstEnd: s.FirstEnd}
}

// RaddleTogether is how several warps are spread in one raddle.
type RaddleTogether struct {
	// Sections lists the spaces from left to right; in each, the share of every warp, in the order in which they were
	// given. A warp's ends are numbered as it was wound.
	Sections [][]RaddleSection
	// MiddleSpace says that the warps are centred on a space and not on a tooth.
	MiddleSpace bool
	// Width is how much of the raddle is filled, whole spaces; Fits says that it has as many, or that their number
	// isn't known.
	Width measure.Length
	Fits  bool
}

// FillTogether spreads warps that lie between or beside one another: all says of all ends together how close they lie,
// with the first one on the left, and each share where its own are. Each end, or each whole group of a warp, goes into
// the space over which its middle lies, as in [Raddle.Fill]. The error joins one [measure.FieldError] for each field
// that is out of its range.
func (r Raddle) FillTogether(all Raddling, shares []RaddleShare) (*RaddleTogether, error) {
	all.Groups, all.FirstEnd = nil, LeftSide
	errs := []error{r.check(all)}
	for _, s := range shares {
		errs = append(errs, s.raddling(all.Sett).checkGroups())
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	if measure.SmallCount(ratio.Up, ratio.Quo(ratio.Of(all.Ends), all.perSpace(r.Space))) > MaxSections {
		return nil, field.Raddle.Wrong(r.Space.String(), "a wider space, of which fewer are filled")
	}
	onTooth, onSpace := r.together(all, shares, false), r.together(all, shares, true)
	t := &RaddleTogether{Sections: onTooth, MiddleSpace: len(onSpace) < len(onTooth)}
	if t.MiddleSpace {
		t.Sections = onSpace
	}
	t.Width = r.Space.Times(len(t.Sections))
	t.Fits = r.Spaces == 0 || len(t.Sections) <= r.Spaces
	return t, nil
}

// together lists the sections, with the warps centred on a tooth or on a space.
func (r Raddle) together(all Raddling, shares []RaddleShare, onSpace bool) [][]RaddleSection {
	find, places := newSpaceFinder(all.Sett.Count(r.Space), all.Ends, onSpace), all.places()
	own := make([]map[int]RaddleSection, len(shares))
	low, high := math.MaxInt, math.MinInt
	for i, s := range shares {
		own[i] = map[int]RaddleSection{}
		w := s.raddling(all.Sett)
		units, start := w.units(), 0
		for k := 0; start < w.Ends; k++ {
			size := 1
			if units != nil {
				size = units[k]
			}
			from, to := s.Places[start]-1, s.Places[start+size-1] // the ends before the unit, and those up to its last
			at := find.at(from + to)
			if places != nil {
				at = over(places[from]+places[to], places[all.Ends], r.Space, onSpace)
			}
			section := own[i][at]
			section.take(start, size, w)
			own[i][at] = section
			low, high, start = min(low, at), max(high, at), start+size
		}
	}
	list := make([][]RaddleSection, 0, high-low+1)
	for at := low; at <= high; at++ {
		var row []RaddleSection
		for i := range shares {
			section := own[i][at]
			section.Number, section.FromCentre = at-low+1, fromCentre(at, onSpace)
			row = append(row, section)
		}
		list = append(list, row)
	}
	for i, s := range shares {
		named := make([]RaddleSection, len(list))
		for k := range list {
			named[k] = list[k][i]
		}
		s.raddling(all.Sett).nameGroups(named)
		for k := range list {
			list[k][i] = named[k]
		}
	}
	return list
}
