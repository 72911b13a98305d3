package start

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"millside/plan"
	"millside/plan/field"
	"millside/plan/measure"
)

// Package is a cone, spool or ball of yarn that there is. Either its weight or its length is known.
type Package struct {
	// Colour is what the weaver calls it; it may be empty in a plain warp.
	Colour string
	// Gross is its weight with its tube, Length the yarn on it.
	Gross  measure.Mass
	Length measure.Length
}

// mostPackages bounds the packages that are told one by one.
const mostPackages = 1000

const packagesWants = `weights or lengths with commas between them, the colour in front and the number of packages ` +
	`where several are alike, such as "250 g, 3 of 180 g" or "red 250 g, white 400 yd, 90 yd"`

// onePackage parts the colour, the number of packages and what one of them holds.
var onePackage = regexp.MustCompile(`^(?:"([^"]+)"|(\pL[^"0-9]*))?\s*(?:(\d+)\s+of\s+)?([0-9].*)$`)

// ParseOnHand reads packages with commas between them: "250 g, 3 of 180 g", "red 250 g, white 400 yd, 90 yd". A
// colour holds until another is named. The error is a [*measure.FieldError].
func ParseOnHand(text string) ([]Package, error) {
	if strings.TrimSpace(text) == "" {
		return nil, nil
	}
	var list []Package
	colour := ""
	for _, item := range measure.SplitList(text) {
		item = strings.TrimSpace(item)
		m := onePackage.FindStringSubmatch(item)
		if m == nil {
			return nil, field.OnHand.Wrong(measure.Shortened(item), packagesWants)
		}
		if named := strings.Join(strings.Fields(m[1]+m[2]), " "); named != "" {
			colour = named
		}
		if err := measure.CheckColour(colour); err != nil {
			return nil, field.OnHand.Wrong(measure.Shortened(item), packagesWants)
		}
		p, n := Package{Colour: colour}, 1
		if m[3] != "" {
			var err error
			if n, err = strconv.Atoi(m[3]); err != nil || n < 1 || n > mostPackages {
				return nil, field.OnHand.Wrong(measure.Shortened(item), fmt.Sprintf("1 to %d packages", mostPackages))
			}
		}
		var err error
		if p.Gross, err = measure.ParseMass(m[4]); err != nil {
			p.Gross = 0
			p.Length, err = measure.ParseLength(m[4])
		}
		if err != nil || p.Gross == 0 && p.Length == 0 {
			return nil, field.OnHand.Wrong(measure.Shortened(item), packagesWants)
		}
		if len(list)+n > mostPackages {
			return nil, field.OnHand.Wrong(measure.Shortened(text), fmt.Sprintf("at most %d packages", mostPackages))
		}
		for range n {
			list = append(list, p)
		}
	}
	return list, nil
}

// OnHandText writes packages as [ParseOnHand] reads them, those that are alike and stand together as one.
func OnHandText(list []Package) string {
	var parts []string
	for i := 0; i < len(list); {
		same := 1
		for i+same < len(list) && list[i+same] == list[i] {
			same++
		}
		text := ""
		if i == 0 && list[i].Colour != "" || i > 0 && list[i].Colour != list[i-1].Colour {
			text = quoted(list[i].Colour) + " "
		}
		if same > 1 {
			text += strconv.Itoa(same) + " of "
		}
		parts = append(parts, text+list[i].amount())
		i += same
	}
	return strings.Join(parts, ", ")
}

// quoted puts a colour in quotation marks where its figures would be read as an amount.
func quoted(colour string) string {
	if strings.ContainsAny(colour, `0123456789,;`) {
		return `"` + colour + `"`
	}
	return colour
}

// amount is what the package holds, as it was written.
func (p Package) amount() string {
	if p.Gross != 0 {
		return p.Gross.String()
	}
	return p.Length.String()
}

// words names a package by its number and its amount: "package 2, red 180 g".
func (p Package) words() string {
	if p.Colour == "" {
		return p.amount()
	}
	return p.Colour + " " + p.amount()
}

// net is the weight of the yarn on a package that was weighed.
func (p Package) net(y plan.WarpYarn) measure.Mass { return p.Gross - y.Tube }

// holds is the length of the yarn on a package, rounded down.
func (p Package) holds(y plan.WarpYarn) (measure.Length, error) {
	if p.Gross == 0 {
		return p.Length, nil
	}
	if y.Size.IsZero() {
		return 0, field.YarnOf.Missing()
	}
	if p.net(y) <= 0 {
		return 0, field.Tube.Wrong(y.Tube.String(), "less than each package weighs with its tube")
	}
	return y.Size.LengthOf(p.net(y))
}
