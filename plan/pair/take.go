package pair

import (
	"strings"

	"millside/plan/field"
	"millside/plan/loom"
	"millside/plan/measure"
)

// Take reads the text of one of the [Fields] into the ask; an empty text leaves it as it is. The error is a
// [*measure.FieldError] of the field.
func (a *Ask) Take(f *field.Field, text string) (err error) {
	if text = strings.TrimSpace(text); text == "" {
		return nil
	}
	switch f {
	case OrderField:
		a.Order = text
		_, err = readOrder(text, [2]string{"ground", "second"})
		if fe := measure.FieldErrors(err); len(fe) == 1 && fe[0].Want == orderWants {
			err = nil // it may be the name of a warp
		}
	case LieField:
		var i int
		i, err = measure.WhichOf(text, f.Words...)
		a.Beside = i == 1
	case SettField:
		a.Sett, err = measure.ParseSett(text)
	case DentsField:
		a.Dents, err = loom.ParseDentSections(text)
	case TakeUpField:
		a.TakeUp, err = measure.ParsePercent(text)
		a.TakeUpSaid = true
	case HeldField:
		err = a.Held.UnmarshalText([]byte(text))
	case ReedField:
		a.Reed, err = loom.ParseReed(text)
	case RaddleField:
		a.Raddle.Space, err = measure.ParseLength(text)
	default:
		return f.Wrong(text, "nothing: it isn't a field of two warps together")
	}
	return f.In(err)
}

// orderWants is what a word of an order should be.
const orderWants = "ground or second, such as 2 ground, 1 second"
