package start

import (
	"strings"

	"millside/plan/entry"
	"millside/plan/field"
	"millside/plan/measure"
)

// Take reads the text of a field into what is known; an empty text says that it isn't. The error is a
// [*measure.FieldError] of the field.
func (k *Known) Take(f *field.Field, text string) (err error) {
	if text = strings.TrimSpace(text); text == "" {
		return nil
	}
	switch f {
	case field.Find:
		err = k.Find.UnmarshalText([]byte(text))
	case field.ReedSpan:
		k.ReedWidth, err = measure.ParseLength(text)
	case field.FinishedSett:
		k.FinishedSett, err = measure.ParseSett(text)
	case field.OnHand:
		k.OnHand, err = ParseOnHand(text)
	default:
		return k.takeOfPlan(f, text)
	}
	return f.In(err)
}

// takeOfPlan reads a field that a plan has too.
func (k *Known) takeOfPlan(f *field.Field, text string) error {
	e, ok := entry.Of(f)
	if !ok {
		return f.Wrong(text, "nothing: it isn't a field of a plan")
	}
	s := &k.Spec
	if err := e.Take(s, text); err != nil {
		return err
	}
	switch f {
	case field.Ends:
		k.Ends = s.Ends
	case field.Length:
		k.Length = s.Length
	case field.FinishedWidth:
		k.FinishedWidth = s.Cloth.Width.Finished
	case field.FinishedLength:
		k.FinishedLength = s.Cloth.Length.Piece
	case field.Pieces:
		k.Pieces = s.Cloth.Length.Pieces
	case field.Group:
		k.GroupSaid = true
	}
	return nil
}
