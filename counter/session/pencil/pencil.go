package pencil

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"millside/counter/session"
)

// Pencil is a winder of paper. It fails where hands can't do what a page says: where it is told to cut what is not
// tied, to tie what is not threaded, or to carry other ends than those that hang at the warp.
type Pencil struct {
	t testing.TB
	// mirrored says that its hands lay a return pass the other way round than an outward one; lastAtFoot that the last
	// position lies at the foot of the peg on an outward pass. Both are habits of the hands, whatever the plan thinks.
	mirrored, lastAtFoot bool
	// Plain is the one yarn of a plain warp, whose pages name none.
	Plain string

	yarn   map[int]string  // what is threaded in a position
	tied   map[int]*strand // what of it hangs at the warp
	far    bool            // at which end peg the paddle stands
	chains [][]drawnPass   // what lies on the pegs, chain by chain, from foot to tip
}

// strand is one piece of yarn, from its knot at the peg where it was tied on.
type strand struct {
	ends  []*drawnEnd
	atFar bool // where its beginning is knotted
}

// drawnEnd is one end as drawn: with a knot where its yarn begins or finishes there. An end without goes round the peg.
type drawnEnd struct {
	yarn                                        string
	position                                    int
	overA                                       bool
	beginsNear, finishNear, beginFar, finishFar bool
}

// drawnPass is the ends of a pass from foot to tip.
type drawnPass []*drawnEnd

// New is a winder with these habits, at the lease with an empty paddle: mirrored says that a return pass is laid the
// other way round than an outward one, lastAtFoot that the last position lies at the foot on an outward pass.
func New(t testing.TB, mirrored, lastAtFoot bool) *Pencil {
	return &Pencil{t: t, mirrored: mirrored, lastAtFoot: lastAtFoot, yarn: map[int]string{},
		tied: map[int]*strand{}, chains: [][]drawnPass{nil}}
}

var (
	cutLine    = regexp.MustCompile(`^cut off positions? ([0-9, to]+)$`)
	threadLine = regexp.MustCompile(`^thread positions? ([0-9, to]+) with (.+?)(?: in place of (.+))?$`)
	emptyLine  = regexp.MustCompile(`^take (.+) out of positions? ([0-9, to]+)$`)
	tieLine    = regexp.MustCompile(`^tie on positions? ([0-9, to]+)$`)
	staysLine  = regexp.MustCompile(`^positions? ([0-9, to]+) stays? as (?:it is|they are)$`)
	stopLine   = regexp.MustCompile(`^Stop at the (near|far) end peg before pass (\d+): `)
	passLine   = regexp.MustCompile(
		`^Pass (\d+) of \d+(?: of chain (\d+)(?:, .+)?)?, (outward|return)(?:, kind [IVXLC]+)?: (.*)\.$`)
	leaseWords  = regexp.MustCompile(`(holes|slots) up over lease peg (A|B), then (holes|slots) up over peg (A|B)`)
	footWords   = regexp.MustCompile(`position (\d+) goes to the foot of the peg`)
	carryWords  = regexp.MustCompile(`carry only positions? ([0-9, to]+)`)
	leaveWords  = regexp.MustCompile(`leave out positions? ([0-9, to]+)`)
	dressWords  = regexp.MustCompile(`tie (the group on|on positions? ([0-9, to]+)) at the near end peg`)
	paddleWords = regexp.MustCompile(`thread the paddle: (\d+) positions?, one end in each`)
	otherWay    = regexp.MustCompile(`take back to before pass (\d+), and lay that return pass`)
	offWords    = regexp.MustCompile(`take off (all that lies|what lies beyond pass (\d+))`)
	fastenStep  = regexp.MustCompile(`Fasten the group at the (near|far) end peg: Take the (\d+) ends? round`)
	looseWords  = regexp.MustCompile(
		`On the way (?:(\d+) ends? (?:was|were) tied on)?(?: and )?(?:(\d+)(?: ends? (?:was|were))? cut off)? here`)
)

// positions reads "1, 3 to 5".
func (p *Pencil) positions(text string) []int {
	p.t.Helper()
	var list []int
	for _, part := range strings.Split(text, ", ") {
		from, to, many := strings.Cut(part, " to ")
		first, err := strconv.Atoi(from)
		last := first
		if many {
			last, _ = strconv.Atoi(to)
		}
		if err != nil || last < first {
			p.t.Fatalf("no positions: %q", text)
		}
		for pos := first; pos <= last; pos++ {
			list = append(list, pos)
		}
	}
	return list
}

