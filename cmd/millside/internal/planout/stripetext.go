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
	"millside/plan/stripe"
)

// StripesText writes how a striped warp is wound, and what it was chosen from.
func StripesText(w io.Writer, p *plan.Plan, s *asked.Striped) {
	fmt.Fprint(w, "\nStripes:\n\n")
	if s.Draft != nil {
		draftRows(w, s.Draft)
	}
	prose.Row(w, "Order", "%s", p.Spec.Stripes)
	prose.Row(w, "Set-ups", "%s", setUpsText(s.Schedule.Cost))
	prose.Row(w, "First set-up", "positions %s", p.SetUpText(p.Spec.Schedule.SetUps[0]))
	prose.Row(w, "Time", "%s", timeText(s.Schedule.Total))
	prose.Row(w, "Weights", "%s", weightsText(s.Weights))
	prose.Row(w, "Proof", "%s", proofText(s.Schedule))
	coloursText(w, p)
	waysText(w, s)
}

// draftRows says which draft the stripes are from.
func draftRows(w io.Writer, d *asked.DraftFile) {
	title := ""
	if d.Title != "" {
		title = fmt.Sprintf("\"%s\", ", d.Title)
	}
	prose.Row(w, "Draft", "%s%s, %s", title, prose.Count(d.Threads, "thread"), sideText(d, d.Side))
	prose.Row(w, "Its sett", "%s", settOffered(d))
}

// setUpsText counts set-ups, changes and stops.
func setUpsText(c stripe.Cost) string {
	text := fmt.Sprintf("%d: %s threaded at first", c.Stops+1, isAre(c.Threaded, "position"))
	if c.Stops == 0 {
		return text + ", no change after that"
	}
	return text + fmt.Sprintf(", then %s in %s", prose.Count(c.Changes, "change"), prose.Count(c.Stops, "stop"))
}

func isAre(n int, noun string) string {
	if n == 1 {
		return prose.Count(n, noun) + " is"
	}
	return prose.Count(n, noun) + " are"
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

// weightsText shows the times that the schedule is judged by; each is a flag's value.
func weightsText(w stripe.Weights) string {
	return fmt.Sprintf("in minutes: a pass %s, a change of a cone %s, a stop for changes %s, a pass of fewer ends %s more, "+
		"a finish at the counting cross %s more, the way back where every pass goes outward %s", asked.MinutesOf(w.Pass), asked.MinutesOf(w.Change),
		asked.MinutesOf(w.Stop), asked.MinutesOf(w.Short), asked.MinutesOf(w.AtCross), asked.MinutesOf(w.Back))
}

// proofText says how sure it is that there is no better schedule.
func proofText(s *stripe.Schedule) string {
	if s.Proof.Optimal {
		return s.Proof.Why
	}
	return fmt.Sprintf("%s. No way takes less than %s, so the gap is %s (%s)", s.Proof.Why, timeText(s.Proof.Bound), timeText(s.Proof.Gap), percentOf(s.Proof.Gap, s.Total))
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
		rows = append(rows, []any{fmt.Sprintf("  %c", plan.Letter(use.Colour)), prose.Clean(c.Name), c.Shade, prose.Count(use.Ends, "end"), prose.Count(use.Packages, "package") + " at once"})
	}
	prose.Table(w, rows)
}

// waysText sets other ways to wind the warp beside the plan.
func waysText(w io.Writer, s *asked.Striped) {
	fmt.Fprint(w, "\nOther ways to wind the same stripes:\n")
	for _, way := range s.Ways {
		fmt.Fprintf(w, "  %s\n      %s\n", prose.Wrap(prose.Clean(way.Name), 2), prose.Wrap(otherWay(way), 6))
	}
}

// otherWay says what a way costs, and what is saved.
func otherWay(way stripe.Way) string {
	if !way.Possible {
		return "not within the limits that were given"
	}
	text := fmt.Sprintf("%s: %s, %s in %s; ", timeText(way.Total), prose.Count(way.Cost.Passes, "pass"), prose.Count(way.Cost.Changes, "change"), prose.Count(way.Cost.Stops, "stop"))
	switch {
	case way.Saved > 0:
		return text + fmt.Sprintf("this plan saves %s (%s)", timeText(way.Saved), percentOf(way.Saved, way.Total))
	case way.Saved < 0:
		return text + fmt.Sprintf("it takes %s less than this plan", timeText(-way.Saved))
	}
	return text + "it takes as long as this plan"
}

// stripedPassesOf counts the passes of a striped warp in words.
func stripedPassesOf(p *plan.Plan) string {
	least, most := plan.MaxPositions, 0
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
