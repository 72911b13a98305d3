package measure

import (
	"fmt"
	"strconv"
	"strings"
)

// OneOf names a small enumeration's value; a value outside the list is shown as a number.
func OneOf(i int, names ...string) string {
	if i < 0 || i >= len(names) {
		return strconv.Itoa(i)
	}
	return names[i]
}

// WhichOf finds a name in a small enumeration.
func WhichOf(s string, names ...string) (int, error) {
	for i, n := range names {
		if strings.EqualFold(strings.TrimSpace(s), n) {
			return i, nil
		}
	}
	return 0, &FieldError{Value: s, Want: fmt.Sprintf("one of %s", strings.Join(names, ", "))}
}
