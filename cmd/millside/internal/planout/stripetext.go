package planout

import (
	"fmt"
	"io"
	"math/big"
	"strings"
	"time"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/plan"
	"millside/plan/measure"
	"millside/plan/stripe"
	"millside/plan/stripe/schedule"
	"millside/plan/times"
)

// StripesText writes how a striped warp is wound, and what it was chosen from.
func StripesText(w io.Writer, p *plan.Plan, s *asked.Striped) {
	fmt.Fprint(w, "\nStripes:\n\n")
	if s.Draft != nil {
		draftRows(w, s.Draft)
	}
	prose.Row(w, "Order", "%s", p.Spec.StripesText())
	prose.Row(w, "Way", "%s", s.Way.Words())
	prose.Row(w, "Work", "%s", stripe.WorkWords(s.Schedule))
	if p.ByColour() {
		prose.Row(w, "At the loom", "the ends are picked from %s in turn, by the order list of the wall sheet "+
			"('millside sheet')", prose.Count(len(p.ColourUses()), "lease"))
	}
	prose.Row(w, "Set-ups", "%d", len(p.Spec.Schedule.SetUps))
	prose.Row(w, "First set-up", "positions %s", p.SetUpText(p.Spec.Schedule.SetUps[0]))
	prose.Row(w, "Minutes", "%s", minutesText(s.Times))
	prose.Row(w, "Proof", "%s", proofText(s))
	coloursText(w, p)
	kindsText(w, p)
	waysText(w, s)
	othersText(w, s)
}

// draftRows says which draft the stripes are from.
func draftRows(w io.Writer, d *asked.DraftFile) {
	title := ""
	if d.Title != "" {
		title = fmt.Sprintf("\"%s\", ", d.Title)
	}
	prose.Row(w, "Draft", "%s%s, %s", title, prose.Count(d.Threads, "thread"), wovenSide(d))
	if made, err := d.Warp(d.Use.Side); err == nil {
		for _, said := range made.Said {
			prose.Row(w, "Made of it", "%s", said)
		}
	}
	prose.Row(w, "Its sett", "%s", d.SettText())
}

// wovenSide says on which side thread 1 is taken to be: it matters for the threading even where the colours
// are the same from both sides.
func wovenSide(d *asked.DraftFile) string {
	text := sideText(d, d.Use.Side)
	if !d.SideGiven && d.Threading != nil {
		text += "; for the threading, thread 1 is taken to be on the " + d.Use.Side.String()
	}
	return text
}

// DraftRows writes what a plain warp was made of.
func DraftRows(w io.Writer, d *asked.DraftFile) {
	fmt.Fprint(w, "\nDraft:\n\n")
	draftRows(w, d)
}

// timeText writes a time in hours, minutes and seconds, rounded to the nearest second, and says so if that
// isn't exact.
func timeText(d time.Duration) string {
	rounded := d.Round(time.Second)
	about := ""
	if rounded != d {
		about = "about "
	}
	var parts []string
	for _, unit := range []struct {
		d    time.Duration
		name string
	}{{time.Hour, "h"}, {time.Minute, "min"}, {time.Second, "s"}} {
		if n := rounded / unit.d; n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, unit.name))
			rounded -= n * unit.d
		}
	}
	if len(parts) == 0 {
		parts = []string{"0 s"}
	}
	return about + strings.Join(parts, " ")
}

// minutesText shows the times that the schedule is judged by; each is a flag's value.
func minutesText(t schedule.Times) string {
	return fmt.Sprintf("a pass %s, a halt %s, to cut off an end %s, to tie one on %s, to thread a package %s, a "+
		"finish at the counting cross %s more",
		times.MinutesText(t.Pass), times.MinutesText(t.Halt), times.MinutesText(t.Cut), times.MinutesText(t.Tie),
		times.MinutesText(t.Thread), times.MinutesText(t.Far))
}

