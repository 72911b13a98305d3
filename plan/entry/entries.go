package entry

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"

	"millside/plan"
	"millside/plan/cloth"
	"millside/plan/field"
	"millside/plan/frame"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/times"
	"millside/plan/wind"
)

// All lists the entries of a spec, in the order of the table.
func All() []Entry {
	var list []Entry
	for _, part := range [][]Entry{warp(), stripes(), clothes(), allowances(), yarn(), paddle(), mill(), hand(),
		winding()} {
		list = append(list, part...)
	}
	order := map[*field.Field]int{}
	for f := range field.All() {
		order[f] = len(order)
	}
	slices.SortStableFunc(list, func(a, b Entry) int { return order[a.Field] - order[b.Field] })
	return list
}

// Of is the entry of a field; false where the field doesn't stand in a spec.
func Of(f *field.Field) (Entry, bool) {
	for _, e := range All() {
		if e.Field == f {
			return e, true
		}
	}
	return Entry{}, false
}

// Plain says that the warp has no stripes.
func Plain(s plan.Spec) bool { return strings.TrimSpace(s.Stripes) == "" }

func striped(s plan.Spec) bool   { return !Plain(s) }
func fromCloth(s plan.Spec) bool { return s.Cloth.Used }
func byHand(s plan.Spec) bool    { return !s.Cloth.Used }

// endsByHand says that the ends are given: not by a cloth, nor by stripes that stay as they are written.
func endsByHand(s plan.Spec) bool {
	return !s.Cloth.Used && (Plain(s) || s.Asked.Laid.How != wind.AsWritten)
}

func warp() []Entry {
	return []Entry{
		text(field.Name, func(s *plan.Spec) *string { return &s.Name }),
		yesNo(field.FromCloth, func(s *plan.Spec) *bool { return &s.Cloth.Used }),
		when(endsByHand, count(field.Ends, func(s *plan.Spec) *int { return &s.Ends })),
		when(byHand, value(field.Length, func(s *plan.Spec) *measure.Length { return &s.Length })),
		value(field.Units, func(s *plan.Spec) *measure.LengthUnitSystem { return &s.Units }),
		value(field.Dressing, func(s *plan.Spec) *plan.Dressing { return &s.Dressing }),
		yesNo(field.Dyed, func(s *plan.Spec) *bool { return &s.Dyed }),
		read(field.Painted, frame.ParseSections, frame.Sections.String,
			func(s *plan.Spec) *frame.Sections { return &s.Painted }),
	}
}

func stripes() []Entry {
	return []Entry{
		text(field.StripesOf, func(s *plan.Spec) *string { return &s.Stripes }),
		value(field.StripesFrom, func(s *plan.Spec) *plan.WrittenFrom { return &s.StripesFrom }),
		when(striped, value(field.StripesLaid, func(s *plan.Spec) *wind.Laid { return &s.Asked.Laid.How })),
		when(striped, yesNo(field.FinishAtLease, func(s *plan.Spec) *bool { return &s.Asked.FinishAtLease })),
		when(striped, text(field.PackagesOf, func(s *plan.Spec) *string { return &s.Asked.Packages })),
		when(striped, numbers(field.GroupSizes, 1, measure.MaxPositions,
			"numbers from 1 to "+strconv.Itoa(measure.MaxPositions)+` with commas between them, such as "10, 12"`,
			func(s *plan.Spec) *[]int { return &s.Asked.Sizes })),
		when(striped, mostHalts()),
		when(striped, effort()),
		when(striped, way()),
	}
}

// way is one of the field's words; that of the way that is taken where nothing is asked isn't kept.
func way() Entry {
	e := text(field.Way, func(s *plan.Spec) *string { return &s.Asked.Way })
	e.Show = func(s plan.Spec) string { return cmp.Or(s.Asked.Way, field.Way.Words[0]) }
	e.Take = func(s *plan.Spec, text string) error {
		name := strings.ToLower(strings.TrimSpace(text))
		if name != "" && !slices.Contains(field.Way.Words, name) {
			return field.Way.Wrong(measure.Shortened(text), field.Way.Range())
		}
		if name == field.Way.Words[0] {
			name = ""
		}
		s.Asked.Way = name
		return nil
	}
	return e
}

