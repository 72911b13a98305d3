package recordout

import (
	"errors"
	"fmt"

	"millside/cmd/millside/internal/prose"
	"millside/counter/journal"
)

// HelpDamaged adds to a damaged record's error what to do about it.
func HelpDamaged(err error, path string) error {
	var damage *journal.DamageError
	if errors.As(err, &damage) && damage.Line > 1 {
		return fmt.Errorf("%w; 'millside salvage %s NEW' saves what stands before that line", err, prose.Quoted(path))
	}
	return err
}
