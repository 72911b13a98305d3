package athand

import (
	"encoding/json"
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/frame"
	"millside/plan/internal/loomtest"
	"millside/plan/internal/measuretest"
	"millside/plan/loom"
	"millside/plan/measure"

	"pgregory.net/rapid"
)

const studio = `# The studio, invented.

mill floor mill: circumference 2 yd, peg step 18 in, rise 3 in, height 60 in, peg length 6 in, layers 3
Mill	table  mill: peg step 30,5 cm, circumference 1,22 m
board wall board: 36 in x 10, 18 in
paddle long paddle: positions 20
reed ten dent: 10 dents an inch, width 36 in
reed fine: 60s Stockport
raddle half inch: space 1/2 in, spaces 72
loom old: heddles 100 on 4 shafts
loom new: heddles 100 and 80
yarn white: cotton 8/2, colour natural white, cones 250 g and 180,5 g, tube 30 g, packages 12
yarn odd one: cotton 2, 8 plies
`

// Either spelling of colour will do.
func TestAmericanSpelling(t *testing.T) {
	h, err := Parse("yarn white: cotton 8/2, Color natural")
	if err != nil || h.Yarns[0].Yarn.Colour != "natural" {
		t.Errorf("%+v, %v", h, err)
	}
}

func TestParseAtHand(t *testing.T) {
	for _, text := range []string{studio, "\uFEFF" + strings.ReplaceAll(studio, "\n", "\r\n"),
		strings.TrimSuffix(studio, "\n")} {
		h, err := Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		want := AtHand{
			Mills: []NamedMill{
				{"floor mill", frame.Mill{Circumference: 2 * measure.Yard, PegStep: 18 * measure.Inch,
					Rise: 3 * measure.Inch, Height: 60 * measure.Inch}, plan.Pegs{Length: 6 * measure.Inch, Layers: 3}},
				{"table mill", frame.Mill{Circumference: 122 * measure.Centimetre, PegStep: 305 * measure.Millimetre},
					plan.Pegs{}},
			},
			Boards: []NamedBoard{{"wall board",
				frame.Board{36 * measure.Inch, 36 * measure.Inch, 36 * measure.Inch, 36 * measure.Inch,
					36 * measure.Inch, 36 * measure.Inch, 36 * measure.Inch, 36 * measure.Inch, 36 * measure.Inch,
					36 * measure.Inch, 18 * measure.Inch}}},
			Paddles: []NamedPaddle{{"long paddle", 20}},
			Reeds: []NamedReed{{"ten dent", loomtest.Reed(t, "10 dents an inch").WithWidth(36 * measure.Inch)},
				{"fine", loomtest.Reed(t, "60 Stockport")}},
			Looms:   []NamedLoom{{"old", []int{100, 100, 100, 100}}, {"new", []int{100, 80}}},
			Raddles: []NamedRaddle{{"half inch", loom.Raddle{Space: measure.Inch / 2, Spaces: 72}}},
			Yarns: []NamedYarn{
				{"white", plan.WarpYarn{Size: measuretest.Yarn(t, measure.Cotton, 8, 2), Colour: "natural white",
					Cones: measure.Masses{250 * measure.Gram, 180_500_000_000}, Tube: 30 * measure.Gram, Packages: 12}},
				{"odd one", plan.WarpYarn{Size: measuretest.Yarn(t, measure.Cotton, 2, 8)}},
			},
		}
		if !reflect.DeepEqual(h, want) {
			t.Errorf("got  %+v\nwant %+v", h, want)
		}
		if m, err := h.FindMill(" Floor  MILL"); err != nil || m.Name != "floor mill" {
			t.Errorf("by name: %+v, %v", m, err)
		}
	}
	if h, err := Parse(""); err != nil || !h.IsEmpty() {
		t.Errorf("an empty file: %+v, %v", h, err)
	}
}

