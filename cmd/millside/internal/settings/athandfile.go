package settings

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"millside/plan/athand"
)

// ReadAtHand reads the file; found says whether it is there. What is sound in it comes beside the error,
// which joins [measure.FieldError] values if the text is at fault.
func ReadAtHand(path string) (hand athand.AtHand, found bool, err error) {
	f, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return hand, false, nil
	}
	if err != nil {
		return hand, false, fmt.Errorf("reading the things at hand: %w", err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && !info.Mode().IsRegular() {
		return hand, true, fmt.Errorf("reading the things at hand: %s is no plain file", path)
	}
	text, err := io.ReadAll(io.LimitReader(f, athand.MaxAtHandText+1))
	if err != nil {
		return hand, true, fmt.Errorf("reading the things at hand: %w", err)
	}
	hand, err = athand.Parse(string(text))
	return hand, true, err
}
