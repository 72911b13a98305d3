package journal

import (
	"fmt"
	"strings"

	"millside/plan/measure"
)

// CopyName is a name for a copy of a warp that no warp of a list has: its own with the next free number behind it.
func CopyName(name string, list []Summary) string {
	taken := map[string]bool{}
	for _, sum := range list {
		taken[strings.ToLower(sum.Name)] = true
	}
	base := name
	// A longer number is a year, or a yarn's.
	if i := strings.LastIndexByte(name, ' '); i > 0 && len(name)-i <= 3 &&
		strings.Trim(name[i+1:], "0123456789") == "" {
		base = name[:i]
	}
	for n := 2; ; n++ {
		end := fmt.Sprintf(" %d", n)
		front := []rune(base)
		front = front[:min(len(front), measure.MaxName-len(end))]
		if next := strings.TrimRight(string(front), " ") + end; !taken[strings.ToLower(next)] {
			return next
		}
	}
}
