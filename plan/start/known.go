package start

import (
	"millside/plan"
	"millside/plan/field"
	"millside/plan/measure"
)

// Find is what is to be found.
type Find uint8

// What can be found. WhatIsMissing is whichever of the others isn't known.
const (
	WhatIsMissing Find = iota
	TheLength
	TheEnds
	TheWidth
	ThePieces
	TheYarn
)

// String gives the word of the field's table: "length", "ends".
func (f Find) String() string { return measure.OneOf(int(f), field.Find.Words...) }

// MarshalText writes the word.
func (f Find) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// UnmarshalText reads the word.
func (f *Find) UnmarshalText(b []byte) error {
	i, err := measure.WhichOf(string(b), field.Find.Words...)
	*f = Find(i)
	return err
}

// Known is what a weaver knows of a warp. The zero value of a field says that it isn't known.
type Known struct {
	// Find is what is to be found.
	Find Find
	// Ends is the number of ends, Length that of the warp.
	Ends   int
	Length measure.Length
	// FinishedWidth is the width of the washed cloth, ReedWidth that of the warp in the reed. FinishedSett is the ends
	// counted in a washed piece that is to be repeated.
	FinishedWidth, ReedWidth measure.Length
	FinishedSett             measure.Sett
	// FinishedLength is that of one piece, without hems and fringes; Pieces is how many are woven.
	FinishedLength measure.Length
	Pieces         int
	// OnHand is the yarn that there is.
	OnHand []Package
	// GroupSaid says that the group of Spec was given; else it is that of the packages on hand.
	GroupSaid bool
	// Spec is the rest of the plan: the sett, the yarn, the stripes, the allowances, the mill. Its ends, its length
	// and the size of its cloth aren't looked at.
	Spec plan.Spec
}

// width says whether there is a width from which ends follow, if there is a sett too.
func (k Known) width() bool { return k.FinishedWidth != 0 || k.ReedWidth != 0 }

// sett says whether there is a sett, in the reed or in the finished cloth.
func (k Known) sett() bool { return !k.Spec.Loom.Sett.IsZero() || !k.FinishedSett.IsZero() }

// striped says whether there is a stripe order.
func (k Known) striped() bool { return k.Spec.Stripes != "" }

// pieces says whether the length of the warp follows from the cloth.
func (k Known) pieces() bool { return k.FinishedLength != 0 && k.Pieces != 0 }

// hasEnds says whether the ends are known, or follow from the width.
func (k Known) hasEnds() bool {
	return k.Ends != 0 || k.width() && k.sett() || k.striped() && k.Find != TheEnds
}

// hasLength says whether the length of the warp is known, or follows from the cloth.
func (k Known) hasLength() bool { return k.Length != 0 || k.pieces() }
