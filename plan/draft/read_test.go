package draft

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"millside/plan/measure"
	"millside/plan/stripe"
)

func read(t *testing.T, name string) (*Draft, error) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", name+".wif"))
	if err != nil {
		t.Fatal(err)
	}
	return Read(data)
}

// plain is what testdata/plain.wif says; most of the other files say the same in another way.
func plainDraft() *Draft {
	return &Draft{
		Title: "Six ends for a test", Threads: 6, Coloured: true, Colours: []int{1, 1, 2, 2, 2, 3},
		Palette:   map[int]stripe.Shade{1: {R: 176, G: 58, B: 46}, 2: {R: 244, G: 241, B: 232}, 3: {B: 255}},
		Threading: [][]int{{1}, {2}, {3}, {4}, {1}, nil}, Shafts: 4, Treadles: 6,
		Sett: &Sett{Threads: 6, Width: 7500 * measure.Millimetre / 1000},
	}
}

// Each file stands for a line of facts.md, "WIF, the open interchange standard for drafts".
func TestRead(t *testing.T) {
	for _, c := range []struct {
		file string
		with func(d *Draft) // what is other than in plain
		warn []string       // the beginnings of the warnings
	}{
		{"plain", nil, nil},
		{"crlf", nil, nil},
		{"cr", nil, nil},
		{"bom", func(d *Draft) { d.Title = "Sechs Fäden for a test" }, nil},
		{"latin1", func(d *Draft) { d.Title = "Sechs Fäden für den Test" }, nil},
		{"utf8", func(d *Draft) { d.Title = "Sechs Fäden für den Test" }, nil},
		{"case-and-space", nil, nil},
		{"any-order", nil, nil},
		{"comments", func(d *Draft) { d.Title = "Six; ends # for a test" }, nil},
		{"truth-words", nil, []string{"[CONTENTS], line 9: \"perhaps\" is neither",
			"[WARP COLORS], line 36: the section isn't named"}},
		{"contents-wrong", nil, []string{"[CONTENTS], line 12: [WARP SPACING] is named",
			"[THREADING], line 41: the section isn't named"}},
		{"no-contents", nil, nil},
		{"no-wif", nil, nil},
		{"version", nil, []string{"[WIF], line 2: version \"1.2\" is read as 1.1"}},
		{"obsolete-colour", nil, nil},
		{"no-units", func(d *Draft) { d.Sett = nil }, []string{"[WARP], line 30: the unit of the spacing isn't given"}},
		{"inches", func(d *Draft) { d.Sett.Width = 6 * measure.Inch / 20 }, nil},
		{"decipoints", func(d *Draft) { d.Sett.Width = 6 * measure.Inch / 20 }, nil},
		{"absurd", func(d *Draft) { d.Sett.Width, d.Sett.Absurd = 6*185*measure.Millimetre/1000, true },
			[]string{"[WARP], line 34: the spacing comes to 137.3 ends an inch"}},
		{"warp-spacing", func(d *Draft) {
			d.Sett.Width = 11250 * measure.Millimetre / 1000
			d.Widths = append(slices.Repeat([]measure.Length{2500 * measure.Millimetre / 1000}, 3),
				slices.Repeat([]measure.Length{1250 * measure.Millimetre / 1000}, 3)...)
		}, []string{"[WARP SPACING], line 49: the section isn't named"}},
		// 0.041666666666666664 is how a double prints 1/24: it is 24 ends an inch exactly, as 1 in is 25.4 mm.
		{"spacing-double", func(d *Draft) { d.Sett.Width = 6 * measure.Inch / 24 }, nil},
		{"spacing-comma", nil, nil},
		{"spacing-exponent", nil, nil},
		{"section-names", func(d *Draft) { d.Sett.Width = 6 * measure.Centimetre / 8 }, []string{
			"[COLOUR PALETTE], line 14: the section is read as [COLOR PALETTE]",
			"[COLORTABLE], line 18: the section is read as", "[WARPCOLOURS], line 36: the section is read as"}},
		{"from-zero", nil, []string{"[WARP COLORS], line 37: the lines count the threads from 0; they are taken as " +
			"1 to 6", "[THREADING], line 42: the lines count"}},
		{"utf16-le", func(d *Draft) { d.Title = "Sechs Fäden" }, nil},
		{"utf16-be", func(d *Draft) { d.Title = "Sechs Fäden" }, nil},
		{"utf16-bare", func(d *Draft) { d.Title = "Sechs Fäden" }, nil},
		{"weft", func(d *Draft) { d.Weft = []Picks{{2, 5}, {3, 2}, {1, 1}} }, nil},
		{"spacing-gaps", func(d *Draft) { d.Sett = nil },
			[]string{"[WARP SPACING], line 48: the section isn't named",
				"[WARP SPACING], line 50: the spacing \"NaN\" is no width",
				"[WARP SPACING], line 48: not every thread"}},
		{"no-default-colour", func(d *Draft) { d.Colours = []int{1, 1, NoColour, NoColour, NoColour, 3} },
			[]string{"[WARP COLORS], line 35: 3 threads have no colour"}},
		{"no-warp-colours", func(d *Draft) { d.Colours = []int{2, 2, 2, 2, 2, 2} },
			[]string{"[CONTENTS], line 11: [WARP COLORS] is named"}},
		{"no-colours", func(d *Draft) { d.Colours, d.Coloured = []int{-1, -1, -1, -1, -1, -1}, false },
			[]string{"[CONTENTS], line 11: [WARP COLORS] is named",
				"[WARP COLORS]: the draft gives no thread a colour"}},
		// 500 of 999 is 127.6 of 255.
		{"range-999", func(d *Draft) {
			d.Palette = map[int]stripe.Shade{1: {R: 255, B: 128}, 2: {R: 62, G: 62, B: 59}, 3: {B: 65}}
		}, nil},
		// 610 is halfway from 20 to 1,200: 127.5, rounded up.
		{"range-odd", func(d *Draft) {
			d.Palette = map[int]stripe.Shade{1: {G: 255, B: 128}, 2: {R: 48, G: 48, B: 46}, 3: {B: 51}}
		}, []string{"[COLOR TABLE], line 21: a part of the colour is outside"}},
		{"range-65535", func(d *Draft) {
			d.Palette = map[int]stripe.Shade{1: {R: 255, G: 1}, 2: {R: 1, G: 1, B: 1}, 3: {B: 1}}
		}, nil},
		{"no-range", nil, []string{"[COLOR PALETTE], line 14: the range of the colours isn't given",
			"[COLOR TABLE], line 20: a part of the colour is outside"}},
		{"bad-range", nil, []string{"[COLOR PALETTE], line 16: the range \"255,0\" can't be read"}},
		{"no-table", func(d *Draft) { d.Palette = map[int]stripe.Shade{} },
			[]string{"[CONTENTS], line 7: [COLOR TABLE] is named", "[COLOR TABLE]: the section is missing"}},
		{"colour-index", func(d *Draft) { d.Colours = []int{0, 1, 2, 2, 2, 9} },
			[]string{"[WARP COLORS], line 36: colour 0 is used"}},
		{"shafts", func(d *Draft) { d.Threading = [][]int{{1}, {2, 3}, nil, {7}, {1}, nil} },
			[]string{"[THREADING], line 44: the value is blank", "[THREADING], line 45: the shaft is above the 4"}},
		{"more-threading", nil, []string{"[THREADING], line 48: this is no thread of the 6 that [WARP] names, and " +
			"is left out (so are 2 more lines)"}},
		{"private", nil, nil},
		{"blank-and-nan", func(d *Draft) { d.Colours, d.Shafts, d.Treadles = []int{2, 2, 2, 2, 2, 3}, 0, 0 }, []string{
			"[WEAVING], line 27: shafts of \"NaN\"", "[WEAVING], line 28: treadles of \"\"",
			"[WARP COLORS], line 37: the value is blank", "[WARP COLORS], line 38: \"NaN\" is no number",
		}},
		{"no-equals-sign", nil, []string{"[WARP], line 33: \"this line has none\" is no key"}},
		{"text-before", nil, []string{"before the first section, line 1: text that belongs to no section is left " +
			"out (so is 1 more line)"}},
		{"twice", func(d *Draft) { d.Colours = []int{1, 1, 2, 2, 1, 1} },
			[]string{"[WARP COLORS], line 40: \"6\" stands at line 39 too",
				"[WARP COLORS], line 50: the section stands here again",
				"[WARP COLORS], line 52: \"5\" stands at line 51 too"}},
		{"open-header", nil, []string{"[TEXT], line 23: the header has no closing bracket"}},
	} {
		t.Run(c.file, func(t *testing.T) {
			got, err := read(t, c.file)
			if err != nil {
				t.Fatal(err)
			}
			want := plainDraft()
			if c.with != nil {
				c.with(want)
			}
			var said []string
			for _, w := range got.Warnings {
				said = append(said, w.String())
			}
			for i := range max(len(said), len(c.warn)) {
				if i >= len(said) || i >= len(c.warn) || !strings.HasPrefix(said[i], c.warn[i]) {
					t.Fatalf("warnings\n%s\nare not\n%s", strings.Join(said, "\n"), strings.Join(c.warn, "\n"))
				}
			}
			got.Warnings = nil
			if !reflect.DeepEqual(got, want) {
				t.Errorf("got  %+v\nwant %+v", got, want)
			}
		})
	}
}

