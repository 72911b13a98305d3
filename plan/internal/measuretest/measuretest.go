// Package measuretest makes quantities for tests of the rooms above package measure.
package measuretest

import (
	"strconv"

	"millside/plan/measure"
)

// TB is what a test and a property check have in common.
type TB interface {
	Helper()
	Fatal(...any)
}

// Sett reads a sett, or ends the test.
func Sett(t TB, text string) measure.Sett {
	t.Helper()
	s, err := measure.ParseSett(text)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Yarn makes a yarn size of a whole number, or ends the test.
func Yarn(t TB, system measure.CountSystem, number, plies int) measure.YarnSize {
	t.Helper()
	y, err := measure.NewYarnSize(system, measure.YarnNumber(number)*measure.YarnNumberOne, plies)
	if err != nil {
		t.Fatal(err)
	}
	return y
}

// EndsAnInch is a sett as a number, for comparing with a rounded figure in print.
func EndsAnInch(s measure.Sett) float64 {
	f, _ := s.In(measure.PerInch).Rat().Float64()
	return f
}

// Float reads a number that the engine wrote, for comparing with a rounded figure in print.
func Float(t TB, s string) float64 {
	t.Helper()
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return f
}
