package frame

import (
	"math/big"
	"strings"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// Mill is a warping mill's measure.
type Mill struct {
	// Circumference is the way once round the mill: 20 cm to 20 m.
	Circumference measure.Length `json:"circumference"`
	// PegStep is the distance along the circumference from one place where the end pegs can stand to
	// the next: 1 cm up to one turn.
	PegStep measure.Length `json:"peg_step"`
	// Rise is how far the warp climbs in one turn: nothing up to one circumference.
	Rise measure.Length `json:"rise"`
	// Height is how far the warp may climb, 0 where it isn't known, to 10 m.
	Height measure.Length `json:"height,omitzero"`
}

// MillPath is the way of the warp on a mill.
type MillPath struct {
	// Steps is how many peg steps lie between the two end pegs.
	Steps int
	// Length is the real length of the path, rounded to the nearest nanometre.
	Length measure.Length
	// PerTurn is the length of one whole turn, rounded to the nearest nanometre.
	PerTurn measure.Length
	// turns is Steps x PegStep / Circumference.
	turns *big.Rat
}

// OnMill says whether the path goes round a mill; on a board there are no turns.
func (p MillPath) OnMill() bool { return p.turns != nil }

// Turns gives the turns round the mill with at most two decimals, rounded to the nearest.
func (p MillPath) Turns() string { return p.InTurns().Digits() }

// InTurns is Turns with its noun: "3.5 turns", "1 turn".
func (p MillPath) InTurns() figure.Number { return figure.Of(p.turns, 2, "turn", "turns") }

// Path finds where the end pegs go for a wanted length. The length is rounded up, never down, to what
// the pegs give: a warp that is a little long costs yarn, one that is short costs the cloth.
//
// A turn that climbs is longer than the circumference: it is the hypotenuse of the circumference and
// the rise, sqrt(C^2 + R^2), as on any helix (sciencing.com, "helical length"). The comparison that
// chooses the step is done on the squares, in whole numbers, so it has no rounding.
//
// A mill without size, or a wanted length that isn't above 0, gives the zero MillPath; [plan.Spec.Check]
// is what says why.
func (m Mill) Path(wanted measure.Length) MillPath {
	if wanted <= 0 || m.Circumference <= 0 || m.PegStep <= 0 || m.Rise < 0 {
		return MillPath{}
	}
	c, r := big.NewInt(int64(m.Circumference)), big.NewInt(int64(m.Rise))
	turnSq := new(big.Int).Add(new(big.Int).Mul(c, c), new(big.Int).Mul(r, r))
	// n steps reach the wanted length when n^2 * step^2 * (C^2+R^2) >= wanted^2 * C^2, so n is the
	// square root of the quotient, rounded up.
	target := new(big.Int).Mul(big.NewInt(int64(wanted)), c)
	target.Mul(target, target)
	step := big.NewInt(int64(m.PegStep))
	perStep := new(big.Int).Mul(new(big.Int).Mul(step, step), turnSq)
	n := new(big.Int).Sqrt(new(big.Int).Div(target, perStep))
	for new(big.Int).Mul(new(big.Int).Mul(n, n), perStep).Cmp(target) < 0 {
		n.Add(n, big.NewInt(1))
	}
	turns := new(big.Rat).SetFrac(new(big.Int).Mul(n, step), c)
	return MillPath{
		Steps:   int(n.Int64()),
		Length:  scaledRoot(turns, turnSq),
		PerTurn: scaledRoot(big.NewRat(1, 1), turnSq),
		turns:   turns,
	}
}

// scaledRoot is k x sqrt(sq), rounded to the nearest whole number.
func scaledRoot(k *big.Rat, sq *big.Int) measure.Length {
	// Twice the value, cut down, then halved with rounding: the root of 4 k^2 sq.
	num := new(big.Int).Mul(k.Num(), k.Num())
	num.Mul(num, sq).Mul(num, big.NewInt(4))
	den := new(big.Int).Mul(k.Denom(), k.Denom())
	twice := new(big.Int).Sqrt(num.Div(num, den))
	return measure.Length(twice.Add(twice, big.NewInt(1)).Rsh(twice, 1).Int64())
}

// Check reports what is out of range.
func (m Mill) Check() []error {
	round := field.Circumference
	limit := min(max(m.Circumference, round.Least), round.Most)
	within := func(f *field.Field, l measure.Length) error {
		if l < f.Least || l > limit {
			return f.Wrong(l.String(), field.Bound(f.Least)+" to "+limit.String())
		}
		return nil
	}
	var errs []error
	for _, err := range []error{round.CheckLength(m.Circumference), within(field.PegStep, m.PegStep),
		within(field.Rise, m.Rise), field.MillHeight.CheckLength(m.Height)} {
		if err != nil {
			errs = append(errs, err)
		}
	}
	return errs
}

// AtTurns is the place on the path after so many turns from the near end peg, which a weaver writes as
// "2", "2.5" or "2 1/2"; rounded to the nearest nanometre. The error is a [*measure.FieldError] without a field
// name. On a board, which has no turns, every number is refused.
func (p MillPath) AtTurns(text string) (measure.Length, error) {
	wrong := &measure.FieldError{Value: text, Want: figure.Signed("a number of turns from the lease, such as 2.5")}
	n, rest, err := measure.LeadingNumber(strings.TrimSpace(text))
	if err != nil || strings.TrimSpace(rest) != "" || p.PerTurn == 0 {
		return 0, wrong
	}
	along, ok := ratio.Nearest.Whole(ratio.Mul(n, ratio.Of(p.PerTurn)))
	if !ok || measure.Length(along) > measure.MaxLength {
		return 0, wrong
	}
	return measure.Length(along), nil
}

// PassTurns is how many turns of the mill a pass takes. A board has none: each distance between two of
// its pegs, about a yard, counts as half a turn of a mill of two yards (no source). The number is the
// caller's own.
func (p MillPath) PassTurns() *big.Rat {
	if p.turns == nil {
		return big.NewRat(int64(p.Steps), 2)
	}
	return new(big.Rat).Set(p.turns)
}
