package plan

import (
	"fmt"
	"strconv"
	"strings"
)

// Listed writes rising numbers so that they can be read on a wall: "1 to 9", "2, 4, 6 ... 50", or each by
// itself. The points stand only for numbers that go on in even steps.
func Listed(n []int) string {
	if len(n) == 0 {
		return ""
	}
	step, even := 0, len(n) > 2
	for i := 1; i < len(n); i++ {
		if i == 1 {
			step = n[1] - n[0]
		}
		even = even && n[i]-n[i-1] == step
	}
	last := n[len(n)-1]
	switch {
	case even && step == 1:
		return fmt.Sprintf("%d to %d", n[0], last)
	case even && len(n) > 5:
		return fmt.Sprintf("%d, %d, %d ... %d", n[0], n[1], n[2], last)
	}
	parts := make([]string, len(n))
	for i, v := range n {
		parts[i] = strconv.Itoa(v)
	}
	return strings.Join(parts, ", ")
}

// SamePlaces joins neighbouring items of a list whose texts are alike: it gives the numbers, from 1, of
// each run of them.
func SamePlaces[T any](list []T, alike func(a, b T) bool) [][]int {
	var runs [][]int
	for i := range list {
		if i > 0 && alike(list[i-1], list[i]) {
			runs[len(runs)-1] = append(runs[len(runs)-1], i+1)
		} else {
			runs = append(runs, []int{i + 1})
		}
	}
	return runs
}
