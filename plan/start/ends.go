package start

import (
	"math/big"
	"strconv"

	"millside/plan/field"
	"millside/plan/figure"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
	"millside/plan/project"
)

// knownEnds works out the ends from what says so, and refuses a second thing that says otherwise.
func (s *solver) knownEnds() error {
	k := s.k
	n, from := k.Ends, field.Ends.Name
	s.body = n - s.selvedges()
	if k.striped() && s.Find != TheEnds {
		size := s.order.Size()
		if n != 0 {
			if err := agree(field.Ends, strconv.Itoa(n), size, n, "the stripes"); err != nil {
				return err
			}
		}
		n, from, s.body = size, "the stripes", size-s.selvedges()
		s.step("ends of the stripes", ends(n), "the ends of each stripe, added", nil)
	}
	if n != 0 && k.width() && !k.sett() {
		if err := s.settOfWidth(n); err != nil {
			return err
		}
		s.take(n)
		return nil
	}
	if k.FinishedSett != (measure.Sett{}) && s.spec.Loom.Sett.IsZero() {
		if k.FinishedWidth == 0 && n == 0 {
			return field.FinishedWidth.Wrong("", "the width of the finished piece in which the ends were counted")
		}
		s.settOfPiece()
	}
	for _, w := range []struct {
		f     *field.Field
		width measure.Length
		ends  func() (int, error)
	}{{field.FinishedWidth, k.FinishedWidth, s.endsOfFinished}, {field.ReedSpan, k.ReedWidth, s.endsOfReed}} {
		if w.width == 0 || !k.sett() {
			continue
		}
		lines := len(s.Lines)
		got, err := w.ends()
		if err != nil {
			return err
		}
		if n != 0 {
			if err := agree(w.f, w.width.String(), n, got, from); err != nil {
				return err
			}
			s.Lines = s.Lines[:lines]
			continue
		}
		n, from = got, w.f.Name
	}
	if s.Find == TheEnds && k.striped() && n != 0 {
		n = s.repeatsIn(n)
		if n == 0 {
			return field.StripesOf.Wrong(measure.Shortened(s.spec.Stripes),
				"fewer ends: the width takes not one repeat")
		}
	}
	if n == 0 {
		return nil
	}
	s.take(n)
	return s.widths()
}

// take takes over the number of ends.
func (s *solver) take(n int) { s.spec.Ends, s.HasEnds = n, true }

// ends shows a number of ends.
func ends(n int) figure.Cell { return cell(figure.Counted(n, "end", "ends")) }

// selvedges is the ends that take no width.
func (s *solver) selvedges() int { return 2*s.spec.Cloth.Width.Doubled + s.spec.Cloth.Width.Floating }

// left is what is left of the width in the reed when the cloth is washed.
func (s *solver) left() *big.Rat {
	w := s.spec.Cloth.Width
	return ratio.Mul(w.DrawIn.Left(), w.Shrinkage.Left())
}

// short shows a width.
func (s *solver) short(l measure.Length) figure.Number { return l.As(s.spec.Units.Short(), 2) }

// settOfPiece is the sett in the reed of a finished piece that is to be repeated: the cloth is narrower than the warp
// in the reed, so that its ends lie closer.
func (s *solver) settOfPiece() {
	w := s.spec.Cloth.Width
	exact := ratio.Mul(s.k.FinishedSett.Rat(), s.left())
	reed := ratio.Quo(ratio.Of(nearestInt(ratio.Mul(exact, ratio.Of(100)))), ratio.Of(100))
	got, err := measure.SettOf(reed, s.k.FinishedSett.Unit())
	if err != nil {
		return // the ends of the width refuse it
	}
	s.spec.Loom.Sett = got
	s.step("sett in the reed", cell(got.As(2)), "ends counted in the cloth x (1 - shrinkage) x (1 - draw-in)",
		figure.Say("%s x (1 - %s) x (1 - %s) = %s", s.k.FinishedSett.As(2), w.Shrinkage.As(), w.DrawIn.As(), got.As(2)))
}

