package loom

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"millside/plan/field"
	"millside/plan/measure"
)

// DentSection is dents side by side that hold as many ends each.
type DentSection struct {
	// Dents is how many there are, 1 to 1,000; Ends how many ends lie in each, 0 to 100: none in a gap.
	Dents, Ends int
}

// DentSections is how a reed is sleyed where ends are crammed and spaced: sections side by side, which are repeated
// until all ends are in. It is empty where a warp is sleyed evenly.
type DentSections []DentSection

// bounds of a section.
const (
	mostSectionDents = 1000
	mostSections     = 200
)

const sectionsWant = `dents and the ends in each with commas between them, such as "20 dents of 2, 4 of 4, 2 empty"`

// oneSection is "20 dents of 2", "4 of 4", "2 empty" or "1 dent empty".
var oneSection = regexp.MustCompile(`^(\d{1,4})(?:\s+dents?)?\s+(?:of\s+(\d{1,3})|empty)$`)

// ParseDentSections reads "20 dents of 2, 4 of 4, 2 empty". Nothing is no sections. The error is a
// [*measure.FieldError].
func ParseDentSections(text string) (DentSections, error) {
	if strings.TrimSpace(text) == "" {
		return nil, nil
	}
	var list DentSections
	for _, item := range measure.SplitList(text) {
		m := oneSection.FindStringSubmatch(strings.ToLower(strings.TrimSpace(item)))
		if m == nil {
			return nil, field.Dents.Wrong(measure.Shortened(item), sectionsWant)
		}
		s := DentSection{}
		s.Dents, _ = strconv.Atoi(m[1]) // a few figures
		if m[2] != "" {
			s.Ends, _ = strconv.Atoi(m[2])
		}
		list = append(list, s)
	}
	return list, list.Check()
}

// Check reports sections that hold no end, and what is out of its range. The error is a [*measure.FieldError].
func (d DentSections) Check() error {
	ends := 0
	for _, s := range d {
		if s.Dents < 1 || s.Dents > mostSectionDents || s.Ends < 0 || s.Ends > 100 {
			return field.Dents.Wrong(s.String(), fmt.Sprintf("1 to %d dents with 0 to 100 ends each", mostSectionDents))
		}
		ends += s.Dents * s.Ends
	}
	if len(d) > mostSections {
		return field.Dents.Wrong(measure.Counted(len(d), "section", "sections"),
			fmt.Sprintf("at most %d", mostSections))
	}
	if len(d) > 0 && ends == 0 {
		return field.Dents.Wrong(d.String(), "ends in some of them")
	}
	return nil
}

// Fill is the ends in each dent, for so many ends: the sections are repeated until all are in, and the last dent may
// hold fewer. Gaps before the first end and behind the last are left out, since the warp begins and stops with an end.
func (d DentSections) Fill(ends int) ([]int, error) {
	if err := d.Check(); err != nil || len(d) == 0 {
		return nil, err
	}
	var dents []int
	for left := ends; left > 0; {
		for _, s := range d {
			for range s.Dents {
				if n := min(s.Ends, left); left > 0 && (n > 0 || len(dents) > 0) {
					dents, left = append(dents, n), left-n
				}
			}
		}
		if len(dents) > 10*measure.MaxEnds {
			return nil, field.Dents.Wrong(measure.Shortened(d.String()), "fewer empty dents")
		}
	}
	return dents, nil
}

// In is how many ends lie in so many dents, from the first one with an end on, the sections being repeated.
func (d DentSections) In(dents int) (ends int) {
	if d.Check() != nil || len(d) == 0 {
		return 0
	}
	for left := dents; left > 0; {
		for _, s := range d {
			if n := min(s.Dents, left); ends > 0 || s.Ends > 0 { // gaps before the first end are left out
				ends, left = ends+n*s.Ends, left-n
			}
		}
	}
	return ends
}

// Widths is the width that each end takes of a reed whose dents hold so many ends, from the first one on: a gap counts
// for the end behind it. A nanometre may be lost in each dent.
func (r Reed) Widths(dents []int) []measure.Length {
	var widths []measure.Length
	from := measure.Length(0)
	for i, n := range dents {
		if n == 0 {
			continue
		}
		room := r.widthOf(i+1) - from
		from += room
		widths = append(widths, slices.Repeat([]measure.Length{room / measure.Length(n)}, n)...)
	}
	return widths
}

// String writes the section as it is read.
func (s DentSection) String() string {
	dents := measure.Counted(s.Dents, "dent", "dents")
	if s.Ends == 0 {
		return dents + " empty"
	}
	return fmt.Sprintf("%s of %d", dents, s.Ends)
}

// String writes the sections as they are read.
func (d DentSections) String() string {
	parts := make([]string, len(d))
	for i, s := range d {
		parts[i] = s.String()
	}
	return strings.Join(parts, ", ")
}

// MarshalText writes the sections as String does.
func (d DentSections) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads them.
func (d *DentSections) UnmarshalText(b []byte) (err error) {
	*d, err = ParseDentSections(string(b))
	return err
}
