package form

import (
	"millside/plan"
	"millside/plan/entry"
	"millside/plan/field"
)

// line is one line of the form: a field of the table, and its place in the spec.
type line struct {
	entry.Entry
	section section
	// options are the words to choose between; a field without them takes text.
	options []string
}

// formLines are the lines of the form in their order: the fields of the table that have a label.
func formLines() []line {
	var all []line
	for _, e := range entry.All() {
		if e.Label != "" {
			all = append(all, line{Entry: e, section: section(e.Part), options: e.Words})
		}
	}
	return all
}

// section is a page of the form, a part of the table.
type section = field.Part

// The sections that the form says more of.
const (
	secStripes = field.Stripes
	secCloth   = field.Cloth
	secYarn    = field.Yarn
	secPaddle  = field.Paddle
	secMill    = field.Mill
	secChains  = field.Chains
	secLoom    = field.Loom
	secWinding = field.Winding
)

// sections is how many there are.
var sections = section(len(field.Parts()))

func plain(s plan.Spec) bool { return entry.Plain(s) }
