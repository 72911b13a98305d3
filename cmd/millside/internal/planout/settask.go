package planout

import (
	"fmt"
	"io"

	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/sheetout"
	"millside/plan/athand"
	"millside/plan/cloth"
	"millside/plan/figure"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/sheet"
)

// SettAsk is what a sett is asked for.
type SettAsk struct {
	Yarn   measure.YarnSize
	Weave  measure.Weave
	Factor measure.DiameterFactor
	Units  measure.LengthUnitSystem
	// Face is what shows in the cloth: but for a balanced one it stands in place of the weave, and Weft, which is like
	// the warp where it is the zero value, matters.
	Face cloth.Face
	Weft measure.YarnSize
	// Reeds is the reeds at hand: what they give near the sett to start at is told.
	Reeds []athand.NamedReed
}

// otherSett is what another published factor gives.
type otherSett struct {
	factor measure.DiameterFactor
	start  measure.Sett
}

// Help is the sett that a factor gives.
func (ask SettAsk) Help(f measure.DiameterFactor) (*measure.SettHelp, error) {
	if ask.Face != cloth.Balanced {
		return ask.Face.Sett(ask.Yarn, ask.Weft, f, ask.Units)
	}
	return measure.HelpSett(ask.Yarn, ask.Weave, f, ask.Units)
}

// Others is what the other published factors give for the same yarn and weave.
func (ask SettAsk) Others() ([]otherSett, error) {
	var list []otherSett
	for _, f := range measure.DiameterFactors() {
		if f.Hundredths == ask.Factor.Hundredths {
			continue
		}
		help, err := ask.Help(f)
		if err != nil {
			return nil, err
		}
		list = append(list, otherSett{f, help.Start})
	}
	return list, nil
}

// SettText writes a sett to begin a sample with, and what others would give.
func SettText(w io.Writer, ask SettAsk, help *measure.SettHelp, others []otherSett) {
	name := prose.Clean(ask.Yarn.Shown())
	if perMass := ask.Yarn.PerMass(ask.Units); perMass != name {
		name += ", " + perMass
	}
	fmt.Fprintf(w, "Yarn: %s\n\n", name)
	for _, r := range help.Rows {
		note := r.Usual // here where the figure is from, or what it is good for
		r.Usual = ""
		sheetout.RowText(w, r, true)
		if note != "" && note != help.Note {
			fmt.Fprintf(w, "    %s\n", prose.Wrap(prose.Clean(note), 4))
		}
	}
	fmt.Fprintf(w, "\n%s\n\n", prose.Wrap(fmt.Sprintf("This is %s: weave one, wash it, look.", help.Note), 0))
	fmt.Fprintln(w, "Other published factors:")
	for _, o := range others {
		fmt.Fprintf(w, "  %s\n", prose.Wrap(fmt.Sprintf("%s for %s: start at %s (%s)", hundredths(o.factor.Hundredths),
			o.factor.For, o.start.Shown(1), o.factor.Source), 4))
	}
	if list := ask.reedSetts(help); len(list) > 0 {
		fmt.Fprintln(w)
		sheetout.PartText(w, sheet.Part{Title: "Your reeds near that start", Table: sheet.SettsTable(list, ask.Units),
			Notes: []string{sheet.SettsNote}}, false)
	}
}

// reedSetts is what each reed at hand gives near the sett to start at.
func (ask SettAsk) reedSetts(help *measure.SettHelp) []athand.ReedSetts {
	return athand.SettsOf(ask.Reeds, loom.Reed{}, help.Start, 0)
}

// hundredths writes a factor.
func hundredths(n int) string { return figure.Signed(fmt.Sprintf("%d.%02d", n/100, n%100)) }
