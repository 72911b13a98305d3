// Package session is the conversation with the winder at the mill: the one place where it is decided what a press
// does, what is said, in which words and with which cue. The full screen, plain mode and the spoken words are skins
// of it.
//
// A [Session] is a value. It has no clock, no disk and no terminal, and knows nothing of keys. A skin
//
//  1. turns a key, a click or a typed word into an [Intent] and hands it to [Session.Take], with the time at which the
//     key came: presses are judged by that time, not by when the disk was free;
//  2. if the [Reply] holds an event, adds it to the record and hands what came of it to [Session.Saved] or to
//     [Session.NotSaved], which say what the winder hears. While an event is on its way ([Session.Waiting]) it keeps
//     further keys in a queue, each with its time, and turns them into intents only then, since what a key means may
//     depend on the page;
//  3. shows the page of [Session.Stage]: [Session.Instruction] while a pass is wound, [Session.Stop],
//
// [Session.Question],
//
//	[Session.Standing] and [Session.Step] on the others, and [Session.Message] on a line of its own on all of them.
//
// # The pass key
//
// [Press] is the key for "this pass is laid". No press of it vanishes. It counts a pass, or it is refused with
// [CueRefused] and a word, or it does something else that has a page of its own, was announced one pass ahead and
// sounds different ([CueConfirmed]): it confirms the work at a peg, ticks a finishing step, or says that the mill looks
// as it should. On the page that asks about the lease it still counts the next pass; the question stays open as a
// reminder. Key repeat and presses faster than a hand can wind are refused; taking back is guarded in the same way and
// can itself be taken back.
//
// # Which pass a mark means
//
// A mark of an end or of a pass, and a new package, mean the pass in hand, the one that the screen names;
// after the last pass of a chain they mean that one. Another pass is meant where its number is given. A wrong
// turn is made at the end peg where the mill stands, so it means the turn after the last pass that was counted.
package session