// mostHalts is a number that may be left out; 0 means none at all.
func mostHalts() Entry {
	return read(field.MostHalts, func(text string) (*int, error) {
		n, err := strconv.Atoi(strings.TrimSpace(text))
		if err != nil || n < 0 {
			return nil, &measure.FieldError{Value: text, Want: "a whole number, 0 or more"}
		}
		return &n, nil
	}, func(n *int) string {
		if n == nil {
			return ""
		}
		return strconv.Itoa(*n)
	}, func(s *plan.Spec) **int { return &s.Asked.MostHalts })
}

// effort is shown as the usual where none is kept.
func effort() Entry {
	e := count(field.Effort, func(s *plan.Spec) *int { return &s.Asked.Effort })
	take := e.Take
	e.Show = func(s plan.Spec) string { return strconv.Itoa(max(s.Asked.Effort, 1)) }
	e.Take = func(s *plan.Spec, text string) error {
		was := s.Asked.Effort
		err := take(s, text)
		if err == nil {
			err = field.Effort.Check(s.Asked.Effort)
		}
		switch {
		case err != nil:
			s.Asked.Effort = was
		case s.Asked.Effort == 1:
			s.Asked.Effort = 0
		}
		return err
	}
	return e
}

func clothes() []Entry {
	long := func(f *field.Field, at func(*plan.Spec) *measure.Length) Entry { return when(fromCloth, value(f, at)) }
	number := func(f *field.Field, at func(*plan.Spec) *int) Entry { return when(fromCloth, count(f, at)) }
	return []Entry{
		long(field.FinishedWidth, func(s *plan.Spec) *measure.Length { return &s.Cloth.Width.Finished }),
		long(field.FinishedLength, func(s *plan.Spec) *measure.Length { return &s.Cloth.Length.Piece }),
		number(field.Pieces, func(s *plan.Spec) *int { return &s.Cloth.Length.Pieces }),
		when(fromCloth, fibre()),
		when(fromCloth, value(field.TakeUpOf, func(s *plan.Spec) *cloth.TakeUpOf { return &s.Cloth.Length.TakeUpOf })),
		long(field.Hem, func(s *plan.Spec) *measure.Length { return &s.Cloth.Length.Hem }),
		long(field.Fringe, func(s *plan.Spec) *measure.Length { return &s.Cloth.Length.Fringe }),
		long(field.Sample, func(s *plan.Spec) *measure.Length { return &s.Cloth.Length.Sample }),
		long(field.Knotting, func(s *plan.Spec) *measure.Length { return &s.Cloth.Length.Knotting }),
		number(field.Repeat, func(s *plan.Spec) *int { return &s.Cloth.Width.Repeat }),
		number(field.Balance, func(s *plan.Spec) *int { return &s.Cloth.Width.Balance }),
		number(field.Doubled, func(s *plan.Spec) *int { return &s.Cloth.Width.Doubled }),
		number(field.Floating, func(s *plan.Spec) *int { return &s.Cloth.Width.Floating }),
		when(fromCloth, yesNo(field.FloatingApart, func(s *plan.Spec) *bool { return &s.Cloth.Width.FloatingApart })),
		number(field.ClothLayers, func(s *plan.Spec) *int { return &s.Cloth.Width.Layers }),
		when(fromCloth, value(field.LayersAre, func(s *plan.Spec) *cloth.Join { return &s.Cloth.Width.Join })),
		when(fromCloth, value(field.Fit, func(s *plan.Spec) *plan.ClothFit { return &s.Cloth.Fit })),
		when(fromCloth, value(field.Picks, func(s *plan.Spec) *measure.Sett { return &s.Cloth.Picks })),
		when(fromCloth, value(field.Weft, func(s *plan.Spec) *measure.YarnSize { return &s.Cloth.Weft })),
	}
}

// fibre is that of the width and of the length alike.
func fibre() Entry {
	e := value(field.Fibre, func(s *plan.Spec) *cloth.Fibre { return &s.Cloth.Width.Fibre })
	take := e.Take
	e.Take = func(s *plan.Spec, text string) error {
		err := take(s, text)
		s.Cloth.Length.Fibre = s.Cloth.Width.Fibre
		return err
	}
	return e
}

