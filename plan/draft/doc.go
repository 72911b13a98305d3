// Package draft reads a weaving draft in WIF, the open interchange standard of the weaving trade
// (version 1.1, April 1997), as far as a warp needs it: the threads, their colours, their shafts, the
// title, and the sett that the spacing of the threads comes to.
//
// [Read] is forgiving, since drafts that are in use keep to the standard only more or less: what it
// can't make sense of it leaves out, and says so in a [Warning] with the section and the line. It
// refuses a draft only if the number of its warp threads can't be made out, or if it is too large.
//
// From a file to a warp it goes in three steps, on the command line as on the screen: [From] reads the
// draft, [Draft.Warp] makes a warp of it as the weaver decides in [Use] (what a draft leaves open is asked:
// the side of thread 1, and the threads of [Draft.NotThreaded]), and [Warp.Into] puts that into a spec. A
// spec with stripes then goes through package stripe's ForPlan, as one whose stripes were typed does.
package draft
