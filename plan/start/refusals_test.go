package start

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/field"
	"millside/plan/measure"
)

// What is missing, at odds or too much is refused by its field, with what would do.
func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		name, want string
		change     func(k *Known)
	}{
		{"nothing", "nothing is known yet; give what you know", func(*Known) {}},
		{"two unknowns", "yarn alone gives only one of them",
			func(k *Known) { k.OnHand = onHand(t, "3 of 100 yd") }},
		{"ends alone", "more beside the ends", func(k *Known) { k.Ends = 400 }},
		{"a width alone", "a sett beside the width", func(k *Known) { k.FinishedWidth = 20 * measure.Inch }},
		{"a length alone", "more beside the length", func(k *Known) { k.Length = measure.Yard }},
		{"the yarn without ends", `ends: "" won't do`,
			func(k *Known) { k.Find, k.Length = TheYarn, measure.Yard }},
		{"the yarn without a length", `length: "" won't do`, func(k *Known) { k.Find, k.Ends = TheYarn, 400 }},
		{"the length that is given", `length: "1 yd" won't do; give nothing`,
			func(k *Known) { k.Find, k.Ends, k.Length, k.OnHand = TheLength, 4, measure.Yard, onHand(t, "900 yd") }},
		{"ends and width at odds", `finished width: "20 in" won't do; give one that agrees with ends: it takes ` +
			`400 ends, not 300`, func(k *Known) {
			k.Ends, k.FinishedWidth, k.Spec.Loom.Sett, k.Length = 300, 20*measure.Inch, sett(t, "20 an inch"),
				measure.Yard
		}},
		{"two widths at odds", `width in the reed: "21 in" won't do`, func(k *Known) {
			k.ReedWidth, k.FinishedWidth, k.Spec.Loom.Sett = 21*measure.Inch, 20*measure.Inch, sett(t, "20 an inch")
		}},
		{"too short for the pieces", "which the pieces take", func(k *Known) {
			k.Ends, k.Length, k.FinishedLength, k.Pieces = 4, measure.Yard, measure.Yard, 3
		}},
		{"no yarn size for a weight", `yarn: "" won't do`,
			func(k *Known) { k.Ends, k.OnHand = 10, onHand(t, "250 g") }},
		{"a tube heavier than the cone", `tube: "30 g" won't do`, func(k *Known) {
			k.Ends, k.OnHand, k.Spec.Yarn.Size = 10, onHand(t, "25 g"), yarnOf(t, "8/2 cotton")
			k.Spec.Yarn.Tube = 30 * measure.Gram
		}},
		{"too little", "more yarn: it doesn't suffice for 400 ends of the shortest warp",
			func(k *Known) { k.Ends, k.OnHand = 400, onHand(t, "10 of 1 yd") }},
		{"a piece longer than the warp", "a shorter piece",
			func(k *Known) { k.Length, k.FinishedLength = measure.Yard, 2*measure.Yard }},
		{"two colours in a plain warp", "yarn of one colour", func(k *Known) {
			k.Ends, k.OnHand = 10, onHand(t, "red 20 yd, blue 30 yd")
		}},
		{"a colour that no stripe has", "a colour of the stripes in front: red, white", func(k *Known) {
			k.Spec.Stripes, k.OnHand = "4 red, 2 white", onHand(t, "red 20 yd, blue 30 yd")
		}},
		{"a colour without yarn", "packages of white too", func(k *Known) {
			k.Spec.Stripes, k.OnHand = "4 red, 2 white", onHand(t, "red 20 yd")
		}},
	} {
		k := Known{Spec: lossless(bare())}
		c.change(&k)
		var unclear *UnclearError
		r, err := Solve(testContext, k)
		if err == nil {
			t.Errorf("%s: %s", c.name, r.Answer)
			continue
		}
		if !strings.Contains(err.Error(), c.want) || len(measure.FieldErrors(err)) == 0 && !errors.As(err, &unclear) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func TestParseOnHand(t *testing.T) {
	for text, want := range map[string]string{
		"":                                   "",
		"250 g":                              "250 g",
		"250 g, 3 of 180 g":                  "250 g, 3 of 180 g",
		"red 250 g, white 400 yd, 90 yd":     "red 250 g, white 400 yd, 90 yd",
		"dark  red 2 of 1 lb 3 oz; 5 m":      "dark red 2 of 19 oz, 5 m",
		`"8/2 navy" 100 g, 100 g, red 1,5 m`: `"8/2 navy" 2 of 100 g, red 1.5 m`,
	} {
		got, err := ParseOnHand(text)
		if err != nil || OnHandText(got) != want {
			t.Errorf("%q is read as %q, %v; want %q", text, OnHandText(got), err, want)
		}
	}
	for _, text := range []string{"250", "red", "0 g", "3 of", "0 of 250 g", "2000 of 1 g", "250 g 180 g", "-3 g", ",",
		"x 5 y"} {
		if got, err := ParseOnHand(text); err == nil {
			t.Errorf("%q is read as %q", text, OnHandText(got))
		} else if wrong := measure.FieldErrors(err); len(wrong) != 1 || wrong[0].Field != field.OnHand.Name {
			t.Errorf("%q: %v", text, err)
		}
	}
}

func TestOnHandThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		one := `(red|"8/2 a"|dark blue)? ?([1-9] of )?[1-9]{1,3}(\.5)? (g|oz|yd|m)(, |; )`
		text := rapid.StringMatching(`(`+one+`){0,5}[1-9] m`).Draw(t, "text")
		list, err := ParseOnHand(text)
		if err != nil {
			t.Fatal(err)
		}
		again, err := ParseOnHand(OnHandText(list))
		if err != nil || len(again) != len(list) {
			t.Fatalf("%q is written %q: %v", text, OnHandText(list), err)
		}
		for i := range list {
			if list[i] != again[i] {
				t.Fatalf("%q is written %q", text, OnHandText(list))
			}
		}
	})
}
