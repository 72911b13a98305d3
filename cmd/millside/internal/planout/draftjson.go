package planout

import (
	"millside/cmd/millside/internal/asked"
	"millside/plan"
	"millside/plan/stripe"
)

// DraftFormat names the structure below; see planFormat for what may change in it.
const DraftFormat = "millside-draft-1"

// draftJSON is what 'millside draft --json' prints, and what a plan made from a draft says of it.
type draftJSON struct {
	Format    string             `json:"format,omitempty"` // DraftFormat; left out inside a plan
	File      string             `json:"file"`
	Title     string             `json:"title"`
	Threads   int                `json:"threads"`
	Shafts    int                `json:"shafts"` // 0 where the draft doesn't say
	Treadles  int                `json:"treadles"`
	Coloured  bool               `json:"coloured"`
	Symmetric bool               `json:"symmetric"` // colours and widths of the ends are the same from both sides
	Sett      *offerJSON         `json:"sett_offered,omitempty"`
	Stripes   []draftStripesJSON `json:"stripes"`
	Ends      int                `json:"ends"` // of the warp that it makes
	Made      []string           `json:"made"` // what was made of its threads
	// NotThreaded is how many threads go through no shaft; 0 and 0 where the draft has no threading.
	NotThreaded struct {
		AtEnd  int `json:"at_end"`
		Before int `json:"before"`
	} `json:"not_threaded"`
	Heddles  []int         `json:"heddles"` // for each shaft, shaft 1 first; empty without a threading
	Weft     []picksJSON   `json:"weft"`    // empty where the draft doesn't say
	Warnings []warningJSON `json:"warnings"`
}

// picksJSON is how many picks of the draft are of a colour.
type picksJSON struct {
	Name  string `json:"name"`
	Picks int    `json:"picks"`
}

// offerJSON is the sett that a draft's spacing comes to: so many threads on a width. PerInch has at most
// two decimals, Per10cm at most one, both rounded to the nearest.
type offerJSON struct {
	Threads int        `json:"threads"`
	Width   LengthJSON `json:"width"`
	PerInch string     `json:"per_inch"`
	Per10cm string     `json:"per_10_cm"`
	Absurd  bool       `json:"absurd"`
}

// draftStripesJSON is the stripes from left to right if thread 1 is on a side.
type draftStripesJSON struct {
	Thread1  string       `json:"thread_1"` // "right" or "left"
	Notation string       `json:"notation"`
	Colours  []colourJSON `json:"colours"`
}

// colourJSON is a colour of the stripes.
type colourJSON struct {
	Letter string `json:"letter"`          // "?" from the 53rd colour on
	Name   string `json:"name"`            // no two alike
	Shade  string `json:"shade,omitempty"` // such as "#b03a2e"
	Ends   int    `json:"ends"`
	// Packages is the most positions of the paddle that have the colour at once; left out in a draft.
	Packages int `json:"packages,omitempty"`
}

type warningJSON struct {
	Section string `json:"section"` // "" before the first one
	Line    int    `json:"line"`    // from 1; 0 for something that is missing
	Text    string `json:"text"`
}

// DraftToJSON is what a draft says, for a program to read.
func DraftToJSON(d *asked.DraftFile) draftJSON {
	out := draftJSON{
		File: d.Path, Title: d.Title, Threads: d.Threads, Shafts: d.Shafts, Treadles: d.Treadles, Coloured: d.Coloured,
		Symmetric: d.Symmetric(d.Use), Stripes: []draftStripesJSON{}, Made: []string{}, Heddles: []int{},
		Weft: []picksJSON{}, Warnings: []warningJSON{},
	}
	if s := d.Sett; s != nil {
		out.Sett = &offerJSON{s.Threads, LengthToJSON(s.Width), s.PerInch().FloatString(2), s.Per10cm().FloatString(1),
			s.Absurd}
	}
	out.NotThreaded.AtEnd, out.NotThreaded.Before = d.NotThreaded()
	for _, side := range d.Sides() {
		made, err := d.Warp(side)
		if err != nil {
			continue // too many colours: the fields above and the empty list say so
		}
		out.Ends, out.Made = made.Ends, append([]string{}, made.Said...)
		out.Heddles = append([]int{}, made.Threading.Heddles(made.Ends)...)
		if !made.Plain() {
			out.Stripes = append(out.Stripes,
				draftStripesJSON{side.String(), made.Order.String(), coloursToJSON(made.Order)})
		}
	}
	for _, p := range d.Weft {
		out.Weft = append(out.Weft, picksJSON{d.NameOf(p.Colour, d.Use.Names), p.Picks})
	}
	for _, w := range d.Warnings {
		out.Warnings = append(out.Warnings, warningJSON(w))
	}
	return out
}

// coloursToJSON lists the colours of an order with their ends.
func coloursToJSON(o stripe.Order) []colourJSON {
	list := []colourJSON{}
	for i, c := range o.Colours {
		one := colourJSON{Letter: string(plan.Letter(i + 1)), Name: c.Name}
		if c.Known {
			one.Shade = c.Shade.String()
		}
		list = append(list, one)
	}
	ends, err := o.Ends()
	if err != nil {
		return list // an order that can't be laid has no ends
	}
	for _, c := range ends {
		list[c-1].Ends++
	}
	return list
}