// What editors and habits make of a line is read as well.
func TestParseAtHandAsWritten(t *testing.T) {
	want, err := Parse("mill floor mill: circumference 2 yd, peg step 18 in\nreed ten: 10 dents an inch\n")
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{
		"mill\tfloor mill:\tcircumference\t2 yd,\tpeg step\t18 in\r\nreed ten:\t10 dents an inch",
		"mill floor mill = circumference = 2 yd, peg step = 18 in\nreed ten = 10 dents an inch",
		"mill floor mill: circumference: 2 yd, peg step: 18 in   # the big one\nreed ten: 10 dents an inch\t#\tnew",
		"\xFF\xFEr\x00e\x00e\x00d\x00 " +
			"\x00t\x00e\x00n\x00:\x001\x000\x00 " +
			"\x00d\x00e\x00n\x00t\x00s\x00 \x00a\x00n\x00 \x00i\x00n\x00c\x00h\x00",
	} {
		got, err := Parse(text)
		if strings.HasPrefix(text, "\xFF") {
			got.Mills = want.Mills // this one has the reed only
		}
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%q: %+v, %v", text, got, err)
		}
	}
}

// Every error names the line, the field, what was given and what would do.
func TestParseAtHandRefuses(t *testing.T) {
	for _, tt := range []struct{ line, field, want string }{
		{"wheel big: 8 spokes", "line 2", "a line such as"},
		{"reed ten dent 10 dents an inch", "line 2", "a line such as"},
		{"reed: 10 dents an inch", "line 2, reed", "before the colon"},
		{"reed a, b: 10 dents an inch", "line 2, reed", "without commas"},
		{"reed ten:", "line 2, reed", "its fields"},
		{"reed twenty: 20", "line 2", "how it is counted"},
		{"reed ten: 10 dents an inch, width 90 m", "line 2, width", "0 to 20 m"},
		{"reed ten: 10 dents an inch, wide 36 in", "line 2", "one of these and its value: width"},
		{"mill m: circumference 2 yd", "line 2, peg step", "can't be left out"},
		{"mill m: circumference 2, peg step 18 in", "line 2, circumference", "a number and a unit"},
		{"mill m: circumference 2 yd, peg step 18 in, peg step 9 in", "line 2, peg step", "only once"},
		{"mill m: circumference 2 yd, peg step 3 yd", "line 2, peg step", "1 cm to 2 yd"},
		{"mill m: circumference 2 yd, peg step 18 in, peg length 2 m", "line 2, peg length", "to 1 m"},
		{"board b: 36 in x 300", "line 2, distances on the board", "1 to 200"},
		{"board b: 36 in, 5 mm", "line 2, distance 2 on the board", "1 cm to 10 m"},
		{"board b: 36", "line 2", "36 in x 10"},
		{"board b: 36 in x 0", "line 2", "36 in x 10"},
		{"paddle p: positions 61", "line 2, positions", "1 to 60"},
		{"paddle p: positions many", "line 2, positions", "1 to 60"},
		{"loom l: heddles x", "line 2, heddles", "the heddles on each shaft"},
		{"raddle r: space 1 m", "line 2, space", "1 mm to 10 cm"},
		{"raddle r: space 1 in, spaces 1.5", "line 2, spaces", "1 to 10000"},
		{"yarn y: 2/8 cotton", "line 2", "which of these is meant"},
		{"yarn y: cotton 8/2, cones 20 g, tube 30 g", "line 2, tube", "the lightest full cone"},
		{"yarn y: cotton 8/2, cones heavy", "line 2, cones", "a number and a unit"},
		{"reed a: 10 dents an inch\nREED  A: 12 dents an inch", "line 3, reed", "another name"},
		{"reed a\x1b[31m: 10 dents an inch", "line 2", "control characters"},
		{"reed a\xff: 10 dents an inch", "line 2", "control characters"},
		{"reed " + strings.Repeat("x", 5000), "line 2", "at most 2100 bytes"},
		{"reed \u202e", "line 2", "control characters"},
		{"mill m: circumfrence 2 yd, peg step 18 in", "line 2", "one of these and its value: circumference"},
	} {
		_, err := Parse("# first\n" + tt.line + "\n")
		list := measure.FieldErrors(err)
		if len(list) != 1 || column.ReplaceAllString(list[0].Field, "") != tt.field ||
			!strings.Contains(list[0].Want, tt.want) {
			t.Errorf("%q: %v; want %s and %q", tt.line, err, tt.field, tt.want)
		}
	}
}

var column = regexp.MustCompile(`, column [0-9]+`)

