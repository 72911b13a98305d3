package plan

import "fmt"

// Whereabouts says where an end of the warp comes to lie on the loom: its colour, its section of the
// raddle and its dent, as far as the project knows them: ", A white, raddle section 3 left, dent 41". It
// is empty for 0 and where nothing is known; a nil project knows nothing.
func (pr *Project) Whereabouts(end int) string {
	if pr == nil || end < 1 || end > pr.Plan.EndsWound() {
		return ""
	}
	text := ""
	if pr.Plan.Striped() {
		text += ", " + pr.Plan.ColourText(pr.Plan.EndColour(end))
	}
	if pr.Raddle != nil {
		for _, sec := range pr.Raddle.Sections {
			if low, high := min(sec.First, sec.Last), max(sec.First, sec.Last); sec.Ends > 0 && low <= end && end <= high {
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
