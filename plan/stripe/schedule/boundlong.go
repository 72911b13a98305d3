package schedule

// The bound of a long warp is that of its pieces, added up. Each pass belongs to the piece in which it begins. In
// a piece that isn't the first the packages that are there at its first end cost nothing, its first pass begins at
// any of the first ends, and what is done before that pass isn't counted. In a piece that isn't the last a pass may
// stop short at the last end, with any number of ends and without a halt before it; what it ties on is no more than
// the whole pass does. So the part of any schedule in a piece costs no less than the piece's bound.

const (
	longBound     = 5_000       // ends of a warp whose bound is worked out in pieces
	boundPiece    = 2_000       // ends of such a piece, about; never fewer than a pass has
	firstRounds   = 150         // for the first piece, which has to find its prices
	leastRounds   = 8           // for the others, which begin with those
	longBoundWork = 100_000_000 // steps of the later pieces' rounds
	sideAtOnce    = 4           // later pieces that are worked out side by side
)

// boundPieces is the bound of a warp cut into pieces of so many ends. Pieces that are alike are worked out once. The
// first finds its prices; after it come the last and those between, some at a time side by side, which begin with
// the mean of the prices of those before: so the bound is the same on any number of cores.
func (m *maker) boundPieces(length int) cost {
	n := len(m.ends)
	rounds := min(max(longBoundWork/(m.unlike(length)*m.maxSize*m.maxSize), leastRounds), firstRounds)
	known := map[string]*bound{}
	var all, todo []*bound
	for from := 0; from < n; {
		to := m.endOfPiece(from, length)
		b := known[string(m.ends[from:to])]
		if inside := from > 0 && to < n; b == nil || !inside {
			b = &bound{from: from, to: to, rounds: rounds}
			if todo = append(todo, b); inside {
				known[string(m.ends[from:to])] = b
			}
		}
		all = append(all, b)
		from = to
	}
	todo[0].rounds = firstRounds
	g := m.newGuess()
	for done := 0; done < len(todo); {
		now := todo[done:min(done+sideAtOnce, len(todo))]
		if done == 0 {
			now = todo[:1]
		}
		done += len(now)
		bounders := make([]*bounder, len(now))
		sideBySide(len(now), func(k int) {
			bounders[k] = m.boundPiece(now[k], g)
		})
		for _, b := range bounders {
			g.learn(b)
		}
	}
	sum := 0.0
	for _, b := range all {
		sum += b.value
	}
	return lower(sum)
}

// bound is that of a piece from one end to before another.
type bound struct {
	from, to, rounds int
	value            float64
}

// boundPiece works out the bound of a piece, which begins with the prices that are guessed.
func (m *maker) boundPiece(p *bound, g *guess) *bounder {
	n := len(m.ends)
	q := *m.problem
	q.ends = m.ends[p.from:p.to]
	b := q.newBounderOf(p.from > 0, p.to < n)
	if p.from > 0 {
		g.begin(b)
	}
	known := cost(float64(m.total) * float64(p.to-p.from) / float64(n))
	p.value = max(0, b.run(p.rounds, known, func() bool { return !m.over() }))
	return b
}

// pieceOfBound is how many ends the pieces have: whole repeats, where there are many.
func (m *maker) pieceOfBound() int {
	if r := findRepeat(m.ends, keptRepeats); r.times*r.period > len(m.ends)/2 {
		return max(1, (boundPiece+r.period/2)/r.period) * r.period
	}
	return boundPiece
}

// endOfPiece is the end before which the piece ends that begins with an end.
func (m *maker) endOfPiece(from, length int) int {
	if to := from + length; len(m.ends)-to >= max(length/2, m.maxSize) {
		return to
	}
	return len(m.ends)
}

// unlike is how many ends the pieces have, those that are alike counted once.
func (m *maker) unlike(length int) int {
	seen, sum := map[string]bool{}, 0
	for from := 0; from < len(m.ends); {
		to := m.endOfPiece(from, length)
		if key := string(m.ends[from:to]); !seen[key] {
			seen[key] = true
			sum += to - from
		}
		from = to
	}
	return sum
}

// guess is what the prices of pieces were in the mean: of a package by how many ends of its colour were about, of a
// position and of coming by how many stripes were. The next piece begins with them.
type guess struct {
	*problem
	price       []average // of the i-th package of colour c among h ends of it: price[(c*most+i)*most+h]
	rent, enter []average // among so many stripes
	most        int
}

type average struct {
	sum    float64
	number int
}

func (a *average) add(x float64) { a.sum, a.number = a.sum+x, a.number+1 }

func (m *maker) newGuess() *guess {
	most := m.maxSize + 2
	return &guess{problem: m.problem, most: most, price: make([]average, (m.colours+1)*most*most),
		rent: make([]average, most), enter: make([]average, most)}
}

// each gives each end of a piece with the ends of each colour and the stripes about it.
func (g *guess) each(ends []uint8, see func(t int, about []int, stripes int)) {
	about := make([]int, g.colours+1)
	half := g.maxSize / 2
	for t := range ends {
		clear(about)
		stripes := 0
		for i := max(0, t-half); i <= min(len(ends)-1, t+half); i++ {
			if about[ends[i]]++; i > 0 && ends[i] != ends[i-1] {
				stripes++
			}
		}
		see(t, about, min(stripes, g.most-1))
	}
}

// learn takes the prices of a piece into account.
func (g *guess) learn(b *bounder) {
	g.each(b.ends, func(t int, about []int, stripes int) {
		for l, lv := range b.levels {
			g.price[(lv.colour*g.most+lv.i)*g.most+about[lv.colour]].add(b.price[l][t])
		}
		g.rent[stripes].add(b.rent[t])
		g.enter[stripes].add(b.enter[t])
	})
}

// begin gives a piece the prices to begin with.
func (g *guess) begin(b *bounder) {
	b.pace = 0.8
	g.each(b.ends, func(t int, about []int, stripes int) {
		for l, lv := range b.levels {
			if a := g.price[(lv.colour*g.most+lv.i)*g.most+about[lv.colour]]; a.number > 0 {
				b.price[l][t] = a.sum / float64(a.number)
			}
		}
		if a := g.rent[stripes]; a.number > 0 {
			b.rent[t] = a.sum / float64(a.number)
		}
		if a := g.enter[stripes]; a.number > 0 {
			b.enter[t] = a.sum / float64(a.number)
		}
	})
}
