package asked

import (
	"time"

	"millside/plan/measure"
)

// Day is a day that may be left to the program, or left out.
type Day struct {
	at    time.Time
	given bool
}

// Or is the day that was given, or another where none was. It is zero where there should be none.
func (d *Day) Or(today time.Time) time.Time {
	if d.given {
		return d.at
	}
	return today
}

// String writes the day as Set reads it; "" where none was given.
func (d *Day) String() string {
	switch {
	case !d.given:
		return ""
	case d.at.IsZero():
		return "none"
	}
	return d.at.Format(time.DateOnly)
}

// Type is the word that the help shows for the value.
func (d *Day) Type() string { return "day" }

// Set reads a day as ISO 8601 writes it, or "none".
func (d *Day) Set(s string) error {
	if s == "none" {
		*d = Day{given: true}
		return nil
	}
	at, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return &measure.FieldError{Value: s, Want: "a day such as 2026-11-25, or none"}
	}
	*d = Day{at: at, given: true}
	return nil
}
