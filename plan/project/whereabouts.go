package project

import (
	"fmt"

	"millside/plan/cloth"
	"millside/plan/loom"
)

// Whereabouts says where an end of the warp comes to lie on the loom: its colour, its shafts, its
// section of the raddle and its dent, as far as the project knows them: ", C white, shaft 2, raddle section 3
// left, dent 41". It
// is empty for 0 and where nothing is known; a nil project knows nothing.
func (pr *Project) Whereabouts(end int) string {
	if pr == nil || end < 1 || end > pr.Plan.EndsWound() {
		return ""
	}
	text := ""
	if pr.Plan.Striped() {
		text += ", " + pr.Plan.ColourText(pr.Plan.EndColour(end))
	}
	if t, ok := pr.Threaded(); ok {
		text += ", " + shaftText(t.At(end))
	}
	if pr.Raddle != nil {
		for _, sec := range pr.Raddle.Sections {
			if low, high := min(sec.First, sec.Last), max(sec.First, sec.Last); sec.Ends > 0 && low <= end &&
				end <= high {
				text += ", raddle section " + sec.FromMiddle()
			}
		}
	}
	if pr.Sley != nil {
		if dent := pr.Sley.DentOf(end); dent > 0 {
			text += fmt.Sprintf(", dent %d of the warp from the left", dent)
		}
	}
	return text
}

// Threaded is the warp in the heddles; false where the threading isn't known.
func (pr *Project) Threaded() (loom.Threaded, bool) {
	l, width := pr.Plan.Spec.Loom, cloth.Width{}
	if pr.Plan.Spec.Cloth.Used {
		width = pr.Plan.Spec.Cloth.Width
	}
	return loom.Threaded{Begin: l.ThreadingBegin, Repeat: l.Threading, End: l.ThreadingEnd,
		Ends: pr.Plan.EndsWound(), Doubled: width.Doubled, Floating: width.FloatingIn(),
		FirstEnd: l.FirstEnd}, len(l.ThreadingBegin)+len(l.Threading)+len(l.ThreadingEnd) > 0
}

// shaftText says through which shafts an end goes.
func shaftText(s loom.Shafts) string {
	switch len(s) {
	case 0:
		return "through no heddle"
	case 1:
		return "shaft " + s.String()
	default:
		return "shafts " + s.String()
	}
}
