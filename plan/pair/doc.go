// Package pair joins two warps that lie in one cloth: a ground and a second one, such as a pile, a supplementary
// warp, the slack stripes of a seersucker or the other layer of a double weave. Each is wound for itself, by its own
// plan; [New] says where the ends of both come to lie in one raddle and one reed, how long each must be so that both
// weave the same cloth, and refuses two that can't. [Joint.Sheet] tells it, for every format and screen alike.
package pair
