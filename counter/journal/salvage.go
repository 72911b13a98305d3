package journal

import (
	"errors"
	"millside/counter"
	"time"
)

// SalvageResult says what [Salvage] saved.
type SalvageResult struct {
	// Events is the number of events in the new record, without the one that tells of the loss.
	Events int
	// BadLine is the number of the first line that was left out, 0 if the record was whole.
	BadLine int
	// Why says what is wrong with that line; empty if the record was whole.
	Why string
	// Lost is the number of lines that had been counted and are not in the new record, as well as can be told.
	Lost int
}

// Salvage copies the sound part of a damaged record, up to the first line that is wrong, into a new
// file. Where counted lines are missing, the new record ends with an event that says so, of the given time. The
// damaged file is never changed, and the new one must not exist yet. A record whose first
// line is damaged holds no plan and can't be salvaged: the [*DamageError] is returned. Nor can one
// that a newer Millside wrote ([ErrNewer]).
func Salvage(fsys FS, from, to string, at time.Time) (SalvageResult, error) {
	_, got, err := readAt(fsys, from)
	res := SalvageResult{Events: got.events.len(), BadLine: got.tornLine, Why: got.torn, Lost: got.lost.Lines}
	var damage *DamageError
	if errors.As(err, &damage) && got.fold != nil {
		res.BadLine, res.Why, res.Lost = damage.Line, damage.Why, damage.After+1
	} else if err != nil {
		return SalvageResult{}, err
	}
	events := got.events
	if lost := (counter.Event{At: at, Kind: counter.Lost, Lines: res.Lost}).Normal(); res.Lost > 0 &&
		got.fold.Apply(lost) == nil {
		events = events.with(lost)
	}
	data, _ := written(got.head, events.all())
	file, err := startFile(fsys, to, data)
	if err != nil {
		return SalvageResult{}, err
	}
	return res, file.Close()
}
