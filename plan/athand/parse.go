package athand

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"millside/plan/field"
	"millside/plan/frame"
	"millside/plan/internal/ratio"
	"millside/plan/measure"
	"millside/plan/textfile"
)

// What the file of things at hand may hold.
const (
	// MaxAtHandText is the longest text that [Parse] reads, in bytes.
	MaxAtHandText = 64 << 10
	// MaxAtHand is the most things that it may name.
	MaxAtHand = 500
	// maxAtHandLine is the longest line, in bytes: a board's may be long.
	maxAtHandLine = frame.MaxBoardText + 100
	// maxAtHandErrors is how many errors are told at once.
	maxAtHandErrors = 10
)

const atHandWants = "a line such as \"reed ten dent: 10 dents an inch, width 36 in\""

// Parse reads the file of things at hand. A line names one thing: its kind (mill, board, paddle,
// reed, raddle, loom, yarn), what the weaver calls it, a colon, and its fields with commas between:
//
//	mill floor mill: circumference 2 yd, peg step 18 in, rise 3 in, height 60 in
//	board wall board: 36 in x 10, 18 in
//	paddle long paddle: positions 20
//	reed ten dent: 10 dents an inch, width 36 in
//	raddle half inch: space 1/2 in, spaces 72
//	loom old loom: heddles 100 on 4 shafts
//	yarn white: cotton 8/2, colour natural white, cones 250 g and 180 g, tube 30 g, packages 12
//
// A mill may also have peg length and layers; a loom's heddles may be told shaft by shaft, "heddles 100 and
// 100 and 80 and 80". Empty lines and remarks are passed over: see [textfile.Lines]. An = does as well as
// the colon, and may stand behind the name of a field. A comma that a digit follows at once is a decimal
// comma. Two things of a kind can't have the same name.
//
// The text is UTF-8 or UTF-16, at most [MaxAtHandText] bytes, without control characters but for tabs and
// ends of lines; it names at most [MaxAtHand] things. One fault gives one error. The error joins one
// [measure.FieldError] for each value that won't do, the first ten at the most; each names the line and the
// field. What could be read comes beside it.
func Parse(text string) (AtHand, error) {
	var h AtHand
	if len(text) > MaxAtHandText {
		return h, &measure.FieldError{Field: "things at hand", Value: fmt.Sprintf("%d bytes", len(text)),
			Want: fmt.Sprintf("at most %d bytes", MaxAtHandText)}
	}
	text, err := textfile.Decode(text)
	if err != nil {
		return h, err
	}
	var errs []error
	for number, line := range textfile.Lines(text) {
		place := fmt.Sprintf("line %d", number)
		errs = append(errs, errorsInLine(h.readLine(line), text, number)...)
		if h.things() > MaxAtHand {
			errs = append(errs, &measure.FieldError{Field: place, Value: measure.Shortened(line),
				Want: fmt.Sprintf("at most %d things", MaxAtHand)})
			break
		}
		if len(errs) >= maxAtHandErrors {
			break
		}
	}
	return h, errors.Join(errs[:min(len(errs), maxAtHandErrors)]...)
}

// FieldErrorsIn lists the field errors in err, each with the place named before its field: "line 3, peg
// step". It is empty for nil.
func FieldErrorsIn(err error, place string) []error {
	var list []error
	for _, fe := range measure.FieldErrors(err) {
		placed := *fe
		placed.Field = place
		if fe.Field != "" {
			placed.Field += ", " + fe.Field
		}
		list = append(list, &placed)
	}
	return list
}

// errorsInLine is [FieldErrorsIn] for a line of a text, with the column of what is wrong.
func errorsInLine(err error, text string, number int) []error {
	var list []error
	for _, fe := range measure.FieldErrors(err) {
		column := textfile.Column(textfile.RawLine(text, number), fe.Field, fe.Value)
		list = append(list, FieldErrorsIn(fe, textfile.Place(number, column))...)
	}
	return list
}

