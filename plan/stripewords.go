package plan

import (
	"fmt"
	"millside/plan/wind"
	"strings"
)

// inBlock is how many positions stand together where a set-up is written in letters: an even number, so
// that every block begins with a hole.
const inBlock = 4

// Letters writes the set-up with a letter for each position, that of position 1 first, in blocks of
// four: "AAAA BBBB BB··". See [Letter]. It is empty for an empty set-up.
func (s SetUp) Letters() string {
	var b strings.Builder
	for i, colour := range s {
		if i > 0 && i%inBlock == 0 {
			b.WriteByte(' ')
		}
		b.WriteRune(Letter(colour))
	}
	return b.String()
}

// SetUpText says which colour is in which position, from position 1 on, neighbours of one colour drawn
// together: "1 to 4 A white; 5, 6 B red; 7 empty". It is "nothing" for a set-up without positions.
func (p *Plan) SetUpText(set SetUp) string {
	var parts []string
	for i := 0; i < len(set); {
		from := i
		for i < len(set) && set[i] == set[from] {
			i++
		}
		parts = append(parts, wind.FirstPositions(i).Without(wind.FirstPositions(from)).String()+" "+
			p.ColourText(set[from]))
	}
	if len(parts) == 0 {
		return "nothing"
	}
	return strings.Join(parts, "; ")
}

// ChangesText says what is changed, neighbours that change alike drawn together: "positions 3 to 5 from A
// white to B red; position 8 from C blue to empty". A position that was empty gets its colour: "position 2
// B red". The changes are in the order of their positions, as [Plan.ChangesBefore] gives them; it is
// "nothing" where there are none.
func (p *Plan) ChangesText(changes []Change) string {
	var parts []string
	for i := 0; i < len(changes); {
		one := changes[i]
		var set wind.Positions
		for ; i < len(changes) && changes[i].From == one.From && changes[i].To == one.To; i++ {
			set |= wind.FirstPositions(changes[i].Position).Without(wind.FirstPositions(changes[i].Position - 1))
		}
		text := wind.PositionsText(set)
		if one.From != 0 {
			text += " from " + p.ColourText(one.From) + " to"
		}
		parts = append(parts, text+" "+p.ColourText(one.To))
	}
	if len(parts) == 0 {
		return "nothing"
	}
	return strings.Join(parts, "; ")
}

// EndRun is a run of neighbouring ends of one colour.
type EndRun struct {
	// First and Last are the numbers in the warp of the first and the last end of the run.
	First, Last int
	// Colour is counted from 1 in the schedule's colours; 0 stands for an empty position.
	Colour int
}

// Ends is how many ends the run has.
func (r EndRun) Ends() int { return r.Last - r.First + 1 }

// PassRuns lists the colours of the ends that a pass lays, in the order of the ends. It is empty in a
// plain warp.
func (p *Plan) PassRuns(pass wind.Pass) []EndRun {
	set := p.SetUpOf(pass)
	if set == nil {
		return nil
	}
	var runs []EndRun
	for end := pass.First; end <= pass.Last; end++ {
		colour := 0
		if pos := pass.PositionOf(end); pos >= 1 && pos <= len(set) {
			colour = set[pos-1]
		}
		runs = addRun(runs, EndRun{First: end, Last: end, Colour: colour})
	}
	return runs
}

// EndRuns lists the colours of all ends of the warp, from end 1 on. It is empty in a plain warp.
func (p *Plan) EndRuns() []EndRun {
	var runs []EndRun
	if p.ByColour() {
		end := 0
		for _, r := range p.Spec.Schedule.Order {
			runs = addRun(runs, EndRun{First: end + 1, Last: end + r.Ends, Colour: r.Colour})
			end += r.Ends
		}
		return runs
	}
	for _, c := range p.Chains {
		for _, pass := range c.Passes {
			for _, run := range p.PassRuns(pass) {
				runs = addRun(runs, run)
			}
		}
	}
	return runs
}

// addRun adds a run to those before it, or draws it together with the last.
func addRun(runs []EndRun, next EndRun) []EndRun {
	if last := len(runs) - 1; last >= 0 && runs[last].Colour == next.Colour {
		runs[last].Last = next.Last
		return runs
	}
	return append(runs, next)
}

// RunsText writes runs with their letters: "4 A, 8 B".
func RunsText(runs []EndRun) string {
	var parts []string
	for _, r := range runs {
		parts = append(parts, fmt.Sprintf("%d %c", r.Ends(), Letter(r.Colour)))
	}
	return strings.Join(parts, ", ")
}

// ColourUse is how much a striped warp takes of a colour.
type ColourUse struct {
	// Colour is counted from 1.
	Colour int
	// Ends is how many ends of the warp have it.
	Ends int
	// Packages is the most positions that have it at the same time, so as many packages are needed.
	Packages int
}

// ColourUses lists what the warp takes of each colour, in the order of the colours. It is empty in a
// plain warp.
func (p *Plan) ColourUses() []ColourUse {
	if !p.Striped() {
		return nil
	}
	uses := make([]ColourUse, len(p.Spec.Schedule.Colours))
	for i := range uses {
		uses[i].Colour = i + 1
	}
	for _, run := range p.EndRuns() {
		if run.Colour > 0 {
			uses[run.Colour-1].Ends += run.Ends()
		}
	}
	for _, set := range p.Spec.Schedule.SetUps {
		now := make([]int, len(uses)+1)
		for _, colour := range set {
			now[colour]++
		}
		for i := range uses {
			uses[i].Packages = max(uses[i].Packages, now[i+1])
		}
	}
	return uses
}
