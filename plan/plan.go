package plan

import (
	"fmt"

	"millside/plan/field"
	"millside/plan/frame"
	"millside/plan/measure"
	"millside/plan/wind"
)

// Plan is a warp worked out, from the first pass to the last. It never changes once made.
type Plan struct {
	// Spec is what the weaver asked for.
	Spec Spec
	// Path is the way of the warp on the mill.
	Path frame.MillPath
	// Chains lists the chains in the order of winding; there is at least one.
	Chains []Chain
	// LeaseFaults lists every place where two neighbours can't be put on different sides of the lease.
	LeaseFaults []LeaseFault
	// SplitWhy says why there are so many chains, "" where there is nothing to say.
	SplitWhy string

	look     Look           // when the winder looks at the lease
	threaded wind.Positions // of a plain warp: what is threaded for it, and stays so

	// Where each colour is a chain of its own: the number in the warp of each end in the order of winding, and
	// the other way about; nil where both orders are one.
	numbers, wound []int

	// Of a striped warp: the number of the kind of each pass, by chain and pass from 0.
	kinds     [][]int
	manyKinds bool // more than one
}

// Chain is one part of the warp that is wound and taken off by itself.
type Chain struct {
	// Number counts the chains from 1.
	Number int
	// First and Last count the chain's first and last end in the order of winding, which is their number in the
	// warp but for a chain for each colour: see [Plan.EndOfWound].
	First, Last int
	// Why says in words why the chain ends where it does.
	Why string
	// Passes lists the passes in order; Passes[0] is pass 1.
	Passes []wind.Pass
}

// Ends is how many ends the chain has, spare ends included.
func (c Chain) Ends() int { return c.Last - c.First + 1 }

// Finish is where the winding of the chain stops.
func (c Chain) Finish() wind.Finish { return wind.FinishAfter(len(c.Passes)) }

// EndsAfter is how many ends of the chain stand on the mill after so many passes, 0 to len(Passes).
func (c Chain) EndsAfter(passes int) int {
	passes = min(passes, len(c.Passes))
	if passes <= 0 {
		return 0
	}
	return c.Passes[passes-1].Last - c.First + 1
}

// LeaseFault is a place where two neighbouring ends must lie over the same lease peg.
type LeaseFault struct {
	// Chain and Pass say where, both counted from 1.
	Chain, Pass int
	// End is the number of the second of the two ends.
	End int
	// Why says what makes it impossible.
	Why string
}

// New works out a warp. The error joins one [measure.FieldError] for each field that is out of range.
func New(s Spec) (*Plan, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	path, err := s.path()
	if err != nil {
		return nil, err
	}
	if total := s.Painted.Total(); total > path.Length {
		return nil, field.Painted.Wrong(total.String(), "at most "+path.Length.As(s.Units.Long(), 2).String()+
			" together, the real length of the warp")
	}
	parts, err := s.Split(nil)
	if err != nil {
		return nil, err
	}
	p := &Plan{Spec: s, Path: path, numbers: s.Schedule.numbers()}
	p.wound = inverse(p.numbers)
	p.SplitWhy = parts[0].Split
	number := 0
	for _, part := range parts {
		c := Chain{Number: part.Number, First: part.First, Last: part.Last, Why: part.Why,
			Passes: make([]wind.Pass, 0, len(part.Passes))}
		first := c.First
		for k, ends := range part.Passes {
			carried, setUp := wind.FirstPositions(ends), 0
			if s.Schedule != nil {
				scheduled := s.Schedule.Passes[number]
				carried, setUp = scheduled.Carried, scheduled.SetUp
			}
			c.Passes = append(c.Passes, s.layPass(k+1, first, carried, setUp))
			first += ends
			number++
		}
		p.Chains = append(p.Chains, c)
	}
	p.LeaseFaults, p.look, p.threaded = chooseOpenings(p.Chains), p.findLook(), everCarried(p.Chains)
	p.kinds, p.manyKinds = p.findKinds()
	return p, nil
}

// path is the way of the warp on the mill or on the board.
func (s Spec) path() (frame.MillPath, error) {
	if len(s.Board) == 0 {
		return s.Mill.Path(s.Length), nil
	}
	b, err := s.Board.Path(s.Length, s.Units)
	if err != nil {
		return frame.MillPath{}, err
	}
	if !b.Fits {
		return frame.MillPath{}, &measure.FieldError{Field: field.Length.Name, Value: s.Length.String(),
			Want: "at most " +
				b.Length.As(s.Units.Long(), 2).String() + ", which is all that the board gives"}
	}
	return frame.MillPath{Steps: b.Distances, Length: b.Length}, nil
}

