package counter

import (
	"errors"
	"fmt"
	"os"
	"slices"
)

// SalvageResult says what [Salvage] saved.
type SalvageResult struct {
	// Events is the number of events in the new record.
	Events int
	// BadLine is the number of the first line that was left out, 0 if the record was whole.
	BadLine int
	// Why says what is wrong with that line; empty if the record was whole.
	Why string
}

// Salvage copies the sound part of a damaged record, up to the first line that is wrong, into a new
// file. The damaged file is never changed, and the new one must not exist yet. A record whose first
// line is damaged holds no plan and can't be salvaged: the [*DamageError] is returned. Nor can one
// that a newer Millside wrote ([ErrNewer]).
func Salvage(fsys FS, from, to string) (SalvageResult, error) {
	got, err := lookAt(fsys, from)
	res := SalvageResult{Events: len(got.events), BadLine: got.tornLine, Why: got.torn}
	var damage *DamageError
	if errors.As(err, &damage) && got.fold != nil {
		res.BadLine, res.Why = damage.Line, damage.Why
	} else if err != nil {
		return SalvageResult{}, err
	}
	data := got.sound
	if got.unended {
		data = append(slices.Clip(data), '\n')
	}
	file, err := fsys.OpenFile(to, os.O_CREATE|os.O_EXCL|os.O_RDWR|os.O_APPEND, 0o600)
	if err != nil {
		return SalvageResult{}, fmt.Errorf("making a record: %w", err)
	}
	if err := startFile(fsys, file, to, data); err != nil {
		return SalvageResult{}, errors.Join(err, file.Close(), fsys.Remove(to))
	}
	return res, file.Close()
}
