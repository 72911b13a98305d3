package look

import (
	"fmt"
	"time"
)

// Roughly writes a time in hours and minutes, to the nearest minute.
func Roughly(d time.Duration) string {
	minutes := int(d.Round(time.Minute) / time.Minute)
	if minutes < 60 {
		return fmt.Sprintf("%d min", minutes)
	}
	return fmt.Sprintf("%d h %02d min", minutes/60, minutes%60)
}

// When writes a time as a weaver says it.
func When(t, now time.Time) string {
	if t.IsZero() {
		return "-"
	}
	t, now = t.Local(), now.Local()
	day := func(t time.Time) time.Time { return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, t.Location()) }
	switch days := int(day(now).Sub(day(t)).Hours()+12) / 24; {
	case days == 0:
		return "today, " + t.Format("15:04")
	case days == 1:
		return "yesterday, " + t.Format("15:04")
	default:
		return t.Format("2 January 2006, 15:04")
	}
}
