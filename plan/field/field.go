package field

import (
	"fmt"
	"iter"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"millside/plan/figure"
	"millside/plan/measure"
)

// Field is one thing that a weaver says of a warp. The fields of the table never change.
type Field struct {
	// Name is what an error calls the field. No two fields share it.
	Name string
	// Also lists other names under which a part of the engine refuses what stands in this field, and Parts the
	// names of numbered parts of it, such as the cones one by one; it may be nil.
	Also  []string
	Parts *regexp.Regexp
	// Label is the field's name on its page of the form, where its part needn't be said again; "" where the
	// form has no such field. Flag is its flag, without dashes; "" where there is none.
	Label, Flag string
	// Key is its name in a line of the file of things at hand; "" where it isn't told there.
	Key string
	// Help says what it means, for the form and for the flag. No full stop, no capital. More is what the flag's help
	// says behind it.
	Help, More string
	// Value is the word for its value: "number", "length".
	Value string
	// Words are the words to choose between; the first is what holds where nothing is said.
	Words []string
	// Low and High bound a count, Least and Most a length. Above says that a length must be more than Least,
	// and Optional that 0, or an empty field, leaves it out. Zero says what 0 stands for, such as "for one chain".
	Low, High   int
	Least, Most measure.Length
	Above       bool
	Optional    bool
	Zero        string
	// Count, Length and Metric are what a count or a length begins with; Metric is the length in a metric plan.
	Count int
	// Time is what a time begins with, Longest the most that it may be.
	Time, Longest  time.Duration
	Length, Metric measure.Length
	// Assumed says that where nothing is given a usual value is assumed, from the fibre and the units.
	Assumed bool
	// Repeated says that a flag may be given several times.
	Repeated bool
	// Part is the page of the form and the heading of the help.
	Part Part
}

// Part is a part of the plan: a page of the form, a heading of the help.
type Part uint8

// The parts, in the order in which a weaver thinks of a warp.
const (
	Warp Part = iota
	Stripes
	Cloth
	Yarn
	Paddle
	Mill
	Chains
	Loom
	Winding
	partCount
)

// String is the name of the part on the form.
func (p Part) String() string {
	return measure.OneOf(int(p), "warp", "stripes", "cloth", "yarn", "paddle", "mill", "chains", "loom", "winding")
}

// Heading is the heading of the part in a help.
func (p Part) Heading() string {
	return measure.OneOf(int(p), "The warp", "Stripes", "The cloth that the warp is for", "The yarn", "The paddle",
		"The mill or the board", "The chains", "The loom", "Winding, and how long your hands take")
}

// Parts lists the parts in their order.
func Parts() []Part {
	list := make([]Part, partCount)
	for i := range list {
		list[i] = Part(i)
	}
	return list
}

// table holds every field, as add was called: in the order of its file.
var table []*Field

// add puts a field into the table.
func add(p Part, f Field) *Field {
	f.Part = p
	table = append(table, &f)
	return &f
}

// All yields the fields, part by part.
func All() iter.Seq[*Field] {
	return func(yield func(*Field) bool) {
		for _, p := range Parts() {
			for _, f := range table {
				if f.Part == p && !yield(f) {
					return
				}
			}
		}
	}
}

// Named finds the field that an error is about, by its name, another of its names, or the name of a numbered
// part of it. It is nil where the table has none.
func Named(name string) *Field {
	for f := range All() {
		if f.Name == name {
			return f
		}
	}
	for f := range All() {
		if slices.Contains(f.Also, name) || f.Parts != nil && f.Parts.MatchString(name) {
			return f
		}
	}
	return nil
}

// Range says in words what the field may hold; "" where only its reader can tell.
func (f *Field) Range() string {
	switch {
	case len(f.Words) > 0:
		return "one of " + strings.Join(f.Words, ", ")
	case f.Value == Share:
		return measure.ShareWants
	case f.High > 0:
		return f.countRange(f.Low, f.High)
	case f.Longest > 0:
		return fmt.Sprintf("0 to %d s", f.Longest/time.Second)
	case f.Most > 0 && f.Above:
		return "above " + Bound(f.Least) + ", at most " + Bound(f.Most) + f.orZero()
	case f.Most > 0:
		return Bound(f.Least) + " to " + Bound(f.Most) + f.orZero()
	}
	return ""
}

