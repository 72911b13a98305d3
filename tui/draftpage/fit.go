package draftpage

import (
	"strings"

	"millside/plan/draft"
	"millside/plan/entry"
	"millside/plan/field"
	"millside/plan/project"
	"millside/plan/wind"
)

// fitLine is the line of a field that says how many ends are wanted, or how the threads come to them.
func fitLine(f *field.Field) line {
	l := line{of: f, label: f.Label, hint: f.Help + "; empty: as drawn", words: f.Words, begins: len(f.Words) > 0}
	switch f {
	case field.Ends:
		l.hint = "the ends that are wanted; empty: as drawn, or what the width takes"
	case field.FinishedWidth:
		l.hint = f.Help + "; empty: none is made"
	case field.SettOf:
		l.hint = f.Help + "; empty: not said yet"
	case field.ShrinkageWidth, field.DrawIn:
		l.hint = f.Help + "; empty: assumed from the fibre"
	case field.Fibre, field.StripesLaid:
		l.hint = f.Help
	}
	return l
}

// choose goes to the next word of the line, or to the one before.
func (l *line) choose(step int) {
	l.chosen = true
	n := len(l.words)
	if l.begins {
		l.word = (l.word + step + n) % n
		return
	}
	// The first word says that nothing is chosen.
	if step > 0 {
		l.word = l.word%(n-1) + 1
		return
	}
	l.word = (max(l.word, 1)+n-3)%(n-1) + 1
}

// textOf is what stands in the line of a field, "" where it has none.
func (s saying) textOf(f *field.Field) string {
	for _, l := range s.lines {
		if l.of == f && len(l.words) == 0 {
			return strings.Join(strings.Fields(l.text.Value()), " ")
		}
	}
	return ""
}

// fit puts the ends that are wanted into the use of the draft, and the width that takes them into the spec. Where
// the weaver hasn't chosen how the threads come to them, the line shows what holds. The error is of the fields.
func (s *saying) fit(use *draft.Use) error {
	s.spec = s.begins
	var laid *line
	for i := range s.lines {
		l := &s.lines[i]
		e, ok := entry.Of(l.of)
		switch text := s.textOf(l.of); {
		case l.of == field.StripesLaid:
			laid = l
		case !ok:
		case l.of == field.Fibre && l.chosen:
			text = l.words[l.word]
			fallthrough
		case text != "":
			if err := e.Take(&s.spec, text); err != nil {
				return err
			}
		}
	}
	ends := 0
	s.spec.Cloth.Used = s.textOf(field.FinishedWidth) != ""
	switch wanted := s.textOf(field.Ends); {
	case s.spec.Cloth.Used && wanted != "":
		return field.Ends.Wrong(wanted, "no ends beside a width, from which they follow")
	case s.spec.Cloth.Used:
		var err error
		if ends, _, err = project.EndsOf(s.spec); err != nil {
			return err
		}
		s.wanted = project.WidthText(s.spec, ends)
	case wanted != "":
		ends = s.spec.Ends
	}
	if ends > 0 {
		use.FitTo(ends, s.spec.Cloth.Used, wind.Laid(laid.word), laid.chosen)
		laid.word = int(use.Laid)
	}
	return nil
}
