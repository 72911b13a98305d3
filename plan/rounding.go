package plan

import "math/big"

// rounding is the way in which a fraction becomes a whole number. Every place that rounds names it.
type rounding uint8

const (
	roundDown    rounding = iota // to the whole number below
	roundUp                      // to the whole number above
	roundNearest                 // to the nearest, halves up
)

// whole makes a whole number of r; ok is false where it is too large for an int64.
func (how rounding) whole(r *big.Rat) (n int64, ok bool) {
	num, den := new(big.Int).Set(r.Num()), r.Denom()
	switch how {
	case roundUp:
		num.Neg(num.Div(num.Neg(num), den))
	case roundNearest:
		twice := new(big.Int).Lsh(den, 1)
		num.Div(num.Lsh(num, 1).Add(num, den), twice)
	default:
		num.Div(num, den)
	}
	return num.Int64(), num.IsInt64()
}

// length makes a Length of a number of nanometres; ok is false beyond maxSum.
func (how rounding) length(nanometres *big.Rat) (Length, bool) {
	n, ok := how.whole(nanometres)
	return Length(n), ok && n <= maxSum && n >= -maxSum
}

// maxSum bounds sums of lengths (nanometres) and of masses (nanograms), so that adding two can't
// overflow: four million kilometres, four thousand tonnes.
const maxSum = 4_000_000_000_000_000_000

// ratOf is a whole number as a fraction.
func ratOf[T ~int | ~int64](n T) *big.Rat { return new(big.Rat).SetInt64(int64(n)) }

// mul, quo and sub are the sums on fractions as values, so that formulas read as they are written.
func mul(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
func sub(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }
func add(a, b *big.Rat) *big.Rat { return new(big.Rat).Add(a, b) }

// quo is a / b; b must not be nil or nought.
func quo(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }

// tooLarge is the error for a result that no warp reaches.
func tooLarge(field, value string) *FieldError {
	return &FieldError{Field: field, Value: value, Want: "a smaller amount: the result is larger than any warp"}
}
