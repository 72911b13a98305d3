package main

import (
	"strings"
	"testing"
	"unicode/utf8"
)

// The short help of every command fits on a screen of 24 lines, examples first.
func TestShortHelpFits(t *testing.T) {
	for _, cmd := range append(newApp().root().Commands(), newApp().root()) {
		args := append(strings.Fields(cmd.CommandPath())[1:], "-h")
		code, out, errOut := runIn(t.TempDir(), args...)
		if code != 0 || errOut != "" {
			t.Errorf("%q: exit status %d, %q", args, code, errOut)
		}
		lines := strings.Split(strings.TrimSuffix(out, "\n"), "\n")
		if len(lines) > 24 {
			t.Errorf("%q: %d lines", args, len(lines))
		}
		for _, line := range lines {
			if utf8.RuneCountInString(line) > 80 {
				t.Errorf("%q: a line is too long: %s", args, line)
			}
		}
		if cmd.Example != "" && len(lines) > 2 && !strings.HasPrefix(strings.TrimSpace(lines[2]), "millside") {
			t.Errorf("%q doesn't begin with an example: %q", args, lines)
		}
	}
}
