package stripe

import (
	"bytes"
	"slices"
)

// The exact search.
//
// Where a colour sits on the paddle matters only by its neighbours, so the search holds a paddle as
// loose groups: a group is a row of neighbouring positions, and where the groups lie, and in which
// order, stays open until a pass needs two of them side by side. What was threaded never moves away
// from its group, and the groups together have no more positions than the paddle; so at the end they
// can be laid side by side, in any order, and every pass finds its positions where it needs them.
// All paddles that differ only in the order of their groups and in positions not threaded yet are one.
//
// Let least(i, d, k) be the least cost of the ends from i on with an empty paddle, the next pass being
// of direction d, if the first k positions are threaded for nothing. It is found for the last end
// first, then for the last two, and so on to the whole warp with k = 0. For a paddle that has k positions
// with colours yet to come, what is ahead costs at least least(i, d, k): from an empty paddle one could
// thread these k for nothing and go on the same way. (Positions with colours that come no more need not
// be threaded, and at most as many positions of a colour are of use as there are ends of it to come.)
// This is nearly always close, since a schedule that is good for the whole warp is good for what is left
// of it. So each search looks at the most promising paddle first, and the first that reaches the last
// end is the best there can be. A search begins with a cost that is known to be possible, from words (the
// paddles of good schedules for fewer ends) laid without a stop, and only looks for less.

const (
	inUse  = 0x80 // the position was carried since the last stop
	wasted = 0x7f // a colour that comes no more
	apart  = 0    // between two groups
	// exactColours is the most colours that the exact search can tell apart.
	exactColours = wasted - 1
	unthreaded   = -1 // in a walk, a position that has not been threaded yet
)

// exact is the search for least, and the paddle that it looks at.
type exact struct {
	*problem
	least         [][]cost  // least[n-i][k*2+d]
	tail          [][]int32 // tail[c][k] is the k-th from the last end of colour c, -1 for none
	stopAt, allow int       // the looks after which a search gives up, and those of one search
	rough         bool      // least is a bound only
	standing      []*standing

	open  openList
	nodes []node
	keys  []byte
	table []int32 // nodes by place and paddle
	best  cost    // nothing above this is wanted
	free  int     // positions that are threaded for nothing

	// The paddle that is looked at: its positions, group by group.
	from     int32
	now      node
	cells    []byte
	groups   [][2]int // the first position of each group and the one after its last
	groupOf  []int
	counts   [wasted + 1]int // positions of each colour, the walk included
	toLay    [wasted + 1]int // ends of each colour to come, as far as they count
	onward   []cost          // by the size of the pass so far and the useful positions, the least from there
	walk     []int           // the positions that the pass carries, in the order of the ends
	visited  []bool
	reversed bool // the pass lays the paddle backwards
	emit     func(spent cost, stop bool)
	key      []byte // the paddle after the pass
	origin   []int  // for each byte of key, the position that it was, or unthreaded
}

// node is a way to have laid the first ends.
type node struct {
	cost, guess cost // so far, and at least in the end
	key         uint32
	length      uint16
	parent      int32
	i           int32
	d           uint8
	done        bool
}

func newExact(p *problem) *exact {
	x := &exact{problem: p}
	x.least = [][]cost{slices.Repeat(p.rest[len(p.ends)][:], p.positions+1)}
	x.tail = make([][]int32, p.colours+1)
	for c := range x.tail {
		x.tail[c] = make([]int32, 1, p.positions+2)
	}
	for i := len(p.ends) - 1; i >= 0; i-- {
		if t := &x.tail[p.ends[i]]; len(*t) < p.positions+1 {
			*t = append(*t, int32(i))
		}
	}
	x.onward = make([]cost, (p.maxSize+2)*(p.positions+1))
	return x
}

// leastAt is least for the ends from i on.
func (x *exact) leastAt(i, d, k int) cost { return x.least[len(x.ends)-i][k*2+d] }

// exactLimits says how many looks a search may take: base, and perEnd for each end that it has come
// past, as long as it is exact; then rough, if it goes on roughly.
type exactLimits struct{ base, perEnd, rough int }

