package loom

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/field"
	"millside/plan/internal/measuretest"
	"millside/plan/measure"
)

// The reed decides where it doesn't give the sett. The first line is from P. Osterkamp, "Useful information: more
// charts" (web page): 10 ends an inch in an 8-dent reed is 1-1-1-2, so nothing is to be said; the others are worked by
// hand (common practice, no source).
func TestTheReedDecides(t *testing.T) {
	for _, c := range []struct{ reed, sett, gives, order, away, words string }{
		{"8 dents an inch", "10 an inch", "10 an inch", "1-1-1-2", "", ""},
		{"10 dents an inch", "20 an inch", "20 an inch", "2", "", ""},
		// 2.09 ends a dent lie nearest to 23 over 11, which is 2.0909.
		{"10 dents an inch", "20.9 an inch", "20.91 an inch", "2-2-2-2-2-2-2-2-2-2-3", "less than 0.1 % closer",
			"the reed decides: 20.91 an inch with 2-2-2-2-2-2-2-2-2-2-3, less than 0.1 % closer than the 20.9 an inch"},
		// 1 in = 2.54 cm: 40 dents in 10 cm are 10.16 an inch, twice that is 20.32, 0.32 / 20 = 1.6 % closer.
		// What is asked for is written as what the reed gives: nothing is to be seen of it.
		{"40 in 10 cm", "20.32001 an inch", "20.32 an inch", "2", "less than 0.1 % more open", ""},
		{"40 in 10 cm", "20 an inch", "20.32 an inch", "2", "1.6 % closer",
			"the reed decides: 20.32 an inch with 2, 1.6 % closer than the 20 an inch that was asked for; " +
				"the warp is 9.8 in wide in it, not 10 in"},
	} {
		s, err := reed(t, c.reed).Settle(measuretest.Sett(t, c.sett))
		if err != nil {
			t.Fatal(err)
		}
		words := s.Words(98*measure.Inch/10, 200, measure.Imperial).String()
		got := s.Order.Gives.As(2).String()
		if got != c.gives || s.Order.String() != c.order || s.Order.Away().String() != c.away ||
			!strings.HasPrefix(words, c.words) || (words == "") != (c.words == "") {
			t.Errorf("%s, %s: %s with %s, %s: %s", c.reed, c.sett, got, s.Order, s.Order.Away(), words)
		}
		if row := s.Row(98*measure.Inch/10, 200, measure.Imperial); row.Warning != words {
			t.Errorf("the row says %s, the words %s", row.Warning, words)
		}
	}
}

// Whatever the sett and the reed are: what is settled is near to the sett, or refused by a field with a sett that will
// do; taking the first sett that the error names is not refused again.
func TestSettledOrRefused(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, err := ParseReed(rapid.SampledFrom([]string{"5 dents an inch", "15 dents an inch", "120 in 10 cm",
			"1100 Scotch", "0.3 dents an inch"}).Draw(t, "reed"))
		if err != nil {
			t.Fatal(err)
		}
		sett, err := measure.ParseSett(rapid.SampledFrom([]string{"0.2", "0.7", "1", "3 1/3", "18.37", "77", "480",
			"760", "1000"}).Draw(t, "sett") + " an inch")
		if err != nil {
			t.Fatal(err)
		}
		s, err := r.Settle(sett)
		if s == nil {
			t.Fatalf("%s, %s: %v", r, sett, err)
		}
		if (err == nil) != (s.Order.Off <= nearEnough) {
			t.Fatalf("%s, %s: %s off, %v", r, sett, s.Order.Off, err)
		}
		for _, fe := range measure.FieldErrors(err) {
			if fe.Field != field.SettOf.Name || !strings.Contains(fe.Want, "a reed of "+r.String()) {
				t.Fatal(err)
			}
			for _, o := range r.extremes(sett) {
				if _, err := r.Settle(o.Gives); err != nil {
					t.Fatalf("%s, which was named: %v", o.Gives, err)
				}
			}
		}
	})
	if s, err := (Reed{}).Settle(measuretest.Sett(t, "16 an inch")); s != nil || err != nil {
		t.Errorf("the zero reed gives %v, %v", s, err)
	}
}

// Dents given one by one decide too. Worked by hand: ten times 20 x 2 + 4 x 4 ends lie in 260 dents without the last
// gap of 2, so that 560 / 258 x 10 an inch are 21.71; the sett may be told of the ground, which is 20.
func TestTheDentsDecide(t *testing.T) {
	r := reed(t, "10 dents an inch")
	sections, err := ParseDentSections("20 dents of 2, 4 of 4, 2 empty")
	if err != nil {
		t.Fatal(err)
	}
	dents, err := sections.Fill(560)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		sett    string
		refused bool
	}{{"20 an inch", false}, {"21.5 an inch", false}, {"39 an inch", false}, {"31 an inch", true},
		{"15 an inch", true}} {
		s, err := r.SettleDents(measuretest.Sett(t, c.sett), dents, sections)
		words := s.Words(measure.Inch, 560, measure.Imperial).String()
		if (err != nil) != c.refused || !strings.HasPrefix(words, "the dents decide: 21.71 an inch on average") {
			t.Errorf("%s: %v, %s", c.sett, err, words)
		}
		if c.refused && (measure.FieldErrors(err)[0].Field != field.Dents.Name ||
			!strings.Contains(err.Error(), "on average; or 21.71 an inch as the sett")) {
			t.Errorf("%s: %v", c.sett, err)
		}
		if drafted, err := r.SettleDents(measuretest.Sett(t, c.sett), dents, nil); err != nil ||
			!strings.HasPrefix(drafted.Words(measure.Inch, 560, measure.Imperial).String(), "the draft decides: ") {
			t.Errorf("a draft of %s: %v", c.sett, err)
		}
		if s.Of(field.Reed) || !s.Of(field.Dents) || !s.Of(field.SettOf) {
			t.Errorf("%s: said of another field", c.sett)
		}
	}
}
