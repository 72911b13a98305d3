package main

import (
	"millside/counter"
	"millside/plan"
)

// ownPace is the pace that times are reckoned with: the weaver's own, from the finished warps in the
// folder of records, or the published range. A folder that can't be read is no reason to plan no warp, and
// what is printed says whose pace it is. The practice warp is wound without yarn, so it doesn't count.
func (a *app) ownPace() plan.Pace {
	store, err := a.store()
	if err != nil {
		return plan.PublishedPace()
	}
	list, err := store.List()
	if err != nil {
		return plan.PublishedPace()
	}
	return counter.OwnPace(list, practiceName)
}
