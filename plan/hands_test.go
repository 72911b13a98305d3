package plan_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"millside/plan"
	"millside/plan/measure"
	"millside/plan/times"
	"millside/plan/wind"
)

// hands is a little machine that winds: a paddle with yarn in its positions, some of it attached to the
// warp, at one of the two end pegs. It knows no plan. It does what it is told and refuses what hands can't
// do. An attached yarn is a piece that was tied on once and is to be cut off once.
type hands struct {
	yarn     map[int]int  // the colour in a position; a plain warp has one yarn, -1
	attached map[int]bool // tied to the warp
	far      bool         // which peg the paddle is at
	halts    int
	threads  int
	ties     int
	cuts     int
	laid     []int // the colours of the ends, pass by pass, from the lowest position to the highest
}

// do follows the words of the ledger, in their order: cut off, thread, tie on.
func (h *hands) do(w plan.PegWork) error {
	if h.far != (w.Peg == wind.FarPeg) {
		return fmt.Errorf("work at the %v, but the paddle is not there", w.Peg)
	}
	for pos := range w.Cut.All() {
		if !h.attached[pos] {
			return fmt.Errorf("position %d is cut off, but it is not tied to anything", pos)
		}
		h.attached[pos] = false
		h.cuts++
	}
	for _, t := range w.Thread {
		from, to := t.From, t.To
		if from == 0 && to == 0 {
			to = -1
		}
		if h.attached[t.Position] {
			return fmt.Errorf("position %d is threaded while its yarn is tied to the warp", t.Position)
		}
		if h.yarn[t.Position] != from {
			return fmt.Errorf("position %d holds %d, not %d", t.Position, h.yarn[t.Position], from)
		}
		h.yarn[t.Position] = to
		if to != 0 {
			h.threads++
		}
	}
	for pos := range w.Tie.All() {
		if h.yarn[pos] == 0 {
			return fmt.Errorf("position %d is tied on without yarn", pos)
		}
		if h.attached[pos] {
			return fmt.Errorf("position %d is tied on twice", pos)
		}
		h.attached[pos] = true
		h.ties++
	}
	for pos := range w.Stay.All() {
		if !h.attached[pos] {
			return fmt.Errorf("position %d stays, but it is not tied to anything", pos)
		}
	}
	return nil
}

// lay carries what is attached to the other peg.
func (h *hands) lay(carried wind.Positions) error {
	for pos := 1; pos <= measure.MaxPositions; pos++ {
		if h.attached[pos] != carried.Has(pos) {
			return fmt.Errorf("position %d is tied to the warp: %v; the pass carries it: %v", pos, h.attached[pos],
				carried.Has(pos))
		}
		if h.attached[pos] {
			h.laid = append(h.laid, h.yarn[pos])
		}
	}
	h.far = !h.far
	return nil
}

// windByHand winds the whole warp by the ledger and gives what the hands did.
func windByHand(t *rapid.T, p *plan.Plan) *hands {
	h := &hands{yarn: map[int]int{}, attached: map[int]bool{}}
	for _, c := range p.Chains {
		h.far = false // the winder walks back to the lease with the freed paddle
		for k := 1; k <= len(c.Passes)+1; k++ {
			w := p.WorkBefore(c.Number, k)
			if w.Chain != c.Number || w.Before != k {
				t.Fatalf("the work before chain %d pass %d is said to be before %d, %d", c.Number, k, w.Chain, w.Before)
			}
			if err := h.do(w); err != nil {
				t.Fatalf("chain %d, before pass %d of %d: %v", c.Number, k, len(c.Passes), err)
			}
			if w.Any() && k > 1 && k <= len(c.Passes) {
				h.halts++
			}
			if k > len(c.Passes) {
				break
			}
			from := len(h.laid)
			if err := h.lay(c.Passes[k-1].Carried); err != nil {
				t.Fatalf("chain %d pass %d: %v", c.Number, k, err)
			}
			if c.Passes[k-1].Mirrored {
				for i, j := from, len(h.laid)-1; i < j; i, j = i+1, j-1 {
					h.laid[i], h.laid[j] = h.laid[j], h.laid[i]
				}
			}
		}
		for pos, still := range h.attached {
			if still {
				t.Fatalf("position %d is tied to chain %d when it is done", pos, c.Number)
			}
		}
	}
	return h
}

