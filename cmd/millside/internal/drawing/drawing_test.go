package drawing

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/measure"
	"millside/plan/sheet"
)

// What is drawn lies within the picture, for mills and boards of any length.
func TestDrawingsKeepWithin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		round := measure.Length(rapid.Int64Range(int64(20*measure.Centimetre), int64(20*measure.Metre)).Draw(t,
			"round"))
		step := round / measure.Length(rapid.IntRange(1, 20).Draw(t, "steps in a turn"))
		mill := DrawMill(&sheet.MillDrawing{Turns: rapid.IntRange(0, 200).Draw(t, "turns"),
			Beyond: step.Times(rapid.IntRange(1, 3).Draw(t, "steps")), Where: "some turns", Circumference: round,
			PegStep: step})
		board := DrawBoard(make([]measure.Length, rapid.IntRange(1, 200).Draw(t, "distances")), measure.Metric)
		reed := DrawReed(&sheet.ReedDrawing{Edge: rapid.IntRange(0, 3).Draw(t, "edge"), Repeat: 2,
			Dents: rapid.SliceOfN(rapid.IntRange(0, 40), 1, 30).Draw(t, "dents")})
		for _, d := range []Drawing{mill, board, reed} {
			for _, s := range d.Shapes {
				if s.Kind != "path" && (s.X < 0 || s.X > d.W || s.Y < 0 || s.Y > d.H || s.R < 0) {
					t.Fatalf("%s: %+v is outside %d x %d", d.Title, s, d.W, d.H)
				}
			}
		}
	})
}

// The sections drawn are those nearest the centre, as the list has them.
func TestRaddleDrawing(t *testing.T) {
	for _, middle := range []bool{false, true} {
		r := &sheet.RaddleDrawing{MiddleSpace: middle}
		for at := -20; at <= 20; at++ {
			if at != 0 || middle {
				r.Sections = append(r.Sections, sheet.DrawnSection{FromCentre: at, Ends: 100 + at, Groups: 2, Cut: 1})
			}
		}
		d := DrawRaddle(r)
		var texts []string
		for _, s := range d.Shapes {
			if s.Kind == "text" {
				texts = append(texts, s.Text)
			}
		}
		all := " " + strings.Join(texts, " ") + " "
		if !strings.Contains(all, " 88 12 ") || !strings.Contains(all, " 112 12 ") || strings.Contains(all, " 87 ") ||
			!strings.Contains(d.Caption, "outer 16 sections") {
			t.Errorf("drawn %v: %q, %s", middle, all, d.Caption)
		}
	}
	if d := DrawRaddle(&sheet.RaddleDrawing{}); len(d.Shapes) != 0 {
		t.Error("an empty raddle is drawn")
	}
}
