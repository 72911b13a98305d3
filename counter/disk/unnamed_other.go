//go:build !linux

package disk

import (
	"errors"
	"os"
)

// openUnnamed knows no files without a name here.
func openUnnamed(string) (*os.File, error) { return nil, errors.ErrUnsupported }

func linkUnnamed(*os.File, string) error { return errors.ErrUnsupported }
