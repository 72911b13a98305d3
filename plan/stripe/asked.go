package stripe

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"millside/plan"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/stripe/schedule"
)

// ParseWay reads the name of a way to wind; "" is the one that the search takes. Cheapest says that the cheapest
// schedule is wanted. The error is a [*measure.FieldError].
func ParseWay(name string) (way schedule.Way, cheapest bool, err error) {
	name = strings.ToLower(strings.TrimSpace(name))
	if name == "" {
		return schedule.Searched, false, nil
	}
	if name == CheapestWay {
		return schedule.Searched, true, nil
	}
	if way, ok := schedule.WayOf(name); ok {
		return way, false, nil
	}
	return 0, false, field.Way.Wrong(name, field.Way.Range())
}

// ParsePackages reads how many packages of each colour are at hand: "red 2, white 4". The list has an entry for
// each colour of the order, 0 for one that isn't named, which means enough. The error is a [*measure.FieldError].
func ParsePackages(text string, colours []Colour) ([]int, error) {
	packages := make([]int, len(colours))
	if strings.TrimSpace(text) == "" {
		return packages, nil
	}
	for item := range strings.SplitSeq(text, ",") {
		words := strings.Fields(item)
		wrong := field.PackagesOf.Wrong(strings.TrimSpace(item),
			"a colour and its number of packages, such as red 2, with commas between them")
		if len(words) < 2 {
			return nil, wrong
		}
		n, err := strconv.Atoi(words[len(words)-1])
		if err != nil || n < 1 || n > measure.MaxEnds {
			return nil, wrong
		}
		name := strings.Trim(strings.Join(words[:len(words)-1], " "), "\"")
		at := slices.IndexFunc(colours, func(c Colour) bool { return strings.EqualFold(c.Name, name) })
		if at < 0 {
			wrong.Want = "a colour that the stripes use: " + shortNames(colours)
			return nil, wrong
		}
		if packages[at] > 0 {
			wrong.Want = "each colour once"
			return nil, wrong
		}
		packages[at] = n
	}
	return packages, nil
}

// mostShown is how many names of colours a message lists.
const mostShown = 8

func shortNames(colours []Colour) string {
	var names []string
	for i, c := range colours {
		if i == mostShown {
			names = append(names, fmt.Sprintf("... (%d in all)", len(colours)))
			break
		}
		names = append(names, c.Name)
	}
	return strings.Join(names, ", ")
}

// AskOf is what a spec asks of the way to wind the stripes that have these colours. The error is a
// [*measure.FieldError].
func AskOf(spec plan.Spec, colours []Colour) (Ask, error) {
	a := spec.Asked
	var ask Ask
	var err error
	if ask.Way, ask.Cheapest, err = ParseWay(a.Way); err != nil {
		return ask, err
	}
	if a.Packages != "" {
		if ask.Limits.Packages, err = ParsePackages(a.Packages, colours); err != nil {
			return ask, err
		}
	}
	ask.Limits.FinishAtLease, ask.Limits.Sizes, ask.Limits.MostHalts, ask.Limits.Effort = a.FinishAtLease, a.Sizes,
		a.MostHalts, a.Effort
	return ask, nil
}