// readLine reads one line and adds what it names.
func (h *AtHand) readLine(line string) error {
	if err := textfile.CheckLine(line, maxAtHandLine); err != nil {
		return err
	}
	head, rest, colon := textfile.Cut(line)
	kind, name, _ := strings.Cut(strings.Join(strings.Fields(head), " "), " ")
	kind = strings.ToLower(kind)
	read, known := atHandKinds[kind]
	if !colon || !known {
		return &measure.FieldError{Value: measure.Shortened(line), Want: atHandWants}
	}
	if measure.CheckName(name) != nil || strings.ContainsAny(name, ",;") {
		return &measure.FieldError{Field: kind, Value: measure.Shortened(name),
			Want: fmt.Sprintf("a name of 1 to %d characters before the colon, without commas", measure.MaxName)}
	}
	fields := slices.DeleteFunc(measure.SplitList(rest), func(s string) bool { return strings.TrimSpace(s) == "" })
	for i := range fields {
		fields[i] = strings.TrimSpace(fields[i])
	}
	if len(fields) == 0 {
		return &measure.FieldError{Field: kind, Value: name, Want: "its fields behind the colon; " + atHandWants}
	}
	return errors.Join(read(h, name, fields)...)
}

// atHandKinds holds for each kind what reads its fields.
var atHandKinds = map[string]func(h *AtHand, name string, fields []string) []error{
	kindMill: (*AtHand).readMill, kindBoard: (*AtHand).readBoard, kindPaddle: (*AtHand).readPaddle,
	kindReed: (*AtHand).readReed, kindRaddle: (*AtHand).readRaddle, kindLoom: (*AtHand).readLoom,
	kindYarn: (*AtHand).readYarn,
}

// addNamed adds a thing unless it has errors or another of its kind has its name.
func addNamed[T interface{ called() string }](list *[]T, kind string, thing T, errs []error) []error {
	if slices.ContainsFunc(*list, func(t T) bool { return sameName(t.called(), thing.called()) }) {
		errs = append(errs, &measure.FieldError{Field: kind, Value: thing.called(), Want: "another name: there is a " +
			kind + " of that name above"})
	}
	errs = slices.DeleteFunc(errs, func(err error) bool { return err == nil })
	if len(errs) == 0 {
		*list = append(*list, thing)
	}
	return errs
}

// keyed is a field that begins with its name.
type keyed struct {
	key  string
	take func(value string) error
	// needed says that it can't be left out.
	needed bool
	given  bool
}

// byKey names a field in an error as its line does.
func byKey(f *field.Field, err error) error {
	for _, fe := range measure.FieldErrors(err) {
		named := *fe
		named.Field = f.Key
		return &named
	}
	return err
}

func lengthField(f *field.Field, l *measure.Length, needed bool) *keyed {
	return &keyed{key: f.Key, needed: needed,
		take: func(s string) (err error) { *l, err = measure.ParseLength(s); return err }}
}

// countField takes a count of the field's range; what is written down counts at least one.
func countField(f *field.Field, n *int, needed bool) *keyed {
	low, high := max(f.Low, 1), f.High
	return &keyed{key: f.Key, needed: needed, take: func(s string) error {
		r, rest, err := measure.LeadingDecimal(s)
		if err != nil || rest != "" || !r.IsInt() || r.Cmp(ratio.Of(low)) < 0 || r.Cmp(ratio.Of(high)) > 0 {
			return &measure.FieldError{Value: measure.Shortened(s), Want: fmt.Sprintf("%d to %d", low, high)}
		}
		*n = int(r.Num().Int64())
		return nil
	}}
}

// readKeyed reads fields that begin with their names, in any order.
func readKeyed(fields []string, known ...*keyed) []error {
	var errs []error
	var keys []string
	for _, k := range known {
		keys = append(keys, k.key)
	}
	for _, text := range fields {
		if rest, ok := strings.CutPrefix(strings.ToLower(text[:min(len(text), len("color "))]), "color "); ok &&
			rest == "" {
			text = "colour" + text[len("color"):] // either spelling will do
		}
		i := slices.IndexFunc(known, func(k *keyed) bool {
			return len(text) > len(k.key) && strings.EqualFold(text[:len(k.key)], k.key) &&
				strings.ContainsRune(" :=", rune(text[len(k.key)]))
		})
		switch {
		case i < 0:
			errs = append(errs, &measure.FieldError{Value: measure.Shortened(text),
				Want: "one of these and its value: " +
					strings.Join(keys, ", ")})
		case known[i].given:
			errs = append(errs, &measure.FieldError{Field: known[i].key, Value: measure.Shortened(text),
				Want: "it only once"})
		default:
			known[i].given = true
			value := strings.Trim(text[len(known[i].key):], " :=")
			errs = append(errs, measure.InField(known[i].take(value), known[i].key))
		}
	}
	if errors.Join(errs...) != nil {
		return errs // what seems to be left out may be what couldn't be read
	}
	for _, k := range known {
		if k.needed && !k.given {
			errs = append(errs, &measure.FieldError{Field: k.key, Value: "", Want: "it too: it can't be left out"})
		}
	}
	return errs
}
