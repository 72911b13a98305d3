package figure

import "testing"

// A number of its own takes the weaver's sign; versions, lists and ends of sentences stay.
func TestSigned(t *testing.T) {
	defer WriteComma(false)
	defer WriteForProgram(false)
	for _, c := range []struct{ text, want string }{
		{"7.5 yd", "7,5 yd"}, {"such as 0.5, 1.25 or 3.", "such as 0,5, 1,25 or 3."},
		{"version 1.2.3", "version 1.2.3"},
		{"cotton 8.5/2", "cotton 8,5/2"}, {"1.5 m indigo, 0.5 m", "1,5 m indigo, 0,5 m"},
		{".5 and 5. end", ".5 and 5. end"},
		{"it is 7.5.", "it is 7,5."}, {"", ""}, {"e.g. 1 ... 9", "e.g. 1 ... 9"},
	} {
		WriteComma(true)
		WriteForProgram(false)
		if got := Signed(c.text); got != c.want {
			t.Errorf("%q is written %q, want %q", c.text, got, c.want)
		}
		WriteForProgram(true)
		if got := Signed(c.text); got != c.text || !Comma() {
			t.Errorf("for a program %q is written %q", c.text, got)
		}
		WriteComma(false)
		WriteForProgram(false)
		if got := Signed(c.text); got != c.text || Comma() {
			t.Errorf("with a point %q is written %q", c.text, got)
		}
	}
}
