package stripe

// openList is the nodes that are yet to be looked at, a heap: the lowest guess first, and of those the
// one that has come furthest.
type openList []openNode

type openNode struct {
	guess cost
	i     int32
	at    int32
}

func (a openNode) before(b openNode) bool {
	if a.guess != b.guess {
		return a.guess < b.guess
	}
	if a.i != b.i {
		return a.i > b.i
	}
	return a.at > b.at
}

func (o *openList) push(at int32, guess cost, i int32) {
	list := append(*o, openNode{guess, i, at})
	*o = list
	for k := len(list) - 1; k > 0 && list[k].before(list[(k-1)/2]); k = (k - 1) / 2 {
		list[k], list[(k-1)/2] = list[(k-1)/2], list[k]
	}
}

func (o *openList) pop() (at int32, guess cost) {
	list := *o
	first := list[0]
	last := len(list) - 1
	list[0] = list[last]
	list = list[:last]
	*o = list
	for k := 0; ; {
		least := k
		for child := 2*k + 1; child <= 2*k+2; child++ {
			if child < last && list[child].before(list[least]) {
				least = child
			}
		}
		if least == k {
			return first.at, first.guess
		}
		list[k], list[least] = list[least], list[k]
		k = least
	}
}
