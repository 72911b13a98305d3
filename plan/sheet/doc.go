// Package sheet makes the sheets of a project, from one source, so that text, Markdown, JSON and HTML show
// the same figures: formatters only write them. The whole plan ([New]) tells all that is known. The wall
// sheet ([Wall]) is one page for the mill: what to thread, the stripes, the passes in the order of winding
// with a box to tick for each, the work at the pegs between them, ties, turns, cautions.
package sheet
