package pair

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/measure"
	"millside/plan/sheet"
)

// PartWith is the part of a warp's own sheet that tells of its other warp.
const PartWith sheet.PartID = "goes-with"

// Kept is what the record of a warp keeps of the one that it goes with. It stands there as a line of words.
type Kept struct {
	// With is which of the two the other warp is, Name what it is called and File the file of its record, in the same
	// folder.
	With       Which
	Name, File string
	// Said is what was said of both, field by field, as [Ask.Take] reads it.
	Said map[*field.Field]string
}

// String writes it: the second "pile", in pile.millside; order: 2 ground, 1 second; its take-up: 40%.
func (k Kept) String() string {
	parts := []string{fmt.Sprintf("the %s %s, in %s", k.With, strconv.Quote(k.Name), k.File)}
	for _, f := range Fields() {
		if text := strings.TrimSpace(k.Said[f]); text != "" {
			parts = append(parts, f.Label+": "+text)
		}
	}
	return strings.Join(parts, "; ")
}

// ParseKept reads what [Kept.String] wrote. The error is a [*measure.FieldError].
func ParseKept(text string) (Kept, error) {
	wrong := &measure.FieldError{Field: "goes with", Value: measure.Shortened(text),
		Want: "what 'millside together --keep' writes"}
	k := Kept{Said: map[*field.Field]string{}}
	rest, second := strings.CutPrefix(text, "the second ")
	if second {
		k.With = Second
	} else if rest, second = strings.CutPrefix(text, "the ground "); !second {
		return k, wrong
	}
	quoted, err := strconv.QuotedPrefix(rest)
	if err != nil {
		return k, wrong
	}
	k.Name, _ = strconv.Unquote(quoted) // it is quoted, as was seen
	rest, ok := strings.CutPrefix(rest[len(quoted):], ", in ")
	if !ok {
		return k, wrong
	}
	parts := strings.Split(rest, "; ")
	k.File = parts[0]
	var ask Ask
	for _, part := range parts[1:] {
		label, value, _ := strings.Cut(part, ": ")
		at := slices.IndexFunc(Fields(), func(f *field.Field) bool { return f.Label == label })
		if at < 0 || ask.Take(Fields()[at], value) != nil {
			return k, wrong
		}
		k.Said[Fields()[at]] = value
	}
	if k.String() != text {
		return k, wrong
	}
	return k, nil
}

// Check says whether it can be kept and read again. The error is a [*measure.FieldError].
func (k Kept) Check() error {
	if err := measure.CheckGoesWith(k.String()); err != nil {
		return err
	}
	_, err := ParseKept(k.String())
	return err
}

// Ask is what was said of both.
func (k Kept) Ask() (a Ask, err error) {
	for f, text := range k.Said {
		if err := a.Take(f, text); err != nil {
			return a, err
		}
	}
	return a, nil
}

// Keeps is what the records of a ground and of a second keep of each other, by their names and files.
func Keeps(names, files [2]string, said map[*field.Field]string) (kept [2]Kept, err error) {
	for w := range kept {
		other := Which(w).Other()
		kept[w] = Kept{With: other, Name: names[other], File: files[other], Said: said}
		if err := kept[w].Check(); err != nil {
			return kept, err
		}
	}
	return kept, nil
}

// With is the part of one warp's own sheet that says with which warp it goes and where its ends lie. Ends are some that
// are told one by one, such as those that were marked at the mill.
func (j *Joint) With(w Which, marked []int) sheet.Part {
	other := w.Other()
	part := sheet.Part{ID: PartWith, Title: "Goes with another warp"}
	part.Rows = append(part.Rows, measure.Row{Name: "the other warp", Value: figure.Say("%s, the %s: %s",
		j.Warps[other].Plan.Spec.Name, other, ends(j.Places.Ends(other)))})
	part.Rows = append(part.Rows, j.OrderRows()...)
	for _, end := range marked {
		if text := j.Whereabouts(w, end); text != "" {
			part.Rows = append(part.Rows, measure.Row{Name: fmt.Sprintf("end %d", end), Value: figure.Say("%s", text)})
		}
	}
	if j.Raddled != nil {
		part.Table = &sheet.Table{Columns: []string{"raddle section", "ends of this warp", "numbers",
			"of the " + other.String()}}
		for _, s := range j.Raddled.Sections {
			part.Table.Lines = append(part.Table.Lines, []figure.Cell{figure.Say("%s", s[w].FromMiddle()),
				number(s[w].Ends), numbers(s[w].Ends, s[w].First, s[w].Last), number(s[other].Ends)})
		}
	}
	part.Notes = []string{"Raddle and reed are filled from both warps: what a part on the raddle or the reed says " +
		"of this " +
		"warp alone doesn't hold. 'millside together' prints the sheet of both."}
	return part
}

// Whereabouts says where a warp's end comes to lie: "raddle section 3 left, dent 41 of both from the left"; "" where
// nothing is known.
func (j *Joint) Whereabouts(w Which, end int) string {
	var parts []string
	if s, ok := j.SectionOf(w, end); ok {
		parts = append(parts, "raddle section "+s.FromMiddle())
	}
	if dent := j.DentOf(w, end); dent > 0 {
		parts = append(parts, fmt.Sprintf("dent %d of both from the left", dent))
	}
	return strings.Join(parts, ", ")
}
