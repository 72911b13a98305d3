package counter

import (
	"time"

	"millside/plan/measure"
)

// Rename is a name that a warp had until it got another.
type Rename struct {
	At   time.Time
	From string
}

// Begun says whether anything happened at the mill: a new name alone begins nothing.
func (s State) Begun() bool { return s.Events > len(s.Renames) }

// renamed gives the warp another name. Everything else of its plan stays.
func (f *Folder) renamed(e Event) error {
	if err := measure.CheckName(e.Text); err != nil {
		return err
	}
	f.s.Renames = append(f.s.Renames, Rename{At: e.At, From: f.s.Plan.Spec.Name})
	named := *f.s.Plan
	named.Spec.Name = e.Text
	f.s.Plan, f.other = &named, nil
	return nil
}
