package measure

import (
	"fmt"
	"math/big"

	"millside/plan/figure"
	"millside/plan/internal/ratio"
)

// CountSystem is a way to say how fine a yarn is.
type CountSystem uint8

// The count systems. In the first eight a higher number is a finer yarn; in tex, dtex and denier it is
// a coarser one. The last two give the length in a mass of the yarn as it is used, folded or not.
const (
	Cotton            CountSystem = iota // hanks of 840 yd in a pound
	Worsted                              // hanks of 560 yd in a pound
	LinenLea                             // leas of 300 yd in a pound
	WoollenRun                           // runs of 1600 yd in a pound
	WoollenCut                           // cuts of 300 yd in a pound
	SpunSilk                             // hanks of 840 yd in a pound, counted after folding
	MetricCount                          // metres in a gram
	Tex                                  // grams in 1,000 m
	Dtex                                 // grams in 10,000 m
	Denier                               // grams in 9,000 m
	YardsPerPound                        // yards in a pound
	MetresPerKilogram                    // metres in a kilogram
)

// countSystem is what there is to know about a count system.
type countSystem struct {
	name  string   // the name in text, which ParseYarn reads back
	words []string // other names
	// yards is the yards a pound of number 1, for systems that count lengths in a pound.
	yards int64
	// metresIn is the grams of which the number gives the metres.
	metresIn int64
	// gramsIn is the metres of which the number gives the grams.
	gramsIn int64
	// pliesFirst says that the trade writes plies/number.
	pliesFirst bool
	// finished says that the number is that of the yarn after folding.
	finished bool
	// never says that the system knows no plies.
	never bool
}

// countSystems holds the definitions. Yards a pound: GNU Units 2.22, definitions file, "yarn linear
// density"; ASTM D2260-03(2013), table 1 (agrees with ISO 2947). Spun silk counts hanks as cotton does,
// and after folding: C. P. Brooks, "Cotton Manufacturing", 3rd ed. 1892. Which of number and plies is
// written first: common practice, no source.
var countSystems = [...]countSystem{
	Cotton: {name: "cotton", words: []string{"ne", "nec", "cotton ne", "ne cotton", "pearl cotton", "perle cotton",
		"mercerised cotton", "mercerized cotton", "unmercerised cotton", "unmercerized cotton", "carpet warp",
		"cotton carpet warp",
		// Yarns of these fibres are numbered by the cotton count (from memory).
		"rayon", "viscose", "lyocell", "tencel", "modal", "bamboo"}, yards: 840},
	Worsted: {name: "worsted", yards: 560, pliesFirst: true},
	LinenLea: {name: "linen lea", words: []string{"linen", "lea", "nel", // hemp: from memory
		"irish", "irish linen", "line linen", "tow linen", "linen irish", "hemp"}, yards: 300},
	WoollenRun: {name: "woollen run", words: []string{"run", "woolen run"}, yards: 1600, pliesFirst: true},
	WoollenCut: {name: "woollen cut", words: []string{"cut", "woolen cut"}, yards: 300, pliesFirst: true},
	SpunSilk:   {name: "spun silk", yards: 840, finished: true},
	MetricCount: {name: "metric", words: []string{"nm", "metric nm", "metric count"}, metresIn: 1,
		pliesFirst: true},
	Tex:               {name: "tex", gramsIn: 1000},
	Dtex:              {name: "dtex", words: []string{"decitex"}, gramsIn: 10_000},
	Denier:            {name: "denier", words: []string{"den"}, gramsIn: 9000},
	YardsPerPound:     {name: "yd/lb", yards: 1, finished: true, never: true},
	MetresPerKilogram: {name: "m/kg", metresIn: 1000, finished: true, never: true},
}

func (c CountSystem) known() bool { return int(c) < len(countSystems) }

// String gives the name, such as "cotton" or "yd/lb".
func (c CountSystem) String() string {
	if !c.known() {
		return fmt.Sprintf("count system %d", c)
	}
	return countSystems[c].name
}

// YarnNumber is the number of a yarn in millionths, so that numbers typed to six decimals are exact.
type YarnNumber int64

// YarnNumberOne is number 1: 8 * YarnNumberOne is an 8s.
const YarnNumberOne YarnNumber = 1_000_000

// maxYarnNumber is the highest number of a yarn, far above the finest silk in metres a kilogram.
const maxYarnNumber = 100_000_000 * YarnNumberOne

// maxPlies is the most plies of a yarn.
const maxPlies = 99

// The finest and the coarsest yarn that is taken, in metres a gram: 0.1 tex and 100,000 tex.
var (
	finestYarn   = big.NewRat(10_000, 1)
	coarsestYarn = big.NewRat(1, 100)
)

// yardsInGram is one yard a pound in metres a gram, exactly: 0.9144 m / 453.59237 g.
var yardsInGram = big.NewRat(91_440, 45_359_237)

// YarnSize is how fine a yarn is: a count system, the number of its singles and how many are folded.
// It is always one that [NewYarnSize] accepts, or the zero value, which means that nothing was said.
// Values can be compared with ==.
type YarnSize struct {
	system CountSystem
	number YarnNumber
	plies  int
}