// hanging is the positions whose yarn hangs at the warp, in order.
func (p *Pencil) hanging() []int {
	var list []int
	for pos := range p.tied {
		list = append(list, pos)
	}
	slices.Sort(list)
	return list
}

// elsewhere says whether a position is tied on at the other peg, and nothing of it is laid.
func (p *Pencil) elsewhere(pos int) bool {
	s := p.tied[pos]
	return s != nil && len(s.ends) == 0 && s.atFar != p.far
}

// laid is the passes of the chain in hand.
func (p *Pencil) laid() int { return len(p.chains[len(p.chains)-1]) }

// stop does the work of a page of its own, line by line.
func (p *Pencil) stop(said []string, stop session.Stop) {
	p.t.Helper()
	at := -1
	for i, line := range said {
		if stopLine.MatchString(line) {
			at = i
		}
	}
	if at < 0 {
		p.t.Fatalf("no stop: %q", said)
	}
	m := stopLine.FindStringSubmatch(said[at])
	if (m[1] == "far") != p.far || m[2] != strconv.Itoa(p.laid()+1) {
		p.t.Fatalf("%d passes lie, at the far peg: %v, but %q", p.laid(), p.far, said[at])
	}
	for i, line := range stop.Lines {
		if !strings.EqualFold(said[at+1+i], line.Text+".") {
			p.t.Fatalf("%q is written, %q said", line.Text, said[at+1+i])
		}
		p.work(line.Text)
	}
	if stop.Stays != "" {
		for _, pos := range p.positions(staysLine.FindStringSubmatch(stop.Stays)[1]) {
			if p.tied[pos] == nil || p.elsewhere(pos) {
				p.t.Fatalf("position %d stays, but it doesn't hang at the warp here: %q", pos, said)
			}
		}
	}
}

// work does one line.
func (p *Pencil) work(line string) {
	p.t.Helper()
	if m := cutLine.FindStringSubmatch(line); m != nil {
		for _, pos := range p.positions(m[1]) {
			p.cut(pos)
		}
	} else if m := threadLine.FindStringSubmatch(line); m != nil {
		for _, pos := range p.positions(m[1]) {
			p.thread(pos, m[3], m[2])
		}
	} else if m := emptyLine.FindStringSubmatch(line); m != nil {
		for _, pos := range p.positions(m[2]) {
			p.thread(pos, m[1], "")
		}
	} else if m := tieLine.FindStringSubmatch(line); m != nil {
		for _, pos := range p.positions(m[1]) {
			p.tie(pos)
		}
	} else {
		p.t.Fatalf("nobody can do that: %q", line)
	}
}

// cut cuts a position off at the peg and knots its end there.
func (p *Pencil) cut(pos int) {
	p.t.Helper()
	s := p.tied[pos]
	if s == nil {
		p.t.Fatalf("position %d is cut off, but it doesn't hang at the warp", pos)
	}
	delete(p.tied, pos)
	p.knot(s)
}

// knot makes the finish of a piece fast where the paddle stands. A piece of which nothing is laid is taken away.
func (p *Pencil) knot(s *strand) {
	if len(s.ends) == 0 {
		return
	}
	if last := s.ends[len(s.ends)-1]; p.far {
		last.finishFar = true
	} else {
		last.finishNear = true
	}
}

func (p *Pencil) thread(pos int, from, to string) {
	p.t.Helper()
	if p.tied[pos] != nil {
		p.t.Fatalf("position %d is threaded while its yarn hangs at the warp", pos)
	}
	if p.yarn[pos] != from {
		p.t.Fatalf("position %d holds %q, not %q", pos, p.yarn[pos], from)
	}
	if p.yarn[pos] = to; to == "" {
		delete(p.yarn, pos)
	}
}

func (p *Pencil) tie(pos int) {
	p.t.Helper()
	if p.yarn[pos] == "" || p.tied[pos] != nil {
		p.t.Fatalf("position %d is tied on; it holds %q, and hangs at the warp: %v", pos, p.yarn[pos],
			p.tied[pos] != nil)
	}
	p.tied[pos] = &strand{atFar: p.far}
}

