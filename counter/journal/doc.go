// Package journal holds a winding record in a file: a journal of events that only ever grows. [Record] is a
// journal in a file, [Store] a folder of records, [Salvage] takes what is sound out of a damaged one. What
// the events mean is told in package counter; the package has no clock: every time comes in by an event.
//
// # What is promised
//
// An event counts when its line is on the disk. [Record.Append] first checks that the event follows
// from the state, then writes one line with one call, then syncs it, and only then moves the state. If
// the write or the sync fails the state stays where it was and the record takes nothing more
// ([ErrFailed]) until it is opened anew and read again: a sync that failed once may have lost its data
// even if a later one succeeds. Before each event the file is compared with what was left: the same file at its path,
// as long as it was, with the same last checksum; otherwise nothing more is counted ([ErrReplaced]) and what is in
// memory can be saved beside ([Record.SaveBeside]).
//
// What [Open] shows is on the disk: the last line, which may have been on its way when a program died or a sync failed,
// is written once more over itself and synced first. No counted line is ever overwritten with anything else: where a
// file has to be written anew, that is done beside it, and the new one takes its place at one stroke.
//
// A record is deleted or put away by moving it to a folder beside ([Store.Shelve]), from which it can be brought
// back ([Store.BringBack]): the new name is on the disk before the old one goes, so the power may leave both, and
// never none.
//
// A new name is an event like others ([Store.Rename]): the first line, and every name that the warp had, stay as they
// were written, and the fold gives the last one. It is nothing that happened at the mill, so a warp that only got
// another name is not begun. The plan of a warp that isn't begun is changed by a new file in the place of the old one
// ([Record.Replan]), under the lock and at one stroke: there is nothing in it but the plan. A copy is a new record.
//
// # The file
//
// A record is UTF-8 text, one line an event, each ended by a line feed. It can be read by a person and
// copied like any other text. The first line holds the plan, as the JSON of a [plan.Spec]:
//
//	millside-record 1 {"name":"tea towels","ends":200,...} #4f0c1a27
//
// The number after the first word is the version of the format. Every further line is one event:
//
//	2 2026-11-25T09:07:00Z laid chain=1 pass=1 #8d1e22b0
//	3 2026-11-25T09:07:41.25Z noted chain=1 pass=1 text="knot at position 4" #07c3e0aa
//
// That is: the number of the line in the file, the time (RFC 3339, UTC, cut down to whole
// milliseconds, no trailing noughts), the kind of event, its fields in a fixed order, and the checksum.
// One space stands between two parts. Texts are quoted as Go quotes strings. The kinds and their fields:
//
//	laid        chain= pass=          a pass is laid; pass is its number
//	undone      chain= pass=          the last pass is taken back; pass is its number
//	recounted   chain= pass= text=    pass is the new number of passes laid, text the reason
//	paused                            the winder stops for a while
//	resumed                           and goes on
//	noted       chain= pass= text=    a note; pass is the number of passes laid at the time
//	lease-seen  order=                same or mirrored: how return passes were seen to lie in the lease; where a
//	                                  striped warp turns to the other order, what was laid before counts
//	                                  only as far as it is right in that order too
//	ticked      chain= step=          a finishing step is done; step is a plan.StepID
//	unticked    chain= step=          it was not
//	finished                          all chains are wound and every step is ticked
//	incident    chain= pass= position= what= place= text=
//	                                  something went wrong with the end in that position, or with the
//	                                  whole pass (position=0): what is broken, knot, missed-opening or
//	                                  wrong-peg, place the length from the lease, where it is known
//	withdrawn   line=                 the mark of that line was made by mistake: an incident, a wrong turn,
//	                                  a count tie or a new cone
//	wrong-turn  chain= pass=          after that pass the group went the wrong way round the end peg
//	righted                           the twist behind the paddle was taken out
//	tie-made    chain= pass=          a count tie was made; pass is the number of passes that the ties of the
//	                                  chain hold with it
//	tie-waved   chain= pass=          that count tie is not going to be made
//	new-cone    chain= pass= position= weight=
//	                                  another cone in a position, from that pass on
//	work-done   chain= pass=          what is to be cut, threaded and tied at the end peg before that pass is done
//	work-undone chain= pass=          it was not
//	redone      chain= pass=          the last take-back was a slip: that pass lies, with all that was dropped with it
//	foot-seen   foot=                 first or last: which of the positions was seen to lie at the foot of the
//	                                  peg on outward passes
//	lease-left  chain= pass=          the look at the lease is put off; pass is the number of passes laid
//	reopened    text=                 the finished warp is opened again, and why
//	renamed     text=                 the warp's new name; the file keeps its own
//	joined      text=                 the other warp of the cloth and how both lie in the raddle and the reed;
//	                                  apart: none
//	lost        lines=                so many lines that had been counted were missing when the record was opened
//
// Of an incident, place and text are left out where there is nothing to say, and so is a weight that isn't
// known. A length and a weight are quoted too, and written exactly, as [measure.Length] and [measure.Mass] do.
//
// The checksum is CRC-32C (Castagnoli; RFC 3720, appendix B.4), eight lower-case hexadecimal digits,
// of the line's bytes before the " #", begun with the checksum of the line before (with 0 for the first
// line). So a line that was changed, taken out, put in or moved is found.
//
// A line is canonical: written again from what was read, it gives the same bytes; otherwise it is
// damage. A line has at most 1 MiB, a record at most 64 MiB.
//
// Whatever the version, the first line keeps its frame: the word, the version, anything, and the
// checksum. So a record of a newer version is told from a damaged one ([ErrNewer]). A field that is
// added to plan.Spec without a new version of the format must be left out of the JSON when it is empty
// (omitempty), or no older record would be canonical any more; the record in testdata guards this.
//
// # Damage
//
// A power cut can leave a last line without its line feed, or with NUL bytes in place of a sector or of its rest. If
// what stands before the missing line feed is a whole and sound line it is kept, since it may have been shown as
// counted; otherwise it is left out and reported by [Record.Torn], and [Open] cuts it off. One line can be on its way
// to the disk at a time. Where more is missing at the end than one line can be, lines are gone that were counted:
// [Record.Lost] says how many, the file is left as it is until the next event, and then the loss is on the record
// (the event lost) and the bytes that can't be read are in a file beside. Anything else that is wrong is a
// [DamageError] with the number of the line; [Salvage] copies what stands before it into a new file.
//
// What another system's program does to a text that it saves hurts nothing that is known: carriage returns at the ends
// of lines, a byte order mark, blank lines at either end. Such a file is read, and written clean with the next event.
//
// A test with a killed process shows that nothing is lost when the program dies. It can't show what a
// disk does when the power goes: that rests on sync doing what it says.
package journal
