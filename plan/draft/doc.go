// Package draft reads a weaving draft in WIF, the open interchange standard of the weaving trade
// (version 1.1, April 1997), as far as a warp needs it: the threads, their colours, their shafts, the
// title, and the sett that the spacing of the threads comes to.
//
// [Read] is forgiving, since drafts that are in use keep to the standard only more or less: what it
// can't make sense of it leaves out, and says so in a [Warning] with the section and the line. It
// refuses a draft only if the number of its warp threads can't be made out, or if it is too large.
// [Draft.Stripes] gives the stripe order that package stripe works with.
package draft
