package journal

import (
	"slices"
	"strings"
	"unicode"
)

// maxSlug is the longest file name without its extension, in characters: at four bytes each it stays
// well under the 255 bytes that common file systems take.
const maxSlug = 40

// reserved are names that Windows keeps for devices, with any extension.
var reserved = []string{
	"con", "prn", "aux", "nul",
	"com0", "com1", "com2", "com3", "com4", "com5", "com6", "com7", "com8", "com9",
	"lpt0", "lpt1", "lpt2", "lpt3", "lpt4", "lpt5", "lpt6", "lpt7", "lpt8", "lpt9",
}

// slug makes a file name of a warp's name: letters and digits of any script, in small letters, and one
// hyphen for whatever stands between. A name without either becomes "warp".
func slug(name string) string {
	var b strings.Builder
	n, gap := 0, false
	for _, r := range strings.ToLower(name) {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && (!unicode.IsMark(r) || n == 0) {
			gap = n > 0
			continue
		}
		need := 1
		if gap {
			need = 2
		}
		if n+need > maxSlug {
			break
		}
		if gap {
			b.WriteByte('-')
		}
		b.WriteRune(r)
		n, gap = n+need, false
	}
	s := b.String()
	if s == "" || slices.Contains(reserved, s) {
		return strings.TrimSuffix("warp-"+s, "-")
	}
	return s
}
