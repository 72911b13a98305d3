package stripe

import (
	"bytes"
)

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

// search finds the node that lays the last end at the least cost, from an empty paddle at end i, -1 if
// none is at most best. It says whether it came to an end.
func (x *exact) search(i, d int) (end int32, done bool) {
	x.nodes, x.keys, x.open = x.nodes[:0], x.keys[:0], x.open[:0]
	x.table = x.table[:firstTable]
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
		if x.looked > x.stopAt || len(x.nodes) > manyNodes {
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

// reach adds the node that the walk leads to.
func (x *exact) reach(spent cost, stop bool) {
	x.paddleAfter(stop)
	x.add(node{cost: spent, parent: x.from, i: x.now.i + int32(len(x.walk)), d: uint8(x.after(int(x.now.d)))})
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

// firstTable is how large a table of nodes is at first, a power of two.
const firstTable = 1 << 10

// grow makes the table of nodes twice as large.
func (x *exact) grow() {
	if n := 2 * len(x.table); n <= cap(x.table) {
		x.table = x.table[:n]
		clear(x.table)
	} else {
		x.table = make([]int32, n)
	}
	for at, n := range x.nodes {
		slot := hash(x.keys[n.key:][:n.length], int(n.i), int(n.d)) & uint32(len(x.table)-1)
		for x.table[slot] != 0 {
			slot = (slot + 1) & uint32(len(x.table)-1)
		}
		x.table[slot] = int32(at + 1)
	}
}

// hash mixes a place and a paddle. The numbers are those of the FNV-1a hash, from memory. It need
// not be good, only the same every time.
func hash(key []byte, i, d int) uint32 {
	h := uint64(14695981039346656037)
	h = (h ^ uint64(i<<1|d)) * 1099511628211
	for _, c := range key {
		h = (h ^ uint64(c)) * 1099511628211
	}
	return uint32(h ^ h>>32)
}
