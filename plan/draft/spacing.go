package draft

import (
	"cmp"
	"math/big"
	"regexp"
	"slices"
	"strings"

	"millside/plan/figure"
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
	var usual *big.Rat
	if v != "" {
		usual = r.width("WARP", v, line, unit)
	}
	widths := slices.Repeat([]*big.Rat{usual}, r.Threads)
	r.eachThread("WARP SPACING", "WARP", r.Threads, func(thread int, value string, line int) {
		if w := r.width("WARP SPACING", value, line, unit); w != nil {
			widths[thread] = w
		}
	})
	all := new(big.Rat)
	alike := true
	for _, w := range widths {
		if w == nil {
			r.add("WARP SPACING", r.lineOf("WARP SPACING"), "not every thread has a spacing, so no sett follows")
			return
		}
		all.Add(all, w)
		alike = alike && w.Cmp(widths[0]) == 0
	}
	if !alike {
		for _, w := range widths {
			r.Widths = append(r.Widths, nearest(w))
		}
	}
	if line == 0 {
		line = r.lineOf("WARP SPACING")
	}
	r.sett(nearest(all), line)
}

// sett is what the threads and their width come to.
func (r *reader) sett(width measure.Length, line int) {
	s := Sett{Threads: r.Threads, Width: width}
	inch := s.PerInch()
	if s.Absurd = inch.Cmp(big.NewRat(2, 1)) < 0 || inch.Cmp(big.NewRat(100, 1)) > 0; s.Absurd {
		r.add("WARP", line, "the spacing comes to %s ends an inch, which can hardly be meant",
			figure.Signed(inch.FloatString(1)))
	}
	r.Sett = &s
}

// nearest rounds to the nearest nanometre, halves up.
func nearest(w *big.Rat) measure.Length {
	sum := new(big.Rat).Add(w, big.NewRat(1, 2))
	return measure.Length(new(big.Int).Quo(sum.Num(), sum.Denom()).Int64())
}

// unit is the length of the unit that spacings are in, nil if that isn't known. The standard has the first
// three, and doesn't say what a decipoint is; it is taken as a tenth of a point of 1/72 inch. The others
// are in use.
func (r *reader) unit() *big.Rat {
	v, line := r.sections["WARP"].number("units")
	length := func(l measure.Length, part int64) *big.Rat { return big.NewRat(int64(l), part) }
	switch strings.TrimSuffix(strings.ToLower(v), ".") {
	case "decipoints", "decipoint":
		return length(measure.Inch, 720)
	case "inches", "inch", "in":
		return length(measure.Inch, 1)
	case "centimeters", "centimeter", "centimetres", "centimetre", "cm":
		return length(measure.Centimetre, 1)
	case "millimeters", "millimeter", "millimetres", "millimetre", "mm":
		return length(measure.Millimetre, 1)
	}
	if v == "" {
		r.add("WARP", max(line, r.sections["WARP"].line), "the unit of the spacing isn't given, so no sett follows")
	} else {
		r.add("WARP", line, "the unit %s isn't known, so no sett follows", quote(v))
	}
	return nil
}

// spacingText is a spacing as programs write one: a decimal point or comma, as many figures as a double
// prints, and maybe a power of ten.
var spacingText = regexp.MustCompile(`^([0-9]{0,20})(?:[.,]([0-9]{0,30}))?(?:[eE]([+-]?[0-9]{1,2}))?$`)

// width reads the width of a thread, exactly; nil with a warning if it isn't above 0 and at most widest.
func (r *reader) width(name, value string, line int, unit *big.Rat) *big.Rat {
	m := spacingText.FindStringSubmatch(value)
	if m != nil && m[1]+m[2] != "" {
		n, ok := new(big.Rat).SetString("0" + m[1] + "." + m[2] + "0e" + cmp.Or(m[3], "0"))
		if ok && n.Mul(n, unit).Cmp(big.NewRat(1, 1)) >= 0 && n.Cmp(big.NewRat(int64(widest), 1)) <= 0 {
			return n
		}
	}
	r.add(name, line, "the spacing %s is no width of a thread and is left out", quote(value))
	return nil
}
