package asked

import (
	"testing"
)

func TestParseFactor(t *testing.T) {
	for text, want := range map[string]int{"0.9": 90, ".9": 90, "0,95": 95, "1": 100, "2": 200, "2.00": 200,
		"0.01": 1} {
		if f, err := ParseFactor(text); err != nil || f.Hundredths != want || f.Source == "" {
			t.Errorf("%q: %+v, %v", text, f, err)
		}
	}
	for _, bad := range []string{"", ".", "0", "2.01", "0.955", "nine", "-1"} {
		if _, err := ParseFactor(bad); err == nil {
			t.Errorf("%q is no error", bad)
		}
	}
}