func TestReadManyThreads(t *testing.T) {
	d, err := read(t, "many") // 1,200 threads are the most that were seen in a real file
	if err != nil {
		t.Fatal(err)
	}
	if d.Threads != 1200 || d.Colours[0] != 2 || d.Colours[1199] != 1 {
		t.Errorf("%d threads, the first of colour %d, the last of %d", d.Threads, d.Colours[0], d.Colours[1199])
	}
}

func TestReadRefuses(t *testing.T) {
	for name, want := range map[string]string{
		"refuse-no-warp":      "no [WARP]",
		"refuse-no-threads":   "[WARP], line 30, Threads",
		"refuse-zero-threads": "[WARP], line 31, Threads: \"0\"",
		"refuse-many-threads": "[WARP], line 31, Threads: \"100001\"",
		"refuse-no-draft":     "no section",
		"refuse-bytes":        "no text",
	} {
		if _, err := read(t, name); len(measure.FieldErrors(err)) != 1 || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, data := range map[string]string{
		"4194321 bytes": "[WARP]\nThreads=1\n" + strings.Repeat(";", MaxBytes),
		"300001 lines":  "[WARP]\nThreads=1\n" + strings.Repeat("\n", MaxLines-1),
	} {
		if _, err := Read([]byte(data)); len(measure.FieldErrors(err)) != 1 || !strings.Contains(err.Error(), name) {
			t.Errorf("too many %s: %v", name, err)
		}
	}
	if _, err := Read([]byte("[WARP]\nThreads=1\n" + strings.Repeat("\n", MaxLines-2))); err != nil {
		t.Errorf("the most lines there may be: %v", err)
	}
	// A file is read no further than it may go, so its size isn't known.
	if _, err := From(strings.NewReader(strings.Repeat(";", MaxBytes+100))); err == nil ||
		!strings.Contains(err.Error(), "more than 4194304 bytes") {
		t.Errorf("a file that is too long: %v", err)
	}
}

func TestSett(t *testing.T) {
	// 1 / 0.125 cm are 8 ends a cm: 80 in 10 cm, 20.32 an inch (1 in = 2.54 cm exactly, international
	// yard and pound agreement, 1959).
	s := plainDraft().Sett
	if got := s.Per10cm().FloatString(4); got != "80.0000" {
		t.Errorf("%s ends in 10 cm", got)
	}
	if got := s.PerInch().FloatString(4); got != "20.3200" {
		t.Errorf("%s ends an inch", got)
	}
}

func TestWarningsAreLimited(t *testing.T) {
	var b strings.Builder
	b.WriteString("[WARP]\nThreads=1000\n[WARP COLORS]\n")
	for i := range 1000 {
		fmt.Fprintf(&b, "%d=x%d\n", i+1, i)
	}
	d, err := Read([]byte(b.String()))
	if err != nil {
		t.Fatal(err)
	}
	if n := len(d.Warnings); n != maxWarnings+1 || d.Warnings[n-1].String() != "901 more warnings are left out" {
		t.Errorf("%d warnings, the last %v", n, d.Warnings[n-1])
	}
}

func FuzzRead(f *testing.F) {
	files, err := filepath.Glob("testdata/*.wif")
	if err != nil || len(files) == 0 {
		f.Fatal(files, err)
	}
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := Read(data)
		if err != nil {
			if len(measure.FieldErrors(err)) != 1 {
				t.Fatalf("error %v", err)
			}
			return
		}
		if d.Threads < 1 || len(d.Colours) != d.Threads || d.Threading != nil && len(d.Threading) != d.Threads ||
			len(d.Warnings) > maxWarnings+1 {
			t.Fatalf("%+v", d)
		}
		for _, w := range d.Warnings {
			if strings.ContainsFunc(w.String(), func(c rune) bool { return c < ' ' || c == 0x7f }) {
				t.Fatalf("warning %q", w)
			}
		}
		if d.Sett != nil && (d.Sett.Width <= 0 || d.Sett.PerInch().Sign() <= 0) {
			t.Fatalf("sett %+v", d.Sett)
		}
		w, err := d.Warp(Use{LeaveOut: true, Edge: 2})
		if err == nil && (w.Ends < 5 || !w.Plain() && w.Order.Size() != w.Ends || d.Threading != nil &&
			len(w.Threading) != w.Ends) {
			t.Fatalf("%d ends of %d threads: %+v", w.Ends, d.Threads, w)
		}
	})
}

func BenchmarkRead(b *testing.B) {
	data, err := os.ReadFile("testdata/many.wif")
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if _, err := Read(data); err != nil {
			b.Fatal(err)
		}
	}
}
