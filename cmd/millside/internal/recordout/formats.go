package recordout

import "millside/cmd/millside/internal/schema"

// Formats lists the structures that this package prints for programs.
func Formats() []schema.Format {
	return []schema.Format{
		{Name: listFormat, Value: listJSON{}, About: aboutList},
		{Name: showFormat, Value: showJSON{}, About: aboutShow},
	}
}

const aboutList = `One object with "format": "millside-list-1" and records, each with: path, name,
passes, passes_laid, ends, ends_standing, wound, finished, started and last (times,
left out if nothing has happened), cut_short, time (low_ms, middle_ms, high_ms,
at_pegs_ms, text) of one that isn't finished, pace (low_ms, middle_ms, high_ms,
timed_passes, timed_warps) and yarn_used of a finished warp, error (left out if the
record is sound) and spec (left out if the plan can't be read).`

const aboutShow = `One object with "format": "millside-show-2". Its fields are: path, name,
spec (the plan in force), passes, passes_laid, ends, ends_standing (over all chains),
chain, chains, paused, lease_seen, wound, finished, started, last, cut_short, mill
(passes_laid, ends_standing, groups_over_peg_1, groups_over_peg_2, paddle, last_turn,
twist_half_turns: of the chain in hand), set_up (of a striped warp: number, chain,
before_pass, colours by position), next_pass (as in 'millside plan --json', its numbers
of ends too; left out if all are laid), finishing (id, title, detail, caution, done), recounts, notes,
count_ties, incidents, pace (low_ms, middle_ms, high_ms, timed_passes; left out if nothing
could be timed), hand_over (names and values, as on the sheet) and, with
--events, events.`