// allowances are what the finished cloth loses on the way from the warp. An empty text leaves the usual to be
// assumed; 0 has to be said.
func allowances() []Entry {
	share := func(f *field.Field, at func(*plan.Spec) *measure.Percent) Entry {
		return when(fromCloth, assumed(value(f, at)))
	}
	return []Entry{
		share(field.ShrinkageWidth, func(s *plan.Spec) *measure.Percent { return &s.Cloth.Width.Shrinkage }),
		share(field.DrawIn, func(s *plan.Spec) *measure.Percent { return &s.Cloth.Width.DrawIn }),
		share(field.ShrinkageLength, func(s *plan.Spec) *measure.Percent { return &s.Cloth.Length.Shrinkage }),
		share(field.TakeUp, func(s *plan.Spec) *measure.Percent { return &s.Cloth.Length.TakeUp }),
		share(field.WeftTakeUp, func(s *plan.Spec) *measure.Percent { return &s.Cloth.WeftTakeUp }),
		when(fromCloth, assumed(value(field.LoomWaste,
			func(s *plan.Spec) *measure.Length { return &s.Cloth.Length.Waste }))),
	}
}

// assumed lets the value be left to the usual.
func assumed(e Entry) Entry {
	show, take := e.Show, e.Take
	e.Show = func(s plan.Spec) string {
		if assumes(s.Cloth, e.Field) {
			return ""
		}
		return show(s)
	}
	e.Take = func(s *plan.Spec, text string) error {
		if strings.TrimSpace(text) == "" {
			assume(&s.Cloth, e.Field, true)
			return nil
		}
		err := take(s, text)
		if err == nil {
			assume(&s.Cloth, e.Field, false)
		}
		return err
	}
	return e
}

func yarn() []Entry {
	return []Entry{
		value(field.YarnOf, func(s *plan.Spec) *measure.YarnSize { return &s.Yarn.Size }),
		text(field.Colour, func(s *plan.Spec) *string { return &s.Yarn.Colour }),
		value(field.Cones, func(s *plan.Spec) *measure.Masses { return &s.Yarn.Cones }),
		value(field.Tube, func(s *plan.Spec) *measure.Mass { return &s.Yarn.Tube }),
		when(Plain, count(field.Packages, func(s *plan.Spec) *int { return &s.Yarn.Packages })),
		extra(field.PegYarn, func(x *plan.Extras) *measure.Length { return &x.PerPass }),
		extra(field.Tails, func(x *plan.Extras) *measure.Length { return &x.PerTie }),
	}
}

// extra is a part of the yarn beside the warp's length. The usual ones are shown until one is said, and the other
// stays the usual one until it is said too; where both are the usual ones again, the plan says neither.
func extra(f *field.Field, at func(*plan.Extras) *measure.Length) Entry {
	return Entry{Field: f, Given: always,
		Show: func(s plan.Spec) string {
			x := s.Extras()
			return at(&x).String()
		},
		Take: func(s *plan.Spec, text string) error {
			l, err := measure.ParseLength(text)
			if err != nil {
				return f.In(err)
			}
			x := s.Extras()
			*at(&x), x.Given = l, false
			if x == plan.DefaultExtras() {
				s.Yarn.Extras = plan.Extras{}
				return nil
			}
			x.Given = true
			s.Yarn.Extras = x
			return nil
		}}
}

func paddle() []Entry {
	return []Entry{
		when(Plain, count(field.Group, func(s *plan.Spec) *int { return &s.Group })),
		count(field.Positions, func(s *plan.Spec) *int { return &s.Positions }),
		when(Plain, value(field.LastPass, func(s *plan.Spec) *wind.LastPass { return &s.LastPass })),
		value(field.ReturnOrder, func(s *plan.Spec) *wind.ReturnOrder { return &s.ReturnOrder }),
		value(field.Foot, func(s *plan.Spec) *wind.FootPosition { return &s.Foot }),
		value(field.Hand, func(s *plan.Spec) *wind.Hand { return &s.Hand }),
	}
}

func mill() []Entry {
	return []Entry{
		value(field.Circumference, func(s *plan.Spec) *measure.Length { return &s.Mill.Circumference }),
		value(field.PegStep, func(s *plan.Spec) *measure.Length { return &s.Mill.PegStep }),
		value(field.Rise, func(s *plan.Spec) *measure.Length { return &s.Mill.Rise }),
		value(field.MillHeight, func(s *plan.Spec) *measure.Length { return &s.Mill.Height }),
		read(field.Board, frame.ParseBoard, frame.Board.String, func(s *plan.Spec) *frame.Board { return &s.Board }),
		count(field.ChainEnds, func(s *plan.Spec) *int { return &s.ChainEnds }),
		chainCount(),
		value(field.PegLength, func(s *plan.Spec) *measure.Length { return &s.Pegs.Length }),
		count(field.Layers, func(s *plan.Spec) *int { return &s.Pegs.Layers }),
	}
}