// NewYarnSize makes a yarn of so many plies of singles of a number, 1 to [maxPlies]. For spun silk the
// number is that of the folded yarn; yards a pound and metres a kilogram take one ply only, since they
// measure the yarn as it is. The yarn must lie between 0.1 and 100,000 tex. The error is a
// [*FieldError].
func NewYarnSize(system CountSystem, number YarnNumber, plies int) (YarnSize, error) {
	y := YarnSize{system, number, plies}
	if !system.known() {
		return YarnSize{}, &FieldError{Field: "count system", Value: system.String(), Want: "one of the count systems"}
	}
	if number <= 0 || number > maxYarnNumber {
		return YarnSize{}, &FieldError{Field: "yarn number", Value: number.String(), Want: "above 0 and at most " +
			maxYarnNumber.String()}
	}
	most := maxPlies
	if countSystems[system].never {
		most = 1
	}
	if plies < 1 || plies > most {
		return YarnSize{}, Outside("plies", plies, 1, most, "")
	}
	if m := y.metresInGram(); m.Cmp(finestYarn) > 0 || m.Cmp(coarsestYarn) < 0 {
		return YarnSize{}, &FieldError{Field: "yarn", Value: y.String(),
			Want: figure.Signed("a yarn between 0.1 and 100000 tex")}
	}
	return y, nil
}

// String gives the number with at most six decimals.
func (n YarnNumber) String() string { return figure.Signed(n.plain()) }

func (n YarnNumber) plain() string { return ratio.Decimal(n.rat(), 6) }

func (n YarnNumber) rat() *big.Rat { return big.NewRat(int64(n), int64(YarnNumberOne)) }

// IsZero says that no yarn was named.
func (y YarnSize) IsZero() bool { return y == YarnSize{} }

// System is the count system.
func (y YarnSize) System() CountSystem { return y.system }

// Number is the number of the singles; for spun silk that of the folded yarn.
func (y YarnSize) Number() YarnNumber { return y.number }

// Plies is how many singles are folded together, 1 for a single; 0 only in the zero value.
func (y YarnSize) Plies() int { return y.plies }

// metresInGram is the length of a gram of the finished yarn, exactly, and nil for the zero value.
func (y YarnSize) metresInGram() *big.Rat {
	if y.number <= 0 || y.plies < 1 || !y.system.known() {
		return nil
	}
	return y.system.metresInGram(y.number.rat(), y.plies)
}

// metresInGram turns a number and plies into the metres in a gram. Folding divides a count and
// multiplies a weight: two ends of 80s lie as one of 40s (Brooks 1892).
func (c CountSystem) metresInGram(number *big.Rat, plies int) *big.Rat {
	s := countSystems[c]
	folded := ratio.Of(plies)
	if s.finished {
		folded = ratio.Of(1)
	}
	switch {
	case s.gramsIn > 0:
		return ratio.Quo(ratio.Of(s.gramsIn), ratio.Mul(number, folded))
	case s.metresIn > 0:
		return ratio.Quo(number, ratio.Mul(folded, ratio.Of(s.metresIn)))
	default:
		return ratio.Quo(ratio.Mul(ratio.Mul(number, ratio.Of(s.yards)), yardsInGram), folded)
	}
}

// number turns the metres in a gram of a finished yarn into the number of its singles: the other way
// about from metresInGram.
func (c CountSystem) number(metresInGram *big.Rat, plies int) *big.Rat {
	one := c.metresInGram(ratio.Of(1), plies)
	if countSystems[c].gramsIn > 0 {
		return ratio.Quo(one, metresInGram)
	}
	return ratio.Quo(metresInGram, one)
}

// String writes the yarn so that it can be read in one way only, and ParseYarn reads it back to the
// same yarn: "cotton 8, 2 plies", "tex 25", "3360 yd/lb". The zero value gives "".
func (y YarnSize) String() string { return figure.Signed(y.plain()) }

func (y YarnSize) plain() string {
	switch {
	case y.IsZero():
		return ""
	case y.system.known() && countSystems[y.system].never:
		return y.number.plain() + " " + y.system.String()
	case y.plies == 1:
		return y.system.String() + " " + y.number.plain()
	}
	return fmt.Sprintf("%s %s, %d plies", y.system, y.number.plain(), y.plies)
}

// Notation writes a folded yarn as its trade does, "cotton 8/2" or "worsted 2/28", and any other yarn
// as String does. Tex, dtex and denier are written with a times sign, since their numbers add up.
func (y YarnSize) Notation() string {
	if y.plies < 2 || !y.system.known() {
		return y.String()
	}
	switch s := countSystems[y.system]; {
	case s.gramsIn > 0:
		return fmt.Sprintf("%s %s x %d", y.system, y.number, y.plies)
	case s.pliesFirst:
		return fmt.Sprintf("%s %d/%s", y.system, y.plies, y.number)
	default:
		return fmt.Sprintf("%s %s/%d", y.system, y.number, y.plies)
	}
}

// Shown writes the yarn as Notation does, but a length in a mass with no more figures than a label is good
// for, such as 200 yd in 50 g: whole yards a pound or metres a kilogram from 100 on.
func (y YarnSize) Shown() string {
	if !y.system.known() || !countSystems[y.system].never {
		return y.Notation()
	}
	decimals := 0
	if y.number < 100*YarnNumberOne {
		decimals = 1
	}
	return figure.Exact(y.number.rat(), decimals, y.system.String()).String()
}

// MarshalText writes the yarn as String does, but always with a decimal point.
func (y YarnSize) MarshalText() ([]byte, error) { return []byte(y.plain()), nil }

// UnmarshalText reads what MarshalText wrote, or anything else that ParseYarn takes; nothing at all is
// the zero value.
func (y *YarnSize) UnmarshalText(b []byte) error { return readTextOrNone(y, b, ParseYarn) }

// Readable writes the yarn as its trade does where that can be read in one way only.
func (y YarnSize) Readable() string {
	if back, err := ParseYarn(y.Notation()); err == nil && back == y {
		return y.Notation()
	}
	return y.String()
}
