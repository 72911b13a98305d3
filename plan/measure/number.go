package measure

import (
	"errors"
	"math/big"
	"strings"
)

// maxDigits bounds a number that a person types; anything longer is a slip or an attack.
const maxDigits = 18

var (
	errNotANumber = errors.New(lengthWants)
	errThousands  = errors.New("no comma before three digits: it could part thousands or decimals; write 1200 or 1.2")
)

// LeadingNumber cuts a number from the front of s: 7, 7.5, 7,5, 1/2 or 7 1/2.
func LeadingNumber(s string) (*big.Rat, string, error) {
	whole, rest, err := LeadingDecimal(s)
	if err != nil {
		return nil, s, err
	}
	if strings.HasPrefix(rest, "/") {
		return fraction(whole, rest)
	}
	// "7 1/2": a space, digits, a slash.
	next := strings.TrimLeft(rest, " ")
	if next != rest && whole.IsInt() {
		if top, after, err := LeadingDecimal(next); err == nil && strings.HasPrefix(after, "/") {
			part, after, err := fraction(top, after)
			if err != nil {
				return nil, s, err
			}
			return part.Add(part, whole), after, nil
		}
	}
	return whole, rest, nil
}

// fraction reads "/den" after a numerator.
func fraction(top *big.Rat, rest string) (*big.Rat, string, error) {
	den, after, err := LeadingDecimal(rest[1:])
	if err != nil || !top.IsInt() || !den.IsInt() || den.Sign() == 0 {
		return nil, rest, errNotANumber
	}
	return top.Quo(top, den), after, nil
}

// LeadingDecimal cuts digits with an optional decimal point or comma from the front of s.
func LeadingDecimal(s string) (*big.Rat, string, error) {
	n := strings.IndexFunc(s, func(r rune) bool { return (r < '0' || r > '9') && r != '.' && r != ',' })
	if n < 0 {
		n = len(s)
	}
	text := s[:n]
	if text == "" || len(text) > maxDigits {
		return nil, s, errNotANumber
	}
	if i := strings.IndexByte(text, ','); i >= 0 {
		if len(text)-i-1 == 3 || strings.Count(text, ",") > 1 {
			return nil, s, errThousands
		}
		text = text[:i] + "." + text[i+1:]
	}
	r, ok := new(big.Rat).SetString(text)
	if !ok || strings.HasSuffix(text, ".") {
		return nil, s, errNotANumber
	}
	return r, s[n:], nil
}
