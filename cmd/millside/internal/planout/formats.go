package planout

import "millside/cmd/millside/internal/schema"

// Formats lists the structures that this package prints for programs.
func Formats() []schema.Format {
	return []schema.Format{
		{Name: planFormat, Value: planJSON{}, About: aboutPlan},
		{Name: DraftFormat, Value: draftJSON{}, About: aboutDraft},
		{Name: settFormat, Value: settJSON{}, About: aboutSett},
		{Name: startFormat, Value: startJSON{}, About: aboutStart},
	}
}

const aboutPlan = `One object with "format": "millside-plan-2". Its fields are: spec (what was asked
for), ends_wanted, ends_wound, spare_ends, passes, path (peg_steps, turns, length,
per_turn), warp_yarn, peg_yarn, tail_yarn, pace (low_ms, middle_ms, high_ms of a pass,
timed_passes and timed_warps: those that your own pace was taken from, 0 for a
practised hand's usual times), time (low_ms, middle_ms, high_ms, at_pegs_ms: the
part of it for the work at the pegs, text: the figure that is shown), lease_faults
(chain, pass, end, why), work (halts, cuts, ties, threads, far_finishes over the
whole warp), choices (label, group, passes, last_ends, spare_ends, finish, reasons;
the least trouble first), chains (number, first_end, last_end, ends, finish,
tie_after, count_ties (after_pass, from_group, to_group, ends, ends_so_far), passes,
peg_work_after, finishing) and, after --save, record (the path). With a sett there are
also sett (asked, gives, order, exact, said: what the plan's reed makes of it) and
reed_setts (names, reed, planned, setts: sett, order, exact, off, closer, nearest, width,
fits): what each reed at hand gives near it. A pass has: number,
direction, first_end, last_end, positions, mirrored, spare_ends, first_peg,
first_opening, over_a, over_b, cross_over, turn_after, twist_half_turns,
keeps_opening, before and after (texts) and peg_work: what is done at the end peg
before it (peg, cut, thread, tie, halt; positions are numbers, thread has position,
from and to). peg_work_after is the same after the last pass. first_end and last_end
count the ends as they are wound: those are their numbers in the warp, but for a striped
warp that is wound as a chain for each colour; there a chain has colour, and a pass has
warp_ends, the number in the warp of the end of each of its positions. A length is
given as exact text and in whole nanometres. Fields may be added under this format's
name, but none renamed or taken away.

With stripes the list choices is empty, and there is also: stripes (notation;
colours: letter, name, shade, ends, packages; set_ups: number, chain, before_pass,
colours; way; cost; minutes; proof: least, bound, gap, why (bound and gap are left out
where no bound is known); kinds: name, positions, colours, passes; compared: choose, way,
possible, work, at_the_loom, total, saved; draft as in 'millside draft --json'). A cost
has: passes, kinds, halts, cuts, ties, threads, finish, total. A pass has: kind (its
name, where there are several), set_up, colours (of the positions that carry an end) and
changes (position, from, to; "" is an empty position). colours in a set-up lists all
positions. A time is given as text and in whole nanoseconds.`

const aboutDraft = `One object with "format": "millside-draft-1". Its fields are: file,
title, threads, shafts, treadles (0 where the draft doesn't say), coloured, symmetric,
sett_offered (threads, width, per_inch, per_10_cm, absurd; left out where the draft
doesn't say), stripes (a list: thread_1, notation, colours: letter, name, shade, ends)
and warnings (section, line, text; line 0 is for something that is missing).`

const aboutSett = `One object with "format": "millside-sett-1", yarn, weave (name, ends,
intersections), factor_hundredths, face, weft, rows, note, others (for, source,
factor_hundredths, start) and, where reeds are at hand, reed_setts: what each gives near
the sett to start at (names, reed, planned, setts: sett, order, exact, off, closer,
nearest, fits).`
