package schedule

import (
	"container/heap"
	"math/bits"
)

// exact looks at every schedule that may cost less than the one known, the most promising beginnings first: a
// beginning is judged by its cost and by the bound on what is to come. It drops a beginning if another can do
// all that it can at no greater cost.
type exact struct {
	*problem
	togo   *togo
	nodes  []node
	sets   []uint8   // what is threaded after each node: sets[at*positions:]
	at     [][]int32 // nodes of end e and direction d: at[2*e+d]
	open   openList
	tried  int // passes
	most   int // nodes that may be made
	known  cost
	alive  []uint64 // colours that come from end e on, of those up to 64
	counts []int
	set    []uint8
	held   []int
}

// node is a beginning: all ends before some end are laid.
type node struct {
	carried uint64
	cost    cost
	from    int32
	end     int32
	halts   int32
	size    uint8
	d       uint8
	gone    bool // another makes it superfluous
}

// triesOfNode is how many passes may be tried for each node that may be made.
const triesOfNode = 100

// compared is how many nodes a new one is compared with.
const compared = 400

func (p *problem) newExact(g *togo, known cost) *exact {
	n := len(p.ends)
	x := &exact{problem: p, togo: g, known: known, at: make([][]int32, 2*n+2), alive: make([]uint64, n+1),
		counts: make([]int, p.colours+1), held: make([]int, p.colours+1), set: make([]uint8, p.positions)}
	for i := n - 1; i >= 0; i-- {
		x.alive[i] = x.alive[i+1] | bit(p.ends[i])
	}
	return x
}

// bit is a colour as a set, the empty set for colours above 64.
func bit(c uint8) uint64 { return 1 << (c - 1) }

// comes says whether a colour comes from an end on, as far as it is known.
func (x *exact) comes(c uint8, end int) bool { return c > 64 || x.alive[end]&bit(c) != 0 }

// run searches until so many nodes were made. It gives the passes of the best schedule below the known cost,
// nil if it found none; the cost that no schedule is below; and whether it looked at all.
func (x *exact) run(most int, over func() bool) (best []pass, least cost, whole bool) {
	x.most = most
	x.nodes = append(x.nodes, node{from: -1})
	x.sets = append(x.sets, make([]uint8, x.positions)...)
	heap.Push(&x.open, openNode{guess: 0, at: 0})
	goal := int32(-1)
	for len(x.open) > 0 {
		top := heap.Pop(&x.open).(openNode)
		if top.guess >= x.known {
			break
		}
		nd := x.nodes[top.at]
		if nd.gone {
			continue
		}
		if int(nd.end) == len(x.ends) {
			goal, x.known = top.at, top.guess
			break
		}
		if x.spent() || over() {
			return nil, top.guess, false
		}
		if x.goOn(top.at); x.spent() { // perhaps not all that may come next: judged by where it came from
			return nil, top.guess, false
		}
	}
	if goal < 0 {
		return nil, x.known, true
	}
	for at := goal; x.nodes[at].from >= 0; at = x.nodes[at].from {
		nd := x.nodes[at]
		best = append([]pass{{int(nd.end) - int(nd.size), int(nd.size), nd.carried}}, best...)
	}
	return best, x.known, true
}

// spent says whether as many nodes were made, or as many passes tried, as may be.
func (x *exact) spent() bool { return len(x.nodes) > x.most || x.tried > x.most*triesOfNode }

// goOn makes a node for each pass that may come next, until the nodes are spent: a wide paddle has so many that
// one beginning could hold up the search.
func (x *exact) goOn(at int32) {
	nd := x.nodes[at]
	i := int(nd.end)
	for size := 1; size <= min(x.maxSize, len(x.ends)-i) && !x.spent(); size++ {
		if x.allowed[size] && x.fits(i, size) && x.rest[i+size] < noPasses {
			x.place(at, size, 0, 0)
		}
	}
}

// place goes through all sets of positions for a pass: those chosen so far are below position pos.
func (x *exact) place(at int32, size int, chosen uint64, pos int) {
	missing := size - bits.OnesCount64(chosen)
	if missing == 0 {
		x.lay(at, size, chosen)
		return
	}
	for ; pos+missing <= x.positions && !x.spent(); pos++ {
		if chosen != 0 && (pos-bits.Len64(chosen))%2 != 0 {
			continue // the highest chosen is at Len64 - 1: the next is of the other kind
		}
		x.place(at, size, chosen|1<<pos, pos+1)
	}
}

