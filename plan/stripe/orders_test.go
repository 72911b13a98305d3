package stripe

// plaid is a warp of so many ends: a repeat of stripes of 2 to 12 ends in so many colours, drawn up by
// a fixed rule, laid again and again.
func plaid(ends, colours, stripes int) []int {
	var all []int
	for len(all) < ends {
		x := 7
		for i := range stripes {
			x = (x*31 + 11) % 101
			c := i%colours + 1
			if i%3 == 2 {
				c = x%colours + 1
			}
			for range 2 + x%6*2 {
				all = append(all, c)
			}
		}
	}
	return all[:ends]
}

// scattered is a warp of stripes of 1 to 15 ends of colours as if by lot, without a repeat.
func scattered(ends, colours int) []int {
	var all []int
	x := uint32(12345)
	next := func(n int) int {
		x = x*1664525 + 1013904223
		return int(x>>16) % n
	}
	for len(all) < ends {
		c := next(colours) + 1
		for range 1 + next(15) {
			all = append(all, c)
		}
	}
	return all[:ends]
}
