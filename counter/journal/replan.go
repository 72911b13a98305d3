package journal

import (
	"errors"
	"fmt"
	"time"

	"millside/counter"
	"millside/plan"
)

// ErrBegun means that something was wound of a warp whose plan was to be changed.
var ErrBegun = errors.New("this warp is begun: its plan stays as it is")

// Rename gives a warp another name, 1 to 60 printable characters, whether it is begun, finished or neither. Its file
// stays where it is. Errors are those of [Open] and of [Record.Append]; a name that won't do is a
// [*measure.FieldError].
func (s Store) Rename(path, name string, at time.Time) error {
	r, err := Open(s.fs(), path)
	if err != nil {
		return err
	}
	if r.State().Plan.Spec.Name != name {
		_, err = r.Append(counter.Event{At: at, Kind: counter.Renamed, Text: name})
	}
	return errors.Join(err, r.Close())
}

// Replan opens the record of a warp that isn't begun and puts another plan in the place of its own: see
// [Record.Replan]. It is open for winding then.
func (s Store) Replan(path string, p *plan.Plan) (*Record, error) {
	r, err := Open(s.fs(), path)
	if err != nil {
		return nil, err
	}
	if err := r.Replan(p); err != nil {
		return nil, errors.Join(err, r.Close())
	}
	return r, nil
}

// Replan puts another plan in the place of that of a warp of which nothing is wound; else the error is [ErrBegun], and
// nothing is changed. The file is written anew beside and takes the place of the old one at one stroke. Other errors
// are those of [Record.Append].
func (r *Record) Replan(p *plan.Plan) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	if err := r.ready(); err != nil {
		return err
	}
	if r.state.Begun() || r.lost.Lines > 0 {
		return fmt.Errorf("%w: %s", ErrBegun, r.path)
	}
	if p == nil {
		return errors.New("a record needs a plan")
	}
	spec := p.Spec
	if spec.GoesWith == "" { // another plan of the warp goes with the same other one
		spec.GoesWith = r.state.Plan.Spec.GoesWith
	}
	p, err := plan.New(spec) // as it will be read again
	if err != nil {
		return err
	}
	body, err := appendHead(nil, p.Spec)
	if err != nil {
		return err
	}
	line, sum := seal(body, 0)
	if err := r.unchanged(); err != nil {
		return r.fails(err)
	}
	path, err := r.fsys.Real(r.path)
	if err != nil {
		return err
	}
	file, err := r.replace(path, line)
	if err != nil {
		return r.fails(fmt.Errorf("writing the plan anew: %w", err))
	}
	_ = r.file.Close() // it has no name any more
	r.file, r.own, r.renew, r.events, r.state = file, nil, nil, history{}, counter.NewState(p)
	r.head, r.lines, r.size, r.sum = line[:len(line)-1], 1, int64(len(line)), sum
	return nil
}