// An error says where in its line the fault is, counted in characters.
func TestColumns(t *testing.T) {
	for _, tt := range []struct{ text, place string }{
		{"mill m: circumference 2, peg step 18 in", "line 1, column 23, circumference"},
		{"\n\tmill m: circumference 2 yd, peg step 3 yd", "line 2, column 39, peg step"},
		{"paddle große: positions 61", "line 1, column 25, positions"},
		{"paddle 61: positions 61 # the long one", "line 1, column 22, positions"},
		{"mill m: circumfrence 2 yd, peg step 18 in", "line 1, column 9"},
		{"mill m: circumference 2 yd", "line 1, peg step"},
	} {
		_, err := Parse(tt.text)
		if list := measure.FieldErrors(err); len(list) != 1 || list[0].Field != tt.place {
			t.Errorf("%q: %v; want %s", tt.text, err, tt.place)
		}
	}
}

// What is sound is read beside what isn't, and errors and things have their limits.
func TestParseAtHandLimits(t *testing.T) {
	h, err := Parse("reed a: 10 dents an inch\nreed b: many\nreed c: 12 dents an inch")
	if len(h.Reeds) != 2 || err == nil {
		t.Errorf("beside an error: %+v, %v", h, err)
	}
	if _, err := Parse(strings.Repeat("nonsense\n", 100)); len(measure.FieldErrors(err)) != maxAtHandErrors {
		t.Errorf("%d errors", len(measure.FieldErrors(err)))
	}
	if _, err := Parse(strings.Repeat("#", MaxAtHandText+1)); err == nil {
		t.Error("a long text is no error")
	}
	var b strings.Builder
	for i := range MaxAtHand + 1 {
		fmt.Fprintf(&b, "paddle %d: positions 20\n", i)
	}
	if _, err := Parse(b.String()); len(measure.FieldErrors(err)) != 1 {
		t.Errorf("too many things: %v", err)
	}
}

func TestFindSaysWhatThereIs(t *testing.T) {
	h := AtHand{Reeds: []NamedReed{{Name: "ten"}, {Name: "twelve"}}}
	if _, err := h.FindReed("nine"); err == nil || !strings.Contains(err.Error(), "ten, twelve") {
		t.Errorf("%v", err)
	}
	for kind, find := range map[string]func() error{
		"mill":   func() error { _, err := h.FindMill("x"); return err },
		"board":  func() error { _, err := h.FindBoard("x"); return err },
		"paddle": func() error { _, err := h.FindPaddle("x"); return err },
		"raddle": func() error { _, err := h.FindRaddle("x"); return err },
		"yarn":   func() error { _, err := h.FindYarn("x"); return err },
	} {
		if list := measure.FieldErrors(find()); len(list) != 1 || list[0].Field != kind ||
			!strings.Contains(list[0].Want, "none yet") {
			t.Errorf("%s: %v", kind, list)
		}
	}
}

// What is written is read back to the same, and so is its JSON.
func TestAtHandRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := drawAtHand(t)
		back, err := Parse(h.String())
		if err != nil || !reflect.DeepEqual(back, h) {
			t.Fatalf("%s\nis read as %+v, %v", h, back, err)
		}
		text, err := json.Marshal(h)
		var fromJSON AtHand
		if err != nil || json.Unmarshal(text, &fromJSON) != nil || !reflect.DeepEqual(fromJSON, h) {
			t.Fatalf("%s is read as %+v, %v", text, fromJSON, err)
		}
	})
}