// Split parts the warp into chains, as [New] does. Splits fall between groups and, where they can, between
// sections of the raddle and pattern repeats.
func (s Spec) Split(known KnownSections) ([]ChainPart, error) {
	if s.Schedule != nil {
		return s.scheduledChains()
	}
	ask := ChainAsk{Ends: s.Ends, Group: s.Group, LastPass: s.LastPass, Most: s.ChainEnds, Even: s.EvenChains,
		Count: s.ChainCount}
	if !s.Loom.Sett.IsZero() && s.Loom.Raddle.Space != 0 {
		ask.Sett, ask.Raddle = s.settInReed(), s.Loom.Raddle
	}
	if s.Cloth.Used {
		ask.Repeat, ask.Before = s.Cloth.Width.Repeat, s.Cloth.Width.Doubled
	}
	return ask.Split(known)
}

// settInReed is the sett of all layers of the cloth together.
func (s Spec) settInReed() measure.Sett {
	if !s.Cloth.Used {
		return s.Loom.Sett
	}
	return s.Cloth.Width.InReed(s.Loom.Sett)
}

// layPass makes one pass but for its lease, which depends on its neighbours.
func (s Spec) layPass(number, first int, carried wind.Positions, setUp int) wind.Pass {
	d, ends := wind.DirectionOf(number), carried.Count()
	p := wind.Pass{
		Number: number, Direction: d, Carried: carried, SetUp: setUp,
		Mirrored: s.mirrored(d),
		First:    first, Last: first + ends - 1,
		Spares:    min(max(first+ends-1-s.Ends, 0), ends),
		TurnAfter: s.Hand.TurnAfter(d),
	}
	p.Twist = p.TurnAfter.Twist()
	if !d.Far() {
		p.Twist += s.Hand.TurnAfter(wind.Outward).Twist()
	}
	return p
}

// chooseOpenings sets the first opening of every pass so that each end lies on the other side of the
// lease from its neighbour, over the whole warp. Within a pass neighbours alternate by themselves
// where the carried positions alternate between holes and slots; where they don't, no opening can
// help, and the place is reported. On the first pass the lowest position that is carried goes over A,
// whichever end of the group lies at the foot: as a rule that is position 1, with the holes up.
func chooseOpenings(chains []Chain) []LeaseFault {
	var faults []LeaseFault
	lastOverA := false
	if len(chains) > 0 && len(chains[0].Passes) > 0 {
		first := chains[0].Passes[0]
		lastOverA = wind.IsHole(first.Carried.First()) != wind.IsHole(first.FootPosition())
	}
	for c := range chains {
		for i := range chains[c].Passes {
			p := &chains[c].Passes[i]
			atA := wind.HolesUp
			if wind.IsHole(p.FootPosition()) == lastOverA {
				atA = wind.SlotsUp
			}
			p.FirstOpening = atA
			if p.FirstPeg() != wind.PegA {
				p.FirstOpening = atA.Other()
			}
			faults = append(faults, withinFaults(c+1, *p)...)
			lastOverA = p.OverA(p.TipPosition())
		}
	}
	return faults
}

// withinFaults lists neighbours of one pass that are both in holes or both in slots.
func withinFaults(chain int, p wind.Pass) []LeaseFault {
	var faults []LeaseFault
	before := 0
	for pos := range p.Carried.All() {
		if before != 0 && wind.IsHole(before) == wind.IsHole(pos) {
			faults = append(faults, LeaseFault{
				Chain: chain, Pass: p.Number, End: max(p.EndAt(before), p.EndAt(pos)),
				Why: fmt.Sprintf("positions %d and %d are both %s, so one opening lifts both", before, pos,
					kindOf(pos)),
			})
		}
		before = pos
	}
	return faults
}

func kindOf(position int) string {
	if wind.IsHole(position) {
		return "holes"
	}
	return "slots"
}

// Passes is the number of passes in all chains.
func (p *Plan) Passes() int {
	n := 0
	for _, c := range p.Chains {
		n += len(c.Passes)
	}
	return n
}

// PassOverall is the number of a pass counted over all chains, from 1; 0 if there is no such pass.
func (p *Plan) PassOverall(chain, number int) int {
	if chain < 1 || chain > len(p.Chains) || number < 1 || number > len(p.Chains[chain-1].Passes) {
		return 0
	}
	for _, c := range p.Chains[:chain-1] {
		number += len(c.Passes)
	}
	return number
}