// pass lays a pass as its page says.
func (p *Pencil) pass(said []string) {
	p.t.Helper()
	var m []string
	now := ""
	for _, line := range said {
		if found := passLine.FindStringSubmatch(line); found != nil {
			m = found
		}
		if rest, ok := strings.CutPrefix(line, "Now: "); ok {
			now = rest
		}
	}
	if m == nil || m[1] != strconv.Itoa(p.laid()+1) || (m[3] == "return") != p.far {
		p.t.Fatalf("%d passes lie, at the far peg: %v, but %q", p.laid(), p.far, said)
	}
	if m[2] != "" && m[2] != strconv.Itoa(len(p.chains)) {
		p.t.Fatalf("it is chain %d, but %q", len(p.chains), said)
	}
	p.dress(now)
	p.carries(now, said)
	p.lay(m[4])
}

// dress ties the first group on where the page of the pass says so.
func (p *Pencil) dress(now string) {
	p.t.Helper()
	m := dressWords.FindStringSubmatch(now)
	if m == nil {
		return
	}
	if m[2] != "" {
		for _, pos := range p.positions(m[2]) {
			p.tie(pos)
		}
		return
	}
	if m := paddleWords.FindStringSubmatch(now); m != nil {
		for pos := 1; pos <= number(m[1]); pos++ {
			p.thread(pos, "", p.Plain)
		}
	}
	for pos := range p.yarn {
		p.tie(pos)
	}
}

// carries checks that what hangs at the warp is what the page says.
func (p *Pencil) carries(now string, said []string) {
	p.t.Helper()
	hang := p.hanging()
	if len(hang) == 0 || slices.ContainsFunc(hang, p.elsewhere) {
		p.t.Fatalf("%v hang at the warp, some at the other peg: %q", hang, said)
	}
	if m := carryWords.FindStringSubmatch(now); m != nil && !slices.Equal(hang, p.positions(m[1])) {
		p.t.Fatalf("%v hang at the warp: %q", hang, said)
	}
	if m := leaveWords.FindStringSubmatch(now); m != nil {
		for _, pos := range p.positions(m[1]) {
			if p.tied[pos] != nil {
				p.t.Fatalf("position %d is left out and hangs at the warp: %q", pos, said)
			}
		}
	}
	if m := footWords.FindStringSubmatch(now); m != nil {
		foot := hang[0]
		if p.lastAtFoot {
			foot = hang[len(hang)-1]
		}
		if m[1] != strconv.Itoa(foot) {
			p.t.Fatalf("%v hang at the warp, position %d at the foot by habit: %q", hang, foot, said)
		}
	}
}

// lay draws the ends of a pass on the pegs.
func (p *Pencil) lay(way string) {
	p.t.Helper()
	lease := leaseWords.FindStringSubmatch(way)
	if lease == nil {
		p.t.Fatalf("no openings: %q", way)
	}
	atA := lease[1]
	if lease[2] != "A" {
		atA = lease[3]
	}
	var drawn drawnPass
	for _, pos := range p.hanging() {
		s := p.tied[pos]
		end := &drawnEnd{yarn: p.yarn[pos], position: pos, overA: (pos%2 == 1) == (atA == "holes")}
		if len(s.ends) == 0 && s.atFar {
			end.beginFar = true
		} else if len(s.ends) == 0 {
			end.beginsNear = true
		}
		s.ends = append(s.ends, end)
		drawn = append(drawn, end)
	}
	if p.lastAtFoot != (p.far && p.mirrored) {
		slices.Reverse(drawn)
	}
	chain := &p.chains[len(p.chains)-1]
	*chain = append(*chain, drawn)
	p.far = !p.far
}

// takeOff unwinds passes until so many lie. A piece that was tied on further along still hangs at the peg of its knot,
// with nothing laid of it; one that was cut further along hangs loose where the paddle stands now, and is made fast
// there.
func (p *Pencil) takeOff(leave int) {
	p.t.Helper()
	chain := &p.chains[len(p.chains)-1]
	gone := map[*drawnEnd]bool{}
	for p.laid() > leave {
		for _, end := range (*chain)[p.laid()-1] {
			gone[end] = true
		}
		*chain = (*chain)[:p.laid()-1]
		p.far = !p.far
	}
	hung := map[*drawnEnd]bool{}
	for _, s := range p.tied {
		s.ends = slices.DeleteFunc(s.ends, func(e *drawnEnd) bool { return gone[e] })
		if len(s.ends) > 0 {
			hung[s.ends[len(s.ends)-1]] = true
		}
	}
	if leave == 0 {
		return
	}
	for _, end := range (*chain)[leave-1] {
		if p.far {
			end.finishFar = end.finishFar || !hung[end]
		} else {
			end.finishNear = end.finishNear || !hung[end]
		}
	}
}
