// Package wind is one pass of a warp and the words for it: the [Direction] of the group, the [Opening] that is
// dropped over a [LeasePeg], the [Turn] round an [EndPeg], the [Positions] of the paddle that carry an end, and
// [Pass], which holds them together and knows which end of the warp lies where.
package wind
