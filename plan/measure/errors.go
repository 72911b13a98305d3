package measure

import (
	"errors"
	"fmt"
	"strconv"
)

// FieldError says which field of a plan is wrong, what was given, and what would do instead.
type FieldError struct {
	// Field is the field's plain name, such as "ends"; it may be empty until the caller fills it in.
	Field string
	// Value is what was given.
	Value string
	// Want says what would do.
	Want string
}

// Error names the field, the value and what would do.
func (e *FieldError) Error() string {
	if e.Field == "" {
		return fmt.Sprintf("%s won't do; give %s", strconv.Quote(e.Value), e.Want)
	}
	return fmt.Sprintf("%s: %s won't do; give %s", e.Field, strconv.Quote(e.Value), e.Want)
}

// InField returns err with its field named, if it is a [FieldError] that has no field yet.
func InField(err error, field string) error {
	var fe *FieldError
	if errors.As(err, &fe) && fe.Field == "" {
		named := *fe
		named.Field = field
		return &named
	}
	return err
}

// FieldErrors lists every FieldError in err, in order: err itself, those joined in it, and those that
// it wraps.
func FieldErrors(err error) []*FieldError {
	switch e := err.(type) {
	case *FieldError:
		return []*FieldError{e}
	case interface{ Unwrap() []error }:
		var all []*FieldError
		for _, one := range e.Unwrap() {
			all = append(all, FieldErrors(one)...)
		}
		return all
	case interface{ Unwrap() error }:
		return FieldErrors(e.Unwrap())
	}
	return nil
}

// Outside builds the error for a count out of its range.
func Outside(field string, value, low, high int, what string) *FieldError {
	return &FieldError{Field: field, Value: strconv.Itoa(value), Want: fmt.Sprintf("%d to %d%s", low, high, what)}
}

// Faults collects what is wrong with fields.
type Faults []error

// Count adds an error if a whole number is not from low to high, and says whether it is. What is said
// behind the range, such as its unit.
func (e *Faults) Count(field string, v, low, high int, what string) bool {
	if v < low || v > high {
		*e = append(*e, Outside(field, v, low, high, what))
		return false
	}
	return true
}

// Shortened cuts a value that is too long to be shown in an error.
func Shortened(s string) string {
	const most = 80
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + " ..."
	}
	return s
}
