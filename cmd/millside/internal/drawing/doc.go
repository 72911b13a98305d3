// Package drawing draws the small pictures of a sheet: the mill, the board, the raddle and the reed. A picture
// is a list of shapes in whole units; which format shows them, and how, is no concern of it.
package drawing
