package look

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// HasUTF8 says whether a locale, as the environment gives it, lets a terminal show more than ASCII. The
// first of LC_ALL, LC_CTYPE and LANG that is set counts, as POSIX has it ("Environment Variables",
// internationalization variables). Where none is set, nothing is known, and most terminals can.
func HasUTF8(env func(string) string) bool {
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := strings.ToLower(env(name)); v != "" {
			return strings.Contains(v, "utf-8") || strings.Contains(v, "utf8")
		}
	}
	return true
}

// asciiOf are the drawn signs in characters that any terminal has.
var asciiOf = map[rune]byte{
	'━': '=', '─': '-', '┄': '-', '═': '#', '│': '|', '┃': '|', '║': '|', '╲': '\\', '╱': '/', '╳': 'X',
	'▶': '>', '◀': '<', '▲': '^', '▼': 'v', '▸': '>', '●': 'o', '•': 'o', '·': '-', '…': '~', '×': 'x',
	'█': '#', '▀': '#', '▄': '#', '░': '.', '↻': ')', '↺': '(', '›': '>', '“': '"', '”': '"', '’': '\'', '⋮': ':',
}

// ASCII writes a screen for a terminal that has only ASCII: lines and blocks become what comes next to
// them, other letters a question mark, each as wide as it was.
func ASCII(view string) string {
	var b strings.Builder
	b.Grow(len(view))
	for _, r := range view {
		switch c, ok := asciiOf[r]; {
		case r < 0x80:
			b.WriteRune(r)
		case ok:
			b.WriteByte(c)
		case r >= 0x2500 && r < 0x2580: // corners and crossings of lines
			b.WriteByte('+')
		default:
			b.WriteString(strings.Repeat("?", ansi.StringWidth(string(r))))
		}
	}
	return b.String()
}
