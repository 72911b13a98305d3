package cloth

import (
	"cmp"
	"fmt"
	"slices"

	"millside/plan/internal/ratio"
	"millside/plan/measure"
)

// EndsFit is a number of ends near the one that the width asks for.
type EndsFit struct {
	// Ends is the whole warp with its selvedges, Body what it has without doubling and floating ones.
	Ends, Body int
	// Repeats is how many whole pattern repeats the body holds before the balancing part, where
	// WholeRepeats says that they fill it.
	Repeats      int
	WholeRepeats bool
	// Passes is how many passes the group needs; WholePasses says that every one is full.
	Passes      int
	WholePasses bool
	// Finished is the width of the finished cloth that this many ends give, rounded to the nearest.
	Finished measure.Length
	// Why says in words what the count is good for.
	Why string
}

// fits lists the wanted count and its neighbours, the nearest first, below before above.
func (c Width) fits(e *Ends) []EndsFit {
	extra := e.Doubling + e.Floating
	seen := map[int]bool{}
	var list []EndsFit
	take := func(ends int) {
		if body := ends - extra; body >= 1 && body >= e.Doubling && ends <= measure.MaxEnds && !seen[ends] {
			seen[ends] = true
			list = append(list, c.fit(ends, extra, e.Wanted))
		}
	}
	take(e.Wanted)
	repeat, group := max(c.Repeat, 1), max(c.Group, 1)
	// The counts extra + Balance + k x Repeat hold whole repeats, the multiples of the group whole
	// passes. Counts that do both recur after group steps of the repeat at the latest, if at all.
	below := (e.Body - c.Balance) / repeat
	if e.Body < c.Balance {
		below = -1
	}
	if repeat > 1 {
		take(extra + c.Balance + below*repeat)
		take(extra + c.Balance + (below+1)*repeat)
	}
	take(e.Wanted / group * group)
	take((e.Wanted + group - 1) / group * group)
	for step, low, high := 0, false, false; step <= group && !(low && high); step++ {
		if n := extra + c.Balance + (below-step)*repeat; !low && n%group == 0 {
			take(n)
			low = true
		}
		n := extra + c.Balance + (below+step)*repeat
		if !high && n >= e.Wanted && n%group == 0 {
			take(n)
			high = true
		}
	}
	slices.SortStableFunc(list, func(a, b EndsFit) int {
		return cmp.Or(cmp.Compare(measure.Distance(a.Ends, e.Wanted), measure.Distance(b.Ends, e.Wanted)),
			cmp.Compare(a.Ends, b.Ends))
	})
	return list
}

// Take puts a count that doesn't follow from the width, such as that of stripes, before the others, unless it is
// among them. The width is that of which the ends were worked out.
func (e *Ends) Take(c Width, ends int) {
	if slices.ContainsFunc(e.Fits, func(f EndsFit) bool { return f.Ends == ends }) {
		return
	}
	extra := min(e.Doubling+e.Floating, ends)
	e.Fits = slices.Insert(e.Fits, 0, c.fit(ends, extra, e.Wanted))
}

// fit describes one count.
func (c Width) fit(ends, extra, wanted int) EndsFit {
	f := EndsFit{Ends: ends, Body: ends - extra}
	f.Finished = c.finished(ratio.Quo(ratio.Of(f.Body), c.counted().PerNanometre()))
	if c.Repeat > 0 && f.Body >= c.Balance {
		f.Repeats = (f.Body - c.Balance) / c.Repeat
		f.WholeRepeats = (f.Body-c.Balance)%c.Repeat == 0
	}
	if c.Group > 0 {
		f.Passes = (ends + c.Group - 1) / c.Group
		f.WholePasses = ends%c.Group == 0
	}
	f.Why = f.why(c, wanted)
	return f
}

func (f EndsFit) why(c Width, wanted int) string {
	say := "as many as the width asks for"
	if f.Ends != wanted {
		than := "fewer"
		if f.Ends > wanted {
			than = "more"
		}
		say = fmt.Sprintf("%s %s than the width asks for, %s finished",
			measure.Counted(measure.Distance(f.Ends, wanted), "end", "ends"), than, f.Finished.As(c.Units.Short(), 2))
	}
	switch {
	case f.WholeRepeats && c.Balance > 0:
		say += fmt.Sprintf("; %s and the balancing part", measure.Counted(f.Repeats, "repeat", "repeats"))
	case f.WholeRepeats:
		say += fmt.Sprintf("; %s", measure.Counted(f.Repeats, "whole repeat", "whole repeats"))
	case c.Repeat > 0:
		say += "; the last repeat is broken off"
	}
	if c.layers() > 1 && f.Body%c.layers() != 0 {
		say += "; not as many ends in each layer"
	}
	switch {
	case f.WholePasses:
		say += fmt.Sprintf("; %s", measure.Counted(f.Passes, "full pass", "full passes"))
	case c.Group > 0:
		say += fmt.Sprintf("; the last of %s is short or has spare ends", measure.Counted(f.Passes, "pass", "passes"))
	}
	return say
}
