package plan

import (
	"fmt"

	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/wind"
)

// Striped says whether the warp has stripes.
func (p *Plan) Striped() bool { return p.Spec.Schedule != nil }

// Colour is a colour of a striped warp, counted from 1.
func (p *Plan) Colour(n int) (StripeColour, bool) {
	if !p.Striped() || n < 1 || n > len(p.Spec.Schedule.Colours) {
		return StripeColour{}, false
	}
	return p.Spec.Schedule.Colours[n-1], true
}

// SetUpOf is the colour in each position on a pass; nil in a plain warp.
func (p *Plan) SetUpOf(pass wind.Pass) SetUp {
	if !p.Striped() || pass.SetUp < 1 || pass.SetUp > len(p.Spec.Schedule.SetUps) {
		return nil
	}
	return p.Spec.Schedule.SetUps[pass.SetUp-1]
}

// ChangesBefore lists the positions that get another colour before a pass of a chain, counted from 1, as
// [Plan.WorkBefore] has them. Threading the paddle for the first pass of all is no change.
func (p *Plan) ChangesBefore(c Chain, number int) []Change {
	if !p.Striped() || number == 1 && c.Number == 1 {
		return nil
	}
	var list []Change
	for _, t := range p.WorkBefore(c.Number, number).Thread {
		list = append(list, Change(t))
	}
	return list
}

// EndColour is the colour of an end by its number in the warp, counted from 1; 0 in a plain warp, for a
// number that is no end, and for an empty position.
func (p *Plan) EndColour(end int) int {
	at, err := p.Locate(end)
	if err != nil || !p.Striped() {
		return 0
	}
	set := p.SetUpOf(p.Chains[at.Chain-1].Passes[at.Pass-1])
	if at.Position > len(set) {
		return 0
	}
	return set[at.Position-1]
}

// ColourText names a colour with its letter: "A white"; "empty" for 0.
func (p *Plan) ColourText(n int) string {
	c, ok := p.Colour(n)
	if !ok {
		return "empty"
	}
	return fmt.Sprintf("%c %s", Letter(n), c.Name)
}

// scheduledChains splits a schedule into chains, or into one for each colour and those into chains.
func (s Spec) scheduledChains() ([]ChainPart, error) {
	if s.Schedule.byColour() {
		parts, err := s.Schedule.chainsByColour(func(one *Schedule) ([]ChainPart, error) {
			return s.chainsOf(one, 0)
		})
		if err == nil && s.ChainCount > 0 && s.ChainCount != len(parts) {
			err = field.ChainCount.Wrong(fmt.Sprint(s.ChainCount),
				fmt.Sprintf("0, or %d as a chain for each colour makes them", len(parts)))
		}
		return parts, err
	}
	return s.chainsOf(s.Schedule, s.ChainCount)
}

// chainsOf splits a schedule that lays its ends in order.
func (s Spec) chainsOf(one *Schedule, count int) ([]ChainPart, error) {
	if !s.EvenChains || s.ChainEnds == 0 && count == 0 {
		return one.chainsInTurn(s.ChainEnds), nil
	}
	var bouts []int
	for i := 0; i < len(one.Passes); i += 2 {
		ends := one.Passes[i].Ends()
		if i+1 < len(one.Passes) {
			ends += one.Passes[i+1].Ends()
		}
		bouts = append(bouts, ends)
	}
	e := &evenSplit{ends: bouts, word: "bout", words: "bouts", most: s.ChainEnds, count: count,
		place: func(bouts int) int {
			if s.changesAt(one, 2*bouts) {
				return 0
			}
			return evenOffBoundary
		}}
	cuts, why, err := e.cuts()
	if err != nil {
		return nil, err
	}
	var parts []ChainPart
	for i := range len(cuts) - 1 {
		c := ChainPart{Number: i + 1, First: e.after[cuts[i]] + 1, Last: e.after[cuts[i+1]]}
		for _, p := range one.Passes[2*cuts[i] : min(2*cuts[i+1], len(one.Passes))] {
			c.Passes = append(c.Passes, p.Ends())
		}
		between := ""
		if i < len(cuts)-2 && s.changesAt(one, 2*cuts[i+1]) {
			between = ", ends between two stripes"
		}
		c.Why = fmt.Sprintf("%s in %s%s, stops %s", measure.Counted(c.Ends(), "end", "ends"),
			measure.Counted(len(c.Passes), "pass", "passes"), between, c.Finish())
		parts = append(parts, c)
	}
	parts[0].Split = why
	return parts, nil
}

// changesAt says whether the colour changes between the ends of two passes of a schedule, so many passes laid.
func (s Spec) changesAt(one *Schedule, passes int) bool {
	if passes < 1 || passes >= len(one.Passes) || len(one.SetUps) == 0 {
		return false
	}
	colour := func(i int, last bool) int {
		p := one.Passes[i]
		laid := s.layPass(i+1, 1, p.Carried, p.SetUp)
		end := laid.First
		if last {
			end = laid.Last
		}
		return one.SetUps[p.SetUp-1][laid.PositionOf(end)-1]
	}
	return colour(passes-1, true) != colour(passes, false)
}

// chainsInTurn splits a schedule whose passes lay the ends in their order. A chain ends only
// where the paddle is back at the lease, since the next begins outward; so every pass keeps its
// direction. Each split is the last such place at or below an equal share of what is left, or the first
// one where there is none.
func (s *Schedule) chainsInTurn(most int) []ChainPart {
	left := 0
	for _, p := range s.Passes {
		left += p.Ends()
	}
	var parts []ChainPart
	first, from := 1, 0
	for from < len(s.Passes) {
		share := left
		if most > 0 {
			chains := (left + most - 1) / most
			share = (left + chains - 1) / chains
		}
		part := ChainPart{Number: len(parts) + 1, First: first}
		ends := 0
		for i := from; i < len(s.Passes); i += 2 {
			bout := s.Passes[i].Ends()
			if i+1 < len(s.Passes) {
				bout += s.Passes[i+1].Ends()
			}
			if ends > 0 && ends+bout > share && most > 0 {
				break
			}
			for _, p := range s.Passes[i:min(i+2, len(s.Passes))] {
				part.Passes = append(part.Passes, p.Ends())
			}
			ends += bout
		}
		part.Last = first + ends - 1
		part.Why = fmt.Sprintf("%s in %s, stops %s", measure.Counted(ends, "end", "ends"),
			measure.Counted(len(part.Passes), "pass", "passes"), part.Finish())
		parts = append(parts, part)
		from, first, left = from+len(part.Passes), first+ends, left-ends
	}
	return parts
}

// cones is one cone for each stretch of passes in which a position keeps its colour. All colours are of
// one size of yarn; the weights given are those of the positions' first cones.
func (s *Schedule) cones(y WarpYarn) []Cone {
	var list []Cone
	open := map[int]int{} // position -> its cone's index
	for number, pass := range s.Passes {
		for i, colour := range s.SetUps[pass.SetUp-1] {
			at, fed := open[i+1]
			if fed && (colour == 0 || list[at].Colour != s.Colours[colour-1].Name) {
				list[at].ToPass = number
				fed = false
				delete(open, i+1)
			}
			if fed || colour == 0 {
				continue
			}
			cone := Cone{Position: i + 1, Colour: s.Colours[colour-1].Name, Yarn: y.Size, FromPass: number + 1}
			if len(y.Cones) > 0 && number == 0 {
				cone.Gross, cone.Tube = y.Cones[min(i, len(y.Cones)-1)], y.Tube
			}
			open[i+1] = len(list)
			list = append(list, cone)
		}
	}
	return list
}