// lay makes the node of a pass, or one for each choice of the positions that give up scarce packages.
func (x *exact) lay(at int32, size int, carried uint64) {
	x.tried++
	nd := x.nodes[at]
	end := int(nd.end) + size
	set := x.set
	copy(set, x.sets[int(at)*x.positions:])
	var changed uint64
	k := 0
	for rest := carried; rest != 0; rest &= rest - 1 {
		pos := bits.TrailingZeros64(rest)
		if c := x.letter(int(nd.end), size, k, int(nd.d)); set[pos] != c {
			set[pos] = c
			changed |= 1 << pos
		}
		k++
	}
	next := node{carried: carried, cost: nd.cost + x.pass, from: at, end: int32(end), halts: nd.halts,
		size: uint8(size), d: 1 - nd.d}
	stay := carried & nd.carried &^ changed
	next.cost += x.stint*cost(count(carried&^stay)) + x.thread*cost(count(changed))
	if at > 0 && (changed != 0 || carried != nd.carried) {
		next.cost += x.halt
		next.halts++
	}
	if x.mostHalts >= 0 && int(next.halts) > x.mostHalts || next.cost >= x.known {
		return
	}
	for pos, c := range set {
		if c != 0 && !x.comes(c, end) {
			set[pos] = 0
		}
	}
	if x.anyScarce {
		x.giveUp(next, set, carried, 1)
		return
	}
	x.add(next, set)
}

// giveUp goes through every choice of the parked positions that give up their packages.
func (x *exact) giveUp(next node, set []uint8, carried uint64, colour int) {
	clear(x.held)
	for _, c := range set {
		x.held[c]++
	}
	for ; colour <= x.colours; colour++ {
		if x.held[colour] <= x.packages[colour] {
			continue
		}
		for pos := range set {
			if int(set[pos]) == colour && carried>>pos&1 == 0 {
				without := append([]uint8(nil), set...)
				without[pos] = 0
				x.giveUp(next, without, carried, colour)
			}
		}
		return
	}
	x.add(next, set)
}

// add takes a node unless it can't be better than what is known, or another makes it superfluous.
func (x *exact) add(nd node, set []uint8) {
	end := int(nd.end)
	guess := nd.cost
	if end == len(x.ends) {
		if nd.d == 1 {
			if x.atLease {
				return
			}
			guess += x.far
		}
	} else {
		rest := x.togo.from(end, int(nd.size), set, x.counts)
		if rest >= float64(never) {
			return
		}
		guess += cost(rest * (1 - 1e-9))
	}
	if guess >= x.known {
		return
	}
	list := x.at[2*end+int(nd.d)]
	for k, other := range list {
		if k >= compared {
			break
		}
		if x.covers(&x.nodes[other], x.sets[int(other)*x.positions:][:x.positions], &nd, set) {
			return
		}
	}
	for k, other := range list {
		if k >= compared {
			break
		}
		o := &x.nodes[other]
		if !o.gone && x.covers(&nd, set, o, x.sets[int(other)*x.positions:][:x.positions]) {
			o.gone = true
		}
	}
	at := int32(len(x.nodes))
	x.nodes = append(x.nodes, nd)
	x.sets = append(x.sets, set...)
	x.at[2*end+int(nd.d)] = append(list, at)
	heap.Push(&x.open, openNode{guess, at})
}

// covers says whether all that can be done from b can be done from a at no greater cost: a threads and ties on
// what it lacks when b wants it first, which it does once for each position.
func (x *exact) covers(a *node, setA []uint8, b *node, setB []uint8) bool {
	spare := b.cost - a.cost
	if spare < 0 {
		return false
	}
	lacks, threads := b.carried&^a.carried, 0
	for pos, c := range setB {
		if c != setA[pos] {
			lacks |= b.carried & (1 << pos)
			if c != 0 {
				threads++
			}
		}
	}
	halts := a.halts
	if lacks != 0 || a.carried != b.carried {
		spare -= x.halt
		halts++
	}
	if x.mostHalts >= 0 && halts > b.halts {
		return false
	}
	return spare >= x.stint*cost(count(lacks))+x.thread*cost(threads)
}

// openList is the nodes that are yet to be looked at, the lowest guess first.
type openList []openNode

type openNode struct {
	guess cost
	at    int32
}

func (o openList) Len() int { return len(o) }
func (o openList) Less(i, j int) bool {
	if o[i].guess != o[j].guess {
		return o[i].guess < o[j].guess
	}
	return o[i].at > o[j].at
}
func (o openList) Swap(i, j int) { o[i], o[j] = o[j], o[i] }
func (o *openList) Push(v any)   { *o = append(*o, v.(openNode)) }
func (o *openList) Pop() any {
	last := len(*o) - 1
	v := (*o)[last]
	*o = (*o)[:last]
	return v
}