// checkHands winds a warp and compares what lies on the mill, and what the hands did, with the plan.
func checkHands(t *rapid.T, p *plan.Plan) {
	h := windByHand(t, p)
	if len(h.laid) != p.EndsWound() {
		t.Fatalf("%d ends lie on the mill, not %d", len(h.laid), p.EndsWound())
	}
	for i, colour := range h.laid {
		if want := p.EndColour(i + 1); p.Striped() && colour != want || !p.Striped() && colour != -1 {
			t.Fatalf("end %d is of colour %d, want %d", i+1, colour, want)
		}
	}
	far := 0
	for _, c := range p.Chains {
		far += len(c.Passes) % 2
	}
	want := times.WorkSum{Passes: p.Passes(), Halts: h.halts, Cuts: h.cuts, Ties: h.ties, Threads: h.threads,
		FarFinishes: far}
	if got := p.WorkSum(); got != want {
		t.Fatalf("the plan sums up %+v, the hands did %+v", got, want)
	}
	if h.cuts != h.ties {
		t.Fatalf("%d tied on, %d cut off", h.ties, h.cuts)
	}
}

func TestHandsWindAPlainWarp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { checkHands(t, must(t, drawSpec(t))) })
}

func TestHandsWindAStripedWarp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { checkHands(t, must(t, drawStriped(t))) })
}

// Work goes through what WorkBefore gives, and leaves out only where nothing is done.
func TestWorkIsWorkBefore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := must(t, rapid.OneOf(rapid.Custom(drawSpec), rapid.Custom(drawStriped)).Draw(t, "spec"))
		var want []string
		for _, c := range p.Chains {
			for k := -1; k <= len(c.Passes)+3; k++ {
				w := p.WorkBefore(c.Number, k)
				if w.Any() && (k < 1 || k > len(c.Passes)+1) {
					t.Fatalf("work before pass %d of %d: %+v", k, len(c.Passes), w)
				}
				if w.Any() {
					want = append(want, fmt.Sprint(w))
				}
				if w.Halt() != (w.Any() && k > 1 && k <= len(c.Passes)) {
					t.Fatalf("before pass %d of %d: halt %v: %+v", k, len(c.Passes), w.Halt(), w)
				}
			}
		}
		var got []string
		for w := range p.Work() {
			got = append(got, fmt.Sprint(w))
		}
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Fatalf("got %v, want %v", got, want)
		}
		for range p.Work() {
			break // an iterator that is left early must not go on
		}
	})
}

// drawStriped draws a warp of stripes whose passes carry any positions among which holes and slots take
// turns, with set-ups that change, empty and leave alone.
func drawStriped(t *rapid.T) plan.Spec {
	s := drawSpec(t)
	s.Stripes, s.LastPass = "drawn", wind.ShortLast
	colours := rapid.IntRange(1, 5).Draw(t, "colours")
	sched := &plan.Schedule{}
	for i := range colours {
		sched.Colours = append(sched.Colours, plan.StripeColour{Name: fmt.Sprintf("colour %d", i+1)})
	}
	s.Ends, s.Group = 0, 1
	for range rapid.IntRange(1, 8).Draw(t, "set-ups") {
		set := make(plan.SetUp, s.Positions)
		for i := range set {
			set[i] = rapid.IntRange(0, colours).Draw(t, "colour")
		}
		if set.Threaded() == 0 {
			set[0] = 1
		}
		sched.SetUps = append(sched.SetUps, set)
		for range rapid.IntRange(0, 4).Draw(t, "passes") {
			carried := drawCarried(t, set.Threaded())
			s.Ends += carried.Count()
			s.Group = max(s.Group, carried.Count())
			sched.Passes = append(sched.Passes, plan.ScheduledPass{Carried: carried, SetUp: len(sched.SetUps)})
		}
	}
	if s.Ends == 0 {
		carried := drawCarried(t, sched.SetUps[0].Threaded())
		s.Ends, s.Group = carried.Count(), carried.Count()
		sched.Passes = []plan.ScheduledPass{{Carried: carried, SetUp: 1}}
	}
	if s.ChainEnds != 0 {
		s.ChainEnds = max(s.ChainEnds, s.Group)
	}
	s.Schedule = sched
	return s
}

// drawCarried draws a set of positions of those threaded, one or more, holes and slots in turn.
func drawCarried(t *rapid.T, threaded wind.Positions) wind.Positions {
	var carried wind.Positions
	for pos := range threaded.All() {
		if carried != 0 && (carried.Last()+pos)%2 == 0 {
			continue
		}
		if carried == 0 && pos == threaded.Last() || rapid.IntRange(0, 3).Draw(t, "carry") > 0 {
			carried |= wind.Span(pos, pos)
		}
	}
	return carried
}
