// Package finishing is what follows the last pass of a chain. [Steps] lists it: how the group is made fast and cut
// off, the ties that keep the order, and how the chain comes off the mill. [PegEnds] names the ends whose tails
// have to be knotted at the pegs.
package finishing
