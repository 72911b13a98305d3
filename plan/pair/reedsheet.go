package pair

import (
	"fmt"
	"slices"
	"strings"

	"millside/plan/figure"
	"millside/plan/measure"
	"millside/plan/sheet"
)

// reedPart lists what lies in the dents from left to right, dents that repeat together.
func (j *Joint) reedPart() sheet.Part {
	part := sheet.Part{ID: sheet.PartReed, Title: "Reed, from left to right"}
	if j.Sley == nil {
		return part
	}
	part.Rows = []measure.Row{{Name: "reed", Value: figure.Say("%s", j.Reed.String())}}
	if j.Settled != nil {
		part.Rows = append(part.Rows, j.Settled.Row(j.Sley.Width, j.sideBySide(), j.Warps[Ground].Plan.Spec.Units))
	}
	for i, row := range j.Sley.Rows {
		if i > 0 || len(j.widths) == 0 { // where the dents differ, the table says what lies in them
			part.Rows = append(part.Rows, row)
		}
	}
	part.Picture = j.ReedPicture(sheet.PictureWidth)
	part.Table = &sheet.Table{Columns: []string{"dents", "in each, dent by dent", "times", "ground", "second"}}
	for _, b := range blocks(j.Dents, longestRepeat, sameEnds) {
		line := []figure.Cell{{figure.Range{First: b.first + 1, Last: b.first + b.size*b.times}},
			figure.Say("%s", dentsText(j.Dents[b.first:b.first+b.size])), number(b.times)}
		for _, w := range []Which{Ground, Second} {
			line = append(line, numbersIn(j.Dents[b.first:b.first+b.size*b.times], w))
		}
		part.Table.Lines = append(part.Table.Lines, line)
	}
	part.Notes = []string{"Dents are those of the cloth, counted from the left. Ground and second: which ends of " +
		"that warp lie in them."}
	if len(j.taken) > 0 {
		part.Notes = append(part.Notes, fmt.Sprintf(takenRule, j.takenOf, j.takenOf.Other()))
	}
	return part
}

// numbersIn is the lowest and the highest number of a warp's ends in dents.
func numbersIn(dents []Share, w Which) figure.Cell {
	n, first, last := 0, 0, 0
	for _, d := range dents {
		if d.Ends[w] == 0 {
			continue
		}
		if n == 0 {
			first, last = d.First[w], d.Last[w]
		}
		n, first, last = n+d.Ends[w], min(first, d.First[w]), max(last, d.Last[w])
	}
	return numbers(n, first, last)
}

// dentsText writes what lies in dents: "2 ground 1 second; 3 ground".
func dentsText(dents []Share) string {
	var parts []string
	for _, d := range dents {
		var in []string
		for _, w := range []Which{Ground, Second} {
			if d.Ends[w] > 0 {
				in = append(in, fmt.Sprintf("%d %s", d.Ends[w], w))
			}
		}
		if len(in) == 0 {
			in = []string{"empty"}
		}
		parts = append(parts, strings.Join(in, " "))
	}
	return strings.Join(parts, "; ")
}

// block is dents that repeat: size of them, so many times.
type block struct{ first, size, times int }

// blocks draws what repeats together, with repeats of at most so many.
func blocks[T any](list []T, longest int, same func(a, b T) bool) []block {
	var found []block
	for at := 0; at < len(list); {
		best := block{at, 1, 1}
		for size := 1; size <= longest && at+2*size <= len(list); size++ {
			times := 1
			for at+(times+1)*size <= len(list) && slices.EqualFunc(list[at:at+size],
				list[at+times*size:at+(times+1)*size], same) {
				times++
			}
			if times > 1 && size*times > best.size*best.times {
				best = block{at, size, times}
			}
		}
		found = append(found, best)
		at += best.size * best.times
	}
	return found
}

func sameEnds(a, b Share) bool { return a.Ends == b.Ends }
