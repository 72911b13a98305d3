package planout

import (
	"millside/plan"
	"millside/plan/times"
	"millside/plan/wind"
)

// pegWorkJSON is what the hands do at an end peg before a pass, or after the last one of a chain: cut off,
// then thread, then tie on. Lists are never null; what stays as it is stands in none of them.
type pegWorkJSON struct {
	Peg    string       `json:"peg"`    // "near end peg" or "far end peg"
	Cut    []int        `json:"cut"`    // positions
	Thread []changeJSON `json:"thread"` // with the colours; "" is an empty position, or the yarn of a plain warp
	Tie    []int        `json:"tie"`
	Halt   bool         `json:"halt"` // the mill stands for it between two passes
}

func pegWorkToJSON(p *plan.Plan, w plan.PegWork) pegWorkJSON {
	out := pegWorkJSON{Peg: w.Peg.String(), Cut: numbersOf(w.Cut), Thread: []changeJSON{},
		Tie: numbersOf(w.Tie), Halt: w.Halt()}
	for _, t := range w.Thread {
		to := colourName(p, t.To)
		if !p.Striped() {
			to = p.Spec.Yarn.Colour
		}
		out.Thread = append(out.Thread, changeJSON{t.Position, colourName(p, t.From), to})
	}
	return out
}

// workSumJSON is the work of the whole warp, its start and its end included.
type workSumJSON struct {
	Halts       int `json:"halts"`
	Cuts        int `json:"cuts"`
	Ties        int `json:"ties"`
	Threads     int `json:"threads"`
	FarFinishes int `json:"far_finishes"` // chains that stop at the counting cross
}

func workSumToJSON(s times.WorkSum) workSumJSON {
	return workSumJSON{s.Halts, s.Cuts, s.Ties, s.Threads, s.FarFinishes}
}

func numbersOf(set wind.Positions) []int {
	list := []int{}
	for pos := range set.All() {
		list = append(list, pos)
	}
	return list
}
