// Package plain winds a warp line by line and key by key, without a screen: a skin of package session for screen
// readers, very small terminals and other programs. Every function of the full screen has its word here; what is asked,
// said and refused, and when, is that package's affair.
//
// A [Talk] takes lines, as from a pipe ("undo", "break 4 at 2.5 yd"; an empty line is the pass key), and
// single keys, as from a terminal in which every key comes at once ([Keys]). A key means what it means on the
// full screen; one that needs an answer asks for it. A word can be typed there too, after a colon.
package plain
