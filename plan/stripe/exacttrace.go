package stripe

import (
	"bytes"
	"slices"
)

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
