// Package beside says what belongs to a warp beside its passes: selvedges that are doubled, that float, or that are
// wound apart.
//
// Start at [Selvedges]; [AtTheMill] gives the lines for the wall.
package beside
