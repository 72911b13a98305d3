package keys_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"millside/tui/keys"
)

// No key is spelled outside this package: what a screen calls a key by, it takes from the binding.
func TestKeysAreSpelledHereOnly(t *testing.T) {
	spelled := []string{"ctrl+", "pgdn", "pgdown", "pgup", "shift+", "backspace"}
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") ||
			strings.Contains(path, "internal") || filepath.Dir(path) == filepath.Join("..", "keys") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			text, _ := strconv.Unquote(lit.Value)
			for _, s := range spelled {
				if strings.Contains(text, s) || text == "esc" || text == "enter" || text == "tab" {
					t.Errorf("%s spells a key: %q", path, text)
				}
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// On the pages at the mill no two keys are the same, so that none can hide another.
func TestKeysAtTheMillDiffer(t *testing.T) {
	seen := map[string]string{}
	for _, b := range keys.Default().MillKeys() {
		for _, name := range b.Keys() {
			if other, there := seen[name]; there {
				t.Errorf("%q means %q and %q", name, other, b.Help().Desc)
			}
			seen[name] = b.Help().Desc
		}
	}
}
