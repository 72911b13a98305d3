// Package cloth reckons from the finished cloth back to the warp: its ends from the width, with draw-in
// and shrinkage ([Width]), its length from the pieces, with take-up and loom waste ([Length]), and the yarn
// of the weft ([Weft]). Each line says how it was reached.
package cloth
