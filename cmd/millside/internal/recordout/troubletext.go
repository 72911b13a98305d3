package recordout

import (
	"fmt"
	"io"

	"millside/cmd/millside/internal/prose"
	"millside/counter"
)

// troubleText writes the count ties that were noted, and what went wrong, those taken back included.
func troubleText(w io.Writer, s counter.State) {
	if len(s.Ties) > 0 {
		fmt.Fprint(w, "\nCount ties:\n")
	}
	for _, t := range s.Ties {
		noteLine(w, prose.When(t.At), fmt.Sprintf("chain %d, %d laid: %s", t.Chain, t.Pass, prose.Count(t.Ends, "end")))
	}
	if len(s.Incidents) > 0 {
		fmt.Fprint(w, "\nTo see to:\n")
	}
	for _, in := range s.Incidents {
		text := fmt.Sprintf("number %d, chain %d, %s", in.Number, in.Chain, in.Words(s.Plan.Spec.Units))
		switch {
		case in.Withdrawn:
			text += "; taken back"
		case in.Undone:
			text += "; the pass is not laid"
		}
		noteLine(w, prose.When(in.At), text)
	}
}

// incidentEventText writes an incident as it was noted.
func incidentEventText(e counter.Event) string {
	text := fmt.Sprintf("chain %d, pass %d", e.Chain, e.Pass)
	if e.What.OfEnd() {
		text += fmt.Sprintf(", position %d", e.Position)
	}
	text += ": " + e.What.Words()
	if e.HasPlace {
		text += ", " + e.Place.String() + " from the lease"
	}
	if e.Text != "" {
		text += ": " + e.Text
	}
	return text
}
