package plan

import (
	"errors"
	"math/big"
	"strings"
)

// namedUnit is a unit with the names that a weaver may write; amount is in the smallest unit.
type namedUnit struct {
	names  []string
	amount int64
}

// maxQuantity bounds what a person types for one quantity, in bytes.
const maxQuantity = 100

// lengthNames is the table of the units of length as named units.
var lengthNames = func() []namedUnit {
	var units []namedUnit
	for _, u := range lengthUnits {
		units = append(units, namedUnit{u.names, int64(u.unit)})
	}
	return units
}()

// parseSum reads one or more numbers with their units and adds them: "2 lb 3 oz". The result is exact,
// in the smallest unit. The error is a [*FieldError] without a field name, which tells to write wants.
func parseSum(s, wants string, units []namedUnit) (*big.Rat, error) {
	total := new(big.Rat)
	rest := strings.TrimSpace(s)
	if rest == "" || len(rest) > maxQuantity {
		return nil, &FieldError{Value: s, Want: wants}
	}
	for rest != "" {
		num, tail, err := leadingNumber(rest)
		if err != nil {
			return nil, &FieldError{Value: s, Want: numberWants(err, wants)}
		}
		name, tail := cutWord(tail)
		unit, ok := findUnit(name, units)
		if !ok {
			return nil, &FieldError{Value: s, Want: wants}
		}
		total.Add(total, num.Mul(num, ratOf(unit)))
		rest = strings.TrimSpace(tail)
	}
	return total, nil
}

// numberWants is what to write instead of a number that can't be read: the comma needs its own words.
func numberWants(err error, wants string) string {
	if errors.Is(err, errThousands) {
		return err.Error()
	}
	return wants
}

// cutWord cuts the letters up to the next space or digit from the front of s.
func cutWord(s string) (word, rest string) {
	s = strings.TrimSpace(s)
	n := strings.IndexFunc(s, func(r rune) bool { return r == ' ' || (r >= '0' && r <= '9') })
	if n < 0 {
		n = len(s)
	}
	return strings.ToLower(strings.TrimSuffix(s[:n], ".")), s[n:]
}

// findUnit is the amount of a unit by its name.
func findUnit(name string, units []namedUnit) (int64, bool) {
	for _, u := range units {
		for _, known := range u.names {
			if name == known {
				return u.amount, true
			}
		}
	}
	return 0, false
}
