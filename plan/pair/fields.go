package pair

import "millside/plan/field"

// What is said of two warps that go through one raddle and one reed. No plan of one warp keeps it, so these fields
// don't stand in the table of package field.
var (
	OrderField = &field.Field{Name: "order of both warps", Label: "order", Flag: "order", Value: field.List,
		Optional: true,
		Help: `in which order their ends lie, from the left and over and over, such as "2 ground, 1 second"; the one ` +
			`that spreads the second evenly if not said`}
	LieField = &field.Field{Name: "where the second lies", Label: "second lies", Flag: "lie", Value: field.Word,
		Words: []string{"between", "beside"},
		Help: "between the ends of the ground, so that both fill the width, or beside them in stripes of its own, " +
			"each at its own sett"}
	SettField = &field.Field{Name: "sett of both together", Label: "sett of both", Flag: "sett", Value: field.Sett,
		Optional: true,
		Help:     "the sett of both together in the reed; their setts added up, or side by side, if not said"}
	DentsField = &field.Field{Name: "dents of both together", Label: "dents", Flag: "dents", Value: field.List,
		Optional: true,
		Help: `how many ends of both lie in each dent, from the left and over again, such as ` +
			`"12 dents of 2, 100 of 3, 12 of 2"`}
	TakeUpField = &field.Field{Name: "take-up of the second", Label: "its take-up", Flag: "take-up", Value: field.Share,
		Optional: true, Help: "the second's take-up, where its own plan doesn't say it"}
	HeldField = &field.Field{Name: "how the second is held", Label: "second is on", Flag: "held", Value: field.Word,
		Words: []string{"what suits", "one beam", "its own beam", "weights"},
		Help:  "on one beam with the ground, on a beam of its own, or on weights behind the loom"}
	ReedField = &field.Field{Name: field.Reed.Name, Label: field.Reed.Label, Flag: field.Reed.Flag,
		Value: field.Reed.Value, Optional: true,
		Help: `the one reed of both, such as "10 dents an inch"; that of their plans if not said`}
	RaddleField = &field.Field{Name: field.Raddle.Name, Label: field.Raddle.Label, Flag: field.Raddle.Flag,
		Value: field.Raddle.Value, Optional: true,
		Help: `the space of the one raddle of both, such as "1/2 in"; that of their plans if not said`}
)

// Fields lists these fields.
func Fields() []*field.Field {
	return []*field.Field{OrderField, LieField, SettField, DentsField, TakeUpField, HeldField, ReedField, RaddleField}
}
