// Package sheet says what stands on the printed sheets of a warp, as typed parts that every format shows
// alike. The wall sheet ([Wall]) is one page for the mill: what to thread, the stripes, the passes in the
// order of winding with a box to tick for each, the work at the pegs between them, ties, turns, cautions.
package sheet
