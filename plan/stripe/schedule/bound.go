package schedule

import (
	"math"
	"math/bits"

	"millside/plan/measure"
)

// The bound.
//
// Take any schedule. From one pass to the next, the ends that stay are a common subsequence of what the two
// passes carry, read along the paddle, in which holes stay holes and slots slots; the others of the second
// pass are tied on; and the mill halts unless the two carry the same. So the passes, halts, cuts and ties cost
// no less than a shortest path over (end, size of the last pass).
//
// Threading is added by prices. Say that the i-th package of colour c is present at end t if so many positions
// hold c while end t is laid. A pass that carries k ends of c needs the first k packages present while it lays
// its ends; a package costs a threading each time it comes; and at any end no more packages are present than
// the paddle has positions. Put a price on each package at each end, which passes pay and packages are paid,
// and a rent on the paddle at each end, which packages pay and the bound gives back as many times as there
// are positions: whatever the prices, the cheapest path and the best stays of all packages, each by itself,
// cost no more than the schedule (Lagrangian relaxation). The prices are bettered step by step along the
// subgradient, with steps after Polyak.
type bounder struct {
	*problem
	begun   bool // the warp goes on before the first end: see pieces of the bound
	cut     bool // the warp goes on after the last end
	levels  []level
	of      [][]int     // of each colour, the indices of its levels
	price   [][]float64 // of each level, at each end
	sums    [][]float64 // price added up: sums[l][t] is that of the ends before t
	used    [][]bool    // by the passes of the path
	present [][]bool
	rent    []float64 // at each end
	enter   []float64 // what a package pays to come at each end; what is left of a threading is paid by the path
	crowded []int     // threadings that the path pays for before each end
	comes   []int     // packages that come at each end
	stays   []uint8   // most ends that stay: at end b, sizes m before and k after: stays[(b*M+m-1)*M+k-1]
	alike   []uint64  // at end b: sizes whose pass before and pass after carry the same
	kept    []float64 // the best prices so far
	value   []float64 // of the path: value[b*M+m-1]
	from    []uint8
	pace    float64 // how far prices are moved at first, as a part of Polyak's step
}

// level is the i-th package of a colour, from 1.
type level struct{ colour, i int }

// newBounder makes a bounder with all prices nil.
func (p *problem) newBounder() *bounder { return p.newBounderOf(false, false) }

// newBounderOf makes one for a piece of a warp.
func (p *problem) newBounderOf(begun, cut bool) *bounder {
	n, m := len(p.ends), p.maxSize
	b := &bounder{problem: p, begun: begun, cut: cut, pace: 1.2, of: make([][]int, p.colours+1),
		rent: make([]float64, n), enter: make([]float64, n+1), crowded: make([]int, n+1), comes: make([]int, n+1)}
	for t := range b.enter {
		b.enter[t] = float64(p.thread)
	}
	most := make([]int, p.colours+1)
	held := make([]int, p.colours+1)
	for i, c := range p.ends {
		if i >= m {
			held[p.ends[i-m]]--
		}
		held[c]++
		most[c] = max(most[c], min(held[c], p.packages[c]))
	}
	for c, k := range most {
		for i := 1; i <= k; i++ {
			b.of[c] = append(b.of[c], len(b.levels))
			b.levels = append(b.levels, level{c, i})
			b.price = append(b.price, make([]float64, n))
			b.sums = append(b.sums, make([]float64, n+1))
			b.used = append(b.used, make([]bool, n))
			b.present = append(b.present, make([]bool, n))
		}
	}
	b.value = make([]float64, (n+1)*m)
	b.from = make([]uint8, (n+1)*m)
	b.stays = make([]uint8, (n+1)*m*m)
	b.alike = make([]uint64, n+1)
	for e := 1; e < n; e++ {
		b.findStays(e)
	}
	return b
}