// run finds the steps of the best schedule below best, nil if there is none, and says that it came to an
// end. If that would take more than the limits allow it gives only a bound, which may be nil, and no steps.
func (x *exact) run(best cost, l exactLimits) (steps []step, bound cost, done bool) {
	n := len(x.ends)
	start := x.looked
	for i := n - 1; i > 0; i-- {
		x.stopAt = start + l.base + l.perEnd*(n-i)
		if x.addRow(i) {
			continue
		}
		if x.least = x.least[:n-i]; n > roughEnds {
			return nil, 0, false
		}
		return nil, x.runRough(i, best, l.rough), false
	}
	for _, w := range x.standing {
		w.goBack(0)
		if c := w.costAt(0, 0) + cost(w.size)*cost(x.w.Change); c < best {
			best, steps = c, x.windWith(w.set)
		}
	}
	x.least = append(x.least, slices.Repeat(x.rest[0][:], x.positions+1))
	x.free, x.best = 0, best-1
	x.stopAt = start + l.base + l.perEnd*n
	end, done := x.search(0, 0)
	switch {
	case !done:
		return nil, x.atLeast(), false
	case end >= 0:
		return x.trace(end), x.nodes[end].guess, true
	}
	return steps, best, true
}

// roughEnds is the most ends for which the exact search goes on roughly; in longer warps counting
// gives better bounds.
const roughEnds = 100

// runRough goes on from end i back to the first one with so many looks, and gives a bound for the
// whole warp.
func (x *exact) runRough(i int, best cost, looks int) cost {
	x.goRough()
	stop := x.looked + looks
	for ; i > 0; i-- {
		x.allow = max(0, stop-x.looked) / (2 * i)
		x.addRow(i)
	}
	x.least = append(x.least, slices.Repeat(x.rest[0][:], x.positions+1))
	x.free, x.best = 0, best-1
	x.stopAt = x.looked + looks/8
	if end, done := x.search(0, 0); done && end >= 0 {
		return x.nodes[end].guess
	}
	return x.atLeast()
}

// goRough gives exactness up: from here on least is only a bound, that which a search has come to
// when its looks are spent. Where the return order is the same the direction matters only for the
// finish, and is left out.
func (x *exact) goRough() {
	x.rough = true
	if x.mirrored || x.oneWay {
		return
	}
	p := *x.problem
	p.oneWay, p.atLease, p.w.Back = true, false, 0
	p.findRest()
	x.problem = &p
	for _, row := range x.least {
		for k := range row {
			row[k] = min(row[k&^1], row[k|1])
		}
	}
}

// atLeast is the least that a search that was not ended can come to.
func (x *exact) atLeast() cost {
	if len(x.open) == 0 {
		return x.best + 1
	}
	return min(x.best+1, x.open[0].guess)
}

// addRow finds least for the ends from i on, and says whether it came to an end.
func (x *exact) addRow(i int) bool {
	for _, w := range x.standing {
		w.goBack(i)
	}
	x.least = append(x.least, slices.Repeat([]cost{never}, 2*(x.positions+1)))
	for d := range 2 {
		if d == 1 && x.oneWay || x.rest[i][d] >= never {
			continue
		}
		if !x.settleLeast(i, d, 0, x.positions) {
			return false
		}
	}
	return true
}

// settleLeast fills in least for the ends from i on and from low to high positions for nothing. Those
// between two lie between their costs, and one position more saves a change at most.
func (x *exact) settleLeast(i, d, low, high int) bool {
	row := x.least[len(x.least)-1]
	if low == 0 && high == x.positions {
		if !x.findLeast(i, d, high, 0, never) || !x.findLeast(i, d, 0, row[high*2+d], row[high*2+d]+cost(high)*cost(x.w.Change)) {
			return false
		}
	}
	change := cost(x.w.Change)
	for k := low + 1; k < high; k++ {
		under := max(row[low*2+d]-cost(k-low)*change, row[high*2+d])
		over := min(row[low*2+d], row[high*2+d]+cost(high-k)*change)
		if under < over && !x.rough {
			k = (low + high) / 2
			under = max(row[low*2+d]-cost(k-low)*change, row[high*2+d])
			over = min(row[low*2+d], row[high*2+d]+cost(high-k)*change)
			return x.findLeast(i, d, k, under, over) && x.settleLeast(i, d, low, k) && x.settleLeast(i, d, k, high)
		}
		row[k*2+d] = under
	}
	return true
}

