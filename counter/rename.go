package counter

import (
	"errors"
	"time"

	"millside/plan/measure"
)

// Rename is a name that a warp had until it got another.
type Rename struct {
	At   time.Time
	From string
}

// Apart is the text of a [Joined] event after which the warp goes with no other.
const Apart = "apart"

// aside says whether an event of the kind didn't happen at the mill: it begins nothing and takes no time.
func (k Kind) aside() bool { return k == Renamed || k == Joined }

// Begun says whether anything happened at the mill: a new name alone begins nothing, nor does another warp beside it.
func (s State) Begun() bool { return s.Events > len(s.Renames)+s.Joins }

// joined says with which other warp this one goes.
func (f *Folder) joined(e Event) error {
	text := e.Text
	if text == Apart {
		text = ""
	}
	if err := errors.Join(checkText("goes with", e.Text), measure.CheckGoesWith(text)); err != nil {
		return err
	}
	f.s.Joins++
	with := *f.s.Plan
	with.Spec.GoesWith = text
	f.s.Plan, f.other = &with, nil
	return nil
}

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
