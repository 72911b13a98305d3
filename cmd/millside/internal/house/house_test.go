package house

import (
	"encoding/json"
	"errors"
	"flag"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

// The bounds of a room.
const (
	mostFiles   = 25  // source files in a folder, tests not counted
	mostNames   = 150 // exported names of a package
	mostLines   = 400 // lines of a file, tests included
	mostColumns = 120 // columns of a line, a tab counted as four
	module      = "millside"
)

// room is a package as `go list` shows it.
type room struct {
	ImportPath, Dir, Doc               string
	GoFiles, TestGoFiles, XTestGoFiles []string
	Imports                            []string
}

// name is the room's folder as DEVELOPERS.md names it.
func (r room) name() string { return strings.TrimPrefix(r.ImportPath, module+"/") }

// arrows are the rooms that it imports, sorted.
func (r room) arrows() []string {
	list := []string{}
	for _, path := range r.Imports {
		if to, inside := strings.CutPrefix(path, module+"/"); inside {
			list = append(list, to)
		}
	}
	slices.Sort(list)
	return list
}

// sources are the files that the room is built of on any system.
func (r room) sources(t *testing.T) []string {
	t.Helper()
	all, err := filepath.Glob(filepath.Join(r.Dir, "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	return slices.DeleteFunc(all, func(f string) bool { return strings.HasSuffix(f, "_test.go") })
}

// root is the top folder of the module.
func root(t *testing.T) string {
	t.Helper()
	out, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}").Output()
	if err != nil {
		t.Fatal(err)
	}
	return strings.TrimSpace(string(out))
}

// rooms lists the module's packages.
func rooms(t *testing.T) []room {
	t.Helper()
	list := exec.Command("go", "list", "-json=ImportPath,Dir,Doc,GoFiles,TestGoFiles,XTestGoFiles,Imports", "./...")
	list.Dir = root(t)
	out, err := list.Output()
	if err != nil {
		t.Fatal(err)
	}
	var all []room
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var r room
		if err := d.Decode(&r); errors.Is(err, io.EOF) {
			return all
		} else if err != nil {
			t.Fatal(err)
		}
		if len(r.GoFiles) > 0 && r.name() != "cmd/millside/internal/house" {
			all = append(all, r)
		}
	}
}

var update = flag.Bool("update", false, "write the arrows in DEVELOPERS.md anew")

// drawing is the start of the table of the rooms.
const drawing = "| room | holds | imports |\n"

// redraw writes the last column of the table anew.
func redraw(t *testing.T) {
	t.Helper()
	name := filepath.Join(root(t), "DEVELOPERS.md")
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.SplitAfter(string(text), "\n")
	for _, r := range rooms(t) {
		row := slices.IndexFunc(lines, func(l string) bool { return strings.HasPrefix(l, "| `"+r.name()+"` |") })
		if row < 0 { // a new room: what it holds is taken from its package comment
			row = slices.Index(lines, drawing) + 2
			what := strings.TrimSuffix(strings.TrimPrefix(r.Doc, "Package "+filepath.Base(r.Dir)+" "), ".")
			lines = slices.Insert(lines, row, "| `"+r.name()+"` | "+what+" | |\n")
		}
		cells := strings.Split(lines[row], "|")
		arrows := ""
		if to := r.arrows(); len(to) > 0 {
			arrows = "`" + strings.Join(to, "`, `") + "` "
		}
		lines[row] = strings.Join(cells[:3], "|") + "| " + arrows + "|\n"
	}
	if err := os.WriteFile(name, []byte(strings.Join(lines, "")), 0o644); err != nil {
		t.Fatal(err)
	}
}

// drawn reads the arrows from the table of DEVELOPERS.md: a room, and the rooms that it imports.
func drawn(t *testing.T) map[string][]string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(root(t), "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	quoted := regexp.MustCompile("`([^`]+)`")
	all := map[string][]string{}
	_, after, found := strings.Cut(string(text), drawing)
	if !found {
		t.Fatal("DEVELOPERS.md has no table of the rooms")
	}
	for line := range strings.Lines(after) {
		cells := strings.Split(strings.Trim(strings.TrimSpace(line), "|"), "|")
		if len(cells) != 3 {
			break
		}
		name := quoted.FindStringSubmatch(cells[0])
		if name == nil {
			continue
		}
		all[name[1]] = []string{}
		for _, to := range quoted.FindAllStringSubmatch(cells[2], -1) {
			all[name[1]] = append(all[name[1]], to[1])
		}
		slices.Sort(all[name[1]])
	}
	return all
}

// The drawing is what `go list` shows, room by room and arrow by arrow.
func TestTheDrawingIsTheHouse(t *testing.T) {
	if *update {
		redraw(t)
	}
	said := drawn(t)
	for _, r := range rooms(t) {
		is := r.arrows()
		arrows, ok := said[r.name()]
		delete(said, r.name())
		if !ok || !slices.Equal(arrows, is) {
			t.Errorf("DEVELOPERS.md says that %s imports %q; it imports %q (-update writes it)", r.name(), arrows, is)
		}
	}
	for name := range said {
		t.Errorf("DEVELOPERS.md draws %s, which isn't there", name)
	}
}

// No room knows one that stands above it.
func TestArrowsRunDown(t *testing.T) {
	for _, r := range rooms(t) {
		for _, to := range r.arrows() {
			if floor(to) > floor(r.name()) {
				t.Errorf("%s imports %s, which stands above it", r.name(), to)
			}
		}
	}
}

// floors are the floors of the house from the ground up; rooms on one floor may know each other as far as
// the compiler allows it.
var floors = [][]string{
	{"plan/internal/ratio", "plan/figure"}, {"plan/measure", "plan/internal"},
	{"plan/field"}, {"plan/cloth", "plan/loom", "plan/internal/loomtest"},
	{"plan/frame", "plan/times", "plan/wind"}, {"plan"}, {"plan/entry"}, {"plan/project", "plan/finishing"},
	{"plan/stripe"},
	{"plan/draft", "plan/start"},
	{"plan/athand", "plan/sheet", "plan/pair"}, {"counter/disk"}, {"counter"}, {"counter/journal", "counter/session"},
	{"tui"}, {"cmd/millside"},
}

// floor is the floor of a room: that of the longest name in floors which begins its own.
func floor(name string) int {
	at, longest := -1, 0
	for i, level := range floors {
		for _, f := range level {
			if (name == f || strings.HasPrefix(name, f+"/")) && len(f) > longest {
				at, longest = i, len(f)
			}
		}
	}
	return at
}

// TestRoomsAreNotCrowded looks at folders and packages.
func TestRoomsAreNotCrowded(t *testing.T) {
	for _, r := range rooms(t) {
		within(t, "source files in a folder", r.name(), len(r.sources(t)), mostFiles)
		within(t, "exported names of a package", r.name(), exported(t, r), mostNames)
	}
}

// within fails for a count above its bound.
func within(t *testing.T, what, where string, count, most int) {
	t.Helper()
	if count > most {
		t.Errorf("%s: %s has %d, at most %d", what, where, count, most)
	}
}

// common are the methods by which a type fits into the standard library: they add no word to learn.
var common = []string{"String", "Error", "Unwrap", "MarshalText", "UnmarshalText"}

// exported counts the names that a room shows: those of the package and the methods of its types. A method that an
// interface of the room asks for is learnt with the interface, and so counts once.
func exported(t *testing.T, r room) int {
	t.Helper()
	var decls []ast.Decl
	asked := map[string]bool{}
	for _, file := range r.sources(t) {
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		decls = append(decls, f.Decls...)
		ast.Inspect(f, func(n ast.Node) bool {
			if i, ok := n.(*ast.InterfaceType); ok {
				for _, m := range i.Methods.List {
					for _, name := range m.Names {
						asked[name.Name] = true
					}
				}
			}
			return true
		})
	}
	n := 0
	for name := range asked {
		if ast.IsExported(name) && !slices.Contains(common, name) {
			n++
		}
	}
	for _, d := range decls {
		method := false
		if f, ok := d.(*ast.FuncDecl); ok {
			method = f.Recv != nil
		}
		for _, name := range names(d) {
			if ast.IsExported(name) && !slices.Contains(common, name) && !(method && asked[name]) {
				n++
			}
		}
	}
	return n
}

// names lists what a declaration names; a method of a type that isn't exported has no name.
func names(d ast.Decl) []string {
	var list []string
	switch d := d.(type) {
	case *ast.FuncDecl:
		if d.Recv == nil || ast.IsExported(receiver(d)) {
			list = append(list, d.Name.Name)
		}
	case *ast.GenDecl:
		for _, s := range d.Specs {
			switch s := s.(type) {
			case *ast.TypeSpec:
				list = append(list, s.Name.Name)
			case *ast.ValueSpec:
				for _, name := range s.Names {
					list = append(list, name.Name)
				}
			}
		}
	}
	return list
}

// receiver is the name of a method's type.
func receiver(d *ast.FuncDecl) string {
	e := d.Recv.List[0].Type
	if p, ok := e.(*ast.StarExpr); ok {
		e = p.X
	}
	if g, ok := e.(*ast.IndexExpr); ok {
		e = g.X
	}
	if id, ok := e.(*ast.Ident); ok {
		return id.Name
	}
	return ""
}

// TestFilesAreSmall looks at each file, tests included.
func TestFilesAreSmall(t *testing.T) {
	top := root(t)
	for _, r := range rooms(t) {
		files, err := filepath.Glob(filepath.Join(r.Dir, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range files {
			name, err := filepath.Rel(top, file)
			if err != nil {
				t.Fatal(err)
			}
			lines, long, first := measureFile(t, file)
			name = filepath.ToSlash(name)
			if lines > mostLines {
				t.Errorf("%s has %d lines, at most %d", name, lines, mostLines)
			}
			if long > 0 {
				t.Errorf("%s has %d lines above %d columns, the first is line %d", name, long, mostColumns, first)
			}
		}
	}
}

// measureFile counts a file's lines, and those that are too long.
func measureFile(t *testing.T, file string) (lines, long, first int) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		lines++
		columns := utf8.RuneCountInString(strings.ReplaceAll(strings.TrimRight(line, "\r\n"), "\t", "    "))
		if columns > mostColumns {
			if long++; first == 0 {
				first = lines
			}
		}
	}
	return lines, long, first
}
