package asked

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"millside/cmd/millside/internal/prose"
	"millside/plan/draft"
	"millside/plan/measure"
	"millside/plan/stripe"
	"millside/plan/stripe/schedule"
	"millside/plan/times"
)

// minutesValue is a time in minutes, as a weaver's guess is written: 0.6 is 36 seconds.
type minutesValue struct{ d *time.Duration }

func (v minutesValue) String() string {
	if v.d == nil {
		return ""
	}
	return times.MinutesText(*v.d)
}
func (v minutesValue) Type() string { return "minutes" }
func (v minutesValue) Set(s string) (err error) {
	d, err := times.ParseMinutes(s)
	if err == nil {
		*v.d = d
	}
	return err
}

// sizesValue is a list of the numbers of ends that a pass may carry.
type sizesValue struct{ sizes *[]int }

func (v sizesValue) String() string {
	if v.sizes == nil {
		return ""
	}
	var list []string
	for _, n := range *v.sizes {
		list = append(list, strconv.Itoa(n))
	}
	return strings.Join(list, ", ")
}
func (v sizesValue) Type() string { return "numbers" }
func (v sizesValue) Set(s string) error {
	var sizes []int
	for item := range strings.SplitSeq(s, ",") {
		n, err := strconv.Atoi(strings.TrimSpace(item))
		if err != nil || n < 1 || n > measure.MaxPositions {
			return &measure.FieldError{Value: s,
				Want: fmt.Sprintf("numbers from 1 to %d with commas between them, such as \"10, 12\"",
					measure.MaxPositions)}
		}
		sizes = append(sizes, n)
	}
	*v.sizes = sizes
	return nil
}

// sideValue is the side that thread 1 of a draft is on; given stays false until one is set.
type sideValue struct {
	side  *draft.Side
	given *bool
}

func (v sideValue) String() string {
	if v.given == nil || !*v.given {
		return ""
	}
	return v.side.String()
}
func (v sideValue) Type() string { return "word" }
func (v sideValue) Set(s string) error {
	for _, side := range []draft.Side{draft.FromRight, draft.FromLeft} {
		if s == side.String() {
			*v.side, *v.given = side, true
			return nil
		}
	}
	return &measure.FieldError{Value: s, Want: "one of right, left"}
}

// parsePackages reads how many packages of each colour are at hand: "red 2, white 4". The list has an
// entry for each colour of the order, 0 for one that isn't named, which means enough.
func parsePackages(text string, colours []stripe.Colour) ([]int, error) {
	packages := make([]int, len(colours))
	for item := range strings.SplitSeq(text, ",") {
		words := strings.Fields(item)
		wrong := &measure.FieldError{Value: strings.TrimSpace(item),
			Want: "a colour and its number of packages, such as red 2, with commas between them"}
		if len(words) < 2 {
			return nil, wrong
		}
		n, err := strconv.Atoi(words[len(words)-1])
		if err != nil || n < 1 || n > measure.MaxEnds {
			return nil, wrong
		}
		at := colourNamed(strings.Trim(strings.Join(words[:len(words)-1], " "), "\""), colours)
		if at < 0 {
			wrong.Want = "a colour that the stripes use: " + colourNames(colours)
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

// colourNamed is the place of a colour in a list by its name, -1 if it isn't there. Capitals don't matter.
func colourNamed(name string, colours []stripe.Colour) int {
	for i, c := range colours {
		if strings.EqualFold(c.Name, name) {
			return i
		}
	}
	return -1
}

func colourNames(colours []stripe.Colour) string {
	var names []string
	for i, c := range colours {
		if i == prose.MostShown {
			names = append(names, fmt.Sprintf("... (%d in all)", len(colours)))
			break
		}
		names = append(names, c.Name)
	}
	return strings.Join(names, ", ")
}

// wayValue is the way to wind the stripes.
type wayValue struct {
	way      schedule.Way
	cheapest bool
}

// wayNames lists the names of the ways.
func wayNames() []string {
	return []string{schedule.Searched.String(), stripe.CheapestWay, schedule.SideBySide.String(),
		schedule.Swapped.String(), schedule.OneRepeat.String(), schedule.ChainEach.String()}
}

func (v *wayValue) String() string {
	if v.cheapest {
		return stripe.CheapestWay
	}
	return v.way.String()
}
func (v *wayValue) Type() string { return "way" }
func (v *wayValue) Set(s string) error {
	name := strings.ToLower(strings.TrimSpace(s))
	if name == stripe.CheapestWay {
		*v = wayValue{cheapest: true}
		return nil
	}
	way, ok := schedule.WayOf(name)
	if !ok {
		return &measure.FieldError{Value: s, Want: strings.Join(wayNames(), ", ")}
	}
	*v = wayValue{way: way}
	return nil
}
