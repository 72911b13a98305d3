package stripe

// spread lays out a paddle, and gives how many of its positions are of use.
func (x *exact) spread(key []byte) (useful int) {
	x.cells, x.groups, x.groupOf, x.visited = x.cells[:0], x.groups[:0], x.groupOf[:0], x.visited[:0]
	clear(x.counts[:])
	begin := 0
	for k, c := range key {
		if c != apart {
			x.cells = append(x.cells, c)
			x.groupOf = append(x.groupOf, len(x.groups))
			x.counts[c&^inUse]++
		}
		if c == apart || k == len(key)-1 {
			x.groups = append(x.groups, [2]int{begin, len(x.cells)})
			x.visited = append(x.visited, false)
			begin = len(x.cells)
		}
	}
	for c := 1; c <= x.colours; c++ {
		x.toLay[c] = x.left(uint8(c), int(x.now.i))
		useful += min(x.counts[c], x.toLay[c])
	}
	return useful
}

// left is how many ends of a colour there are from i on, as far as they count.
func (x *exact) left(c uint8, i int) int {
	t := x.tail[c]
	k := len(t) - 1
	for k > 0 && int(t[k]) < i {
		k--
	}
	return k
}

// lookOnward fills in onward.
func (x *exact) lookOnward() {
	i, d, wide := int(x.now.i), x.after(int(x.now.d)), x.positions+1
	for k := range wide {
		least := never
		for size := x.maxSize; size > 0; size-- {
			if i+size <= len(x.ends) && x.allowed[size] {
				least = min(least, x.passCost(size)+x.leastAt(i+size, d, k))
			}
			x.onward[size*wide+k] = least
		}
	}
}

// usefulOf is how many positions have colours that the ends from i on can use, and how many positions
// there are.
func (x *exact) usefulOf(cells []byte, i int) (useful, all int) {
	var counts [wasted + 1]uint8
	for _, c := range cells {
		if c != apart {
			counts[c&^inUse]++
			all++
		}
	}
	for c := 1; c <= x.colours; c++ {
		if counts[c] > 0 {
			useful += min(int(counts[c]), x.left(uint8(c), i))
		}
	}
	return useful, all
}

// carry lets the next end be laid by position k and goes on with any position that can be its
// neighbour. Spent is the cost so far without the pass, threaded how many positions are threaded,
// useful how many have colours of use, stop whether the winding must halt before the pass.
func (x *exact) carry(k int, spent cost, threaded, useful int, stop bool) {
	x.looked++
	i := int(x.now.i) + len(x.walk)
	want := x.ends[i]
	var had uint8
	if k == unthreaded {
		if threaded >= x.free {
			spent += cost(x.w.Change)
		}
		threaded++
		useful += x.count(want, 1)
	} else if c := x.cells[k]; c&^inUse != want {
		had = c &^ inUse
		spent += cost(x.w.Change)
		if c&inUse != 0 && !stop {
			stop = true
			spent += cost(x.w.Stop)
		}
		useful += x.count(had, -1) + x.count(want, 1)
	}
	x.walk = append(x.walk, k)
	if spent+x.onward[len(x.walk)*(x.positions+1)+min(x.positions, useful+max(0, x.free-threaded))] <= x.best {
		x.goOn(k, spent, threaded, useful, stop)
	}
	x.walk = x.walk[:len(x.walk)-1]
	if k == unthreaded {
		x.count(want, -1)
	} else if had != 0 {
		x.count(had, 1)
		x.count(want, -1)
	}
}

// count counts a position of a colour in or out, and gives how many more are of use then.
func (x *exact) count(c uint8, by int) int {
	before := min(x.counts[c], x.toLay[c])
	x.counts[c] += by
	return min(x.counts[c], x.toLay[c]) - before
}

// goOn ends the pass at position k, or carries its neighbours too.
func (x *exact) goOn(k int, spent cost, threaded, useful int, stop bool) {
	size := len(x.walk)
	i := int(x.now.i) + size
	if x.allowed[size] && spent+x.passCost(size)+
		x.leastAt(i, x.after(int(x.now.d)), min(x.positions, useful+max(0, x.free-threaded))) <= x.best {
		x.emit(spent+x.passCost(size), stop)
	}
	if size == x.maxSize || i == len(x.ends) {
		return
	}
	if k != unthreaded {
		g := x.groups[x.groupOf[k]]
		if x.reversed && k > g[0] {
			x.carry(k-1, spent, threaded, useful, stop)
			return
		}
		if !x.reversed && k < g[1]-1 {
			x.carry(k+1, spent, threaded, useful, stop)
			return
		}
	}
	if threaded < x.positions {
		x.carry(unthreaded, spent, threaded, useful, stop)
	}
	for g, span := range x.groups {
		if x.visited[g] {
			continue
		}
		x.visited[g] = true
		if x.reversed {
			x.carry(span[1]-1, spent, threaded, useful, stop)
		} else {
			x.carry(span[0], spent, threaded, useful, stop)
		}
		x.visited[g] = false
	}
}
