package athand

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"millside/plan"
	"millside/plan/measure"
)

// String writes what is at hand as [Parse] reads it, one thing a line: mills, boards, paddles,
// reeds, raddles, looms, yarns. It is read back to the same things where their values are in range, and no name
// or colour holds a comma, a semicolon or a colon.
func (h AtHand) String() string {
	var b strings.Builder
	line := func(kind, name string, fields ...string) {
		fmt.Fprintf(&b, "%s %s: %s\n", kind, name, strings.Join(fields, ", "))
	}
	for _, m := range h.Mills {
		line(kindMill, m.Name, m.fields()...)
	}
	for _, n := range h.Boards {
		line(kindBoard, n.Name, n.Board.String())
	}
	for _, p := range h.Paddles {
		line(kindPaddle, p.Name, fmt.Sprintf("positions %d", p.Positions))
	}
	for _, r := range h.Reeds {
		fields := []string{r.Reed.String()}
		if w := r.Reed.Width(); w > 0 {
			fields = append(fields, "width "+w.String())
		}
		line(kindReed, r.Name, fields...)
	}
	for _, r := range h.Raddles {
		fields := []string{"space " + r.Raddle.Space.String()}
		if r.Raddle.Spaces > 0 {
			fields = append(fields, fmt.Sprintf("spaces %d", r.Raddle.Spaces))
		}
		line(kindRaddle, r.Name, fields...)
	}
	for _, n := range h.Looms {
		line(kindLoom, n.Name, "heddles "+heddlesText(n.Heddles))
	}
	for _, y := range h.Yarns {
		line(kindYarn, y.Name, yarnFields(y.Yarn)...)
	}
	return b.String()
}

// heddlesText writes the heddles on each shaft.
func heddlesText(heddles []int) string {
	if n := len(heddles); n > 1 && len(slices.Compact(slices.Clone(heddles))) == 1 {
		return fmt.Sprintf("%d on %d shafts", heddles[0], n)
	}
	var list []string
	for _, n := range heddles {
		list = append(list, strconv.Itoa(n))
	}
	return strings.Join(list, " and ")
}

// fields writes what is known of a mill.
func (n NamedMill) fields() []string {
	fields := []string{"circumference " + n.Mill.Circumference.String(), "peg step " + n.Mill.PegStep.String()}
	for _, f := range []struct {
		key string
		l   measure.Length
	}{{"rise", n.Mill.Rise}, {"height", n.Mill.Height}, {"peg length", n.Pegs.Length}} {
		if f.l != 0 {
			fields = append(fields, f.key+" "+f.l.String())
		}
	}
	if n.Pegs.Layers != 0 {
		fields = append(fields, fmt.Sprintf("layers %d", n.Pegs.Layers))
	}
	return fields
}

// yarnFields writes what is known of a yarn.
func yarnFields(y plan.WarpYarn) []string {
	fields := []string{y.Size.Readable()}
	if y.Colour != "" {
		fields = append(fields, "colour "+y.Colour)
	}
	if len(y.Cones) > 0 {
		fields = append(fields, "cones "+strings.ReplaceAll(y.Cones.String(), ", ", " and "))
	}
	if y.Tube > 0 {
		fields = append(fields, "tube "+y.Tube.String())
	}
	if y.Packages > 0 {
		fields = append(fields, fmt.Sprintf("packages %d", y.Packages))
	}
	return fields
}
