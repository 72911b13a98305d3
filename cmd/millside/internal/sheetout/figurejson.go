package sheetout

import (
	"strconv"

	"millside/plan/figure"
	"millside/plan/measure"
	"millside/plan/sheet"
)

// figureJSON is a figure for a program: what its text holds, in numbers.
type figureJSON struct {
	Kind string `json:"kind"` // "count", "number", "time", "range", "list" or "colour"
	// Number is a count, a number rounded as it is shown, or a time in minutes; Unit the word behind it.
	Number *float64 `json:"number,omitempty"`
	Unit   string   `json:"unit,omitzero"`
	// From and To bound a range, both of them in it; Numbers lists those of a list.
	From    int   `json:"from,omitzero"`
	To      int   `json:"to,omitzero"`
	Numbers []int `json:"numbers,omitempty"`
	// Letter, Name and Shade are those of a colour; what it hasn't got is left out.
	Letter string `json:"letter,omitzero"`
	Name   string `json:"name,omitzero"`
	Shade  string `json:"shade,omitzero"`
}

// figuresOf lists the figures of a cell, without the words between.
func figuresOf(c figure.Cell) []figureJSON {
	var list []figureJSON
	for _, f := range c {
		switch f := f.(type) {
		case figure.Count:
			list = append(list, figureJSON{Kind: "count", Number: float(strconv.Itoa(f.N)), Unit: f.Noun()})
		case figure.Number:
			list = append(list, figureJSON{Kind: "number", Number: float(f.Digits()), Unit: f.Unit()})
		case figure.Duration:
			list = append(list, figureJSON{Kind: "time", Number: float(strconv.Itoa(f.Minutes())), Unit: "min"})
		case figure.Range:
			list = append(list, figureJSON{Kind: "range", From: f.First, To: f.Last})
		case figure.List:
			list = append(list, figureJSON{Kind: "list", Numbers: f})
		case figure.Colour:
			list = append(list, figureJSON{Kind: "colour", Letter: f.Letter, Name: f.Name, Shade: f.Shade})
		case figure.Text:
		}
	}
	return list
}

// float is the number that digits write.
func float(digits string) *float64 {
	n, err := strconv.ParseFloat(digits, 64)
	if err != nil {
		return nil // a figure gives digits only
	}
	return &n
}

// partJSON, rowJSON and tableJSON are the parts of a sheet with the figures beside the texts.
type partJSON struct {
	ID    sheet.PartID `json:"id"`
	Title string       `json:"title"`
	Rows  []rowJSON    `json:"rows,omitempty"`
	Table *tableJSON   `json:"table,omitempty"`
	Notes []string     `json:"notes,omitempty"`
}

type rowJSON struct {
	measure.Row
	Figures []figureJSON `json:"figures,omitempty"` // those of the value
}

type tableJSON struct {
	Columns []string         `json:"columns"`
	Lines   [][]figure.Cell  `json:"lines"`
	Figures [][][]figureJSON `json:"figures"` // of each line, of each cell
}

func partsJSON(parts []sheet.Part) []partJSON {
	list := make([]partJSON, len(parts))
	for i, p := range parts {
		list[i] = partJSON{ID: p.ID, Title: p.Title, Notes: p.Notes}
		for _, r := range p.Rows {
			list[i].Rows = append(list[i].Rows, rowJSON{r, figuresOf(r.Value)})
		}
		if p.Table == nil {
			continue
		}
		t := &tableJSON{Columns: p.Table.Columns, Lines: p.Table.Lines,
			Figures: make([][][]figureJSON, len(p.Table.Lines))}
		for k, cells := range p.Table.Lines {
			t.Figures[k] = make([][]figureJSON, len(cells))
			for c, cell := range cells {
				if t.Figures[k][c] = figuresOf(cell); t.Figures[k][c] == nil {
					t.Figures[k][c] = []figureJSON{}
				}
			}
		}
		list[i].Table = t
	}
	return list
}
