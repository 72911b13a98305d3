package asked

import (
	"regexp"
	"strconv"
	"strings"

	"millside/plan/figure"
	"millside/plan/measure"
)

// WeaveNames lists the weaves that a sett can be asked for by name.
func WeaveNames() []string {
	var names []string
	for _, w := range measure.Weaves() {
		names = append(names, w.Name)
	}
	return names
}

// ownWeave is a weave that is told by its counts.
var ownWeave = regexp.MustCompile(`^([0-9]{1,4}) ends?,? (?:and )?([0-9]{1,4}) intersections?$`)

// ParseWeave reads a weave: one of [WeaveNames], or its counts, such as "6 ends, 2 intersections".
func ParseWeave(s string) (measure.Weave, error) {
	text := strings.ToLower(strings.Join(strings.Fields(s), " "))
	for _, w := range measure.Weaves() {
		if w.Name == text {
			return w, nil
		}
	}
	m := ownWeave.FindStringSubmatch(text)
	if m == nil {
		return measure.Weave{}, &measure.FieldError{Value: s, Want: "one of " + strings.Join(WeaveNames(), ", ") +
			", or such as \"6 ends, 2 intersections\""}
	}
	ends, _ := strconv.Atoi(m[1]) // four digits at the most
	between, _ := strconv.Atoi(m[2])
	return measure.Weave{Name: text, Ends: ends, Intersections: between}, nil
}

// factorParts parts the ones of a factor from its hundredths.
var factorParts = regexp.MustCompile(`^([0-2]?)(?:[.,]([0-9]{1,2}))?$`)

// ParseFactor reads a factor exactly, and finds where it is published if it is.
func ParseFactor(s string) (measure.DiameterFactor, error) {
	m := factorParts.FindStringSubmatch(strings.TrimSpace(s))
	wrong := &measure.FieldError{Value: s, Want: figure.Signed("0.01 to 2 with at most two decimals, such as 0.9")}
	if m == nil || m[1] == "" && m[2] == "" {
		return measure.DiameterFactor{}, wrong
	}
	n, _ := strconv.Atoi(m[1] + (m[2] + "00")[:2]) // three digits at the most
	if n < 1 || n > 200 {
		return measure.DiameterFactor{}, wrong
	}
	for _, f := range measure.DiameterFactors() {
		if f.Hundredths == n {
			return f, nil
		}
	}
	return measure.DiameterFactor{Hundredths: n, For: "your own factor", Source: "not a published one"}, nil
}
