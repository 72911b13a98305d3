package athand

import (
	"errors"
	"regexp"
	"slices"
	"strings"

	"millside/plan/field"
	"millside/plan/frame"
	"millside/plan/loom"
	"millside/plan/measure"
)

// The readers of each kind of thing at hand. They check what the rest of the engine would refuse, so that
// the weaver hears of it with the line's number.

func (h *AtHand) readMill(name string, fields []string) []error {
	m := NamedMill{Name: name}
	errs := readKeyed(fields, lengthField(field.Circumference, &m.Mill.Circumference, true),
		lengthField(field.PegStep, &m.Mill.PegStep, true),
		lengthField(field.Rise, &m.Mill.Rise, false), lengthField(field.MillHeight, &m.Mill.Height, false),
		lengthField(field.PegLength, &m.Pegs.Length, false), countField(field.Layers, &m.Pegs.Layers, false))
	if errors.Join(errs...) == nil {
		errs = append(m.Mill.Check(), m.Pegs.Check()...)
	}
	return addNamed(&h.Mills, kindMill, m, errs)
}

func (h *AtHand) readBoard(name string, fields []string) []error {
	b, err := frame.ParseBoard(strings.Join(fields, ", "))
	return addNamed(&h.Boards, kindBoard, NamedBoard{name, b}, []error{err})
}

func (h *AtHand) readPaddle(name string, fields []string) []error {
	p := NamedPaddle{Name: name}
	errs := readKeyed(fields, countField(field.Positions, &p.Positions, true))
	return addNamed(&h.Paddles, kindPaddle, p, errs)
}

func (h *AtHand) readReed(name string, fields []string) []error {
	var width measure.Length
	r, err := loom.ParseReed(fields[0])
	errs := append(readKeyed(fields[1:], lengthField(field.ReedWidth, &width, false)), err)
	errs = append(errs, byKey(field.ReedWidth, field.ReedWidth.CheckLength(width)))
	return addNamed(&h.Reeds, kindReed, NamedReed{name, r.WithWidth(width)}, errs)
}

func (h *AtHand) readRaddle(name string, fields []string) []error {
	r := NamedRaddle{Name: name}
	errs := readKeyed(fields, lengthField(field.Raddle, &r.Raddle.Space, true),
		countField(field.RaddleSpaces, &r.Raddle.Spaces, false))
	if errors.Join(errs...) == nil {
		errs = append(errs, byKey(field.Raddle, field.Raddle.CheckLength(r.Raddle.Space)))
	}
	return addNamed(&h.Raddles, kindRaddle, r, errs)
}

func (h *AtHand) readLoom(name string, fields []string) []error {
	n := NamedLoom{Name: name}
	errs := readKeyed(fields, &keyed{key: field.Heddles.Key, needed: true, take: func(s string) (err error) {
		n.Heddles, err = loom.ParseHeddles(strings.ReplaceAll(s, " and ", ", "))
		return err
	}})
	return addNamed(&h.Looms, kindLoom, n, errs)
}

// pliesField is the part of a yarn such as "cotton 8, 2 plies" that stands behind its comma.
var pliesField = regexp.MustCompile(`^[0-9]{1,2} pl(?:y|ies)$`)

func (h *AtHand) readYarn(name string, fields []string) []error {
	y := NamedYarn{Name: name}
	size, rest := fields[0], fields[1:]
	if len(rest) > 0 && pliesField.MatchString(strings.ToLower(rest[0])) {
		size, rest = size+", "+rest[0], rest[1:]
	}
	var err error
	y.Yarn.Size, err = measure.ParseYarn(size)
	errs := append(readKeyed(rest,
		&keyed{key: field.Colour.Key, take: func(s string) error { y.Yarn.Colour = s; return measure.CheckColour(s) }},
		&keyed{key: field.Cones.Key, take: func(s string) (err error) {
			y.Yarn.Cones, err = measure.ParseMasses(strings.ReplaceAll(s, " and ", "; "))
			return err
		}},
		&keyed{key: field.Tube.Key, take: func(s string) (err error) {
			y.Yarn.Tube,
				err = measure.ParseMass(s)
			return err
		}},
		countField(field.Packages, &y.Yarn.Packages, false)), err)
	if slices.ContainsFunc(y.Yarn.Cones, func(m measure.Mass) bool { return m < y.Yarn.Tube }) {
		errs = append(errs, &measure.FieldError{Field: field.Tube.Name, Value: y.Yarn.Tube.String(),
			Want: "0 to the weight of the lightest full cone"})
	}
	return addNamed(&h.Yarns, kindYarn, y, errs)
}