// Bound writes the bound of a range: whole centimetres or millimetres below a metre.
func Bound(l measure.Length) string {
	switch {
	case l == 0:
		return "0"
	case l >= measure.Metre || l < 0:
		return l.String()
	case l%measure.Centimetre == 0:
		return strconv.Itoa(int(l/measure.Centimetre)) + " cm"
	case l%measure.Millimetre == 0:
		return strconv.Itoa(int(l/measure.Millimetre)) + " mm"
	}
	return l.String()
}

func (f *Field) countRange(low, high int) string {
	return fmt.Sprintf("%d to %d", low, high) + f.orZero()
}

// orZero says what 0 stands for.
func (f *Field) orZero() string {
	if f.Zero == "" {
		return ""
	}
	return ", or 0 " + f.Zero
}

// Wrong is the error that a value of the field won't do, and what would.
func (f *Field) Wrong(value, want string) *measure.FieldError {
	return &measure.FieldError{Field: f.Name, Value: value, Want: want}
}

// Missing is the error that the field was left out.
func (f *Field) Missing() *measure.FieldError { return f.Wrong("", f.wants()) }

// wants says what would do.
func (f *Field) wants() string {
	switch f.Value {
	case Sett:
		return measure.SettWants
	case YarnSize:
		return measure.YarnWants
	}
	return f.Range()
}

// Check refuses a count that is out of the field's range; nil says that it will do.
func (f *Field) Check(n int) error { return f.CheckFrom(n, f.Low, f.High, "") }

// CheckFrom is Check with a range that follows from other fields, and what to say behind it: " (the positions
// of the paddle)".
func (f *Field) CheckFrom(n, low, high int, why string) error {
	if n >= low && n <= high || n == 0 && f.Zero != "" {
		return nil
	}
	return f.Wrong(strconv.Itoa(n), fmt.Sprintf("%d to %d%s", low, high, why)+f.orZero())
}

// CheckWord refuses a number that stands for none of the field's words.
func (f *Field) CheckWord(i int) error {
	if i >= 0 && i < len(f.Words) {
		return nil
	}
	return f.Wrong(strconv.Itoa(i), f.Range())
}

// CheckTime refuses a time that is out of the field's range.
func (f *Field) CheckTime(d time.Duration) error {
	if d >= 0 && d <= f.Longest {
		return nil
	}
	return f.Wrong(figure.Signed(d.String()), f.Range())
}

// CheckLength refuses a length that is out of the field's range.
func (f *Field) CheckLength(l measure.Length) error {
	if l > f.Least && l <= f.Most || l == f.Least && !f.Above || l == 0 && f.Zero != "" {
		return nil
	}
	return f.Wrong(l.String(), f.Range())
}

// CheckShare refuses a loss from which next to nothing would be left.
func (f *Field) CheckShare(p measure.Percent) error { return p.Check(f.Name) }

// In names the field in an error that has no field yet.
func (f *Field) In(err error) error { return measure.InField(err, f.Name) }

// Start is the length that the field begins with, in a family of units.
func (f *Field) Start(units measure.LengthUnitSystem) measure.Length {
	if units == measure.Metric && f.Metric != 0 {
		return f.Metric
	}
	return f.Length
}

// Usage is what the help says beside the flag: what the field means, and the words or the range that it takes.
func (f *Field) Usage() string {
	help := figure.Signed(f.Help)
	switch {
	case f.Value == YesNo || f.More != "":
		return help + f.More
	case len(f.Words) > 0:
		return help + ": " + strings.Join(f.Words, " or ")
	case f.High > 0 || f.Longest > 0:
		return help + ", " + f.Range()
	}
	return help
}

// Hint is what the form says of the field: what it means, and the range that it takes. The words stand there to be
// chosen.
func (f *Field) Hint() string {
	switch {
	case len(f.Words) > 0:
		return f.Help
	case f.Assumed:
		return figure.Signed(f.Help) + "; empty: the usual is assumed"
	}
	return f.Usage()
}

// The words for values.
const (
	Text     = "text"
	Number   = "number"
	Span     = "length"
	Share    = "share"
	Sett     = "sett"
	YarnSize = "size"
	Minutes  = "minutes"
	Word     = "word"
	YesNo    = "yes or no"
	List     = "list"
)
