package sheetout

import (
	"bytes"
	"encoding/json"
	"fmt"
	"html"
	"io"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"millside/cmd/millside/internal/prose"
	"millside/plan"
	"millside/plan/athand"
	"millside/plan/figure"
	"millside/plan/frame"
	"millside/plan/loom"
	"millside/plan/measure"
	"millside/plan/project"
	"millside/plan/sheet"
	"millside/plan/times"
	"millside/plan/wind"
)

// drawSheet makes the sheet of a project of any kind, with a name and a colour that mean something in
// every format.
func drawSheet(t *rapid.T) *sheet.Sheet {
	awkward := rapid.StringMatching(`[a-z<>&"'|*_\[\]{}#+.$~\\é-]{1,12}( [a-z<>&"'|*_#\\]{1,8}){0,3}`)
	s := plan.DefaultSpec()
	s.Name = awkward.Draw(t, "name")
	s.Ends = rapid.IntRange(20, 900).Draw(t, "ends")
	s.Group = rapid.IntRange(1, 12).Draw(t, "group")
	s.LastPass = wind.LastPass(rapid.IntRange(0, 1).Draw(t, "last"))
	s.ReturnOrder = wind.ReturnOrder(rapid.IntRange(0, 1).Draw(t, "order"))
	s.ChainEnds = rapid.SampledFrom([]int{0, 90, 333}).Draw(t, "chain")
	s.Units = measure.LengthUnitSystem(rapid.IntRange(0, 1).Draw(t, "units"))
	s.Dyed = rapid.Bool().Draw(t, "dyed")
	s.Yarn.Colour = awkward.Draw(t, "colour")
	s.Yarn.Size = mustYarn(t, "cotton 8/2")
	s.Yarn.Cones = measure.Masses{rapid.SampledFrom([]measure.Mass{measure.Ounce, measure.Pound}).Draw(t, "cone"),
		5 * measure.Ounce}
	s.Pegs = plan.Pegs{Length: 6 * measure.Inch, Layers: 1}
	if rapid.Bool().Draw(t, "board") {
		s.Board = frame.Board{measure.Yard, measure.Yard, measure.Yard, measure.Yard, measure.Metre, measure.Metre}
	}
	if rapid.Bool().Draw(t, "loom") {
		at := fmt.Sprintf("%d an inch", rapid.IntRange(6, 30).Draw(t, "sett"))
		if err := s.Loom.Sett.UnmarshalText([]byte(at)); err != nil {
			t.Fatal(err)
		}
		s.Loom.Raddle.Space = rapid.SampledFrom([]measure.Length{measure.Inch / 2, measure.Centimetre}).Draw(t,
			"raddle")
		s.Loom.Reed = mustReed(t, "10 dents an inch")
		s.Loom.FirstEnd = loom.Side(rapid.IntRange(0, 1).Draw(t, "side"))
	}
	pr, err := project.New(s, times.Pace{})
	if err != nil {
		t.Fatal(err)
	}
	sheet, err := sheet.New(pr, sheet.Options{AllPasses: rapid.Bool().Draw(t, "all"),
		Reeds: []athand.NamedReed{{Name: awkward.Draw(t, "reed"), Reed: mustReed(t, "12 dents an inch")}}})
	if err != nil {
		t.Fatal(err)
	}
	return sheet
}

func mustYarn(t *rapid.T, s string) measure.YarnSize {
	y, err := measure.ParseYarn(s)
	if err != nil {
		t.Fatal(err)
	}
	return y
}

func mustReed(t *rapid.T, s string) loom.Reed {
	r, err := loom.ParseReed(s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

var tags = regexp.MustCompile(`<[^>]*>`)

// plainly takes the marks of a format away, so that what is left is what a person reads.
var plainly = map[string]func(string) string{
	"text":     func(s string) string { return s },
	"markdown": func(s string) string { return regexp.MustCompile(`\\([[:punct:]])`).ReplaceAllString(s, "$1") },
	"html":     func(s string) string { return html.UnescapeString(tags.ReplaceAllString(s, " ")) },
	"json": func(s string) string {
		var all []string
		var walk func(any)
		walk = func(v any) {
			switch v := v.(type) {
			case string:
				all = append(all, v)
			case []any:
				for _, one := range v {
					walk(one)
				}
			case map[string]any:
				for _, one := range v {
					walk(one)
				}
			}
		}
		var v any
		if err := json.Unmarshal([]byte(s), &v); err != nil {
			return err.Error()
		}
		walk(v)
		return strings.Join(all, " | ")
	},
}

// oneLine makes every run of spaces one space, so that broken lines don't matter.
func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// Every figure, every cell, every note and every warning stands in all four formats, the same, and with
// the formulas where they are asked for.
func TestTheSameFiguresEverywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sheet := drawSheet(t)
		how := rapid.Bool().Draw(t, "how")
		for _, format := range SheetFormats {
			var b bytes.Buffer
			if err := WriteSheet(&b, sheet, format, how); err != nil {
				t.Fatal(err)
			}
			got := oneLine(plainly[format](b.String()))
			has := func(what, s string) {
				if !strings.Contains(got, oneLine(s)) {
					t.Fatalf("%s lacks the %s %q:\n%s", format, what, s, b.String())
				}
			}
			has("title", sheet.Title)
			for _, part := range sheet.Parts {
				for _, r := range part.Rows {
					has("name", r.Name)
					has("value", r.Value.String())
					has("warning", r.Warning)
					if how && r.How.Formula != "" || format == "json" {
						has("formula", r.How.Formula)
						has("numbers", r.How.WithNumbers.String())
					}
				}
				for _, note := range part.Notes {
					has("note", note)
				}
				if part.Table == nil {
					continue
				}
				for _, cells := range part.Table.Lines {
					for _, cell := range cells {
						has("cell", cell.String())
					}
				}
			}
		}
	})
}