// findStays fills in stays and alike for one end. The longest common subsequence is found for all sizes after
// at once, with one word of bits (Crochemore and others, "A fast and practical bit-vector algorithm for the
// longest common subsequence problem", 2001; from memory); it holds for any pairs that may match, so also for
// those of one parity only.
func (b *bounder) findStays(e int) {
	n, m := len(b.ends), b.maxSize
	var match [MaxColours + 1]uint64
	for before := 1; before <= min(m, e); before++ {
		for k := range before {
			i := e - before + k
			if b.mirrored {
				i = e - 1 - k
			}
			match[b.ends[i]] |= 1 << k
		}
		out := b.stays[(e*m+before-1)*m:][:m]
		for odd := range 2 {
			v := ^uint64(0)
			half := evens << odd
			for k := 0; k < min(m, n-e); k++ {
				half = ^half
				u := v & match[b.ends[e+k]] & half
				v = (v + u) | (v - u)
				stay := uint8(bits.OnesCount64(^v & (1<<before - 1)))
				out[k] = max(out[k], stay)
				if k+1 == before && int(stay) == before {
					b.alike[e] |= 1 << before
				}
			}
		}
		for k := range before {
			i := e - before + k
			match[b.ends[i]] = 0
		}
	}
}

// sumUp adds up the prices.
func (b *bounder) sumUp() {
	for l, price := range b.price {
		sum := 0.0
		for t, x := range price {
			b.sums[l][t] = sum
			sum += x
		}
		b.sums[l][len(price)] = sum
	}
}

// path finds the cheapest path at the present prices, its cost, and what it uses.
func (b *bounder) path() float64 {
	n, m := len(b.ends), b.maxSize
	pass, stint := float64(b.pass), float64(b.stint)
	b.sumUp()
	for i := range b.value {
		b.value[i] = math.Inf(1)
	}
	var active [measure.MaxPositions]int
	var held [MaxColours + 1]int
	for e := range n {
		clear(held[:b.colours+1])
		over := float64(b.thread) - b.enter[e]
		for k := 1; k <= min(m, n-e); k++ {
			c := b.ends[e+k-1]
			if held[c]++; held[c] > len(b.of[c]) {
				break
			}
			active[k-1] = b.of[c][held[c]-1]
			if !b.allowed[k] && !(b.cut && e+k == n) {
				continue
			}
			best, from := math.Inf(1), 0
			switch {
			case b.begun && e < m:
				best = pass
			case e == 0:
				best = pass + stint*float64(k)
			}
			for before := 1; before <= min(m, e); before++ {
				v := b.value[e*m+before-1]
				if v >= best {
					continue
				}
				v += pass + b.step(e, before, k, over)
				if v < best {
					best, from = v, before
				}
			}
			for _, l := range active[:k] {
				best += b.sums[l][e+k] - b.sums[l][e]
			}
			b.value[(e+k)*m+k-1] = best
			b.from[(e+k)*m+k-1] = uint8(from)
		}
	}
	best, size := math.Inf(1), 0
	for k := 1; k <= min(m, n); k++ {
		if v := b.value[n*m+k-1]; v < best {
			best, size = v, k
		}
	}
	b.use(size)
	return best
}

// step is what it costs at the least to go on from a pass of one size to a pass of another, without the pass
// itself; over is what a threading costs the path.
func (b *bounder) step(e, before, k int, over float64) float64 {
	at := (e*b.maxSize+before-1)*b.maxSize + k - 1
	stays := int(b.stays[at])
	v := float64(b.stint) * float64(k-stays)
	if more := before + k - stays - b.positions; more > 0 {
		v += over * float64(more)
	}
	if (before != k || b.alike[e]>>k&1 == 0) && !(b.cut && e+k == len(b.ends)) {
		v += float64(b.halt)
	}
	return v
}

// use marks what the best path uses; its last pass is of the size given.
func (b *bounder) use(size int) {
	for l := range b.used {
		clear(b.used[l])
	}
	clear(b.crowded)
	var held [MaxColours + 1]int
	for e := len(b.ends); e > 0 && size > 0; {
		clear(held[:b.colours+1])
		next := int(b.from[e*b.maxSize+size-1])
		if next > 0 {
			stays := int(b.stays[((e-size)*b.maxSize+next-1)*b.maxSize+size-1])
			b.crowded[e-size] = max(0, next+size-stays-b.positions)
		}
		for i := e - size; i < e; i++ {
			l := b.of[b.ends[i]][held[b.ends[i]]]
			held[b.ends[i]]++
			for t := e - size; t < e; t++ {
				b.used[l][t] = true
			}
		}
		e -= size
		size = next
	}
}