func nearestInt(r *big.Rat) int64 {
	n, _ := ratio.Nearest.Whole(r)
	return n
}

// settOfWidth is the sett that a number of ends has in a width.
func (s *solver) settOfWidth(n int) error {
	width := s.k.ReedWidth
	if width == 0 {
		width = s.inReed(s.k.FinishedWidth)
	}
	if s.body < 1 {
		return field.Ends.Wrong(strconv.Itoa(n), "more ends than the selvedges add")
	}
	per := s.spec.Units.SettUnit()
	exact := ratio.Quo(ratio.Mul(ratio.Of(s.body), ratio.Of(per.Width())), ratio.Of(width))
	rounded := ratio.Quo(ratio.Of(nearestInt(ratio.Mul(exact, ratio.Of(100)))), ratio.Of(100))
	got, err := measure.SettOf(rounded, per)
	if err != nil {
		return measure.InField(err, field.SettOf.Name)
	}
	s.spec.Loom.Sett = got
	s.step("sett in the reed", cell(got.As(2)), "ends / width in the reed",
		figure.Say("%d / %s = %s", s.body, s.short(width), got.As(2)))
	return nil
}

// inReed is the width that a finished width has in the reed, rounded up, with its steps.
func (s *solver) inReed(finished measure.Length) measure.Length {
	w := s.spec.Cloth.Width
	off, _ := measure.LengthOf(ratio.Up, ratio.Quo(ratio.Of(finished), w.Shrinkage.Left()))
	reed, _ := measure.LengthOf(ratio.Up, ratio.Quo(ratio.Of(finished), s.left()))
	s.step("width off the loom", cell(s.short(off)), "finished width / (1 - shrinkage)",
		figure.Say("%s / (1 - %s) = %s", s.short(finished), w.Shrinkage.As(), s.short(off)))
	s.step(field.ReedSpan.Name, cell(s.short(reed)), "width off the loom / (1 - draw-in)",
		figure.Say("%s / (1 - %s) = %s", s.short(off), w.DrawIn.As(), s.short(reed)))
	return reed
}

// endsOfFinished is the ends that the finished width takes. Of a piece that is to be repeated they are those that
// were counted in it.
func (s *solver) endsOfFinished() (int, error) {
	if !s.k.FinishedSett.IsZero() {
		body := s.k.FinishedSett.EndsUp(s.k.FinishedWidth)
		s.inReed(s.k.FinishedWidth)
		s.step("ends for the width", ends(body),
			"finished width x ends counted in the cloth, rounded up to a whole end",
			figure.Say("%s x %s = %s, so %d", s.short(s.k.FinishedWidth), s.k.FinishedSett.As(2),
				figure.New(s.k.FinishedSett.Count(s.k.FinishedWidth), 2, ""), body))
		return s.withSelvedges(body), nil
	}
	spec := s.spec
	spec.Cloth.Width.Finished = s.k.FinishedWidth
	n, e, err := project.EndsOf(spec)
	if err != nil {
		return 0, err
	}
	s.Lines = append(s.Lines, e.Rows...)
	s.body = n - s.selvedges()
	if n != e.Wanted {
		s.step("ends to fit", ends(n), "the nearest count that is asked for: "+spec.Cloth.Fit.String(), nil)
	}
	s.fromCloth = s.k.Ends == 0 && !s.k.striped()
	return n, nil
}

// endsOfReed is the ends that the width in the reed takes.
func (s *solver) endsOfReed() (int, error) {
	sett := s.spec.Loom.Sett
	if sett.IsZero() {
		return 0, field.SettOf.Missing()
	}
	name, asked := "sett", s.spec.Cloth.Width.InReed(sett)
	if asked != sett {
		name = "sett of all layers"
	}
	if sett = s.realSett(s.k.ReedWidth); sett != asked {
		name = "sett that the reed gives"
	}
	body := sett.EndsUp(s.k.ReedWidth)
	s.step("ends for the width", ends(body), "width in the reed x "+name+", rounded up to a whole end",
		figure.Say("%s x %s = %s, so %d", s.short(s.k.ReedWidth), sett.As(2),
			figure.New(sett.Count(s.k.ReedWidth), 2, ""), body))
	return s.withSelvedges(body), nil
}

