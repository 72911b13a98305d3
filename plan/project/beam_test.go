package project

import (
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/cloth"
	"millside/plan/field"
	"millside/plan/internal/loomtest"
	"millside/plan/internal/measuretest"
	"millside/plan/measure"
	"millside/plan/times"
)

// The beam goes by the sett that the reed really gives, and says how groups suit its sections.
func TestBeamRows(t *testing.T) {
	s := plan.DefaultSpec()
	s.Ends, s.Group = 440, 10
	s.Loom.Sett, s.Loom.Reed = measuretest.Sett(t, "20.2 an inch"), loomtest.Reed(t, "10 dents an inch")
	s.Loom.BeamSection = 2 * measure.Inch
	for _, c := range []struct {
		group int
		value string
		warns bool
	}{{10, "4 of 10 ends", false}, {12, "3, and 4 ends of one more", true}} {
		s.Group = c.group
		s.Loom.Sett = measuretest.Sett(t, "20 an inch")
		pr, err := New(s, times.Pace{})
		if err != nil {
			t.Fatal(err)
		}
		rows := pr.BeamRows()
		last := rows[len(rows)-1]
		if got := last.Value.String(); got != c.value || (last.Warning != "") != c.warns ||
			rows[1].Value.String() != "11" {
			t.Errorf("groups of %d: %+v", c.group, rows)
		}
	}
	s.Loom.Sett, s.Group = measuretest.Sett(t, "20.32 an inch"), 10
	s.Loom.Reed = loomtest.Reed(t, "40 in 10 cm")
	pr, err := New(s, times.Pace{})
	if err != nil || pr.Beam.Ends[0] != 40 || pr.Beam.Ends[1] != 41 {
		t.Errorf("at 20.32 an inch a section of 2 in holds %v, %v", pr.Beam, err)
	}
	s.Loom.BeamSection = measure.Millimetre
	if _, err := New(s, times.Pace{}); len(measure.FieldErrors(err)) == 0 ||
		measure.FieldErrors(err)[0].Field != field.BeamSection.Name {
		t.Errorf("a section of a millimetre: %v", err)
	}
}

// What shows in the cloth is told where the yarn is known, and a sett that doesn't suit it stands at the sett's field.
func TestFaced(t *testing.T) {
	s := plan.DefaultSpec()
	s.Loom.Face, s.Loom.Sett = cloth.WeftFaced, measuretest.Sett(t, "20 an inch")
	if pr, err := New(s, times.Pace{}); err != nil || pr.FacedRows() != nil {
		t.Errorf("without a yarn: %v", err)
	}
	s.Yarn.Size = measuretest.Yarn(t, measure.Cotton, 8, 2)
	pr, err := New(s, times.Pace{})
	if err != nil {
		t.Fatal(err)
	}
	if said := pr.Settles(field.SettOf); !strings.Contains(said, "too close for a weft-faced cloth") ||
		pr.Settles(field.Reed) != "" || len(pr.FacedRows()) != 3 {
		t.Errorf("20 an inch for a weft-faced cloth says %q", said)
	}
}
