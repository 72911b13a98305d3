package settings

import (
	"errors"
	"fmt"
	"io/fs"

	"millside/cmd/millside/internal/files"
	"millside/plan/athand"
)

// ReadAtHand reads the file; found says whether it is there. What is sound in it comes beside the error,
// which joins [measure.FieldError] values if the text is at fault.
func ReadAtHand(path string) (hand athand.AtHand, found bool, err error) {
	text, err := files.Read(path, athand.MaxAtHandText)
	if errors.Is(err, fs.ErrNotExist) {
		return hand, false, nil
	}
	if err != nil {
		return hand, true, fmt.Errorf("reading the things at hand: %w", err)
	}
	hand, err = athand.Parse(string(text))
	return hand, true, err
}
