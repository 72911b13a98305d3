package textfile

import (
	"strings"
	"testing"
	"unicode/utf16"

	"pgregory.net/rapid"
)

// asUTF16 writes a text as editors do, with a mark in front.
func asUTF16(text string, bigEndian bool) string {
	var b strings.Builder
	for _, unit := range utf16.Encode([]rune("\uFEFF" + text)) {
		low, high := byte(unit), byte(unit>>8)
		if bigEndian {
			low, high = high, low
		}
		b.WriteByte(low)
		b.WriteByte(high)
	}
	return b.String()
}

// A text is the same however an editor keeps it.
func TestDecode(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.StringMatching(`([a-zé리😀 :#]{0,12}\n){0,5}`).Draw(t, "text")
		for _, ends := range []string{"\n", "\r\n", "\r"} {
			text := strings.ReplaceAll(want, "\n", ends)
			for name, kept := range map[string]string{
				"UTF-8": text, "with its mark": "\uFEFF" + text,
				"UTF-16": asUTF16(text, false), "UTF-16, big end first": asUTF16(text, true),
			} {
				if got, err := Decode(kept); err != nil || got != want {
					t.Fatalf("%s, ends %q: %q is read as %q (%v)", name, ends, kept, got, err)
				}
			}
		}
	})
	for _, bad := range []string{"\xFF\xFEa", "\xFF\xFE\x00\xD8", "r\x00e\x00e\x00d\x00"} {
		if got, err := Decode(bad); err == nil || !strings.Contains(err.Error(), "UTF-16") {
			t.Errorf("%q is read as %q (%v)", bad, got, err)
		}
	}
}

func TestLines(t *testing.T) {
	var got []string
	for n, line := range Lines("# all of it\n\n a\tb  # and a remark\nno#remark\nlast #") {
		got = append(got, string(rune('0'+n))+line)
	}
	if strings.Join(got, "|") != "3a b|4no#remark|5last #" {
		t.Errorf("%q", got)
	}
}

func TestCut(t *testing.T) {
	for line, want := range map[string]string{"a: b": "a|b", "a = b": "a|b", "a: b = c": "a|b = c", "a b": "a b|"} {
		about, says, found := Cut(line)
		if about+"|"+says != want || found != strings.ContainsAny(line, ":=") {
			t.Errorf("%q is cut into %q, %q, %v", line, about, says, found)
		}
	}
}
