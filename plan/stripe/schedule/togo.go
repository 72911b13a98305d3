package schedule

import "math"

// togo is the bound from any end on, at fixed prices, for a paddle that has been there: what is carried and
// what is threaded already isn't paid again.
type togo struct {
	*bounder
	path [][]float64   // of end e after a pass of size m: path[e][m], m from 0
	held [][][]float64 // of end e and colour c with k packages threaded: held[e][c][k]
	rest []float64     // the rent from end e on, for all positions
}

// togo works out the bound from every end on.
func (b *bounder) togo() *togo {
	n, m := len(b.ends), b.maxSize
	g := &togo{bounder: b, path: make([][]float64, n+1), held: make([][][]float64, n+1), rest: make([]float64, n+1)}
	b.sumUp()
	g.path[n] = make([]float64, m+1)
	for e := n - 1; e >= 0; e-- {
		g.rest[e] = g.rest[e+1] + b.rent[e]*float64(b.positions)
		g.path[e] = g.pathFrom(e)
	}
	for e := range g.held {
		g.held[e] = make([][]float64, b.colours+1)
		for c := range g.held[e] {
			g.held[e][c] = make([]float64, len(b.of[c])+1)
		}
	}
	for c, levels := range b.of {
		for k, l := range levels {
			in, out := 0.0, 0.0
			for e := n - 1; e >= 0; e-- {
				stay := in + b.rent[e] - b.price[l][e]
				in, out = min(stay, out), min(out, stay+b.enter[e])
				for has := range g.held[e][c] {
					if has > k {
						g.held[e][c][has] += in
					} else {
						g.held[e][c][has] += out
					}
				}
			}
		}
	}
	return g
}

// pathFrom is the cheapest path from an end on, for each size of the pass before.
func (g *togo) pathFrom(e int) []float64 {
	b := g.bounder
	m := b.maxSize
	over := float64(b.thread) - b.enter[e]
	out := make([]float64, m+1)
	for i := range out {
		out[i] = math.Inf(1)
	}
	var held [MaxColours + 1]int
	price := 0.0
	var active []int
	for k := 1; k <= min(m, len(b.ends)-e); k++ {
		c := b.ends[e+k-1]
		if held[c]++; held[c] > len(b.of[c]) {
			break
		}
		active = append(active, b.of[c][held[c]-1])
		if !b.allowed[k] {
			continue
		}
		price = float64(b.pass) + g.path[e+k][k]
		for _, l := range active {
			price += b.sums[l][e+k] - b.sums[l][e]
		}
		for before := 0; before <= min(m, e); before++ {
			v := price + float64(b.stint)*float64(k)
			if before > 0 {
				v += b.step(e, before, k, over) - float64(b.stint)*float64(k)
			}
			out[before] = min(out[before], v)
		}
	}
	return out
}

// from is the bound on what is to come after a pass of a size, with what is threaded then.
func (g *togo) from(e, size int, set []uint8, counts []int) float64 {
	clear(counts)
	for _, c := range set {
		counts[c]++
	}
	v := g.path[e][size] - g.rest[e]
	for c := 1; c <= g.colours; c++ {
		v += g.held[e][c][min(counts[c], len(g.of[c]))]
	}
	return v
}
