package plan

import (
	"fmt"

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

// chainsOf splits a schedule into chains of at most so many ends, 0 for one chain, or one for each colour.
func (s *Schedule) chainsOf(most int) []ChainPart {
	if s.byColour() {
		return s.chainsByColour(most)
	}
	return s.chainsInTurn(most)
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
