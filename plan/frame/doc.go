// Package frame is what a warp is wound on: the turning mill, or the flat board. [Mill.Path] and [Board.Path] say
// where the end pegs go for a length, and how long the warp then really is; [Mill.Room] and [RoomOnPeg] whether
// it fits. A board is read by [ParseBoard].
package frame
