package measure

import (
	"fmt"
	"math/big"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"millside/plan/internal/ratio"
)

const YarnWants = "a yarn such as cotton 8/2, worsted 2/28, Nm 28/2, 25 tex, 3360 yd/lb or 200 yd / 50 g"

// maxYarnText bounds what a person types for a yarn, in bytes.
const maxYarnText = 80

// mostReadPlies is the most plies that a figure in a notation with a slash is taken for: 20/2 can't be
// twenty plies of number 2. More can be said in words, "2, 20 plies". (common practice, no source)
const mostReadPlies = 12

// AmbiguousYarn is the error for a notation that means different yarns. It unwraps to a [*FieldError].
type AmbiguousYarn struct {
	// Value is what was given.
	Value string
	// Readings lists what it can mean, at least two yarns, the likeliest first.
	Readings []YarnSize
}

// Error lists the readings with their length a pound, which tells them apart on a yarn's label.
func (e *AmbiguousYarn) Error() string { return e.field().Error() }

// Unwrap gives the same error as a [*FieldError].
func (e *AmbiguousYarn) Unwrap() error { return e.field() }

func (e *AmbiguousYarn) field() *FieldError {
	var parts []string
	for _, y := range e.Readings {
		parts = append(parts, fmt.Sprintf("%q (%s)", y, y.PerMass(Imperial)))
	}
	return &FieldError{Value: e.Value, Want: "which of these is meant: " + strings.Join(parts, " or ")}
}

// ParseYarn reads a yarn's size as a label or a weaver writes it: "cotton 8/2", "2/28 worsted",
// "30s/2 spun silk", "25 tex x 2", "cotton 8, 2 plies", "2 1/2 run", "3360 yd/lb", "1500 m/kg",
// "200 yd / 50 g".
//
// A length in a mass is kept as yards a pound or metres a kilogram, rounded to the nearest millionth.
// Other numbers have at most six decimals, and more are refused. Where a slash can be read in two ways
// (2/8 cotton: number 8 in 2 plies, or number 2 in 8) or the count system isn't said and makes a
// difference, the error is an [*AmbiguousYarn] that lists the readings; otherwise it is a
// [*FieldError] without a field name.
func ParseYarn(s string) (YarnSize, error) {
	text := strings.ToLower(spellFractions(s))
	if len(s) <= maxYarnText {
		text = yardsShort.ReplaceAllString(text, "$1 yd/lb")
	}
	if text == "" || len(text) > maxYarnText {
		return YarnSize{}, &FieldError{Value: s, Want: YarnWants}
	}
	if y, ok := labelYarn(text); ok {
		return y, nil
	}
	readings, err := readYarn(text)
	if err != nil {
		return YarnSize{}, &FieldError{Value: s, Want: NumberWants(err, YarnWants)}
	}
	switch len(readings) {
	case 0:
		return YarnSize{}, &FieldError{Value: s, Want: YarnWants}
	case 1:
		return readings[0], nil
	}
	return YarnSize{}, &AmbiguousYarn{Value: s, Readings: readings}
}

// labelParts parts a length from a mass: "200 yd / 50 g", "3360 yards a pound".
var labelParts = regexp.MustCompile(`^(.*[a-z"'])\s*(?:/|\s(?:per|a|an|in|to the)\s)\s*(.*[a-z])$`)

// yardsShort is yards a pound in the trade's letters: "3360 ypp".
var yardsShort = regexp.MustCompile(`^([0-9][0-9.,/ ]*?) ?y\.?p\.?p\.?$`)

// labelYarn reads a length in a mass.
func labelYarn(text string) (YarnSize, bool) {
	m := labelParts.FindStringSubmatch(text)
	if m == nil {
		return YarnSize{}, false
	}
	length, err := parseSum(m[1], YarnWants, lengthUnits)
	if err != nil {
		return YarnSize{}, false
	}
	if m[2][0] < '0' || m[2][0] > '9' {
		m[2] = "1 " + m[2]
	}
	mass, err := parseSum(m[2], YarnWants, massUnits)
	if err != nil || mass.Sign() <= 0 {
		return YarnSize{}, false
	}
	system := MetresPerKilogram
	if strings.ContainsAny(m[1], "yfi\"'") { // yards, feet or inches
		system = YardsPerPound
	}
	y, err := yarnFromDensity(system, ratio.Quo(length, mass), 1)
	return y, err == nil
}

var (
	plyWords  = regexp.MustCompile(`(?:,|\bin\b)?\s*\b(\d{1,2})(?:\s+|-)?(?:ply|plies)\b`)
	plyTimes  = regexp.MustCompile(`\bx\s*(\d{1,2})\b`)
	mixed     = regexp.MustCompile(`(\d+)\s+([13])/([24])\b`)
	figures   = regexp.MustCompile(`(\d[\d.,]*)s?(?:\s*/\s*(\d[\d.,]*)s?)?`)
	yarnNoise = regexp.MustCompile(`[\s,]+|\b(?:count|number|no\.?)(?:\s|$)`)
)

