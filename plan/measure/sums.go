package measure

import (
	"math/big"

	"millside/plan/internal/ratio"
)

// LengthOf makes a Length of a number of nanometres; ok is false beyond maxSum.
func LengthOf(how ratio.Rounding, nanometres *big.Rat) (Length, bool) {
	n, ok := how.Whole(nanometres)
	return Length(n), ok && n <= maxSum && n >= -maxSum
}

// maxSum bounds sums of lengths (nanometres) and of masses (nanograms), so that adding two can't
// overflow: four million kilometres, four thousand tonnes.
const maxSum = 4_000_000_000_000_000_000

// TooLarge is the error for a result that no warp reaches.
func TooLarge(field, value string) *FieldError {
	return &FieldError{Field: field, Value: value, Want: "a smaller amount: the result is larger than any warp"}
}
