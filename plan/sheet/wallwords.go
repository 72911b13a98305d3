package sheet

import (
	"fmt"
	"slices"
	"strings"

	"millside/plan"
	"millside/plan/figure"
	"millside/plan/measure"
)

// Summary is the line below the title.
func (w *Wall) Summary() figure.Cell {
	text := figure.Say("%s, %s", figure.Counted(w.Ends, "end", "ends"), figure.Counted(w.Passes, "pass", "passes"))
	if w.Chains > 1 {
		text = text.And(", %s", figure.Counted(w.Chains, "chain", "chains"))
	}
	text = text.And("; %s", w.Length)
	if w.Turns != "" {
		text = text.And(", %s", w.turns)
	}
	return text.And("; %s", w.Time)
}

// Summary is the line below the title.
func (s *Sheet) Summary() figure.Cell {
	if len(s.About) > 0 {
		return s.About
	}
	return figure.Say("%s, %s, %s, %s", figure.Counted(s.Ends, "end", "ends"),
		figure.Counted(s.Passes, "pass", "passes"),
		figure.Counted(s.Chains, "chain", "chains"), s.Length.As(s.Units.Long(), 2))
}

// String names the colour with its letter, and what the warp takes of it.
func (c Colour) String() string {
	return fmt.Sprintf("%s %s: %s, %s at once", c.Letter, c.Name, measure.Counted(c.Ends, "end", "ends"),
		measure.Counted(c.Packages, "package", "packages"))
}

// Title says which passes go so.
func (w Way) Title() string {
	switch {
	case w.Passes == "":
		return "Every " + w.Direction + " pass"
	case w.Passes == othersPasses:
		return "Every other " + w.Direction + " pass"
	case strings.ContainsAny(w.Passes, " ,;"):
		return measure.Capital(w.Direction) + ", passes " + w.Passes
	}
	return measure.Capital(w.Direction) + ", pass " + w.Passes
}

// String says what the group meets on the pass, in the order in which it meets it.
func (w Way) String() string {
	text := w.words
	if w.Round != "" {
		text += "; " + w.Round
	}
	return text + "."
}

// Heading says which chain it is and how it goes; of is the number of chains.
func (c Chain) Heading(of int) string {
	text := "Passes"
	if of > 1 {
		text = fmt.Sprintf("Chain %d of %d: %s", c.Number, of,
			c.Ends)
	}
	return fmt.Sprintf("%s: %d, stops %s", text, c.Passes, c.Finish)
}

// Heading says after what the steps come; of is the number of chains.
func (e Ending) Heading(of int) string {
	switch {
	case of == 1:
		return "After the last pass"
	case len(e.Chains) == of:
		return "After the last pass of each chain"
	case len(e.Chains) == 1:
		return fmt.Sprintf("After the last pass of chain %d", e.Chains[0])
	}
	return "After the last pass of chains " + plan.Listed(e.Chains)
}

// TimesText heads a block that is gone through more than once.
func (b Block) TimesText() string {
	steps := "this step"
	if len(b.Steps) > 1 {
		steps = fmt.Sprintf("these %d steps, the one after the other", len(b.Steps))
	}
	return fmt.Sprintf("%d times %s:", b.Times, steps)
}

// Carried says what each pass of the step lays.
func (s Step) Carried() string {
	word := "positions"
	if !strings.ContainsAny(s.Positions, ", ") {
		word = "position"
	}
	return fmt.Sprintf("%s in %s %s", measure.Counted(s.Ends, "end", "ends"), word, s.Positions)
}

// EachEnds says how many ends each pass of the step lays.
func (s Step) EachEnds() string { return measure.Counted(s.Ends, "end", "ends") }

// String says when the tie is made, and round what.
func (t Tie) String() string {
	groups := fmt.Sprintf("groups %d to %d", t.From, t.To)
	if t.From == t.To {
		groups = fmt.Sprintf("group %d", t.To)
	}
	return fmt.Sprintf("after pass %d round %s, %s so far", t.After, groups, measure.Counted(t.Total, "end", "ends"))
}

// Key explains the signs of the sheet, as far as they are on it.
func (w *Wall) Key() []string {
	key := []string{"One box is one pass; tick it when the pass is laid. An outward pass goes from the lease to the " +
		"counting cross, a return pass back."}
	if slices.ContainsFunc(w.Wound, func(c Chain) bool {
		return len(c.Blocks) > 0 &&
			c.Blocks[0].Steps[0].Work != ""
	}) {
		key = append(key, "Cut off, thread, tie on: the numbers are positions of the paddle.")
	}
	if w.Striped() {
		key = append(key, "In a row of letters, position 1 first: a letter carries an end, - stays parked "+
			"(threaded, carries no end), · is empty.")
	}
	if slices.ContainsFunc(w.Ways, func(way Way) bool { return strings.Contains(way.Round, "flick") }) {
		key = append(key, "To flick the paddle is to change the opening: the ends in the holes and those in the "+
			"slots change places.")
	}
	return key
}