// findLeast finds least for the ends from i on and k positions for nothing; it lies between under and
// over, if all is exact. It says whether it came to an end.
func (x *exact) findLeast(i, d, k int, under, over cost) bool {
	row := x.least[len(x.least)-1]
	if x.rough {
		over = never
		x.stopAt = x.looked + x.allow/2
	} else {
		over = min(over, x.roughly(i, d, k))
	}
	for _, w := range x.standing {
		laid := w.costAt(i, d)
		if x.rough && !x.mirrored {
			laid = min(laid, w.costAt(i, 1-d))
		}
		over = min(over, laid+cost(max(0, w.size-k))*cost(x.w.Change))
	}
	under = max(under, x.rest[i][d])
	row[k*2+d] = over
	if under >= over {
		return true
	}
	x.free, x.best = k, over-1
	end, ok := x.search(i, d)
	switch {
	case !ok:
		row[k*2+d] = max(under, x.atLeast())
	case end >= 0:
		row[k*2+d] = x.nodes[end].guess
		if !x.rough {
			x.learn(x.trace(end), i)
		}
	}
	return ok || x.rough
}

// roughly is a cost that least isn't above: one pass with positions of its own, then a stop.
func (x *exact) roughly(i, d, k int) cost {
	rough := never
	for size := 1; size <= x.maxSize && i+size <= len(x.ends); size++ {
		if x.allowed[size] {
			rough = min(rough, x.leastAt(i+size, x.after(d), max(0, k-size))+x.passCost(size)+
				cost(max(0, size-k))*cost(x.w.Change)+cost(x.w.Stop))
		}
	}
	return rough
}

// search finds the node that lays the last end at the least cost, from an empty paddle at end i, -1 if
// none is at most best. It says whether it came to an end.
func (x *exact) search(i, d int) (end int32, done bool) {
	x.nodes, x.keys, x.open = x.nodes[:0], x.keys[:0], x.open[:0]
	if x.table == nil {
		x.table = make([]int32, 1<<10)
	}
	clear(x.table)
	x.emit = x.reach
	x.key = x.key[:0]
	x.add(node{parent: -1, i: int32(i), d: uint8(d)})
	for len(x.open) > 0 {
		at, guess := x.open.pop()
		nd := &x.nodes[at]
		if nd.done || guess != nd.guess {
			continue
		}
		if int(nd.i) == len(x.ends) {
			return at, true
		}
		nd.done = true
		x.expand(at)
		if x.looked > x.stopAt || len(x.nodes) > manyLabels {
			return -1, false
		}
	}
	return -1, true
}

// expand looks at every pass that can follow a node.
func (x *exact) expand(at int32) {
	x.from, x.now = at, x.nodes[at]
	useful := x.spread(x.keys[x.now.key:][:x.now.length])
	x.lookOnward()
	x.reversed = x.mirrored && x.now.d == 1
	x.walk = x.walk[:0]
	for k := range x.cells {
		g := x.groupOf[k]
		x.visited[g] = true
		x.carry(k, x.now.cost, len(x.cells), useful, false)
		x.visited[g] = false
	}
	if len(x.cells) < x.positions {
		x.carry(unthreaded, x.now.cost, len(x.cells), useful, false)
	}
}

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

// reach adds the node that the walk leads to.
func (x *exact) reach(spent cost, stop bool) {
	x.paddleAfter(stop)
	x.add(node{cost: spent, parent: x.from, i: x.now.i + int32(len(x.walk)), d: uint8(x.after(int(x.now.d)))})
}

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

