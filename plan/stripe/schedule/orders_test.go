package schedule

import "slices"

// order is an order of the benchmarks, made up for them.
type order struct {
	name      string
	positions int
	ends      []int
}

func run(c, n int) []int { return slices.Repeat([]int{c}, n) }

func join(parts ...[]int) []int { return slices.Concat(parts...) }

func again(n int, parts ...[]int) []int { return slices.Repeat(slices.Concat(parts...), n) }

// pivot is the parts, then the parts backwards without their last end: a plaid that turns.
func pivot(parts ...[]int) []int {
	all := slices.Concat(parts...)
	back := slices.Clone(all[:len(all)-1])
	slices.Reverse(back)
	return append(slices.Clone(all), back...)
}

// dice throws a die for each stripe: its colour and its width, by a fixed rule.
func dice(ends, colours, widest int, seed uint32) []int {
	var all []int
	x := seed
	next := func(n int) int {
		x = x*1664525 + 1013904223
		return int(x>>16) % n
	}
	for len(all) < ends {
		all = append(all, run(next(colours)+1, 1+next(widest))...)
	}
	return all[:ends]
}

// gradient goes from one colour to the next: of every span ends ever more are of the next colour.
func gradient(colours, span int) []int {
	var all []int
	for c := 1; c < colours; c++ {
		for k := range span {
			all = append(all, run(c, span-k)...)
			all = append(all, run(c+1, k)...)
		}
	}
	return all
}

func orders() []order {
	check := func(a, n int) []int { return join(again(n, run(1, a), run(2, a)), run(1, a)) }
	return []order{
		{"check 4/4", 12, check(4, 45)},
		{"check 8/8", 12, check(8, 25)},
		{"check 8/8", 16, check(8, 25)},
		{"check 6/6/6", 12, join(again(18, run(1, 6), run(2, 6), run(3, 6)), run(1, 6))},
		{"shepherd 6/6", 8, check(6, 24)},
		{"plaid with pivots", 12, join(again(4,
			pivot(run(1, 24), run(2, 4), run(3, 2), run(2, 4), run(4, 12), run(5, 1))), run(1, 24))},
		{"plaid with pivots", 16, join(again(4,
			pivot(run(1, 24), run(2, 4), run(3, 2), run(2, 4), run(4, 12), run(5, 1))), run(1, 24))},
		{"large plaid", 10, again(2, pivot(run(1, 18), run(2, 2), run(1, 2), run(2, 18), run(3, 3), run(4, 9),
			run(1, 30)))},
		{"log cabin", 8, join(again(6, again(8, run(1, 1), run(2, 1)), again(8, run(2, 1), run(1, 1))), run(1, 1))},
		{"log cabin", 12, join(again(8, again(11, run(1, 1), run(2, 1)), run(1, 2), again(11, run(2, 1), run(1, 1)),
			run(2, 2)))},
		{"houndstooth 4/4", 10, check(4, 40)},
		{"houndstooth 2/2", 12, check(2, 100)},
		{"gradient", 12, gradient(4, 9)},
		{"gradient", 8, gradient(3, 12)},
		{"stripes on a ground", 12, join(run(1, 20), again(14, run(2, 2), run(1, 14), run(3, 4), run(1, 14)),
			run(1, 20))},
		{"towel", 10, join(run(1, 40), again(3, run(2, 4), run(1, 4)), run(1, 180), again(3, run(1, 4), run(2, 4)),
			run(1, 40))},
		{"ticking", 12, join(again(20, run(1, 9), run(2, 3), run(1, 1), run(2, 3)), run(1, 9))},
		{"dice 3", 12, dice(300, 3, 12, 5)},
		{"dice 6", 12, dice(400, 6, 15, 6)},
		{"dice 8", 16, dice(300, 8, 8, 7)},
		{"dice 4 narrow", 10, dice(200, 4, 4, 8)},
	}
}