// EndsWound is how many ends the warp has when it is wound, spare ends included.
func (p *Plan) EndsWound() int { return p.Chains[len(p.Chains)-1].Last }

// Spares is how many ends are wound beyond the number asked for.
func (p *Plan) Spares() int { return p.EndsWound() - p.Spec.Ends }

// WarpYarn is the length of all ends together, spare ends included.
func (p *Plan) WarpYarn() measure.Length { return p.Path.Length.Times(p.EndsWound()) }

// KeepsOpening says whether the opening that a return pass ends with is the one that the next pass
// begins with, so that the paddle is not flicked on the way round the near peg. It is false for an
// outward pass, which has no lease at its far end, and for the last pass.
func (c Chain) KeepsOpening(number int) bool {
	if number < 1 || number >= len(c.Passes) || c.Passes[number-1].Direction.Far() {
		return false
	}
	return c.Passes[number-1].FirstOpening.Other() == c.Passes[number].FirstOpening
}

// Place is where an end of the warp was laid.
type Place struct {
	// Chain, Pass and Position are all counted from 1.
	Chain, Pass, Position int
}

// Locate finds the place of an end by its number in the warp, 1 to EndsWound.
func (p *Plan) Locate(end int) (Place, error) {
	n := p.woundAs(end)
	for _, c := range p.Chains {
		if n < c.First || n > c.Last {
			continue
		}
		low, high := 0, len(c.Passes)-1
		for low < high {
			if mid := (low + high) / 2; c.Passes[mid].Last < n {
				low = mid + 1
			} else {
				high = mid
			}
		}
		return Place{Chain: c.Number, Pass: low + 1, Position: c.Passes[low].PositionOf(n)}, nil
	}
	return Place{}, measure.Outside("end number", end, 1, p.EndsWound(), "")
}

// End is the number in the warp of the end laid at a place.
func (p *Plan) End(at Place) (int, error) {
	if at.Chain < 1 || at.Chain > len(p.Chains) {
		return 0, measure.Outside("chain", at.Chain, 1, len(p.Chains), "")
	}
	c := p.Chains[at.Chain-1]
	if at.Pass < 1 || at.Pass > len(c.Passes) {
		return 0, measure.Outside("pass", at.Pass, 1, len(c.Passes), "")
	}
	pass := c.Passes[at.Pass-1]
	if n := pass.EndAt(at.Position); n != 0 {
		return p.EndOfWound(n), nil
	}
	return 0, &measure.FieldError{Field: "position", Value: fmt.Sprint(at.Position),
		Want: fmt.Sprintf("one that carries an end on pass %d: %s", at.Pass, pass.Carried)}
}

// mirrored says whether the ends of a pass in a direction lie from the highest position to the lowest,
// foot to tip.
func (s Spec) mirrored(d wind.Direction) bool {
	return (s.Foot == wind.FootLast) != (d == wind.Return && s.ReturnOrder == wind.MirroredOrder)
}

// Bouts is how many outward passes have a return pass after them, chain by chain, and how many have none:
// one in each chain that stops at the counting cross.
func (p *Plan) Bouts() (bouts, single int) {
	for _, c := range p.Chains {
		bouts += len(c.Passes) / 2
		single += len(c.Passes) % 2
	}
	return bouts, single
}

// BoutsText says how many bouts there are: "20 bouts", "2 bouts and 2 passes".
func (p *Plan) BoutsText() string {
	bouts, single := p.Bouts()
	text := measure.Counted(bouts, "bout", "bouts")
	switch single {
	case 0:
		return text
	case 1:
		return text + " and a pass"
	default:
		return text + " and " + measure.Counted(single, "pass", "passes")
	}
}

// NearTurns is how often the paddle turns round the near end peg between two passes of a chain: how often
// it keeps its opening there, and how often it is flicked once more.
func (p *Plan) NearTurns() (kept, flicked int) {
	for _, c := range p.Chains {
		for k := 2; k < len(c.Passes); k += 2 {
			if c.KeepsOpening(k) {
				kept++
			} else {
				flicked++
			}
		}
	}
	return kept, flicked
}

// GroupSizes is how many ends each group of the warp has, chain by chain in the order of the passes: as they
// lie at the counting cross, from end 1 on. It is empty where the order is made at the raddle, and the groups of
// the counting cross are no neighbours there.
func (p *Plan) GroupSizes() []int {
	if p.ByColour() {
		return nil
	}
	var sizes []int
	for _, c := range p.Chains {
		for _, pass := range c.Passes {
			sizes = append(sizes, pass.Ends())
		}
	}
	return sizes
}
