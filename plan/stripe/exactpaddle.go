package stripe

import "bytes"

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
	u := &x.unsorted
	u.key, u.origin, u.groups = append(u.key[:0], x.key...), append(u.origin[:0], x.origin...), u.groups[:0]
	begin := 0
	for k := 0; k <= len(u.key); k++ {
		if k < len(u.key) && u.key[k] != apart {
			continue
		}
		u.groups = append(u.groups, [2]int{begin, k})
		for j := len(u.groups) - 1; j > 0 && u.before(j, j-1); j-- {
			u.groups[j], u.groups[j-1] = u.groups[j-1], u.groups[j]
		}
		begin = k + 1
	}
	x.key, x.origin = x.key[:0], x.origin[:0]
	for k, g := range u.groups {
		if k > 0 {
			x.key, x.origin = append(x.key, apart), append(x.origin, unthreaded)
		}
		x.key, x.origin = append(x.key, u.key[g[0]:g[1]]...), append(x.origin, u.origin[g[0]:g[1]]...)
	}
}

// unsorted is a paddle whose groups are being sorted, kept so that its memory is used again.
type unsorted struct {
	key    []byte
	origin []int
	groups [][2]int
}

// before says whether one group of the list comes before another.
func (u *unsorted) before(a, b int) bool {
	g, h := u.groups[a], u.groups[b]
	return bytes.Compare(u.key[g[0]:g[1]], u.key[h[0]:h[1]]) < 0
}
