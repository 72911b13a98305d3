// Package counter keeps the winding of a warp: the events, and the fold from the events to the state of a half-wound
// warp. Package journal beneath it keeps the events in a file.
//
// A half-wound warp is a plan and a list of events: the state is [NewState] of the plan, moved on by one event
// after the other ([State.Apply], or [Folder] for very many), and nothing else is remembered. Undo, recount and resume
// are events as well, never edits. [HandOver] says what the loom must know of the winding, [Pace] how long a pass took,
// [Reconcile] how many passes lie on the pegs after a break; [Guard] keeps presses that are too fast from being
// counted. The package has no clock and opens no file: every time comes in by a parameter.
//
// [AppendEvent] and [ParseEvent] write and read an event as a line of text; the package comment of journal lists the
// kinds and their fields.
package counter
