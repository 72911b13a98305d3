// Package pencil is a winder with paper and pencil for tests: it knows no plan and no ledger, only what the pages of
// the conversation at the mill say in words, and draws what the hands have done.
//
// A [Pencil] is the drawing and the habits of the hands, a [Warp] the conversation that it follows to the end.
package pencil
