package recordout

import (
	"io"

	"millside/cmd/millside/internal/planout"
	"millside/cmd/millside/internal/prose"
	"millside/counter"
	"millside/plan"
	"millside/plan/wind"
)

// paddlePass is the pass whose set-up the paddle has or gets next: the next one, or the last where the
// chain is wound.
func paddlePass(s counter.State) (wind.Pass, bool) {
	passes := s.Current().Passes
	if next, ok := s.NextPass(); ok {
		return next, true
	}
	if len(passes) == 0 {
		return wind.Pass{}, false
	}
	return passes[len(passes)-1], true
}

// setUpRows names the colours of the current set-up, and what is changed to get there.
func setUpRows(w io.Writer, s counter.State) {
	pass, ok := paddlePass(s)
	if !ok || !s.Plan.Striped() {
		return
	}
	prose.Row(w, "Set-up", "%d of %d: positions %s", pass.SetUp, len(s.Plan.Spec.Schedule.SetUps),
		s.Plan.SetUpText(s.Plan.SetUpOf(pass)))
	if s.Wound() {
		return
	}
	if changes := s.Plan.ChangesBefore(s.Current(), pass.Number); len(changes) > 0 {
		prose.Row(w, "Change first", "%s", s.Plan.ChangesText(changes))
	}
	prose.Row(w, "It lays", "%s, by the letters above", plan.RunsText(s.Plan.PassRuns(pass)))
}

// setUpShown is the current set-up of a striped warp, nil for a plain one.
func setUpShown(s counter.State) *planout.SetUpJSON {
	pass, ok := paddlePass(s)
	if !ok || !s.Plan.Striped() {
		return nil
	}
	for _, made := range planout.SetUpsToJSON(s.Plan) {
		if made.Number == pass.SetUp {
			return &made
		}
	}
	return nil
}