func drawAtHand(t *rapid.T) AtHand {
	var h AtHand
	length := func(low, high measure.Length) measure.Length {
		return measure.Length(rapid.Int64Range(int64(low), int64(high)).Draw(t, "length"))
	}
	word := rapid.StringMatching(`[a-zé#][a-z0-9 /é]{0,20}[a-z0-9]#?`)
	for i := range rapid.IntRange(0, 3).Draw(t, "of each") {
		name := strings.ReplaceAll(strings.Join(strings.Fields(word.Draw(t, "name")), " "), "# ", "#") + fmt.Sprint(i)
		round := length(20*measure.Centimetre, 20*measure.Metre)
		h.Mills = append(h.Mills, NamedMill{name,
			frame.Mill{Circumference: round, PegStep: length(measure.Centimetre, round), Rise: length(0, round),
				Height: length(0, 10*measure.Metre)},
			plan.Pegs{Length: length(0, measure.Metre), Layers: rapid.IntRange(0, 100).Draw(t, "layers")}})
		var b frame.Board
		for range rapid.IntRange(1, 5).Draw(t, "distances") {
			b = append(b, rapid.SampledFrom([]measure.Length{measure.Yard, 18 * measure.Inch,
				length(measure.Centimetre, 10*measure.Metre)}).Draw(t, "distance"))
		}
		h.Boards = append(h.Boards, NamedBoard{name, b})
		h.Paddles = append(h.Paddles, NamedPaddle{name, rapid.IntRange(1, measure.MaxPositions).Draw(t, "positions")})
		r, err := loom.ParseReed(fmt.Sprintf("%d/%d %s", rapid.IntRange(10, 30).Draw(t, "reed"),
			rapid.IntRange(1, 3).Draw(t, "over"), loom.ReedSystem(rapid.IntRange(0, 3).Draw(t, "system"))))
		if err != nil {
			t.Fatal(err)
		}
		r = r.WithWidth(length(0, 20*measure.Metre))
		h.Reeds = append(h.Reeds, NamedReed{name, r})
		h.Raddles = append(h.Raddles, NamedRaddle{name,
			loom.Raddle{Space: length(measure.Millimetre, 10*measure.Centimetre),
				Spaces: rapid.IntRange(0, loom.MaxSections).Draw(t, "spaces")}})
		h.Looms = append(h.Looms, NamedLoom{name, rapid.SliceOfN(rapid.IntRange(0, 400), 1, 8).Draw(t, "heddles")})
		size, err := measure.NewYarnSize(measure.CountSystem(rapid.IntRange(0, int(measure.Denier)).Draw(t, "count")),
			measure.YarnNumber(rapid.Int64Range(1_000_000, 90_000_000).Draw(t, "number")),
			rapid.IntRange(1, 12).Draw(t, "plies"))
		if err != nil {
			t.Skip("no such yarn")
		}
		y := plan.WarpYarn{Size: size, Colour: rapid.SampledFrom([]string{"", "red", "sea blue: dark"}).Draw(t,
			"colour"), Packages: rapid.IntRange(0, 60).Draw(t, "packages")}
		for range rapid.IntRange(0, 3).Draw(t, "cones") {
			y.Cones = append(y.Cones, measure.Mass(rapid.Int64Range(int64(100*measure.Gram),
				int64(measure.Kilogram)).Draw(t, "cone")))
			y.Tube = 30 * measure.Gram
		}
		h.Yarns = append(h.Yarns, NamedYarn{name, y})
	}
	return h
}

// Whatever is read, what came of it can be written and read again to the same; nothing panics or hangs.
func FuzzParseAtHand(f *testing.F) {
	f.Add(studio)
	f.Add("mill m: circumference 2 yd, peg step 18 in;rise 3 in")
	f.Add("yarn y: 30s/2 spun silk, colour a, cones 1 g; tube 0 g")
	f.Fuzz(func(t *testing.T, text string) {
		h, _ := Parse(text)
		for _, y := range h.Yarns {
			if strings.ContainsAny(y.Yarn.Colour, ",") { // a decimal comma in a colour
				t.Skip()
			}
		}
		back, err := Parse(h.String())
		if err != nil || back.String() != h.String() {
			t.Fatalf("%q\nwas written as %q\nand read as %q, %v", text, h, back, err)
		}
	})
}

func TestBoardText(t *testing.T) {
	for text, want := range map[string]string{
		"36 in x 10, 18 in": "1 yd x 10, 18 in", "1 yd;1 yd, 0,5 m": "1 yd x 2, 0.5 m", "36cm x2": "36 cm x 2",
		"36 cm times 2": "36 cm x 2",
	} {
		b, err := frame.ParseBoard(text)
		if err != nil || b.String() != want {
			t.Errorf("%q: %q, %v; want %q", text, b, err, want)
		}
	}
	for _, bad := range []string{"", "x 3", "36 in x", "36 in,, 18 in", strings.Repeat("1 yd, ", 500), "36 in x 999"} {
		if _, err := frame.ParseBoard(bad); err == nil {
			t.Errorf("%q is no error", bad)
		}
	}
}
