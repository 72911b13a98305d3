package cloth

import (
	"strings"
	"testing"

	"millside/plan/measure"
)

// Own examples, by hand, at 10 ends an inch in a layer, and without loss. A blanket 60 in wide is woven folded on
// 30 in: 60 x 10 = 600 ends at 20 an inch. Two cloths of 30 in take as many. A tube that lies flat on 15 in takes
// 2 x 15 x 10 = 300. Three layers opened to 60 in lie on 20 in. Ends are rounded up to as many in each layer.
func TestLayers(t *testing.T) {
	for _, c := range []struct {
		finished measure.Length
		layers   int
		join     Join
		ends     int
		inReed   measure.Length
		sett     string
	}{
		{60 * measure.Inch, 2, DoubleWidth, 600, 30 * measure.Inch, "20 an inch"},
		{30 * measure.Inch, 2, Separate, 600, 30 * measure.Inch, "20 an inch"},
		{15 * measure.Inch, 2, Tube, 300, 15 * measure.Inch, "20 an inch"},
		{60 * measure.Inch, 3, DoubleWidth, 600, 20 * measure.Inch, "30 an inch"},
		{20 * measure.Inch, 1, Separate, 200, 20 * measure.Inch, "10 an inch"},
		{20 * measure.Inch, 0, Separate, 200, 20 * measure.Inch, "10 an inch"},
		{measure.Inch * 101 / 10, 2, Separate, 202, measure.Inch * 101 / 10, "20 an inch"},
		{measure.Inch * 101 / 20, 2, Separate, 102, measure.Inch * 101 / 20, "20 an inch"},
	} {
		w := Width{Finished: c.finished, Layers: c.layers, Join: c.join}
		if err := w.Sett.UnmarshalText([]byte("10 an inch")); err != nil {
			t.Fatal(err)
		}
		e, err := w.Ends()
		if err != nil {
			t.Fatal(err)
		}
		if e.Body != c.ends || e.InReed != c.inReed || w.InReed(w.Sett).String() != c.sett {
			t.Errorf("%s, %d layers %s: %d ends, %s in the reed, %s", c.finished, c.layers, c.join, e.Body, e.InReed,
				w.InReed(w.Sett))
		}
		if f := e.Fits[0]; f.Ends == c.ends && c.ends%100 == 0 && f.Finished != c.finished {
			t.Errorf("%d ends give %s, want %s", f.Ends, f.Finished, c.finished)
		}
		if got := e.Sleyed(w, c.inReed); c.ends%100 == 0 && got.RealFinished != c.finished {
			t.Errorf("%s in the reed is %s finished, want %s", c.inReed, got.RealFinished, c.finished)
		}
	}
}

func TestLayersRefuse(t *testing.T) {
	for _, c := range []struct {
		layers int
		join   Join
		sett   string
		want   string
	}{
		{5, Separate, "10 an inch", "1 to 4"},
		{3, Tube, "10 an inch", "2 layers for a tube"},
		{1, DoubleWidth, "10 an inch", "2 to 4 layers"},
		{4, Separate, "900 an inch", "1000 an inch"},
	} {
		w := Width{Finished: measure.Inch, Layers: c.layers, Join: c.join}
		if err := w.Sett.UnmarshalText([]byte(c.sett)); err != nil {
			t.Fatal(err)
		}
		if _, err := w.Ends(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%d layers, %s: %v, want %q", c.layers, c.join, err, c.want)
		}
	}
}

// Own example: 10 picks an inch in each of two layers over 36 in, 30 in wide: 2 x 360 x 30 in = 21,600 in.
func TestWeftOfLayers(t *testing.T) {
	w := Weft{Width: 30 * measure.Inch, Layers: 2, Woven: measure.Yard}
	if err := w.Picks.UnmarshalText([]byte("10 an inch")); err != nil {
		t.Fatal(err)
	}
	y, err := w.Estimate()
	if err != nil || y.Picks != 720 || y.Length != 21600*measure.Inch {
		t.Errorf("%+v, %v", y, err)
	}
}
