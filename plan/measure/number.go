package measure

import (
	"errors"
	"math/big"
	"strings"

	"millside/plan/figure"
)

// maxDigits bounds a number that a person types; anything longer is a slip or an attack.
const maxDigits = 18

var (
	errNotANumber = errors.New(lengthWants)
	errThousands  = errors.New("no comma before three digits: it could part thousands or decimals; write 1200 or 1.2")
)

// vulgarFractions are the fractions that keyboards and telephones write as one character.
var vulgarFractions = strings.NewReplacer("½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅓", " 1/3", "⅔", " 2/3",
	"⅕", " 1/5", "⅖", " 2/5", "⅗", " 3/5", "⅘", " 4/5", "⅙", " 1/6", "⅚", " 5/6",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "\u2044", "/")

// spellFractions writes fractions of one character with a slash: "5½ yd" is "5 1/2 yd".
func spellFractions(s string) string { return strings.TrimSpace(vulgarFractions.Replace(s)) }

// LeadingNumber cuts a number from the front of s: 7, 7.5, 7,5, 1/2, 7 1/2 or 7½.
func LeadingNumber(s string) (*big.Rat, string, error) {
	s = spellFractions(s)
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
		// 0,504 parts no thousands, nor does what a weaver writes whose decimal sign it is.
		thousands := len(text)-i-1 == 3 && strings.Trim(text[:i], "0") != "" && !figure.Comma()
		if thousands || strings.Count(text, ",") > 1 {
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
