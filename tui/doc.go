// Package tui is Millside's screens. This room holds what is above the others: the root model, which shows
// one screen at a time, and home, the list of warps.
//
//	keys   every key, in one place
//	look   styles, figures, drawings, layout
//	form   planning a new warp
//	mill   winding, finishing, rest, questions, settings
//
// # How it hangs together
//
// [Run] starts one Bubble Tea program. Its root model holds one screen at a time; a screen is a small model
// with Update and View. The rooms know nothing of one another: what one asks of another is a message to the
// root. A screen never touches a file or a clock by itself: it returns a command, and the command's answer
// comes back as a message; the time comes with each message, since every key is stamped as it is read.
//
// # Rules for the screens
//
// Every screen shows the keys that work on it, in one line at the foot. Space and Enter always mean
// "done, go on"; Escape only backs out; q leaves, and asks nothing because every count is already on
// the disk. Nothing is told by colour alone. Only box characters, block characters and ASCII are
// drawn, since the width of other signs differs between terminals. Nothing moves while nothing
// happens: there are no ticking commands but one, which keeps what is filled in when nothing was typed for a second,
// and draws nothing.
//
// Text comes from plan (tasks, steps, reasons) wherever paper needs the same words.
package tui