// A text sheet is at most 80 columns wide, whatever is on it, and lists nothing that a terminal acts on.
func TestTextSheetFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var b bytes.Buffer
		if err := sheetText(&b, drawSheet(t), rapid.Bool().Draw(t, "how")); err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(b.String()) {
			if utf8.RuneCountInString(line) > prose.TextWidth+1 || strings.TrimRight(line, " \n")+"\n" != line {
				t.Fatalf("a line is too long or ends in spaces: %q", line)
			}
		}
	})
}

// A table that is too wide is broken in its last column, and one that is far too wide falls into blocks.
func TestWideTables(t *testing.T) {
	long := strings.Repeat("word ", 20)
	for _, tt := range []struct {
		table sheet.Table
		want  string
	}{
		{sheet.Table{Columns: []string{"a", "bb"}, Lines: [][]figure.Cell{{number(10), words("x")}, {number(9), nil}}},
			"a  bb\n--  --\n10  x\n 9\n"},
		{sheet.Table{Columns: []string{"a", "b"}, Lines: [][]figure.Cell{{number(1), words(long)}}},
			"a  b\n-  " + strings.Repeat("-", 77) + "\n1  " + strings.TrimSpace(strings.Repeat("word ", 15)) + "\n   " +
				strings.TrimSpace(strings.Repeat("word ", 5)) + "\n"},
		{sheet.Table{Columns: []string{"a", "b"},
			Lines: [][]figure.Cell{{words(strings.Repeat("x", 70)), words(long)}}},
			"a                           " + strings.Repeat("x", 70) + "\nb                           "},
	} {
		var b bytes.Buffer
		tableText(&b, &tt.table)
		if got := b.String(); !strings.HasPrefix(strings.TrimLeft(got, " "), tt.want) {
			t.Errorf("got\n%swant\n%s", got, tt.want)
		}
	}
}

// The page stands by itself: it has no script, refers to nothing outside, and what a weaver typed is never
// taken for markup.
func TestHTMLStandsByItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sheet := drawSheet(t)
		sheet.Title = `<script>alert(1)</script><img src="//x">`
		var b bytes.Buffer
		if err := sheetHTML(&b, sheet, true); err != nil {
			t.Fatal(err)
		}
		page := b.String()
		style := page[strings.Index(page, "<style>"):strings.Index(page, "</style>")]
		marks := strings.Join(tags.FindAllString(page, -1), "") + style
		for _, bad := range []string{"<script", "<img", "<link", "<iframe", "http:", "https:", "url(", "@import",
			" href", " src=", "ZgotmplZ", "NaN", "%!"} {
			if strings.Contains(marks, bad) {
				t.Fatalf("the page holds %q:\n%s", bad, page)
			}
		}
		if n := strings.Count(page, "<svg"); n < 1 {
			t.Fatalf("no drawing:\n%s", page)
		}
		for _, tag := range []string{"table", "svg", "ul", "section", "figure", "div", "tr", "td", "th", "span"} {
			open, closed := strings.Count(page, "<"+tag+">")+strings.Count(page, "<"+tag+" "),
				strings.Count(page, "</"+tag+">")
			if open != closed {
				t.Fatalf("%d times <%s>, %d times </%s>", open, tag, closed, tag)
			}
		}
	})
}

// Every format of a large sheet is written in good time.
func BenchmarkSheet(b *testing.B) {
	s := plan.DefaultSpec()
	s.Ends, s.Group = 20_000, 10
	s.Loom.Raddle.Space = measure.Inch / 2
	if err := s.Loom.Sett.UnmarshalText([]byte("40 an inch")); err != nil {
		b.Fatal(err)
	}
	pr, err := project.New(s, times.Pace{})
	if err != nil {
		b.Fatal(err)
	}
	sheet, err := sheet.New(pr, sheet.Options{AllPasses: true})
	if err != nil {
		b.Fatal(err)
	}
	for _, format := range SheetFormats {
		b.Run(format, func(b *testing.B) {
			for b.Loop() {
				if err := WriteSheet(io.Discard, sheet, format, true); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func number(n int) figure.Cell      { return figure.Cell{figure.Count{N: n}} }
func words(text string) figure.Cell { return figure.Say("%s", text) }
