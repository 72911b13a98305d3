package measure

import (
	"errors"
	"fmt"
	"math/big"
	"strings"

	"millside/plan/figure"
	"millside/plan/internal/ratio"
)

// namedUnit is a unit with the names that a weaver may write; amount is in the smallest unit.
type namedUnit struct {
	names  []string
	amount int64
}

// MaxQuantity bounds what a person types for one quantity, in bytes. Each fraction in a sum makes the sum's
// denominator longer, so a text without a limit could keep the program busy for minutes.
const MaxQuantity = 100

// eachUnitOnce is what to write where one value has a unit twice: then two values may be meant.
const eachUnitOnce = "each unit once and the larger one first, and a comma between two values of a list"

// parseSum reads one or more numbers with their units, the larger units first, and adds them: "2 lb 3 oz".
// The result is exact,
// in the smallest unit. The error is a [*FieldError] without a field name, which tells to write wants.
func parseSum(s, wants string, units []namedUnit) (*big.Rat, error) {
	wants = figure.Signed(wants)
	total := new(big.Rat)
	rest := strings.TrimSpace(s)
	if rest == "" {
		return nil, &FieldError{Value: s, Want: wants}
	}
	if len(rest) > MaxQuantity {
		return nil, &FieldError{Value: s, Want: fmt.Sprintf("at most %d characters", MaxQuantity)}
	}
	for last := int64(0); rest != ""; {
		num, tail, err := LeadingNumber(rest)
		if err != nil {
			return nil, &FieldError{Value: s, Want: NumberWants(err, wants)}
		}
		name, tail := cutWord(tail)
		unit, ok := findUnit(name, units)
		if !ok {
			return nil, &FieldError{Value: s, Want: wants}
		}
		if last > 0 && unit >= last {
			return nil, &FieldError{Value: s, Want: eachUnitOnce + ", or " + wants}
		}
		last = unit
		total.Add(total, num.Mul(num, ratio.Of(unit)))
		rest = strings.TrimSpace(tail)
	}
	return total, nil
}

// NumberWants is what to write instead of a number that can't be read: the comma needs its own words.
func NumberWants(err error, wants string) string {
	if errors.Is(err, errThousands) {
		return err.Error()
	}
	return figure.Signed(wants)
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

// shortest writes an amount exactly in whichever of the units takes the fewest characters, the first of
// those that take the same; with nine decimals one of them always can. Feet are read and never written.
func shortest(amount int64, units []namedUnit) string {
	best := ""
	for _, u := range units {
		if u.names[0] == "ft" {
			continue
		}
		text, exact := exactDecimal(amount, u.amount)
		if !exact {
			continue
		}
		if text += " " + u.names[0]; best == "" || len(text) < len(best) {
			best = text
		}
	}
	return best
}

// exactDecimal writes an amount in a unit, and says whether nine decimals are enough to do so exactly.
func exactDecimal(amount, unit int64) (string, bool) {
	r := new(big.Rat).SetFrac64(amount, unit)
	text := ratio.Decimal(r, 9)
	back, ok := new(big.Rat).SetString(text)
	return text, ok && back.Cmp(r) == 0
}

// readText reads a quantity for an UnmarshalText; with an error it is left as it was.
func readText[T any](to *T, b []byte, parse func(string) (T, error)) error {
	got, err := parse(string(b))
	if err != nil {
		return err
	}
	*to = got
	return nil
}

// readTextOrNone is readText for a quantity whose zero value is written as nothing.
func readTextOrNone[T any](to *T, b []byte, parse func(string) (T, error)) error {
	if len(b) == 0 {
		var none T
		*to = none
		return nil
	}
	return readText(to, b, parse)
}

// Written writes a length exactly, as a weaver in these units would. What fewer figures say in the other family of
// units was most likely written in that one: a yard stays a yard in a metric plan. What neither says with two
// decimals is written as [Length.String] does; ParseLength reads the same length back in any case.
func (u LengthUnitSystem) Written(l Length) string {
	own, ownFigures := u.written(l)
	other, otherFigures := (Metric - u).written(l)
	switch {
	case l == 0 || own == "" && other == "":
		return l.String()
	case own == "" || other != "" && otherFigures < ownFigures:
		return figure.Signed(other)
	}
	return figure.Signed(own)
}

// written writes a length exactly in one family: what two long units reach in the long one, less in the one that
// takes fewer characters. It counts the figures that are no noughts at an end.
func (u LengthUnitSystem) written(l Length) (text string, figures int) {
	long, _ := u.Long().Length()
	for _, unit := range []LengthUnit{u.Long(), u.Short()} {
		one, name := unit.Length()
		number, exact := exactDecimal(int64(l), int64(one))
		at := strings.IndexByte(number, '.')
		if !exact || at >= 0 && len(number)-at > 3 {
			continue
		}
		if more := number + " " + name; text == "" || len(more) < len(text) && l < 2*long {
			text, figures = more, len(strings.Trim(strings.Replace(number, ".", "", 1), "0"))
		}
	}
	return text, figures
}

// Shown writes a length in the long unit with at most one decimal, or in the short unit without decimals if it
// is less than one long unit, both rounded to the nearest. So the third of a very short warp doesn't become
// "0 yd".
func (u LengthUnitSystem) Shown(l Length) string {
	long := u.Long()
	if one, _ := long.Length(); l < one {
		return l.As(u.Short(), 0).String()
	}
	return l.As(long, 1).String()
}
