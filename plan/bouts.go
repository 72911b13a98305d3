package plan

import (
	"millside/plan/measure"
)

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