// readYarn lists what a yarn's text can mean.
func readYarn(text string) ([]YarnSize, error) {
	plies := 0
	for _, re := range []*regexp.Regexp{plyWords, plyTimes} {
		if m := re.FindStringSubmatchIndex(text); m != nil && plies == 0 {
			plies, _ = strconv.Atoi(text[m[2]:m[3]])
			if plies == 0 {
				return nil, errNotANumber
			}
			text = text[:m[0]] + " " + text[m[1]:]
		}
	}
	text, part := cutPart(text)
	found := figures.FindAllStringSubmatchIndex(text, -1)
	if len(found) != 1 {
		return nil, errNotANumber
	}
	m := found[0]
	a, err := yarnFigure(text[m[2]:m[3]])
	if err != nil {
		return nil, err
	}
	words := text[:m[0]] + " " + text[m[1]:]
	systems := systemsCalled(words)
	if m[4] < 0 {
		return singles(systems, ratio.Add(a, part), max(plies, 1)), nil
	}
	b, err := yarnFigure(text[m[4]:m[5]])
	if err != nil || plies != 0 || part.Sign() != 0 {
		return nil, errNotANumber
	}
	if strings.TrimSpace(words) == "spun silk" && !strings.Contains(text[m[0]:m[1]], "s") {
		// As sold, 20/2 spun silk has 5,000 yd/lb (M. Petrini 2020), which is the metric count; the English
		// count, which is written 20s/2, would have 16,800.
		systems = []CountSystem{SpunSilk, MetricCount}
	}
	return likely(strings.TrimSpace(words), slashed(systems, a, b)), nil
}

// mostMetricPlies is the most plies that the smaller figure of a metric count is taken for without asking:
// the trade writes 2/7 and 7/2 for the same yarn (common practice, no source).
const mostMetricPlies = 4

// likely leaves out readings that no yarn of the name has. Cottolin is sold by the linen lea (22/2) and by
// the cotton count (8/2), and has 1,500 to 5,000 yd/lb (from memory).
func likely(words string, list []YarnSize) []YarnSize {
	switch words {
	case "cottolin":
		return slices.DeleteFunc(list, func(y YarnSize) bool {
			perPound := ratio.Mul(y.metresInGram(), big.NewRat(int64(Pound), int64(Gram)))
			perPound = ratio.Mul(perPound, big.NewRat(int64(Metre), int64(Yard)))
			return perPound.Cmp(ratio.Of(1500)) < 0 || perPound.Cmp(ratio.Of(5000)) > 0
		})
	case "nm", "metric", "metric nm", "metric count":
		return slices.DeleteFunc(list, func(y YarnSize) bool {
			return len(list) > 1 && y.Plies() > mostMetricPlies
		})
	}
	return list
}

// cutPart cuts the fraction from a mixed number such as 2 1/2.
func cutPart(text string) (string, *big.Rat) {
	m := mixed.FindStringSubmatchIndex(text)
	if m == nil {
		return text, new(big.Rat)
	}
	part := big.NewRat(int64(text[m[4]]-'0'), int64(text[m[6]]-'0'))
	return text[:m[3]] + " " + text[m[1]:], part
}

// yarnFigure reads one number of a notation.
func yarnFigure(s string) (*big.Rat, error) {
	r, rest, err := LeadingDecimal(strings.TrimRight(s, ".,"))
	if err == nil && rest != "" {
		err = errNotANumber
	}
	return r, err
}

// systemsCalled lists the count systems that words can mean; none for words that mean nothing, and the
// systems of the hand weaver's yarns where nothing is said.
func systemsCalled(words string) []CountSystem {
	words = strings.TrimSpace(yarnNoise.ReplaceAllString(words+" ", " "))
	switch words {
	case "":
		return []CountSystem{Cotton, Worsted, LinenLea, MetricCount}
	case "cottolin":
		return []CountSystem{LinenLea, Cotton}
	case "silk": // English spun silk is counted after folding; much silk is sold in the metric count
		return []CountSystem{SpunSilk, MetricCount}
	case "wool", "woollen", "woolen", "merino", "lambswool", "alpaca", "mohair", "cashmere", "llama", "yak", "angora":
		return []CountSystem{Worsted, MetricCount, WoollenRun, WoollenCut}
	}
	for i, c := range countSystems {
		if words == c.name || slices.Contains(c.words, words) {
			return []CountSystem{CountSystem(i)}
		}
	}
	return nil
}

// singles reads a number without a slash in each system.
func singles(systems []CountSystem, number *big.Rat, plies int) []YarnSize {
	var list []YarnSize
	for _, c := range systems {
		list = addReading(list, c, number, plies)
	}
	return list
}

// slashed reads a/b in each system: in the order that its trade writes, and the other way about where
// the first can't be or is odd, with more plies than the number.
func slashed(systems []CountSystem, a, b *big.Rat) []YarnSize {
	var list []YarnSize
	for _, c := range systems {
		number, plies := a, b
		if countSystems[c].pliesFirst {
			number, plies = b, a
		}
		usual := readablePlies(plies)
		if usual && plies.Cmp(number) <= 0 {
			list = addReading(list, c, number, pliesOf(plies))
			continue
		}
		if readablePlies(number) {
			list = addReading(list, c, plies, pliesOf(number))
		}
		if usual {
			list = addReading(list, c, number, pliesOf(plies))
		}
	}
	return list
}

// readablePlies says whether a figure beside a slash can be a number of plies.
func readablePlies(r *big.Rat) bool {
	return r.IsInt() && r.Sign() > 0 && r.Cmp(ratio.Of(mostReadPlies)) <= 0
}

func pliesOf(r *big.Rat) int { return int(r.Num().Int64()) }

// addReading adds a yarn to the list if there is such a yarn and it isn't listed yet.
func addReading(list []YarnSize, c CountSystem, number *big.Rat, plies int) []YarnSize {
	n := ratio.Mul(number, ratio.Of(YarnNumberOne))
	if !n.IsInt() || !n.Num().IsInt64() {
		return list
	}
	y, err := NewYarnSize(c, YarnNumber(n.Num().Int64()), plies)
	if err != nil || slices.Contains(list, y) {
		return list
	}
	return append(list, y)
}
