package pair

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"millside/plan/measure"
	"millside/plan/sheet"
)

// longestDrawn is the longest repeat that is looked for in the order of the dents, in dents.
const longestDrawn = 48

// Letter is what stands for an end of a warp in the drawings: G or S.
func (w Which) Letter() string { return measure.OneOf(int(w), "G", "S") }

// lettersKey says what the letters mean.
const lettersKey = "G is an end of the ground, S one of the second"

// drawings is the raddle and the reed, as far as they are known.
func (j *Joint) drawings() (d sheet.Drawings) {
	if j.Raddled != nil {
		d.JointRaddle = &sheet.JointRaddle{MiddleSpace: j.Raddled.MiddleSpace}
		for _, in := range j.Raddled.Sections {
			of := func(w Which) sheet.DrawnSection {
				s := in[w]
				return sheet.DrawnSection{FromCentre: s.FromCentre, Ends: s.Ends, Groups: s.Groups, Cut: s.Cut,
					GroupNumbers: sheet.GroupSpan(j.Warps[w].Plan, s)}
			}
			d.JointRaddle.Sections = append(d.JointRaddle.Sections, sheet.JointSection{Ground: of(Ground),
				Second: of(Second)})
		}
	}
	if j.Sley != nil {
		d.JointReed = &sheet.JointReed{Runs: j.dentRuns()}
	}
	return d
}

// dentRuns is the dents by the letters of their ends, those that repeat once. Where nearly all dents repeat, a few at
// an edge stay by themselves.
func (j *Joint) dentRuns() []sheet.DentRun {
	var dents []string
	at := 0
	for _, n := range j.Sley.Dents {
		var b strings.Builder
		for _, w := range j.Places.Order[at : at+n] {
			b.WriteString(w.Letter())
		}
		dents, at = append(dents, b.String()), at+n
	}
	var runs []sheet.DentRun
	for _, b := range blocks(dents, longestDrawn, func(a, b string) bool { return a == b }) {
		last := len(runs) - 1
		one := sheet.DentRun{First: b.first + 1, Dents: dents[b.first : b.first+b.size], Times: b.times}
		if b.times == 1 && last >= 0 && runs[last].Times == 1 { // dents that don't repeat stand together
			runs[last].Dents = append(slices.Clone(runs[last].Dents), one.Dents...)
			continue
		}
		runs = append(runs, one)
	}
	return runs
}

// ReedPicture draws the dents in lines of at most so many signs: each run of dents once, with a stroke for each wire of
// the reed. It is empty where no reed is known.
func (j *Joint) ReedPicture(width int) []string {
	if j.Sley == nil {
		return nil
	}
	lines := wrapped(lettersKey+", | a wire of the reed.", width)
	for _, run := range j.dentRuns() {
		where := run.Where() + ":"
		if run.Times > 1 {
			where = fmt.Sprintf("%s, %d times over:", run.Where(), run.Times)
		}
		lines = append(lines, where)
		line := "  |"
		for _, dent := range run.Dents {
			if dent == "" {
				dent = " "
			}
			if utf8.RuneCountInString(line+dent)+1 > width && line != "  |" {
				lines, line = append(lines, line), "  |"
			}
			line += dent + "|"
		}
		lines = append(lines, line)
	}
	return lines
}

// mostRaddleRows is how many rows of sections the picture of a raddle has at most; the sections furthest out are left
// to the list.
const mostRaddleRows = 12

// RaddlePicture draws the sections in lines of at most so many signs, in rows from left to right, with the ends and the
// groups of each warp. It is empty where no raddle is known.
func (j *Joint) RaddlePicture(width int) []string {
	if j.Raddled == nil {
		return nil
	}
	names := []string{"from the middle", "ground, ends", "its groups", "second, ends", "its groups"}
	var cells [][]string // of each section
	wide := 2
	for _, in := range j.drawings().JointRaddle.Sections {
		one := []string{sideOf(in.Ground.FromCentre)}
		for _, s := range []sheet.DrawnSection{in.Ground, in.Second} {
			ends := ""
			if s.Ends > 0 {
				ends = fmt.Sprint(s.Ends)
			}
			one = append(one, ends, s.GroupNumbers)
		}
		for _, text := range one {
			wide = max(wide, utf8.RuneCountInString(text))
		}
		cells = append(cells, one)
	}
	const left = 16
	inRow := max((width-left-1)/(wide+1), 1)
	outer := max(len(cells)-mostRaddleRows*inRow, 0)
	cells = cells[outer/2 : len(cells)-(outer+1)/2]
	rows := (len(cells) + inRow - 1) / inRow
	inRow = (len(cells) + rows - 1) / rows // rows that are alike
	var lines []string
	for at := 0; at < len(cells); at += inRow {
		if at > 0 {
			lines = append(lines, "")
		}
		for i, name := range names {
			if i > 0 && !slices.ContainsFunc(cells, func(one []string) bool { return one[i] != "" }) {
				continue // the groups of this warp aren't known
			}
			line := fmt.Sprintf("%-*s|", left, name)
			for _, one := range cells[at:min(at+inRow, len(cells))] {
				line += centred(one[i], wide) + "|"
			}
			lines = append(lines, line)
		}
	}
	note := "L and R: left and right of the middle, | a tooth of the raddle."
	if outer > 0 {
		note += fmt.Sprintf(" The outer %s are in the list.", measure.Counted(outer, "section", "sections"))
	}
	return append(lines, wrapped(note, width)...)
}

// sideOf says where a section is: "3L", "1R", "mid".
func sideOf(fromCentre int) string {
	switch {
	case fromCentre < 0:
		return fmt.Sprintf("%dL", -fromCentre)
	case fromCentre > 0:
		return fmt.Sprintf("%dR", fromCentre)
	}
	return "mid"
}

// centred puts a text into the middle of so many signs.
func centred(text string, width int) string {
	free := width - utf8.RuneCountInString(text)
	return strings.Repeat(" ", free/2) + text + strings.Repeat(" ", free-free/2)
}

// wrapped breaks a text between its words.
func wrapped(text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && utf8.RuneCountInString(line+" "+word) > width {
			lines, line = append(lines, line), ""
		}
		line = strings.TrimSpace(line + " " + word)
	}
	return append(lines, line)
}
