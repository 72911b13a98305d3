// Package start finds one thing about a warp from the others that a weaver knows: the length, the ends, the width,
// the pieces or the yarn, from ends, a finished width, a width in the reed, a finished piece that is to be repeated,
// a stripe order or the packages of yarn on hand. [Solve] gives what was found, each step as a line that can be checked
// by hand, and a spec that goes on into a plan.
//
// What it says of yarn is what the plan of that spec says: the passes and the ends that are tied on are counted on
// the plan itself ([plan.Plan.Yarn]). Yarn that is needed is rounded up, a warp that yarn is to suffice for down to
// what the mill gives, and pieces and ends down to whole ones.
package start
