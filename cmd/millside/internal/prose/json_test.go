package prose

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// What is written is read back the same, and holds nothing that a terminal acts on.
func TestJSONHidesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		runes := rapid.RuneFrom([]rune("a\"\\\n\t\x7f\u009b\u200e\u202e\u2066\u061c리é\U000e0001"))
		want := rapid.StringOf(runes).Draw(t, "text")
		var b bytes.Buffer
		if err := WriteJSON(&b, want); err != nil {
			t.Fatal(err)
		}
		var got string
		if err := json.Unmarshal(b.Bytes(), &got); err != nil || got != want {
			t.Fatalf("%q came back as %q (%v)", want, got, err)
		}
		if line := strings.TrimSuffix(b.String(), "\n"); Clean(line) != line {
			t.Fatalf("%q holds what is taken away from text", line)
		}
	})
	var b bytes.Buffer
	if err := WriteJSON(&b, "red\u202eder"); err != nil || b.String() != "\"red\\u202eder\"\n" {
		t.Errorf("%q (%v)", b.String(), err)
	}
}
