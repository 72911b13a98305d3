package sheet

import (
	"strings"

	"millside/plan"
	"millside/plan/athand"
	"millside/plan/entry"
	"millside/plan/measure"
)

// assumed lists the things that nobody named and that are taken because there is only one of each at hand, with the
// figures that the plan has from them. The usual allowances of a cloth stand with its ends.
func (a maker) assumed() Part {
	part := Part{ID: PartAssumed, Title: "Assumed from what is at hand"}
	for _, thing := range a.Assumed {
		text := measure.Clean(thing.Name) + ", the only one at hand"
		var figures []string
		for _, v := range AssumedValues(a.Plan.Spec, thing) {
			figures = append(figures, v.Name+" "+v.Value)
		}
		if len(figures) > 0 {
			text += ": " + strings.Join(figures, ", ")
		}
		part.Rows = append(part.Rows, measure.Row{Name: thing.Kind, Value: word(text)})
	}
	return part
}

// AssumedValue is a figure that was taken over from a thing at hand.
type AssumedValue struct {
	Name  string `json:"name"`
	Value string `json:"value"`
}

// AssumedValues is the figures that a plan has from a thing, by the names of their fields.
func AssumedValues(s plan.Spec, thing athand.Assumed) []AssumedValue {
	list := []AssumedValue{}
	for _, f := range thing.Fields {
		if e, ok := entry.Of(f); ok {
			list = append(list, AssumedValue{f.Name, e.Show(s)})
		}
	}
	return list
}
