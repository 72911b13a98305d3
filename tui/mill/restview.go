package mill

import (
	"fmt"
	"strings"
	"time"

	"millside/counter/session"
	"millside/plan/measure"
	"millside/plan/wind"
	"millside/tui/keys"
	"millside/tui/look"
)

// viewLooking is the pause, and the page on coming back: what must stand on the mill before winding goes on.
func (m Model) viewLooking(w, h int) string {
	s, k := m.Styles, m.Keys
	standing := m.s.Standing()
	title := "LOOK AT THE MILL"
	if standing.Paused {
		title = "PAUSED"
	}
	rows := look.NewPart(m.standingRows(standing, w))
	picture := mayGo(m.crossPicture(standing.Cross.OverPeg1, standing.Cross.OverPeg2, w))
	big := look.NewPart(m.standingBig(standing, w)...)
	if standing.Laid == 0 || standing.Ticked > 0 {
		picture = mayGo(nil)
	}
	wishes := []look.Wish{picture.At(1), big.At(1), big.At(2), big.At(3)}
	line := s.KeyLine(w, keys.As(k.Laid, "it is so: go on"), keys.As(k.Recount, "it isn't: recount"), k.Note, k.Leave)
	return m.titled(heading{words: title, large: title, ground: s.Warn, narrow: "LOOK"}, line,
		[]*look.Part{big, rows, picture}, wishes, w, h)
}

// standingBig is how many passes and ends must stand, large.
func (m Model) standingBig(st session.Standing, w int) [][]string {
	sizes := [][]string{nil}
	for z := look.Blocks; z < look.Blocks+4; z++ {
		big, ok := phrasesAt(m.Styles, []string{fmt.Sprintf("%d PASSES", st.Laid), fmt.Sprintf("%d ENDS", st.Ends)}, z,
			w-4)
		if !ok {
			break
		}
		sizes = append(sizes, look.Indent(look.Painted(big.Draw(), m.Styles.Figure), 2))
	}
	return sizes
}

// standingRows lists what stands on the mill if the count is right.
func (m Model) standingRows(st session.Standing, w int) []string {
	s := m.Styles
	var out []string
	row := func(name, value string) {
		lines := look.Wrap(value, w-23)
		for i, l := range lines {
			if i > 0 {
				name = ""
			}
			out = append(out, "  "+s.Dim.Render(look.Pad(name, 18))+" "+s.Strong.Render(l))
		}
	}
	if st.Missing != "" {
		row("take care", st.Missing)
	}
	if st.Chain != "" {
		row("chain", st.Chain)
	}
	row("passes laid", fmt.Sprintf("%d of %d", st.Laid, st.Of))
	row("ends standing", fmt.Sprintf("%d of %d", st.Ends, st.ChainEnds))
	if st.Laid == 0 {
		row("paddle", "at the lease, nothing wound yet")
		return out
	}
	if st.Paused || m.at.Sub(st.Stopped) > time.Minute {
		row("stopped", look.When(st.Stopped, m.at))
	}
	if st.Ticked > 0 {
		row("finishing", measure.Counted(st.Ticked, "step is done", "steps are done"))
		return out
	}
	where := "at the near end, by the lease"
	if st.Peg == wind.FarPeg {
		where = "at the far end, by the counting cross"
	}
	turn := strings.ToUpper(st.Turn.String()) + " round the end peg"
	if st.Wrong {
		turn += ", the wrong way"
	}
	row("paddle", where)
	row("last turn", turn)
	row("counting cross", fmt.Sprintf("%s over peg 1, %d over peg 2",
		measure.Counted(st.Cross.OverPeg1, "group", "groups"), st.Cross.OverPeg2))
	if st.Tie.Pass > 0 {
		row("last count tie", fmt.Sprintf("%s; %s loose", measure.Counted(st.Tie.Ends, "end", "ends"),
			measure.Counted(st.Laid-st.Tie.Pass, "group", "groups")))
	}
	if st.Twist != "" {
		row("twist", st.Twist)
	}
	return out
}

// crossPicture draws the two pegs of the counting cross with the groups that lie over each.
func (m Model) crossPicture(over1, over2, w int) []string {
	c := look.NewCanvas(w-4, 5, m.s.State().Plan.Spec.Hand == wind.LeftHanded)
	f := look.RowsOf(5)
	x1, x2 := (w-4)/4, (w-4)*3/4
	mid := (x1 + x2) / 2
	c.Across(2, mid-2, f.Top, '━', look.InkPath)
	c.Across(2, mid-2, f.Bottom, '━', look.InkPath)
	c.Across(mid+2, w-7, f.Top, '━', look.InkPath)
	c.Across(mid+2, w-7, f.Bottom, '━', look.InkPath)
	for i := range 3 {
		c.Set(mid-1+i, f.Top+i, '╲', look.InkPath)
		c.Set(mid+1-i, f.Top+i, '╱', look.InkPath)
	}
	c.Set(mid, f.Mid, '╳', look.InkPath)
	c.Peg(x1, f, '1')
	c.Peg(x2, f, '2')
	c.Text(x1, f.Label, measure.Counted(over1, "group", "groups")+" over", look.InkStrong)
	c.Text(x2, f.Label, measure.Counted(over2, "group", "groups")+" over", look.InkStrong)
	c.Text(x1, f.Names, "peg 1", look.InkLabel)
	c.Text(x2, f.Names, "peg 2", look.InkLabel)
	return look.Indent(c.Lines(m.Styles.Inks(wind.Outward)), 2)
}
