// Package athand is what the weaver owns, as a plain-text file says it: mills, boards, paddles, reeds,
// raddles and yarns. [Parse] reads the file, [AtHand.String] writes it.
package athand
