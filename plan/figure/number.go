package figure

import (
	"math/big"
	"strings"
	"sync/atomic"

	"millside/plan/internal/ratio"
)

// Number is a number with its unit, rounded when it is written.
type Number struct {
	value     *big.Rat
	decimals  int
	one, many string
	exact     bool
	how       way
}

// way is the way in which the number is rounded.
type way uint8

const (
	nearest way = iota
	up
	down
)

// Significant is how many figures of a number that was reckoned are written: yarn, pegs and hands aren't more
// exact than that, and more would only seem so.
const Significant = 4

// New is a number that is written with at most so many decimals (0 to 9) and at most [Significant] figures,
// rounded to the nearest, halves away from nil, without trailing noughts. The unit may be empty.
func New(value *big.Rat, decimals int, unit string) Number {
	return Number{value: value, decimals: decimals, one: unit, many: unit}
}

// AtLeast is [New] rounded away from nil, so that who takes as much as is written has enough.
func AtLeast(value *big.Rat, decimals int, unit string) Number {
	return Number{value: value, decimals: decimals, one: unit, many: unit, how: up}
}

// AtMost is [New] rounded towards nil, for what a weaver may count on.
func AtMost(value *big.Rat, decimals int, unit string) Number {
	return Number{value: value, decimals: decimals, one: unit, many: unit, how: down}
}

// Exact is [New] for a number that a person wrote: all of its figures count.
func Exact(value *big.Rat, decimals int, unit string) Number {
	return Number{value: value, decimals: decimals, one: unit, many: unit, exact: true}
}

// Of is [New] for a number whose unit is a noun: "1 turn", "2.4 turns".
func Of(value *big.Rat, decimals int, one, many string) Number {
	return Number{value: value, decimals: decimals, one: one, many: many}
}

// Digits is the number as it is shown, with a decimal point and no unit.
func (n Number) Digits() string {
	if n.value == nil {
		return "0"
	}
	decimals := min(max(n.decimals, 0), 9)
	if whole := new(big.Int).Quo(n.value.Num(), n.value.Denom()); !n.exact && whole.Sign() != 0 {
		decimals = min(decimals, Significant-len(whole.Abs(whole).Text(10)))
	}
	return n.rounded(decimals)
}

// rounded writes the number to so many decimals; fewer than none are noughts before the point.
func (n Number) rounded(decimals int) string {
	step, how := ratio.Power(10, -decimals), ratio.Nearest
	switch n.how {
	case up:
		how = ratio.Up
	case down:
		how = ratio.Down
	}
	steps, ok := how.Whole(ratio.Quo(new(big.Rat).Abs(n.value), step))
	if !ok {
		return ratio.Decimal(n.value, decimals)
	}
	value := ratio.Mul(ratio.Of(steps), step)
	if n.value.Sign() < 0 {
		value.Neg(value)
	}
	return ratio.Decimal(value, decimals)
}

// Unit is the word behind the number, empty for none.
func (n Number) Unit() string {
	if n.Digits() == "1" {
		return n.one
	}
	return n.many
}

// Plain writes the number and its unit with a decimal point, as files and programs read it: "7.5 yd".
func (n Number) Plain() string { return n.with(n.Digits()) }

// String writes the number and its unit with the decimal sign of the weaver: "7.5 yd" or "7,5 yd".
func (n Number) String() string {
	return n.with(Signed(n.Digits()))
}

func (n Number) with(digits string) string {
	if n.many == "" {
		return digits
	}
	return digits + " " + n.Unit()
}

// comma is the decimal sign of all that is shown. It is set once, before anything is: a weaver has one way of writing
// numbers, and it belongs to no warp.
var comma atomic.Bool

// WriteComma says whether numbers are shown with a decimal comma from now on. Files keep the point, and so does what
// programs read; see [WriteForProgram].
func WriteComma(yes bool) { comma.Store(yes) }

// Comma says whether the weaver writes a decimal comma: then three digits behind one are decimals.
func Comma() bool { return comma.Load() }

// program says that what is written now is for a program.
var program atomic.Bool

// WriteForProgram says whether what is written from now on is for a program to read: it has decimal points then,
// whatever the weaver's own sign is.
func WriteForProgram(yes bool) { program.Store(yes) }

// Signed puts the decimal sign of the weaver into a text about quantities that was written with points, such as
// "7.5 yd": a point between two digits that belongs to one number becomes a comma where the weaver writes one. Numbers
// with several points, such as versions, stay. It isn't for names.
func Signed(text string) string {
	if !comma.Load() || program.Load() || !strings.Contains(text, ".") {
		return text
	}
	b := []byte(text)
	for i := 0; i < len(b); {
		end := i // of what may be a number
		points := 0
		for end < len(b) && (b[end] >= '0' && b[end] <= '9' || b[end] == '.' && end+1 < len(b) && digit(b[end+1])) {
			if b[end] == '.' {
				points++
			}
			end++
		}
		if points == 1 {
			if at := i + strings.IndexByte(text[i:end], '.'); at > i {
				b[at] = ','
			}
		}
		i = max(end, i+1)
	}
	return string(b)
}

func digit(c byte) bool { return c >= '0' && c <= '9' }