// stay finds the best presence of each package at the present prices and what it costs, below nil mostly.
func (b *bounder) stay() float64 {
	n := len(b.ends)
	clear(b.comes)
	came := make([]uint8, n) // bit 0: where it is out it was in before, bit 1: where it is in it was out before
	sum := 0.0
	for l, price := range b.price {
		in, out := math.Inf(1), 0.0
		if b.begun {
			in = 0
		}
		for t := range n {
			came[t] = 0
			nowOut := out
			if in < out {
				nowOut = in
				came[t] |= 1
			}
			nowIn := in
			if out+b.enter[t] < in {
				nowIn = out + b.enter[t]
				came[t] |= 2
			}
			in, out = nowIn+b.rent[t]-price[t], nowOut
		}
		is := in < out
		sum += min(in, out)
		for t := n - 1; t >= 0; t-- {
			b.present[l][t] = is
			if is {
				if is = came[t]&2 == 0; !is {
					b.comes[t]++
				}
			} else {
				is = came[t]&1 != 0
			}
		}
	}
	return sum
}

// run betters the prices for so many rounds, or until the bound reaches the cost that is known, and gives the
// best bound found.
func (b *bounder) run(rounds int, known cost, more func() bool) float64 {
	n := len(b.ends)
	best := 0.0
	step, idle := b.pace, 0
	for range rounds {
		v := b.path() + b.stay()
		for _, r := range b.rent {
			v -= r * float64(b.positions)
		}
		if v > best {
			if v > best+1e-4*float64(known) {
				idle = 0
			}
			best = v
			b.keepPrices()
		}
		if idle++; idle > 12 {
			step, idle = step*0.7, 0
		}
		if best >= float64(known) || step < 0.005 || !more() {
			break
		}
		norm := 0.0
		crowd := make([]int, n)
		for l := range b.levels {
			for t := range n {
				if b.present[l][t] {
					crowd[t]++
				}
				if b.used[l][t] != b.present[l][t] {
					norm++
				}
			}
		}
		for t := range n {
			if g := float64(crowd[t] - b.positions); g > 0 || b.rent[t] > 0 {
				norm += g * g
			}
		}
		for t := 1; t < n; t++ {
			if g := float64(b.comes[t] - b.crowded[t]); g < 0 || b.enter[t] < float64(b.thread) {
				norm += g * g
			}
		}
		if norm == 0 {
			break
		}
		by := step * (float64(known)*1.02 - v) / norm
		for l := range b.levels {
			for t := range n {
				switch {
				case b.used[l][t] == b.present[l][t]:
				case b.used[l][t]:
					b.price[l][t] += by
				default:
					b.price[l][t] = max(0, b.price[l][t]-by)
				}
			}
		}
		for t := 1; t < n; t++ {
			b.enter[t] = min(float64(b.thread), max(0, b.enter[t]+by*float64(b.comes[t]-b.crowded[t])))
		}
		for t := range n {
			b.rent[t] = max(0, b.rent[t]+by*float64(crowd[t]-b.positions))
		}
	}
	b.bestPrices()
	return best
}

// keepPrices notes the prices in hand as the best so far, where the exact search may ask for them.
func (b *bounder) keepPrices() {
	if len(b.ends) > exactEnds {
		return
	}
	b.kept = b.kept[:0]
	for _, price := range b.price {
		b.kept = append(b.kept, price...)
	}
	b.kept = append(append(b.kept, b.rent...), b.enter...)
}

// bestPrices goes back to the best prices.
func (b *bounder) bestPrices() {
	if len(b.kept) == 0 {
		return
	}
	rest := b.kept
	for _, price := range b.price {
		rest = rest[copy(price, rest):]
	}
	rest = rest[copy(b.rent, rest):]
	copy(b.enter, rest)
}
