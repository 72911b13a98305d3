// Package field is the one table of what a weaver says of a warp: for each field its name in an error, its label
// on the page for a new warp, its flag, what it means, what its value is, its range and what it begins with. The
// checks of plan and of the rooms below it, the flags, the pages and the file of things at hand are made from it.
//
// Start at [Field] and [All]. How a field stands in a plan is told in package entry, since this room knows of
// quantities only.
package field
