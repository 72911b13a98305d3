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

// runs is stripes given as colour, ends, colour, ends and so on.
func runs(pairs ...int) []int {
	var all []int
	for k := 0; k+1 < len(pairs); k += 2 {
		all = append(all, run(pairs[k], pairs[k+1])...)
	}
	return all
}

// stripesOf are stripes of those widths, of the colours in turn.
func stripesOf(colours []int, widths ...int) []int {
	var all []int
	for k, w := range widths {
		all = append(all, run(colours[k%len(colours)], w)...)
	}
	return all
}

// freshOrders are orders that nothing was tried out on while the first search was made; the widths and lots of the twin
// were chosen with some of them in view.
func freshOrders() []order {
	var fades, pins []int
	for c := 1; c < 8; c++ {
		for k := 9; k >= 1; k -= 2 {
			fades = append(fades, runs(c, k, c+1, 10-k)...)
		}
	}
	for k, w := range []int{11, 2, 13, 5, 7, 3, 17, 1, 9, 6, 4, 19} {
		pins = append(pins, runs(1, w, 2+k%4, 1, 1, 23-w, 2+(k*k+1)%4, 1+k%2)...)
	}
	a := runs(1, 14, 2, 3, 3, 5, 2, 3)
	b := runs(4, 21, 1, 2, 2, 6, 4, 1, 3, 2)
	return []order{
		{"growing stripes", 8, stripesOf([]int{1, 2, 3}, slices.Repeat([]int{1, 2, 3, 5, 8, 13,
			21, 13, 8, 5, 3, 2, 1},
			3)...)},
		{"uneven check", 6, stripesOf([]int{1, 2}, slices.Repeat([]int{5, 7, 4, 8, 6, 3, 9}, 6)...)},
		{"lopsided plaid", 14, join(run(5, 16), runs(1, 22, 2, 6, 1, 3, 3, 11, 4, 1, 3, 11, 6,
			5, 1, 18, 2, 2, 6, 2, 2, 2,
			1, 26, 4, 7, 3, 4, 4, 7, 1, 9), runs(1, 22, 2, 6, 1, 3, 3, 11, 4, 1, 3, 11, 6, 5, 1,
			18, 2, 2, 6, 2, 2, 2, 1, 26),
			run(5, 16))},
		{"blanket bands", 10, runs(1, 46, 2, 2, 1, 2, 2, 2, 3, 38, 4, 1, 3, 1, 4, 1, 3, 29, 5,
			12, 1, 3, 5, 12, 2, 54, 3, 4,
			2, 4, 3, 4, 1, 60, 4, 2, 5, 2, 4, 2, 5, 2, 1, 33, 2, 8, 3, 8, 4, 8, 5, 8, 1, 71, 2, 1,
			1, 1, 2, 1, 1, 41)},
		{"patches of one and one", 9, join(again(13, runs(1, 1, 2, 1)), run(2, 17), again(7,
			runs(3, 1, 1, 1)), run(1, 6),
			again(21, runs(2, 1, 3, 1)), run(3, 5), again(4, runs(1, 2, 2, 1)), run(1, 25),
			again(16, runs(2, 1, 1, 1)),
			again(5, runs(3, 2, 2, 2)), run(2, 11), again(9, runs(1, 1, 3, 1)))},
		{"fades", 16, fades},
		{"pins on a ground", 12, pins},
		{"dice 7 of threes", 15, dice(260, 7, 3, 21)},
		{"dice 2 wide", 7, dice(660, 2, 25, 22)},
		{"mixed blocks", 13, join(a, b, a, a, b, a, b, b, a, a, b, a)},
	}
}
