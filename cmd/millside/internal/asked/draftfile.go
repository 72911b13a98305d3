package asked

import (
	"errors"
	"fmt"
	"slices"

	"millside/cmd/millside/internal/files"
	"millside/plan/draft"
	"millside/plan/stripe"
)

// DraftFile is a draft that was read, and what the weaver said of it.
type DraftFile struct {
	*draft.Draft
	Path      string
	Side      draft.Side // that thread 1 is on
	SideGiven bool
}

// ReadDraft reads a draft. No more of the file is read than a draft may have.
func ReadDraft(path string) (*DraftFile, error) {
	data, err := files.Read(path, draft.MaxBytes)
	if err != nil {
		return nil, fmt.Errorf("reading the draft: %w", err)
	}
	d, err := draft.Read(data)
	if err != nil {
		return nil, fmt.Errorf("draft %s: %w", path, err)
	}
	return &DraftFile{Draft: d, Path: path}, nil
}

// Symmetric says whether the colours are the same from both sides, so that it doesn't matter on which one
// thread 1 is.
func (d *DraftFile) Symmetric() bool {
	back := slices.Clone(d.Colours)
	slices.Reverse(back)
	return slices.Equal(back, d.Colours)
}

// Stripes is the stripe order from left to right if thread 1 is on a side, what repeats in brackets.
func (d *DraftFile) Stripes(side draft.Side) (stripe.Order, error) {
	order, err := d.Draft.Stripes(side)
	if err != nil {
		return order, fmt.Errorf("draft %s: %w", d.Path, err)
	}
	return order.Folded(), nil
}

// Sides lists the sides that thread 1 may be on, as far as they make a difference.
func (d *DraftFile) Sides() []draft.Side {
	if d.SideGiven || d.Symmetric() {
		return []draft.Side{d.Side}
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
func (d *DraftFile) askSide() error {
	return errors.New("on which side is thread 1 of the draft, seen by the weaver at the loom? A draft doesn't say, and these stripes " +
		"are not the same from both sides. Give --thread-1 right, which is the commoner, or --thread-1 left; " +
		"'millside draft' shows the stripes in both ways")
}
