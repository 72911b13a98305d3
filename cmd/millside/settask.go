package main

import (
	"fmt"
	"io"
	"millside/plan"
)

// settAsk is what a sett is asked for.
type settAsk struct {
	yarn   plan.YarnSize
	weave  plan.Weave
	factor plan.DiameterFactor
	units  plan.LengthUnitSystem
}

// otherSett is what another published factor gives.
type otherSett struct {
	factor plan.DiameterFactor
	start  plan.Sett
}

func (ask settAsk) others() ([]otherSett, error) {
	var list []otherSett
	for _, f := range plan.DiameterFactors() {
		if f.Hundredths == ask.factor.Hundredths {
			continue
		}
		help, err := plan.HelpSett(ask.yarn, ask.weave, f, ask.units)
		if err != nil {
			return nil, err
		}
		list = append(list, otherSett{f, help.Start})
	}
	return list, nil
}

func settText(w io.Writer, ask settAsk, help *plan.SettHelp, others []otherSett) {
	fmt.Fprintf(w, "Yarn: %s, %s\n\n", clean(ask.yarn.Notation()), ask.yarn.PerMass(ask.units))
	for _, r := range help.Rows {
		note := r.Usual // here where the figure is from, or what it is good for
		r.Usual = ""
		rowText(w, r, true)
		if note != "" && note != help.Note {
			fmt.Fprintf(w, "    %s\n", wrap(clean(note), 4))
		}
	}
	fmt.Fprintf(w, "\n%s\n\n", wrap(fmt.Sprintf("This is %s: weave one, wash it, look.", help.Note), 0))
	fmt.Fprintln(w, "Other published factors:")
	for _, o := range others {
		fmt.Fprintf(w, "  %s\n", wrap(fmt.Sprintf("%s for %s: start at %s (%s)", hundredths(o.factor.Hundredths), o.factor.For, o.start.Shown(1), o.factor.Source), 4))
	}
}

// hundredths writes a factor.
func hundredths(n int) string { return fmt.Sprintf("%d.%02d", n/100, n%100) }
