// Package beside says what belongs to a warp beside its passes: selvedges that are doubled, that float, or that are
// wound apart, and the borders of a painted warp.
//
// Start at [Selvedges] and [Borders]; [AtTheMill] gives the lines for the wall.
package beside