// proofText says how the schedule stands to the best that there can be.
func proofText(s *asked.Striped) string {
	f := s.Schedule.Proof
	if f.Least || f.Bound == 0 {
		return f.Why
	}
	return fmt.Sprintf("%s Nothing takes less than %s: the gap is %s (%s)", f.Why, timeText(f.Bound), timeText(f.Gap),
		percentOf(f.Gap, s.Schedule.Total))
}

// shownKinds is how many kinds of pass are listed; the passes list them all.
const shownKinds = 12

// kindsText lists the kinds of pass with their names.
func kindsText(w io.Writer, p *plan.Plan) {
	fmt.Fprint(w, "\nKinds of pass:\n")
	kinds := p.Kinds()
	for i, k := range kinds {
		if i == shownKinds && len(kinds) > shownKinds+1 {
			fmt.Fprintf(w, "  and %d more; --passes shows each\n", len(kinds)-shownKinds)
			break
		}
		text := fmt.Sprintf("%-5s %s: %s", plan.KindName(k.Number), prose.Count(k.Passes, "pass"), p.KindText(k))
		fmt.Fprintf(w, "  %s\n", prose.Wrap(prose.Clean(text), 8))
	}
}

// percentOf is a part of a time in percent, rounded to the nearest whole one, halves up.
func percentOf(part, whole time.Duration) string {
	if whole <= 0 {
		return "0%"
	}
	r := new(big.Rat).Mul(big.NewRat(int64(part), int64(whole)), big.NewRat(100, 1))
	return r.FloatString(0) + "%"
}

// coloursText lists the colours with their letters, and what the warp takes of each.
func coloursText(w io.Writer, p *plan.Plan) {
	fmt.Fprint(w, "\nColours, each with its letter:\n")
	var rows [][]any
	for _, use := range p.ColourUses() {
		c, _ := p.Colour(use.Colour) // it is one of the plan's own
		rows = append(rows, []any{fmt.Sprintf("  %c", plan.Letter(use.Colour)), prose.Clean(c.Name), c.Shade,
			prose.Count(use.Ends, "end"), prose.Count(use.Packages, "package") + " at once"})
	}
	prose.Table(w, rows)
}

// waysText sets other ways to wind the warp beside the plan.
func waysText(w io.Writer, s *asked.Striped) {
	fmt.Fprint(w, "\nOther ways to wind the same stripes:\n")
	for _, way := range s.Alternatives() {
		name := way.Words
		if way.Choose != "" && way.Possible {
			name += " (--way " + way.Choose + ")"
		}
		fmt.Fprintf(w, "  %s\n      %s\n", prose.Wrap(prose.Clean(name), 2), prose.Wrap(prose.Clean(otherWay(way)), 6))
	}
}

// otherWay says what a way takes, and what is saved.
func otherWay(way stripe.Alternative) string {
	if !way.Possible {
		return "not with these stripes, this paddle and these limits"
	}
	text := fmt.Sprintf("%s: %s; ", timeText(way.Total), way.Work)
	switch {
	case way.Saved > 0:
		text += fmt.Sprintf("this plan saves %s (%s)", timeText(way.Saved), percentOf(way.Saved, way.Total))
	case way.Saved < 0:
		text += fmt.Sprintf("it takes %s less than this plan", timeText(-way.Saved))
	default:
		text += "it takes as long as this plan"
	}
	if way.Loom != "" {
		text += "; " + way.Loom
	}
	return text
}

// stripedPassesOf counts the passes of a striped warp in words.
func stripedPassesOf(p *plan.Plan) string {
	least, most := measure.MaxPositions, 0
	for _, c := range p.Chains {
		for _, pass := range c.Passes {
			least, most = min(least, pass.Ends()), max(most, pass.Ends())
		}
	}
	text := fmt.Sprintf("%d, of %s", p.Passes(), prose.Count(most, "end"))
	if least < most {
		text = fmt.Sprintf("%d, of %d to %s", p.Passes(), least, prose.Count(most, "end"))
	}
	text += fmt.Sprintf(" on a paddle of %s", prose.Count(p.Spec.Positions, "position"))
	if len(p.Chains) > 1 {
		text += fmt.Sprintf("; %d chains", len(p.Chains))
	}
	return text
}
