// Package look holds what the screens share in their looks: the styles and the colours of yarns, the block
// figures, the drawings of pegs, mill and lease, and the ways to lay lines out on a terminal of any size.
//
// It knows the plan, since that is what is drawn, and nothing of records, keys or clocks. All of it is pure:
// the same values give the same lines. Only box characters, block characters and ASCII are drawn, since the
// width of other signs differs between terminals.
package look