// add puts a node with the paddle in key among the others, unless it can't lead to what is wanted or
// one as good is there.
func (x *exact) add(n node) {
	i, d := int(n.i), int(n.d)
	if n.parent >= 0 {
		useful, all := x.usefulOf(x.key, i)
		n.guess = n.cost + x.leastAt(i, d, min(x.positions, useful+max(0, x.free-all)))
		if n.guess > x.best {
			return
		}
	}
	h := hash(x.key, i, d)
	for slot := h & uint32(len(x.table)-1); ; slot = (slot + 1) & uint32(len(x.table)-1) {
		at := x.table[slot] - 1
		if at < 0 {
			n.key, n.length = uint32(len(x.keys)), uint16(len(x.key))
			x.keys = append(x.keys, x.key...)
			x.nodes = append(x.nodes, n)
			x.table[slot] = int32(len(x.nodes))
			x.open.push(int32(len(x.nodes)-1), n.guess, n.i)
			break
		}
		o := &x.nodes[at]
		if o.i == n.i && o.d == n.d && bytes.Equal(x.keys[o.key:][:o.length], x.key) {
			if n.cost < o.cost {
				o.cost, o.guess, o.parent, o.done = n.cost, n.guess, n.parent, false
				x.open.push(at, n.guess, n.i)
			}
			return
		}
	}
	if len(x.nodes)*2 > len(x.table) {
		x.grow()
	}
}

// grow makes the table of nodes twice as large.
func (x *exact) grow() {
	x.table = make([]int32, 2*len(x.table))
	for at, n := range x.nodes {
		slot := hash(x.keys[n.key:][:n.length], int(n.i), int(n.d)) & uint32(len(x.table)-1)
		for x.table[slot] != 0 {
			slot = (slot + 1) & uint32(len(x.table)-1)
		}
		x.table[slot] = int32(at + 1)
	}
}

// hash mixes a place and a paddle (FNV-1a, which is in the open: Fowler, Noll and Vo).
func hash(key []byte, i, d int) uint32 {
	h := uint64(14695981039346656037)
	h = (h ^ uint64(i<<1|d)) * 1099511628211
	for _, c := range key {
		h = (h ^ uint64(c)) * 1099511628211
	}
	return uint32(h ^ h>>32)
}

// trace lays the groups side by side and lists the steps that led to a node.
func (x *exact) trace(end int32) []step {
	var path []int32
	for at := end; at >= 0; at = x.nodes[at].parent {
		path = append(path, at)
	}
	slices.Reverse(path)
	var steps []step
	var walks [][]int // with positions by number, as they were threaded
	var numbers []int // of the positions of the paddle now, 0 between groups
	threaded := 0
	for k, at := range path[1:] {
		walk, stop, origin := x.between(path[k], at)
		var cells []int
		for _, n := range numbers {
			if n > 0 {
				cells = append(cells, n)
			}
		}
		next := make([]int, len(origin))
		for j, from := range origin {
			switch {
			case x.keys[x.nodes[at].key:][j] == apart:
			case from == unthreaded:
				threaded++
				next[j] = threaded
			default:
				next[j] = cells[from]
			}
		}
		numbers = next
		steps = append(steps, step{start: int(x.nodes[path[k]].i), size: len(walk), stop: stop})
		walks = append(walks, x.numbersOf(walk, cells, origin, next))
	}
	place := map[int]int{}
	for _, n := range numbers {
		if n > 0 {
			place[n] = len(place)
		}
	}
	for k, walk := range walks {
		steps[k].base = x.positions
		for _, n := range walk {
			steps[k].base = min(steps[k].base, place[n])
		}
	}
	return steps
}

// numbersOf gives a walk's positions by number: the last ones threaded where it has unthreaded ones.
func (x *exact) numbersOf(walk, cells, origin, next []int) []int {
	var list []int
	for _, k := range walk {
		if k != unthreaded {
			list = append(list, cells[k])
		}
	}
	for j, from := range origin {
		if from == unthreaded && next[j] > 0 {
			list = append(list, next[j])
		}
	}
	return list
}

// between finds the pass from one node to another anew, and where the positions after it come from.
func (x *exact) between(from, to int32) (walk []int, stop bool, origin []int) {
	want := x.nodes[to]
	least := never
	x.emit = func(spent cost, halt bool) {
		if int(x.now.i)+len(x.walk) != int(want.i) || spent >= least {
			return
		}
		if x.paddleAfter(halt); bytes.Equal(x.key, x.keys[want.key:][:want.length]) {
			least, walk, stop, origin = spent, slices.Clone(x.walk), halt, slices.Clone(x.origin)
		}
	}
	x.expand(from)
	return walk, stop, origin
}
