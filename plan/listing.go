package plan

import "millside/plan/figure"

// Listed writes rising numbers so that they can be read on a wall: "1 to 9", "2, 4, 6 ... 50", or each by
// itself. The points stand only for numbers that go on in even steps.
func Listed(n []int) string { return figure.List(n).String() }

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
