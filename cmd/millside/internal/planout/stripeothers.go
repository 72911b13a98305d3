package planout

import (
	"fmt"
	"io"
	"time"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/prose"
	"millside/plan/measure"
	"millside/plan/sheet"
	"millside/plan/stripe"
)

const (
	paddlesTitle = "On another paddle; quick figures, a plan for it may take less"
	changeTitle  = "A small change that winds far faster (a quick figure; only if you like it)"
)

// othersText says what other paddles would give, and which small change of the order winds far faster.
func othersText(w io.Writer, s *asked.Striped) {
	if len(s.Paddles) > 0 {
		fmt.Fprintf(w, "\n%s:\n", paddlesTitle)
		for _, o := range s.Paddles {
			fmt.Fprintf(w, "  %s\n", prose.Wrap(prose.Clean(paddleText(s, o)), 6))
		}
	}
	if s.Change != nil {
		fmt.Fprintf(w, "\n%s:\n  %s\n", changeTitle, prose.Wrap(prose.Clean(changeText(s.Change)), 6))
	}
}

// OthersPart is the same as a part of the whole plan; it holds nothing for a plain warp.
func OthersPart(s *asked.Striped) sheet.Part {
	part := sheet.Part{ID: "others", Title: "Another paddle, a small change"}
	if s == nil {
		return part
	}
	for _, o := range s.Paddles {
		part.Notes = append(part.Notes, measure.Capital(paddleText(s, o))+".")
	}
	if len(part.Notes) > 0 {
		part.Notes = append([]string{paddlesTitle + "."}, part.Notes...)
	}
	if s.Change != nil {
		part.Notes = append(part.Notes, changeTitle+": "+changeText(s.Change)+".")
	}
	return part
}

func paddleText(s *asked.Striped, o stripe.OtherPaddle) string {
	return fmt.Sprintf("%s; %s", quickTime(o.Total), s.PaddleWords(o))
}

func changeText(c *stripe.Change) string {
	return fmt.Sprintf("%s: %s, %s, would take %s, %s less", c.Words, c.Order, prose.Count(c.Ends, "end"),
		quickTime(c.Total), quickTime(c.Saved))
}

// quickTime shows a quick figure to the minute.
func quickTime(d time.Duration) string {
	d = d.Round(time.Minute)
	switch hours, minutes := d/time.Hour, d%time.Hour/time.Minute; {
	case hours == 0:
		return fmt.Sprintf("about %d min", minutes)
	case minutes == 0:
		return fmt.Sprintf("about %d h", hours)
	default:
		return fmt.Sprintf("about %d h %d min", hours, minutes)
	}
}

// paddleJSON is a quick figure of what another paddle would give.
type paddleJSON struct {
	Positions int        `json:"positions"`
	Name      string     `json:"name,omitempty"` // of one that is at hand
	Packages  []needJSON `json:"packages"`
	Passes    int        `json:"passes"`
	Halts     int        `json:"halts"`
	Total     timeJSON   `json:"total"`
}

// needJSON is how many packages of a colour are threaded at once.
type needJSON struct {
	Colour   string `json:"colour"`
	Packages int    `json:"packages"`
}

// smallChangeJSON is a small change of the order that winds far faster, a quick figure.
type smallChangeJSON struct {
	Words    string   `json:"words"`
	Notation string   `json:"notation"`
	Ends     int      `json:"ends"`
	Total    timeJSON `json:"total"`
	Saved    timeJSON `json:"saved"`
}

func paddlesToJSON(s *asked.Striped) []paddleJSON {
	list := []paddleJSON{}
	for _, o := range s.Paddles {
		one := paddleJSON{Positions: o.Positions, Name: o.Name, Passes: o.Passes, Halts: o.Halts,
			Total: timeToJSON(o.Total)}
		for c, n := range o.Packages {
			one.Packages = append(one.Packages, needJSON{s.Order.Colours[c].Name, n})
		}
		list = append(list, one)
	}
	return list
}

func changeOfOrder(c *stripe.Change) *smallChangeJSON {
	if c == nil {
		return nil
	}
	return &smallChangeJSON{c.Words, c.Order.String(), c.Ends, timeToJSON(c.Total), timeToJSON(c.Saved)}
}
