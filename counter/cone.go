package counter

import (
	"fmt"
	"time"

	"millside/plan"
	"millside/plan/measure"
)

// ConeState is a cone that was put in place of another while the warp was wound.
type ConeState struct {
	// Number is the line of the record that notes it, by which it is taken back.
	Number int
	At     time.Time
	// Chain and Pass are the first pass that it feeds, counted from 1.
	Chain, Pass int
	// Position is the position of the paddle that it feeds, from 1.
	Position int
	// Weight is its weight with the tube, 0 if it wasn't weighed.
	Weight measure.Mass
}

// maxWeight bounds the weight of a cone: nobody lifts more beside a mill.
const maxWeight = 100 * measure.Kilogram

// newCone puts in a cone: for a pass that is laid, where the yarn ended in its middle, or for the next
// one. A second cone for the same position and pass stands for the first.
func (f *Folder) newCone(e Event) error {
	c, err := f.current(e)
	if err != nil {
		return err
	}
	if most := min(c.Laid+1, len(f.s.Current().Passes)); e.Pass < 1 || e.Pass > most {
		return &measure.FieldError{Field: "pass", Value: fmt.Sprint(e.Pass), Want: fmt.Sprintf("1 to %d", most)}
	}
	if e.Position < 1 || e.Position > f.s.Plan.Spec.Positions {
		return &measure.FieldError{Field: "position", Value: fmt.Sprint(e.Position),
			Want: fmt.Sprintf("1 to %d", f.s.Plan.Spec.Positions)}
	}
	if e.Weight < 0 || e.Weight > maxWeight {
		return &measure.FieldError{Field: "weight", Value: e.Weight.String(), Want: "up to " + maxWeight.String()}
	}
	f.s.Cones = append(f.s.Cones, ConeState{Number: f.line(), At: e.At, Chain: e.Chain, Pass: e.Pass,
		Position: e.Position, Weight: e.Weight})
	return nil
}

// ConesInUse lists every cone of the warp with the passes that it feeds: those that the plan begins with,
// and those put in since. [plan.Plan.Yarn] says of them what each has left and where it runs out. It is
// nil where the yarn's size isn't known.
func (s State) ConesInUse() []plan.Cone {
	if !s.valid() {
		return nil
	}
	cones := s.Plan.Cones()
	if cones == nil {
		return nil
	}
	for _, n := range s.Cones {
		from := s.Plan.PassOverall(n.Chain, n.Pass)
		for i := range cones {
			c := &cones[i]
			if c.Position != n.Position || c.FromPass > from || c.ToPass != 0 && c.ToPass < from {
				continue
			}
			next := *c
			next.FromPass, next.Gross = from, n.Weight
			if next.Gross == 0 {
				next.Tube = 0
			} else {
				next.Tube = min(s.Plan.Spec.Yarn.Tube, next.Gross)
			}
			if c.FromPass == from || from == 1 {
				*c = next
			} else {
				c.ToPass = from - 1
				cones = append(cones, next)
			}
			break
		}
	}
	return cones
}
