// Package ratio is exact arithmetic on fractions, and the rounding of a fraction to a whole number, which
// always names its way. Quantities of package measure are reckoned with it.
package ratio

import (
	"math/big"
	"strings"
)

// Rounding is the way in which a fraction becomes a whole number. Every place that rounds names it.
type Rounding uint8

const (
	Down    Rounding = iota // to the whole number below
	Up                      // to the whole number above
	Nearest                 // to the nearest, halves up
)

// Whole makes a whole number of r; ok is false where it is too large for an int64.
func (how Rounding) Whole(r *big.Rat) (n int64, ok bool) {
	num, den := new(big.Int).Set(r.Num()), r.Denom()
	switch how {
	case Up:
		num.Neg(num.Div(num.Neg(num), den))
	case Nearest:
		twice := new(big.Int).Lsh(den, 1)
		num.Div(num.Lsh(num, 1).Add(num, den), twice)
	default:
		num.Div(num, den)
	}
	return num.Int64(), num.IsInt64()
}

// Of is a whole number as a fraction.
func Of[T ~int | ~int64](n T) *big.Rat { return new(big.Rat).SetInt64(int64(n)) }

// mul, quo and sub are the sums on fractions as values, so that formulas read as they are written.
func Mul(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
func Sub(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }
func Add(a, b *big.Rat) *big.Rat { return new(big.Rat).Add(a, b) }

// Quo is a / b; b must not be nil or nought.
func Quo(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }

// Decimal writes a rational with at most the given decimals and no trailing noughts.
func Decimal(r *big.Rat, decimals int) string {
	s := r.FloatString(min(max(decimals, 0), 9))
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// Power is base to the n, for a base other than nought; n may be negative.
func Power(base int64, n int) *big.Rat {
	r := Of(1)
	for range max(n, -n) {
		r.Mul(r, Of(base))
	}
	if n < 0 {
		r.Inv(r)
	}
	return r
}