// chainCount asks for even chains: a plan that was copied from an old record may not have them.
func chainCount() Entry {
	e := count(field.ChainCount, func(s *plan.Spec) *int { return &s.ChainCount })
	take := e.Take
	e.Take = func(s *plan.Spec, text string) error {
		err := take(s, text)
		s.EvenChains = s.EvenChains || s.ChainCount > 0
		return err
	}
	return e
}

func hand() []Entry {
	return []Entry{
		value(field.SettOf, func(s *plan.Spec) *measure.Sett { return &s.Loom.Sett }),
		value(field.Face, func(s *plan.Spec) *cloth.Face { return &s.Loom.Face }),
		value(field.Raddle, func(s *plan.Spec) *measure.Length { return &s.Loom.Raddle.Space }),
		count(field.RaddleSpaces, func(s *plan.Spec) *int { return &s.Loom.Raddle.Spaces }),
		yesNo(field.SplitGroups, func(s *plan.Spec) *bool { return &s.Loom.SplitGroups }),
		value(field.Reed, func(s *plan.Spec) *loom.Reed { return &s.Loom.Reed }),
		reedWidth(),
		value(field.BeamSection, func(s *plan.Spec) *measure.Length { return &s.Loom.BeamSection }),
		read(field.Dents, loom.ParseDentSections, loom.DentSections.String,
			func(s *plan.Spec) *loom.DentSections { return &s.Loom.Dents }),
		count(field.EdgeDents, func(s *plan.Spec) *int { return &s.Loom.EdgeDents }),
		count(field.EdgeEnds, func(s *plan.Spec) *int { return &s.Loom.EdgeEnds }),
		value(field.FirstEnd, func(s *plan.Spec) *loom.Side { return &s.Loom.FirstEnd }),
		read(field.Threading, loom.ParseThreading, loom.Threading.String,
			func(s *plan.Spec) *loom.Threading { return &s.Loom.Threading }),
		read(field.ThreadingBegin, loom.ParseThreading, loom.Threading.String,
			func(s *plan.Spec) *loom.Threading { return &s.Loom.ThreadingBegin }),
		read(field.ThreadingEnd, loom.ParseThreading, loom.Threading.String,
			func(s *plan.Spec) *loom.Threading { return &s.Loom.ThreadingEnd }),
		read(field.Heddles, loom.ParseHeddles, loom.HeddlesText, func(s *plan.Spec) *[]int { return &s.Loom.Heddles }),
	}
}

// reedWidth is the width of the reed, which is a part of the reed.
func reedWidth() Entry {
	f := field.ReedWidth
	return Entry{Field: f, Given: always,
		Show: func(s plan.Spec) string {
			if w := s.Loom.Reed.Width(); w != 0 {
				return w.String()
			}
			return ""
		},
		Take: func(s *plan.Spec, text string) error {
			var width measure.Length
			if strings.TrimSpace(text) != "" {
				if err := width.UnmarshalText([]byte(text)); err != nil {
					return f.In(err)
				}
			}
			if err := f.CheckLength(width); err != nil {
				return err
			}
			s.Loom.Reed = s.Loom.Reed.WithWidth(width)
			return nil
		}}
}

func winding() []Entry {
	return []Entry{
		count(field.TieEvery, func(s *plan.Spec) *int { return &s.TieEvery }),
		guard(),
		count(field.Rest, func(s *plan.Spec) *int { return &s.RestMinutes }),
		minutes(field.MinutesPass, func(t *times.HandTimes) *time.Duration { return &t.Pass }),
		minutes(field.MinutesHandling, func(t *times.HandTimes) *time.Duration { return &t.Handling }),
		minutes(field.MinutesTurn, func(t *times.HandTimes) *time.Duration { return &t.Turn }),
		minutes(field.MinutesHalt, func(t *times.HandTimes) *time.Duration { return &t.Halt }),
		minutes(field.MinutesCut, func(t *times.HandTimes) *time.Duration { return &t.Cut }),
		minutes(field.MinutesTie, func(t *times.HandTimes) *time.Duration { return &t.Tie }),
		minutes(field.MinutesThread, func(t *times.HandTimes) *time.Duration { return &t.Thread }),
		minutes(field.MinutesFar, func(t *times.HandTimes) *time.Duration { return &t.Far }),
	}
}
