package measure

import (
	"strings"

	"millside/plan/figure"
)

// Masses is a short list of weights, such as those of the cones. It is written with commas between.
type Masses []Mass

// maxMasses bounds the list: one for each position of a paddle.
const maxMasses = MaxPositions

// ParseMasses reads weights with commas, semicolons or "and" between: "250 g, 180 g". An empty text is an
// empty list. A decimal comma is taken only where it stands between two digits. The error is a
// [*FieldError] without a field name.
func ParseMasses(s string) (Masses, error) {
	var list Masses
	if strings.TrimSpace(s) == "" {
		return nil, nil
	}
	for _, part := range SplitList(strings.ReplaceAll(s, " and ", "; ")) {
		m, err := ParseMass(part)
		if err != nil {
			return nil, err
		}
		list = append(list, m)
	}
	if len(list) > maxMasses {
		return nil, &FieldError{Value: s, Want: "at most 60 weights"}
	}
	return list, nil
}

// SplitList parts a text at semicolons, and at commas that no digit follows at once.
func SplitList(s string) []string {
	var parts []string
	from := 0
	for i := range len(s) {
		decimal := s[i] == ',' && i+1 < len(s) && s[i+1] >= '0' && s[i+1] <= '9'
		if s[i] == ';' || s[i] == ',' && !decimal {
			parts = append(parts, s[from:i])
			from = i + 1
		}
	}
	return append(parts, s[from:])
}

// String writes the list as ParseMasses reads it.
func (m Masses) String() string { return figure.Signed(m.plain()) }

func (m Masses) plain() string {
	parts := make([]string, len(m))
	for i, one := range m {
		parts[i] = shortest(int64(one), massUnits)
	}
	return strings.Join(parts, ", ")
}

// MarshalText writes the list as String does, but always with decimal points.
func (m Masses) MarshalText() ([]byte, error) { return []byte(m.plain()), nil }

// UnmarshalText reads what MarshalText wrote.
func (m *Masses) UnmarshalText(b []byte) error { return readText(m, b, ParseMasses) }
