package counter

import (
	"maps"
	"slices"
)

// What a test outside must see: every kind of event, and the turns that have to be taken out.
var (
	AllKinds = slices.Sorted(maps.Keys(fieldsOf))
	Surplus  = State.surplus
)
