package counter

import (
	"errors"
	"fmt"

	"millside/plan"
	"millside/plan/wind"
)

// turnTwist is the twist that the planned turn after a pass, counted from 1, adds behind the paddle.
func turnTwist(c plan.Chain, pass int) wind.HalfTurns {
	t := c.Passes[pass-1].Twist
	if pass > 1 {
		t -= c.Passes[pass-2].Twist
	}
	return t
}

// wrongTurn notes that the group went the wrong way round the peg after the last pass. The turn that was
// made is the opposite of the planned one, so the twist is off by twice that.
func (f *Folder) wrongTurn(e Event) error {
	c, err := f.lastPass(e)
	if err != nil {
		return err
	}
	if n := len(c.WrongTurns); n > 0 && c.WrongTurns[n-1] == e.Pass {
		return fmt.Errorf("the wrong turn after pass %d is noted already", e.Pass)
	}
	c.WrongTurns, c.TurnLines = append(c.WrongTurns, e.Pass), append(c.TurnLines, f.line())
	c.Surplus -= 2 * turnTwist(f.s.Current(), e.Pass)
	return nil
}

// lastPass is the current chain, if the event is about its last pass laid and the paddle still carries
// the group.
func (f *Folder) lastPass(e Event) (*ChainState, error) {
	c, err := f.current(e)
	if err != nil {
		return nil, err
	}
	if c.Laid == 0 {
		return nil, fmt.Errorf("chain %d has no pass yet", e.Chain)
	}
	if e.Pass != c.Laid {
		return nil, fmt.Errorf("pass %d won't do: the last pass laid of chain %d is %d", e.Pass, e.Chain, c.Laid)
	}
	return c, unfinished(c)
}

// unturn takes the wrong turns of the passes above a number of passes back, before the count goes down:
// the group goes back round the pegs as it came.
func (f *Folder) unturn(c *ChainState, chain plan.Chain, passes int) {
	for n := len(c.WrongTurns); n > 0 && c.WrongTurns[n-1] > passes; n-- {
		c.Surplus += 2 * turnTwist(chain, c.WrongTurns[n-1])
		c.WrongTurns, c.TurnLines = c.WrongTurns[:n-1], c.TurnLines[:n-1]
	}
}

// righted says that there is no more twist than the plan has.
func (f *Folder) righted() error {
	c := &f.s.Chains[f.s.Chain-1]
	if c.Surplus == 0 {
		return errors.New("there is no twist to take out: no wrong turn is noted")
	}
	if err := unfinished(c); err != nil {
		return err
	}
	c.Surplus = 0
	return nil
}

// LastTurn is the way in which the group went round the end peg after the last pass laid: as planned, or the
// other way where a wrong turn is noted. Wrong says that it is. There is none before the first pass.
func (s State) LastTurn() (turn wind.Turn, wrong, ok bool) {
	k := s.Laid()
	if k == 0 {
		return 0, false, false
	}
	turn = s.Current().Passes[k-1].TurnAfter
	if turns := s.Chains[s.Chain-1].WrongTurns; len(turns) > 0 && turns[len(turns)-1] == k {
		return otherTurn(turn), true, true
	}
	return turn, false, true
}

func otherTurn(t wind.Turn) wind.Turn {
	if t == wind.Clockwise {
		return wind.Counterclockwise
	}
	return wind.Clockwise
}

// Twist is the net twist in the group behind the paddle, in half turns, clockwise above 0: what the
// plan has there after the last pass laid ([wind.Pass]), and what wrong turns have added to it.
//
// A wrong turn is the opposite of the turn in the plan, and the sum runs on from it. So a second wrong
// turn at the other end of the mill takes the twist of the first one out again; who does that on purpose
// notes it as a wrong turn too. [Righted] takes all the surplus out. A pass that is undone takes its
// wrong turn with it: the group goes back round the peg as it came, so that twist which was taken out
// by hand before is then missing. A recount changes numbers and not yarn: the surplus stays. A new chain
// begins without any, since the paddle comes free when the group is cut.
func (s State) Twist() wind.HalfTurns {
	k := s.Laid()
	if k == 0 {
		return s.surplus()
	}
	return s.Current().Passes[k-1].Twist + s.surplus()
}

// surplus is the twist of the current chain beyond the plan.
func (s State) surplus() wind.HalfTurns {
	if !s.valid() {
		return 0
	}
	return s.Chains[s.Chain-1].Surplus
}

// TwistAdvice says in plain words how much twist too much lies behind the paddle, and how to take it out
// now or at a peg to come. It is empty if there is none, and once the finishing has begun.
//
// "Clockwise" is meant as for the turns of the plan. No printed source was found for the way in which the
// paddle itself is turned, hence the advice to look whether the ends open.
func (s State) TwistAdvice() string {
	surplus := s.surplus()
	if surplus == 0 || len(s.Chains[s.Chain-1].Ticked) > 0 {
		return ""
	}
	n, way, other := surplus, wind.Clockwise, wind.Counterclockwise
	if surplus < 0 {
		n, way, other = -surplus, other, way
	}
	text := fmt.Sprintf("Turn the paddle %d half turns %s (%d %s too many lie behind it) and see that the ends open", n,
		other, n, way)
	if later := s.rightLater(surplus); later != "" {
		text += ". Or " + later
	}
	return text + "."
}

// TwistBrief is the advice in so few words that it finds room on the smallest screen: both ways to take the twist out,
// as one clause; empty if there is none.
func (s State) TwistBrief() string {
	surplus := s.surplus()
	if surplus == 0 || len(s.Chains[s.Chain-1].Ticked) > 0 {
		return ""
	}
	n, way := surplus, wind.Counterclockwise
	if surplus < 0 {
		n, way = -surplus, wind.Clockwise
	}
	text := fmt.Sprintf("twist: turn the paddle %d half turns %s", n, way)
	if k := s.rightPass(surplus); k > 0 {
		text += fmt.Sprintf(", or go round after pass %d %s", k, otherTurn(s.Current().Passes[k-1].TurnAfter))
	}
	return text
}

// rightPass is the pass after which a turn the other way takes two half turns out: the first one to come whose planned
// turn would add to the surplus. It is 0 if the chain ends before.
func (s State) rightPass(surplus wind.HalfTurns) int {
	c := s.Current()
	for k := s.Laid() + 1; k < len(c.Passes); k++ {
		if (turnTwist(c, k) > 0) == (surplus > 0) {
			return k
		}
	}
	return 0
}

// rightLater says at which peg that turn is made; empty if the chain ends before.
func (s State) rightLater(surplus wind.HalfTurns) string {
	k := s.rightPass(surplus)
	if k == 0 {
		return ""
	}
	pass, where, peg := s.Current().Passes[k-1], "at the next peg", "near"
	if k > s.Laid()+1 {
		where = "at the peg after the next"
	}
	if pass.Direction.Far() {
		peg = "far"
	}
	planned, other := pass.TurnAfter, otherTurn(pass.TurnAfter)
	text := fmt.Sprintf("%s: after pass %d go round the %s end peg %s this once, not %s", where, k, peg, other, planned)
	if surplus > 2 || surplus < -2 {
		text += ", which takes out 2 of them"
	}
	return text
}
