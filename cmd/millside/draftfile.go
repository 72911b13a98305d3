package main

import (
	"errors"
	"fmt"
	"io"
	"millside/plan/draft"
	"millside/plan/stripe"
	"os"
	"slices"
)

// draftFile is a draft that was read, and what the weaver said of it.
type draftFile struct {
	*draft.Draft
	path      string
	side      draft.Side // that thread 1 is on
	sideGiven bool
}

// readDraft reads a draft. No more of the file is read than a draft may have.
func readDraft(path string) (*draftFile, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("reading the draft: %w", err)
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, draft.MaxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("reading the draft: %w", err)
	}
	d, err := draft.Read(data)
	if err != nil {
		return nil, fmt.Errorf("draft %s: %w", path, err)
	}
	return &draftFile{Draft: d, path: path}, nil
}

// symmetric says whether the colours are the same from both sides, so that it doesn't matter on which one
// thread 1 is.
func (d *draftFile) symmetric() bool {
	back := slices.Clone(d.Colours)
	slices.Reverse(back)
	return slices.Equal(back, d.Colours)
}

// stripes is the stripe order from left to right if thread 1 is on a side, what repeats in brackets.
func (d *draftFile) stripes(side draft.Side) (stripe.Order, error) {
	order, err := d.Stripes(side)
	if err != nil {
		return order, fmt.Errorf("draft %s: %w", d.path, err)
	}
	return order.Folded(), nil
}

// sides lists the sides that thread 1 may be on, as far as they make a difference.
func (d *draftFile) sides() []draft.Side {
	if d.sideGiven || d.symmetric() {
		return []draft.Side{d.side}
	}
	return []draft.Side{draft.FromRight, draft.FromLeft}
}

func otherSide(s draft.Side) draft.Side {
	if s == draft.FromLeft {
		return draft.FromRight
	}
	return draft.FromLeft
}

// askSide is the error where it matters on which side thread 1 is.
func (d *draftFile) askSide() error {
	return errors.New("on which side is thread 1 of the draft, seen by the weaver at the loom? A draft doesn't say, and these stripes " +
		"are not the same from both sides. Give --thread-1 right, which is the commoner, or --thread-1 left; " +
		"'millside draft' shows the stripes in both ways")
}
