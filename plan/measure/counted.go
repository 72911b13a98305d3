package measure

import "fmt"

// Counted writes a number with its noun: "1 pass", "40 passes".
func Counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// Capital begins a text with a capital letter, if it begins with a letter of ASCII.
func Capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}