// realSett is the sett that the reed really gives where the warp is so wide in it; where that isn't the sett that was
// asked for, a step says so.
func (s *solver) realSett(inReed measure.Length) measure.Sett {
	asked := s.spec.Cloth.Width.InReed(s.spec.Loom.Sett)
	real := project.RealSett(s.spec, inReed)
	if real.IsZero() {
		return asked
	}
	width := s.spec.Cloth.Width
	width.Sett = s.spec.Loom.Sett
	s.Lines = append(s.Lines, width.RealRow(real))
	return real
}

// withSelvedges adds the ends that take no width.
func (s *solver) withSelvedges(body int) int {
	s.body = body
	w := s.spec.Cloth.Width
	n := body + s.selvedges()
	if n != body {
		s.step("ends wanted", ends(n), "ends for the width + doubled ends x 2 edges + floating",
			figure.Say("%d + %d x 2 + %d = %d", body, w.Doubled, w.Floating, n))
	}
	return n
}

// repeatsIn is the ends of the whole repeats of the stripes that a number of ends holds.
func (s *solver) repeatsIn(n int) int {
	size := s.order.Size()
	repeats := n / size
	s.step("repeats of the stripes", cell(figure.Counted(repeats, "repeat", "repeats")),
		"ends / ends of a repeat, rounded down", figure.Say("%d / %d = %s, so %d, and %s left over", n, size,
			figure.New(big.NewRat(int64(n), int64(size)), 2, ""), repeats, figure.Counted(n%size, "end", "ends")))
	s.repeat(repeats)
	return repeats * size
}

// repeat lays the stripes so many times.
func (s *solver) repeat(times int) {
	s.spec.Stripes = repeated(s.order, times).String()
	s.spec.StripesFrom = 0
	s.body = times*s.order.Size() - s.selvedges()
}

// widths shows the width that the ends take, where a sett says so and no width was given.
func (s *solver) widths() error {
	sett := s.spec.Loom.Sett
	if sett.IsZero() || s.body < 1 {
		return nil
	}
	sett = s.spec.Cloth.Width.InReed(sett)
	asked := s.k.FinishedWidth == 0 && s.k.ReedWidth == 0 || s.Find == TheEnds && s.k.striped()
	if asked && sett.WidthOf(s.body) <= measure.MaxWidth {
		sett = s.realSett(sett.WidthOf(s.body))
	}
	reed := sett.WidthOf(s.body)
	if reed > measure.MaxWidth {
		return field.Ends.Wrong(strconv.Itoa(s.spec.Ends), "fewer, or a closer sett: the warp is wider than any loom")
	}
	if s.k.FinishedWidth == 0 || s.Find == TheEnds && s.k.striped() {
		if s.k.ReedWidth == 0 {
			s.step(field.ReedSpan.Name, cell(s.short(reed)), "ends / sett",
				figure.Say("%d / %s = %s", s.body, sett.As(2), s.short(reed)))
		} else if s.k.striped() {
			reed = sett.WidthOf(s.body)
		}
		s.finishedWidth(reed)
	}
	return nil
}

// finishedWidth shows what is left of a width in the reed.
func (s *solver) finishedWidth(reed measure.Length) {
	w := s.spec.Cloth.Width
	off, _ := measure.LengthOf(ratio.Nearest, ratio.Mul(ratio.Of(reed), w.DrawIn.Left()))
	finished, _ := measure.LengthOf(ratio.Nearest, ratio.Mul(ratio.Of(reed), s.left()))
	s.step("width off the loom", cell(s.short(off)), "width in the reed x (1 - draw-in)",
		figure.Say("%s x (1 - %s) = %s", s.short(reed), w.DrawIn.As(), s.short(off)))
	s.step(field.FinishedWidth.Name, cell(s.short(finished)), "width off the loom x (1 - shrinkage)",
		figure.Say("%s x (1 - %s) = %s", s.short(off), w.Shrinkage.As(), s.short(finished)))
}
