package sheet

import (
	"fmt"

	"millside/plan"
	"millside/plan/measure"
)

// Drawings is what can be drawn on a sheet. What isn't known is nil.
type Drawings struct {
	Mill    *MillDrawing     `json:"mill,omitempty"`
	Board   []measure.Length `json:"board,omitempty"`
	Stripes *StripesDrawing  `json:"stripes,omitempty"`
	Raddle  *RaddleDrawing   `json:"raddle,omitempty"`
	Reed    *ReedDrawing     `json:"reed,omitempty"`
	// JointRaddle and JointReed are those of two warps in one cloth.
	JointRaddle *JointRaddle `json:"joint_raddle,omitempty"`
	JointReed   *JointReed   `json:"joint_reed,omitempty"`
}

// StripesDrawing is the stripes of the warp, from end 1 on.
type StripesDrawing struct {
	Colours []Colour `json:"colours"`
	Runs    []Run    `json:"runs"`
}

// stripesOf gathers the stripes of a plan; both lists are empty in a plain warp.
func stripesOf(p *plan.Plan) StripesDrawing {
	var d StripesDrawing
	for _, use := range p.ColourUses() {
		c, _ := p.Colour(use.Colour) // one of the plan's own
		d.Colours = append(d.Colours, Colour{string(plan.Letter(use.Colour)), c.Name, c.Shade, use.Ends, use.Packages})
	}
	for _, run := range p.EndRuns() {
		d.Runs = append(d.Runs, Run(run))
	}
	return d
}

// MillDrawing is the way of the warp round a mill.
type MillDrawing struct {
	// Turns is whole turns, and Steps the peg steps beyond them to the far end peg; 0 where a turn isn't a whole
	// number of steps. Beyond is the same as a length along the circumference, and Where says it in words.
	Turns  int            `json:"turns"`
	Steps  int            `json:"steps"`
	Beyond measure.Length `json:"beyond"`
	Where  string         `json:"where"`
	// Circumference and PegStep are the mill's, so that the steps can be drawn to scale.
	Circumference measure.Length `json:"circumference"`
	PegStep       measure.Length `json:"peg_step"`
}

// RaddleDrawing is the raddle from left to right.
type RaddleDrawing struct {
	Sections []DrawnSection `json:"sections"`
	// MiddleSpace says that the warp is centred on a space and not on a tooth.
	MiddleSpace bool `json:"middle_space,omitempty"`
}

// DrawnSection is one section of the raddle: where it is, counted from the centre as in
// [loom.RaddleSection], the ends in it, and how many groups have ends there.
type DrawnSection struct {
	FromCentre int `json:"from_centre"`
	Ends       int `json:"ends"`
	Groups     int `json:"groups,omitempty"`
	Cut        int `json:"cut,omitempty"`
	// GroupNumbers names the groups, see [GroupSpan]: of two warps in one raddle only.
	GroupNumbers string `json:"group_numbers,omitempty"`
}

// ReedDrawing is the dents at the left edge, over two repeats of the order.
type ReedDrawing struct {
	// Edge is how many of the dents belong to the selvedge, Repeat the dents of one repeat.
	Edge   int `json:"edge,omitempty"`
	Repeat int `json:"repeat"`
	// Dents is the ends in each dent from the left edge inwards.
	Dents []int `json:"dents"`
}

// drawings gathers what can be drawn.
func (a maker) drawings() Drawings {
	var d Drawings
	s := a.Plan.Spec
	switch {
	case a.Board != nil:
		d.Board = s.Board[:a.Board.Distances]
	case a.Room != nil:
		d.Mill = &MillDrawing{Turns: a.Room.Turns, Steps: a.Room.Steps, Beyond: a.Room.Beyond, Where: a.Room.Where(),
			Circumference: s.Mill.Circumference, PegStep: s.Mill.PegStep}
	}
	if a.Plan.Striped() {
		stripes := stripesOf(a.Plan)
		d.Stripes = &stripes
	}
	if a.Raddle != nil {
		d.Raddle = &RaddleDrawing{MiddleSpace: a.Raddle.MiddleSpace}
		for _, r := range a.Raddle.Sections {
			d.Raddle.Sections = append(d.Raddle.Sections, DrawnSection{FromCentre: r.FromCentre,
				Ends: r.Ends, Groups: r.Groups, Cut: r.Cut})
		}
	}
	if repeat := len(a.Order.Dents); a.Sley != nil && repeat > 0 {
		edge := min(a.Sley.Edge, mostDrawnEdge)
		from := a.Sley.Edge - edge
		d.Reed = &ReedDrawing{Edge: edge, Repeat: repeat,
			Dents: a.Sley.Dents[from:min(from+edge+2*repeat, len(a.Sley.Dents))]}
	}
	return d
}

// mostDrawnEdge is how many dents of a wide selvedge are drawn.
const mostDrawnEdge = 6

// JointRaddle is the raddle of two warps from left to right.
type JointRaddle struct {
	Sections []JointSection `json:"sections"`
	// MiddleSpace says that the warps are centred on a space and not on a tooth.
	MiddleSpace bool `json:"middle_space,omitempty"`
}

// JointSection is one section of the raddle with what lies in it of each of two warps.
type JointSection struct {
	Ground DrawnSection `json:"ground"`
	Second DrawnSection `json:"second"`
}

// JointReed is the reed of two warps from left to right, dents that repeat once.
type JointReed struct {
	Runs []DentRun `json:"runs"`
}

// DentRun is dents side by side, which lie there so many times: the first time from the dent First on, counted from
// the left of the cloth, from 1. Each is the letters of its ends from left to right, G for the ground and S for the
// second; "" is an empty dent.
type DentRun struct {
	First int      `json:"first"`
	Dents []string `json:"dents"`
	Times int      `json:"times"`
}

// Last is the last dent of the last time.
func (r DentRun) Last() int { return r.First + len(r.Dents)*r.Times - 1 }

// Where names the dents: "dents 5 to 100", "dent 1".
func (r DentRun) Where() string {
	if r.Last() == r.First {
		return fmt.Sprintf("dent %d", r.First)
	}
	return fmt.Sprintf("dents %d to %d", r.First, r.Last())
}
