package stripe

import (
	"bytes"
	"slices"
)

// paddleAfter works out the paddle after the walk.
func (x *exact) paddleAfter(stop bool) {
	x.key, x.origin = x.key[:0], x.origin[:0]
	to := int(x.now.i) + len(x.walk)
	put := func(c byte, from int) {
		if colour := c &^ inUse; colour != apart && colour != wasted {
			if t := x.tail[colour]; int(t[1]) < to {
				c = c&inUse | wasted
			}
		}
		x.key = append(x.key, c)
		x.origin = append(x.origin, from)
	}
	old := func(from, to int) {
		for k := from; k < to; k++ {
			c := x.cells[k]
			if stop {
				c &^= inUse
			}
			put(c, k)
		}
	}
	low, high := x.walk[0], x.walk[len(x.walk)-1]
	if x.reversed {
		low, high = high, low
	}
	if low != unthreaded {
		old(x.groups[x.groupOf[low]][0], low)
	}
	for k := range x.walk {
		if x.reversed {
			k = len(x.walk) - 1 - k
		}
		put(x.ends[int(x.now.i)+k]|inUse, x.walk[k])
	}
	if high != unthreaded {
		old(high+1, x.groups[x.groupOf[high]][1])
	}
	for g, span := range x.groups {
		if !x.visited[g] {
			put(apart, unthreaded)
			old(span[0], span[1])
		}
	}
	x.sortGroups()
}

// sortGroups brings the groups in key into an order of their own.
func (x *exact) sortGroups() {
	if bytes.IndexByte(x.key, apart) < 0 {
		return
	}
	type group struct {
		key    []byte
		origin []int
	}
	var list []group
	key, origin := slices.Clone(x.key), slices.Clone(x.origin)
	begin := 0
	for k := 0; k <= len(key); k++ {
		if k == len(key) || key[k] == apart {
			list = append(list, group{key[begin:k], origin[begin:k]})
			begin = k + 1
		}
	}
	slices.SortFunc(list, func(a, b group) int { return bytes.Compare(a.key, b.key) })
	x.key, x.origin = x.key[:0], x.origin[:0]
	for k, g := range list {
		if k > 0 {
			x.key, x.origin = append(x.key, apart), append(x.origin, unthreaded)
		}
		x.key, x.origin = append(x.key, g.key...), append(x.origin, g.origin...)
	}
}
