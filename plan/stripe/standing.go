package stripe

// standing is a set-up that lays ends without a stop, and what that costs from each end on.
type standing struct {
	matcher
	size  int       // positions threaded
	costs [][2]cost // costs[n-i][d], without threading
}

// keptStanding is how many words a search goes by.
const keptStanding = 16

// learn keeps the set-up of steps that lay the ends from i on, unless they need a stop.
func (x *exact) learn(steps []step, first int) {
	set := make([]uint8, x.positions)
	d := x.nodes[0].d
	size := 0
	for _, st := range steps {
		if st.stop {
			return
		}
		for k := range st.size {
			pos := st.base + x.offset(k, st.size, x.mirrored && d == 1)
			if set[pos] == 0 {
				size++
			}
			set[pos] = x.ends[st.start+k]
		}
		d = uint8(x.after(int(d)))
	}
	for _, w := range x.standing {
		if string(w.set) == string(set) {
			return
		}
	}
	w := &standing{matcher: x.match(set), size: size, costs: [][2]cost{x.rest[len(x.ends)]}}
	for i := len(x.ends) - 1; i >= first; i-- {
		w.goBack(i)
	}
	x.standing = append(x.standing, w)
	if len(x.standing) > keptStanding {
		x.standing = x.standing[1:]
	}
}

// goBack works out the cost from end i on; that from the next end on is there.
func (w *standing) goBack(i int) {
	if len(w.costs) > len(w.ends)-i {
		return // it was there before
	}
	var at [2]cost
	for d, l := range w.longest(i, len(w.ends)) {
		at[d] = never
		for size := 1; size <= l.size; size++ {
			if w.allowed[size] {
				at[d] = min(at[d], w.passCost(size)+w.costAt(i+size, w.after(d)))
			}
		}
	}
	w.looked += w.positions
	w.costs = append(w.costs, at)
}

func (w *standing) costAt(i, d int) cost { return w.costs[len(w.ends)-i][d] }

// sets gives the set-ups that the search goes by.
func (x *exact) sets() [][]uint8 {
	var list [][]uint8
	for _, w := range x.standing {
		list = append(list, w.set)
	}
	return list
}
