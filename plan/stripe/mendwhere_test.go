package stripe

import (
	"errors"
	"testing"
)

// Behind "where" too, what is likely to be meant is shown with its number of ends; where nothing is, it is said what
// would do.
func TestLooksAreMended(t *testing.T) {
	const red, two = "4 red where red is ", "4 red, 2 white where red is #b03a2e"
	for _, c := range []struct {
		text  string
		found string // what the error points at
		try   string // "" where no reading is likelier than another
	}{
		// Nothing is said, or no colour's name.
		{"4 red where", "", "4 red"},
		{"4 red where ,", ",", "4 red"},
		{"4 red where , red is navy", ",", red + "navy"},
		{"4 red where is navy", "is", red + "navy"},
		{"4 red where #b03a2e", "#b03a2e", red + "#b03a2e"},
		{"4 red, 2 white where #b03a2e", "#b03a2e", ""},
		{`4 "8/2 navy" where 8/2 navy is #000080`, "8", `4 "8/2 navy" where "8/2 navy" is #000080`},
		{"4 red where red is navy, 2 white", "2", "4 red, 2 white where red is navy"},
		{"4 red where red is navy, 2 blue where blue is sky blue", "2",
			"4 red, 2 blue where blue is sky blue, red is navy"},
		{"4 red where (red is navy)", "(", ""},
		// A name that no stripe has.
		{"4 white, 2 red where whit is navy", "whit", "4 white, 2 red where white is navy"},
		{"4 red where the red is navy", "the", red + "navy"},
		{"4 red where blue is navy", "blue", ""},
		// Another word or sign than "is", or none.
		{"4 red where red #b03a2e", "#b03a2e", red + "#b03a2e"},
		{"4 red where red navy", "red", red + "navy"},
		{"4 red where red as #b03a2e", "red", red + "#b03a2e"},
		{"4 red where red looks like dark sea green", "red", red + "dark sea green"},
		{"4 red where red are is navy", "red", red + "navy"},
		{"4 red where red: #b03a2e", ":", red + "#b03a2e"},
		{"4 red where red = navy", "=", red + "navy"},
		{`4 red where red "navy"`, `"navy"`, red + "navy"},
		{"4 red where red", "", ""},
		{"4 red where red, white is navy", ",", ""},
		// No shade.
		{red + "b03a2e", "b03a2e", red + "#b03a2e"},
		{red + "112233", "112233", red + "#112233"},
		{red + "3a2e1f", "3", red + "#3a2e1f"},
		{red + "# b03a2e", "#", red + "#b03a2e"},
		{red + "#b3e", "#b3e", red + "#bb33ee"},
		{red + `"#b03a2e"`, `"#b03a2e"`, red + "#b03a2e"},
		{red + "'navy'", "'", red + "navy"},
		{red + "rgb(176, 58, 46)", "rgb", red + "#b03a2e"},
		{red + "176, 58, 46", "176", red + "#b03a2e"},
		{red + "rgb(256, 0, 0)", "rgb", ""},
		{red + "nvay", "nvay", red + "navy"},
		{red + "light slate gery", "light", red + "lightslategrey"},
		{red + "blackish", "blackish", ""},
		{red + "#b03a2", "#b03a2", ""},
		{red + "#b03a2ef", "#b03a2ef", ""},
		{red, "", ""},
		// Said twice.
		{two + ", red is #b03a2e", "red", two},
		{two + ", red is #b03a2e, white is navy", "red", two + ", white is navy"},
		{two + ", red is navy", "red", ""},
		// What parts two looks, and what stands behind the last.
		{two + " white is navy", "white", two + ", white is navy"},
		{two + ", white is sea green wool", "wool", ""},
		{two + " and white is navy", "and", two + ", white is navy"},
		{two + "; white is navy", ";", two + ", white is navy"},
		{two + " where white is navy", "where", two + ", white is navy"},
		{two + ".", ".", two},
		{two + ")", ")", two},
		// Several at once.
		{"4 red, 2 white where red = nvay and whit as #fff", "=",
			"4 red, 2 white where red is navy, white is #ffffff"},
	} {
		_, err := Parse(c.text)
		var te *TextError
		if !errors.As(err, &te) {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		if te.Found != c.found || te.Try != c.try || (te.TryEnds > 0) != (c.try != "") || te.Want == "" {
			t.Errorf("%s: at %q, try %q (%d ends), not at %q, %q\n%v", c.text, te.Found, te.Try, te.TryEnds, c.found,
				c.try, err)
		}
		if c.try != "" {
			if _, err := Parse(c.try); err != nil {
				t.Errorf("%s: what is shown can't be read: %v", c.try, err)
			}
		}
	}
}
