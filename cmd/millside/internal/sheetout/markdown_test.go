package sheetout

import (
	"bytes"
	"strings"
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/text"
	"pgregory.net/rapid"
)

// rendered is a Markdown document as a renderer takes it.
type rendered struct {
	headings []string
	tables   [][][]string // cells of lines of tables, the heads first
	items    []string     // of lists, without what is nested in them
	foreign  []string     // kinds of node that a sheet never means
}

// render reads Markdown as CommonMark with the tables of GitHub has it, and with whatever else that knows:
// links, strokes through words, boxes.
func render(source []byte) rendered {
	var r rendered
	doc := goldmark.New(goldmark.WithExtensions(extension.GFM)).Parser().Parse(text.NewReader(source))
	_ = ast.Walk(doc, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch n := n.(type) {
		case *ast.Heading:
			r.headings = append(r.headings, shownText(n, source))
		case *extast.Table:
			r.tables = append(r.tables, nil)
		case *extast.TableHeader, *extast.TableRow:
			var cells []string
			for c := n.FirstChild(); c != nil; c = c.NextSibling() {
				cells = append(cells, shownText(c, source))
			}
			last := len(r.tables) - 1
			r.tables[last] = append(r.tables[last], cells)
		case *ast.ListItem:
			if n.FirstChild() != nil {
				r.items = append(r.items, shownText(n.FirstChild(), source))
			}
		case *ast.Document, *ast.List, *ast.Paragraph, *ast.TextBlock, *ast.Text, *ast.String, *extast.TableCell:
		case *ast.Emphasis:
			if n.Level != 2 {
				r.foreign = append(r.foreign, n.Kind().String())
			}
		default:
			r.foreign = append(r.foreign, n.Kind().String())
		}
		return ast.WalkContinue, nil
	})
	return r
}

// shownText is what a reader sees of a node.
func shownText(n ast.Node, source []byte) string {
	var b bytes.Buffer
	if err := goldmark.New(goldmark.WithExtensions(extension.GFM)).Renderer().Render(&b, source, n); err != nil {
		return err.Error()
	}
	return oneLine(plainly["html"](b.String()))
}

// A renderer shows the sheet as it is meant: the headings, the tables with their cells, and the texts, with
// nothing in them taken for a link, code, emphasis or markup.
func TestMarkdownIsShownRightly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sheet := drawSheet(t)
		how := rapid.Bool().Draw(t, "how")
		var b bytes.Buffer
		if err := WriteSheet(&b, sheet, "markdown", how); err != nil {
			t.Fatal(err)
		}
		got := render(b.Bytes())
		if len(got.foreign) > 0 {
			t.Fatalf("there is %v in\n%s", got.foreign, b.String())
		}
		wantHeadings := []string{oneLine(sheet.Title)}
		var wantTables [][][]string
		items := strings.Join(got.items, "\n") + "\n"
		has := func(item string) {
			if item = oneLine(item); !strings.Contains(items, item+"\n") {
				t.Fatalf("the item %q isn't shown:\n%s", item, items)
			}
		}
		for _, part := range sheet.Parts {
			wantHeadings = append(wantHeadings, oneLine(part.Title))
			for _, r := range part.Rows {
				has(r.Name + " : " + r.Value.String())
			}
			for _, note := range part.Notes {
				has(note)
			}
			if part.Table != nil {
				table := [][]string{part.Table.Columns}
				for _, cells := range part.Table.Lines {
					var texts []string
					for _, cell := range cells {
						texts = append(texts, cell.String())
					}
					table = append(table, texts)
				}
				wantTables = append(wantTables, table)
			}
		}
		if strings.Join(got.headings, "\n") != strings.Join(wantHeadings, "\n") {
			t.Fatalf("headings %q, not %q", got.headings, wantHeadings)
		}
		if len(got.tables) != len(wantTables) {
			t.Fatalf("%d tables, not %d", len(got.tables), len(wantTables))
		}
		for i := range wantTables {
			for k, cells := range wantTables[i] {
				if k >= len(got.tables[i]) || len(got.tables[i][k]) != len(cells) {
					t.Fatalf("table %d, line %d isn't shown as a line of %d cells:\n%s", i, k, len(cells), b.String())
				}
				for c, cell := range cells {
					if got.tables[i][k][c] != oneLine(cell) {
						t.Fatalf("a cell shows %q, not %q", got.tables[i][k][c], cell)
					}
				}
			}
		}
	})
}

// So does the wall sheet.
func TestWallMarkdownIsShownRightly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		wall := drawWall(t)
		var b bytes.Buffer
		if err := WriteWall(&b, wall, "markdown"); err != nil {
			t.Fatal(err)
		}
		got := render(b.Bytes())
		if len(got.foreign) > 0 || len(got.tables) > 0 {
			t.Fatalf("there is %v, %d tables in\n%s", got.foreign, len(got.tables), b.String())
		}
		if got.headings[0] != oneLine(wall.Title) {
			t.Fatalf("the title shows %q, not %q", got.headings[0], wall.Title)
		}
		items := strings.Join(got.items, "\n") + "\n"
		for _, c := range wall.Colours {
			if !strings.Contains(items, oneLine(c.String())+"\n") {
				t.Fatalf("%q isn't shown in\n%s", c, items)
			}
		}
		boxes := 0
		for _, item := range got.items {
			boxes += strings.Count(item, "[ ] ")
		}
		want := 0
		for _, c := range wall.Wound {
			want += len(c.Ties)
			for _, block := range c.Blocks {
				for _, step := range block.Steps {
					for _, passes := range step.Passes {
						want += len(makeBoxes(wall.Passes, passes))
					}
				}
			}
		}
		for _, e := range wall.After {
			want += len(e.Steps)
		}
		if wall.Picked != nil {
			want += len(wall.Picked.Blocks)
		}
		if boxes != want {
			t.Fatalf("%d boxes are shown, not %d", boxes, want)
		}
	})
}
