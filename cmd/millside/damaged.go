package main

import (
	"errors"
	"fmt"
	"millside/counter"
)

// helpDamaged adds to a damaged record's error what to do about it.
func helpDamaged(err error, path string) error {
	var damage *counter.DamageError
	if errors.As(err, &damage) && damage.Line > 1 {
		return fmt.Errorf("%w; 'millside salvage %s NEW' saves what stands before that line", err, path)
	}
	return err
}
