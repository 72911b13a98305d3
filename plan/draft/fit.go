package draft

import "millside/plan/field"

// FitFields lists the fields that say how many ends are wanted of a draft, and how its threads come to them, in the
// order in which they are asked.
func FitFields() []*field.Field {
	return []*field.Field{field.Ends, field.FinishedWidth, field.SettOf, field.Fibre, field.ShrinkageWidth,
		field.DrawIn, field.StripesLaid}
}
