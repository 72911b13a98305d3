package draft

import (
	"math/big"
	"strings"

	"millside/plan/measure"
)

// widest is the widest that one thread may be; more is taken as a slip.
const widest = measure.Metre

// spacing reads the width that each thread takes, the default of [WARP] and over it the lines of
// [WARP SPACING], and works out the sett from it.
func (r *reader) spacing() {
	v, line := r.sections["WARP"].number("spacing")
	lines := r.sections["WARP SPACING"]
	if v == "" && lines == nil {
		return
	}
	unit := r.unit()
	if unit == nil {
		return
	}
	var usual measure.Length
	if v != "" {
		usual = r.width("WARP", v, line, unit)
	}
	widths := make([]measure.Length, r.Threads)
	for i := range widths {
		widths[i] = usual
	}
	r.eachThread("WARP SPACING", func(thread int, value string, line int) {
		if w := r.width("WARP SPACING", value, line, unit); w > 0 {
			widths[thread] = w
		}
	})
	s := Sett{Threads: r.Threads}
	for _, w := range widths {
		if w == 0 {
			r.add("WARP SPACING", r.lineOf("WARP SPACING"), "not every thread has a spacing, so no sett follows")
			return
		}
		s.Width += w
	}
	inch := s.PerInch()
	if s.Absurd = inch.Cmp(big.NewRat(2, 1)) < 0 || inch.Cmp(big.NewRat(100, 1)) > 0; s.Absurd {
		if line == 0 {
			line = r.lineOf("WARP SPACING")
		}
		r.add("WARP", line, "the spacing comes to %s ends an inch, which can hardly be meant", inch.FloatString(1))
	}
	r.Sett = &s
}

// unit is the length of the unit that spacings are in, nil if that isn't known. The standard doesn't
// say what a decipoint is; it is taken as a tenth of a point of 1/72 inch.
func (r *reader) unit() *big.Rat {
	v, line := r.sections["WARP"].number("units")
	length := func(l measure.Length, part int64) *big.Rat { return big.NewRat(int64(l), part) }
	switch strings.ToLower(v) {
	case "decipoints":
		return length(measure.Inch, 720)
	case "inches":
		return length(measure.Inch, 1)
	case "centimeters":
		return length(measure.Centimetre, 1)
	}
	if v == "" {
		r.add("WARP", max(line, r.sections["WARP"].line), "the unit of the spacing isn't given, so no sett follows")
	} else {
		r.add("WARP", line, "the unit %s isn't known, so no sett follows", quote(v))
	}
	return nil
}

// width reads the width of a thread, rounded to the nearest nanometre, halves up; 0 with a warning if
// it isn't above nil and at most widest.
func (r *reader) width(name, value string, line int, unit *big.Rat) measure.Length {
	bad := func() measure.Length {
		r.add(name, line, "the spacing %s is no width of a thread and is left out", quote(value))
		return 0
	}
	if len(value) > 2*maxDigits || strings.Trim(value, "0123456789.") != "" {
		return bad()
	}
	n, ok := new(big.Rat).SetString(value)
	if !ok {
		return bad()
	}
	n.Mul(n, unit)
	n.Add(n, big.NewRat(1, 2))
	whole := new(big.Int).Quo(n.Num(), n.Denom())
	if whole.Sign() <= 0 || !whole.IsInt64() || measure.Length(whole.Int64()) > widest {
		return bad()
	}
	return measure.Length(whole.Int64())
}
