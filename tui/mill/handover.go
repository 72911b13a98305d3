package mill

import (
	"fmt"

	"millside/plan/measure"
	"millside/tui/look"
)

// handOverRows lists what the loom must know of the winding: marked ends with their place on the loom, what
// was recounted, notes, and the time taken. Where there is no room for all of it, it says so, since a marked
// end that is cut off would be taken for none.
func (m Model) handOverRows(w, room int) []string {
	var out []string
	for _, r := range m.handOver.Rows {
		for i, l := range look.Wrap(measure.Clean(r.Value.String()), max(w-24, 10)) {
			label := ""
			if i == 0 {
				label = r.Name
			}
			out = append(out, "  "+m.Styles.Dim.Render(look.Pad(label, 20))+l)
		}
	}
	if len(out) < room && len(out) > 0 {
		return append([]string{""}, out...)
	}
	if len(out) > room {
		shown := max(room-1, 0)
		more := fmt.Sprintf("  and %s: 'millside sheet' prints all",
			measure.Counted(len(out)-shown, "line more", "lines more"))
		out = append(out[:shown:shown], m.Styles.Warn.Render(look.Fit(more+" ", w)))
	}
	return out
}

// marksText says, while the warp is taken off, which ends to look for.
func (m Model) marksText() string {
	n := 0
	for _, i := range m.s.State().Incidents {
		if i.Stands() {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("%s: they stand on the hand-over",
		measure.Counted(n, "marked place in this warp", "marked places in this warp"))
}
