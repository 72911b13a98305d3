package sheetout

import (
	"bytes"
	"encoding/json"
	"math/big"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"millside/plan/figure"
	"millside/plan/measure"
	"millside/plan/sheet"
)

// figured is a sheet with one figure of each kind.
func figured() *sheet.Sheet {
	cell := figure.Say("%s, %s, %s, %s, %s, %s", figure.Counted(40, "end", "ends"),
		figure.New(big.NewRat(9, 2), 2, "yd"),
		figure.Duration{Time: 90 * time.Minute}, figure.Range{First: 4, Last: 9}, figure.List{2, 4},
		figure.Colour{Letter: "C", Name: "navy", Shade: "#1f2a50"})
	return &sheet.Sheet{Title: "figures", Parts: []sheet.Part{{ID: "all", Title: "All",
		Rows:  []measure.Row{{Name: "row", Value: cell}},
		Table: &sheet.Table{Columns: []string{"a", "b"}, Lines: [][]figure.Cell{{cell, nil}}}}}}
}

// A program reads each figure as a number, beside the text.
func TestFiguresInJSON(t *testing.T) {
	var b bytes.Buffer
	if err := sheetJSON(&b, figured()); err != nil {
		t.Fatal(err)
	}
	var got struct {
		Parts []struct {
			Rows []struct {
				Value   string
				Figures []figureJSON
			}
			Table struct {
				Lines   [][]string
				Figures [][][]figureJSON
			}
		}
	}
	if err := json.Unmarshal(b.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	row, table := got.Parts[0].Rows[0], got.Parts[0].Table
	if want := "40 ends, 4.5 yd, 1 h 30 min, 4 to 9, 2, 4, C navy"; row.Value != want || table.Lines[0][0] != want {
		t.Errorf("the text is %q and %q", row.Value, table.Lines[0][0])
	}
	for _, list := range [][]figureJSON{row.Figures, table.Figures[0][0]} {
		text, _ := json.Marshal(list)
		want := `[{"kind":"count","number":40,"unit":"ends"},{"kind":"number","number":4.5,"unit":"yd"},` +
			`{"kind":"time","number":90,"unit":"min"},{"kind":"range","from":4,"to":9},` +
			`{"kind":"list","numbers":[2,4]},` +
			`{"kind":"colour","letter":"C","name":"navy","shade":"#1f2a50"}]`
		if string(text) != want {
			t.Errorf("the figures are\n%s, not\n%s", text, want)
		}
	}
	if len(table.Figures[0]) != 2 || len(table.Figures[0][1]) != 0 {
		t.Errorf("an empty cell has %v", table.Figures[0])
	}
}

// On a page a number stays on one line with its unit, and a colour has a swatch.
func TestFiguresOnAPage(t *testing.T) {
	var b bytes.Buffer
	if err := sheetHTML(&b, figured(), false); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"40\u00A0ends", "4.5\u00A0yd", "1\u00A0h\u00A030\u00A0min", "4 to 9",
		`fill="#1f2a50"/></svg>C navy`} {
		if strings.Count(b.String(), want) != 2 {
			t.Errorf("%q isn't there twice", want)
		}
	}
}

// A number in the words of a weaver is never taken for a figure: it stands in each format as it was written.
func TestWordsStayWords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9]{1,3} (yd|m|g|%|min|lb) [a-z]{1,5}`).Draw(t, "text")
		s := &sheet.Sheet{Title: "words", Parts: []sheet.Part{{ID: "all", Title: "All",
			Rows: []measure.Row{{Name: "row", Value: figure.Say("%s", text)}}}}}
		var b bytes.Buffer
		if err := sheetHTML(&b, s, false); err != nil || !strings.Contains(b.String(), text) {
			t.Fatalf("%q is written otherwise", text)
		}
	})
}
