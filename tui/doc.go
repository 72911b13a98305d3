// Package tui is Millside's screens: home, the new-warp form, winding, finishing and the hand-over.
//
// # How it hangs together
//
// [Run] starts one Bubble Tea program. Its root model ([app]) holds one screen at a time; a screen is
// a small model with update, view and keys. A screen never touches a file or a clock by itself: it
// returns a command, and the command's answer comes back as a message. Everything that is shown about
// a half-wound warp is a pure function of [counter.State]; a press counts when the record says so.
//
//	key press -> guard -> command: write and sync one line -> saved message -> new state -> view
//
// # Rules for the screens
//
// Every screen shows the keys that work on it, in one line at the foot. Space and Enter always mean
// "done, go on"; Escape only backs out; q leaves, and asks nothing because every count is already on
// the disk. Nothing is told by colour alone. Only box characters, block characters and ASCII are
// drawn, since the width of other signs differs between terminals. Nothing moves while nothing
// happens: there are no ticking commands.
//
// Text comes from plan (tasks, steps, reasons) wherever paper needs the same words.
package tui
