package sheetout

import (
	"io"

	"millside/cmd/millside/internal/prose"
	"millside/plan/pair"
	"millside/plan/sheet"
)

const togetherFormat = "millside-together-1"

const aboutTogether = `Two warps that go through one raddle and one reed. ends, passes, chains and yarn are those of
both together, length is that of the longer; parts are as in millside-sheet-1. sections lists the spaces of the raddle
and dents the dents of the cloth, from left to right: first and last are the numbers of a warp's ends, 0 where none lie
there. from_middle counts from the middle of the raddle: 0 is a space in the middle, -1 and 1 are the first to its left
and to its right.`

// togetherFile is a joining for a program to read.
type togetherFile struct {
	Format string `json:"format"` // togetherFormat
	*sheet.Sheet
	Parts    []partJSON       `json:"parts"`
	Order    string           `json:"order"`
	Sett     string           `json:"sett" about:"of both together"`
	Width    string           `json:"width_in_reed"`
	Sections []togetherPlace  `json:"sections"`
	Dents    []togetherPlace  `json:"dents"`
	Lengths  []togetherLength `json:"lengths" about:"that of the ground, then that of the second"`
}

// togetherPlace is a section of the raddle or a dent.
type togetherPlace struct {
	Number     int          `json:"number"`
	FromMiddle *int         `json:"from_middle,omitempty" about:"of a section"`
	Ground     togetherEnds `json:"ground"`
	Second     togetherEnds `json:"second"`
}

// togetherEnds is the ends of a warp that lie there.
type togetherEnds struct {
	Ends  int `json:"ends"`
	First int `json:"first"`
	Last  int `json:"last"`
}

// togetherLength is how long a warp has to be.
type togetherLength struct {
	Planned string `json:"planned"`
	Needed  string `json:"needed,omitempty" about:"missing where the ground isn't planned from its cloth"`
	TakeUp  string `json:"take_up,omitempty"`
}

// WriteTogether writes a joining in one of the [SheetFormats]; how adds to each figure how it was reached.
func WriteTogether(w io.Writer, j *pair.Joint, s *sheet.Sheet, format string, how bool) error {
	if format != "json" {
		return WriteSheet(w, s, format, how)
	}
	return prose.WriteJSON(w, togetherToJSON(j, s))
}

func togetherToJSON(j *pair.Joint, s *sheet.Sheet) togetherFile {
	out := togetherFile{Format: togetherFormat, Sheet: s, Parts: partsJSON(s.Parts), Order: j.Places.Text,
		Sett: j.Sett.String(), Width: j.Width.String(), Sections: []togetherPlace{}, Dents: []togetherPlace{}}
	if j.Raddled != nil {
		for i, in := range j.Raddled.Sections {
			of := func(w pair.Which) togetherEnds { return togetherEnds{in[w].Ends, in[w].First, in[w].Last} }
			out.Sections = append(out.Sections, togetherPlace{Number: i + 1, FromMiddle: &in[pair.Ground].FromCentre,
				Ground: of(pair.Ground), Second: of(pair.Second)})
		}
	}
	for i, d := range j.Dents {
		of := func(w pair.Which) togetherEnds { return togetherEnds{d.Ends[w], d.First[w], d.Last[w]} }
		out.Dents = append(out.Dents, togetherPlace{Number: i + 1, Ground: of(pair.Ground), Second: of(pair.Second)})
	}
	for w := range j.Warps {
		one := togetherLength{Planned: j.Lengths.Planned[w].String()}
		if j.Lengths.Known {
			one.Needed, one.TakeUp = j.Lengths.Needed[w].String(), j.Lengths.TakeUp[w].String()
		}
		out.Lengths = append(out.Lengths, one)
	}
	return out
}
