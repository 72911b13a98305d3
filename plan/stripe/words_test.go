package stripe

import (
	"errors"
	"strings"
	"testing"
)

// What could be another warp than the weaver means is asked about, and where one reading is likely it is
// shown with its number of ends. None of these texts may be read without a word.
func TestAmbiguousWordsAreAskedAbout(t *testing.T) {
	for _, c := range []struct {
		text  string
		found string // what the error points at
		try   string // "" where no reading is likelier than another
		ends  int
	}{
		// A letter with a number in one word, and the number behind the colour.
		{"K4 R24 K24 Y4", "K4", "4 K, 24 R, 24 K, 4 Y", 56},
		{"K4R24", "K4R24", "4 K, 24 R", 28},
		{"4K 24R 24K 4Y", "24", "4K, 24R, 24K, 4Y", 56},
		{"4K24R", "K24R", "4K, 24 R", 28},
		{"2 navy9", "navy9", "", 0},
		{"red 4, blue 2", "4", "4 red, 2 blue", 6},
		{"red 4 blue 2", "4", "4 red, 2 blue", 6},
		{"red 4 blue", "4", "", 0},
		{"4 red 2 blue", "2", "4 red, 2 blue", 6},
		{"4 red 2", "2", "", 0},
		// Number words.
		{"four red", "four", "4 red", 4},
		{"twenty-four red, two blue", "twenty-four", "24 red, 2 blue", 26},
		{"a dozen red", "dozen", "", 0},
		{"three times (4 red, 2 white)", "three", "3 times (4 red, 2 white)", 18},
		{"twice (4 red, 2 white)", "twice", "2 times (4 red, 2 white)", 12},
		// Words that speak of winding.
		{"4 ends red", "ends", "4 red", 4},
		{"4 ends of red, 2 threads white", "ends", "4 red, 2 white", 6},
		{"4 lily of the valley", "of", "", 0},
		{"4 red ends", "ends", "4 red", 4},
		{"2x red", "x", "2 red", 2},
		{"2 x (4 red, 2 white)", "x", "2 times (4 red, 2 white)", 12},
		{"2 x 4 red", "x", "", 0},
		{"(4 red, 2 white) x 3", "(", "3 times (4 red, 2 white)", 18},
		{"(4 red, 2 white) 3 times, 4 red", "(", "3 times (4 red, 2 white), 4 red", 22},
		{"4 red and 2 blue", "and", "4 red, 2 blue", 6},
		{"2 black and white", "and", "", 0},
		{"4 red, then 2 blue", "then", "4 red, 2 blue", 6},
		{"4 red then 2 blue", "then", "4 red, 2 blue", 6},
		{"4 red, 2 blue, repeat", "repeat", "", 0},
		{"repeat 3 times (4 red)", "repeat", "3 times (4 red)", 12},
		{"repeat 3 (4 red)", "repeat", "3 times (4 red)", 12},
		{"4 red, 2 blue, etc.", "etc", "", 0},
		{"4 red, 2 blue, and so on", "and", "", 0},
		{"times (4 red)", "times", "", 0},
		{"3 times red", "red", "3 times (red)", 3},
		{"3 times 4 red, 2 blue", "4", "", 0},
		{"3 (4 red)", "(", "3 times (4 red)", 12},
		{"mirrored (4 red, 2 blue)", "mirrored", "mirror (4 red, 2 blue)", 12},
		{"4 stripes red", "stripes", "", 0},
		// Names that differ by a letter, an accent, a hyphen.
		{"4 white, 2 whit", "whit", "4 white, 2 white", 6},
		{"4 écru, 2 ecru", "ecru", "4 écru, 2 écru", 6},
		{"4 off white, 2 off-white", "off-white", "4 off white, 2 off white", 6},
		{"4 sea blue, 2 sae blue", "sae blue", "4 sea blue, 2 sea blue", 6},
		{"4 gray, 2 grey", "grey", "4 gray, 2 gray", 6},
		{"4 red, 2 reds", "reds", "4 red, 2 red", 6},
		// Signs.
		{"4 red; 2 blue", ";", "4 red, 2 blue", 6},
		{"4 red + 2 blue", "+", "4 red, 2 blue", 6},
		{"4: red", ":", "4 red", 4},
		{"4 × red", "×", "4 red", 4},
		{"4 8/2 navy", "8", `4 "8/2 navy"`, 4},
		{"4 8 navy", "8", "", 0},
		{"4 \"navy", "\"", `4 "navy"`, 4},
		{"4 \"8/2 navy, 2 red", "\"", `4 "8/2 navy", 2 red`, 6},
		{"\"navy", "\"", `"navy"`, 1},
		{"4 red, \"", "\"", "", 0},
		{"4 red.", ".", "4 red", 4},
		{"4 red, 2 blue;", ";", "4 red, 2 blue", 6},
		{"4 red), 2 blue", ")", "4 red, 2 blue", 6},
		{", 4 red", ",", "4 red", 4},
		{"4 red,, 2 blue", ",", "4 red, 2 blue", 6},
		{"3 times (4 red,, 2 blue)", ",", "3 times (4 red, 2 blue)", 18},
		{"- 4 red\n- 2 blue", "-", "4 red\n2 blue", 6},
		{"where red is navy, 4 red", "where", "", 0},
		{"#b03a2e", "#b03a2e", "", 0},
	} {
		_, err := Parse(c.text)
		var te *TextError
		if !errors.As(err, &te) {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		if te.Found != c.found || te.Try != c.try || te.TryEnds != c.ends {
			t.Errorf("%s: at %q, try %q (%d ends), not at %q, %q (%d)\n%v", c.text, te.Found, te.Try, te.TryEnds,
				c.found, c.try, c.ends, err)
		}
		if c.try != "" && !strings.Contains(err.Error(), strings.ReplaceAll(c.try, "\n", ", ")) {
			t.Errorf("%s: the error doesn't show it: %v", c.text, err)
		}
	}
}

// What is a good name stays one.
func TestNamesThatAreTakenAsTheyAre(t *testing.T) {
	for text, plain := range map[string]string{
		"4 tan, 2 teal, 1 tin":                   "4 tan, 2 teal, 1 tin",
		"4 blue-1, 2 blue-2, 1 blue-12":          "4 blue-1, 2 blue-2, 1 blue-12",
		"4 blue a, 2 blue b":                     "4 blue a, 2 blue b",
		"4 wool no aa, 2 wool no ab":             "4 wool no aa, 2 wool no ab",
		"4 bk, 2 bl, 1 b":                        "4 bk, 2 bl, 1 b",
		`4 "8/2 navy", 2 “lot 321”, 1 «ends»`:    `4 "8/2 navy", 2 "lot 321", 1 "ends"`,
		`4 white, 2 "whit", 1 whit, 1 "White"`:   `4 white, 2 "whit", 1 "whit", 1 white`,
		`4 "white", 2 red`:                       "4 white, 2 red",
		`4 "8/2  navy" where "8/2 navy" is navy`: `4 "8/2 navy" where "8/2 navy" is #000080`,
		"4 pool where pool is dark sea green":    "4 pool where pool is #8fbc8f",
		"4 e\u0301cru, 2 \u00e9cru":              "4 écru, 2 écru",
		"red, red, blue":                         "1 red, 1 red, 1 blue",
	} {
		o, err := Parse(text)
		if err != nil || o.String() != plain {
			t.Errorf("%s: %s (%v), not %s", text, o, err, plain)
		}
	}
}

// The 147 keywords and their values are those of SVG 1.1, W3C, "Recognized color keyword names"; three are
// compared here.
func TestLook(t *testing.T) {
	for name, want := range map[string]string{"navy": "#000080", "Sea Green": "#2e8b57", "dark-red": "#8b0000"} {
		if got, ok := (Colour{Name: name}).Look(); !ok || got.String() != want {
			t.Errorf("%s looks %v, %v, not %s", name, got, ok, want)
		}
	}
	if got, ok := (Colour{Name: "madder"}).Look(); ok {
		t.Errorf("madder looks %v", got)
	}
	if got, _ := (Colour{Name: "navy", Known: true, Shade: Shade{1, 2, 3}}).Look(); got.String() != "#010203" {
		t.Errorf("a given shade is drawn %v", got)
	}
}

// A long text isn't mended over and over while it is typed.
func BenchmarkMended(b *testing.B) {
	text := strings.Repeat("K4 R24 ", 90)
	for b.Loop() {
		if _, err := Parse(text); err == nil {
			b.Fatal("it passes")
		}
	}
}

// Many colours, each of which has to be compared with those before it, and a mend for each stripe.
func BenchmarkMendedColours(b *testing.B) {
	var text strings.Builder
	for i := range MaxColours {
		text.WriteString("q" + string(rune('a'+i%26)) + string(rune('a'+i/26)) + "zy 4 ")
	}
	for b.Loop() {
		if _, err := Parse(text.String()); err == nil {
			b.Fatal("it passes")
		}
	}
}
