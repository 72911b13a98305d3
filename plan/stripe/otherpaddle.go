package stripe

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"time"

	"millside/plan/measure"
	"millside/plan/stripe/schedule"
)

// Sizes of paddle that are tried.
const (
	fewestPositions = 6
	mostPositions   = 20
	// figureEnds is how many ends a warp may have for quick figures: of longer ones they wouldn't be quick.
	figureEnds = 5000
	// muchPart is the part of a time by which another must differ to be worth a line.
	muchPart = 10
)

// OtherPaddle is a quick figure of what another paddle would give for the same stripes: found by a short search,
// so that a plan made for that paddle may well take less.
type OtherPaddle struct {
	// Positions is the size of the paddle, Name what it is called among the things at hand, empty where it isn't
	// one of them.
	Positions int
	Name      string
	// Packages is how many packages of each colour are threaded at once at the most, colour 1 first.
	Packages []int
	// Passes, Halts and Total are those of the schedule that was found.
	Passes, Halts int
	Total         time.Duration
}

// OtherPaddles tries the stripes on other paddles, by the same limits and times: those at hand, a name for each
// number of positions, and of the sizes from 6 to 20 positions those with which the time changes much, by a
// tenth of the size listed before. The smallest comes first. There are none for a warp of very many ends, and
// where ctx ends first, none of those that weren't tried by then.
func (p *Plan) OtherPaddles(ctx context.Context, atHand map[int]string) []OtherPaddle {
	if len(p.ends) > figureEnds {
		return nil
	}
	sizes := make([]int, 0, mostPositions)
	for n := fewestPositions; n <= mostPositions; n++ {
		sizes = append(sizes, n)
	}
	for n := range atHand {
		if n >= 1 && n <= measure.MaxPositions {
			sizes = append(sizes, n)
		}
	}
	slices.Sort(sizes)
	own := p.limits.Positions
	var smaller, larger []OtherPaddle
	for _, n := range slices.Compact(sizes) {
		if n == own {
			continue
		}
		o, ok := p.onPaddle(ctx, n)
		if !ok {
			continue
		}
		o.Name = atHand[n]
		if n < own {
			smaller = better(smaller, o)
		} else {
			larger = better(larger, o)
		}
	}
	slices.Reverse(smaller)
	smaller = p.changing(smaller)
	slices.Reverse(smaller)
	return append(smaller, p.changing(larger)...)
}

// PaddleWords says in words what another paddle takes, without the time: "16 positions: 46 passes, 1 halt; packages of
// black 8, white 8".
func (p *Plan) PaddleWords(o OtherPaddle) string {
	var packages []string
	for c, n := range o.Packages {
		packages = append(packages, fmt.Sprintf("%s %d", p.Order.Colours[c].Name, n))
	}
	name := measure.Counted(o.Positions, "position", "positions")
	if o.Name != "" {
		name += fmt.Sprintf(" (%s, at hand)", o.Name)
	}
	return fmt.Sprintf("%s: %s, %s; packages of %s", name, measure.Counted(o.Passes, "pass", "passes"),
		measure.Counted(o.Halts, "halt", "halts"), strings.Join(packages, ", "))
}

// onPaddle is the quick figure for a paddle of so many positions; false where it can't be done.
func (p *Plan) onPaddle(ctx context.Context, positions int) (OtherPaddle, bool) {
	s := figure(ctx, p.ends, p.limits, positions, p.Times)
	if s == nil {
		return OtherPaddle{}, false
	}
	o := OtherPaddle{Positions: positions, Passes: s.Sum.Passes, Halts: s.Sum.Halts, Total: s.Total}
	o.Packages = make([]int, len(p.Order.Colours))
	for _, set := range s.SetUps {
		held := make([]int, len(o.Packages)+1)
		for _, c := range set {
			held[c]++
		}
		for c := range o.Packages {
			o.Packages[c] = max(o.Packages[c], held[c+1])
		}
	}
	return o, true
}

// figure is the schedule of a short search for a paddle of so many positions; nil where there is none.
func figure(ctx context.Context, ends []int, l schedule.Limits, positions int, t schedule.Times) *schedule.Schedule {
	if ctx.Err() != nil {
		return nil
	}
	l.Figure, l.Positions = true, positions
	if len(l.Sizes) > 0 {
		l.Sizes = slices.DeleteFunc(slices.Clone(l.Sizes), func(size int) bool { return size > positions })
		if len(l.Sizes) == 0 {
			return nil
		}
	}
	found, err := lately.search(ctx, ends, l, t, nil)
	if err != nil {
		return nil // the limits leave no way to do it
	}
	if found.Cheapest != nil {
		return found.Cheapest
	}
	return found.Taken
}

// better adds the figure of a larger paddle. What a smaller one does a larger one does as well, with positions
// that stay empty: a figure is never above that of a smaller paddle.
func better(list []OtherPaddle, o OtherPaddle) []OtherPaddle {
	if n := len(list); n > 0 && list[n-1].Total < o.Total {
		was := list[n-1]
		o.Packages, o.Passes, o.Halts, o.Total = was.Packages, was.Passes, was.Halts, was.Total
	}
	return append(list, o)
}

// changing keeps the figures, in order away from the plan's own paddle, of the paddles at hand and of those with
// which the time changes much.
func (p *Plan) changing(list []OtherPaddle) []OtherPaddle {
	last := p.Schedule.Total
	kept := slices.DeleteFunc(list, func(o OtherPaddle) bool {
		much := (o.Total - last).Abs() >= last/muchPart
		away := o.Positions < p.limits.Positions
		if away != (o.Total > last) {
			much = false // a short search that found less, or more, than a paddle of that size takes
		}
		if much || o.Name != "" {
			last = o.Total
		}
		return !much && o.Name == ""
	})
	// Where a paddle at hand gives just what a size before it gives, its line says all that there is to say.
	out := kept[:0]
	for i, o := range kept {
		if o.Name != "" || i+1 == len(kept) || !o.gives(kept[i+1]) {
			out = append(out, o)
		}
	}
	return out
}

// gives says whether both paddles give the same.
func (o OtherPaddle) gives(q OtherPaddle) bool {
	return o.Total == q.Total && o.Passes == q.Passes && o.Halts == q.Halts && slices.Equal(o.Packages, q.Packages)
}
