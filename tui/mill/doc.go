// Package mill is the screen at the mill: winding pass by pass, questions, rest, finishing, and the page of
// settings for keys and bell. Everything that is shown about a half-wound warp is a pure function of
// [counter.State]; a press counts when the record says so.
//
//	key press -> guard -> command: write and sync one line -> saved message -> new state -> view
package mill
