package journal

import (
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"millside/plan/measure"
)

// maxFileName is the longest name of a file, in bytes: common file systems take 255, and a record's copies
// have a little more behind it.
const maxFileName = 230

// NewPath is the path for a record that a weaver names: a path if the name has a slash or ends in [Extension], and
// otherwise a file in the folder. A name that would make trouble in a list, on another system or on a terminal is a
// [*measure.FieldError].
func (s Store) NewPath(name string) (string, error) {
	wrong := func(want string) error { return &measure.FieldError{Field: "new record", Value: name, Want: want} }
	hasExt := strings.HasSuffix(name, Extension)
	hasSlash := strings.ContainsAny(name, "/"+string(filepath.Separator))
	if hasSlash && !hasExt {
		return "", wrong("a path that ends in " + Extension + ", or a name without a slash")
	}
	path := name
	if !hasExt {
		path = filepath.Join(s.Dir, name+Extension)
	}
	base := strings.TrimSuffix(filepath.Base(path), Extension)
	switch {
	case strings.TrimSpace(base) == "" || strings.HasPrefix(base, "."):
		return "", wrong("a name that begins with a letter or a figure")
	case measure.Clean(name) != name || strings.ContainsFunc(name, unicode.IsControl):
		return "", wrong("a name without control characters")
	case strings.ContainsAny(base, "\\:*?\"<>|"):
		return "", wrong("a name without any of \\ : * ? \" < > |, which other systems don't take")
	case slices.Contains(reserved, strings.ToLower(base)):
		return "", wrong("another name: some systems keep this one for a device")
	case len(base) > maxFileName:
		return "", wrong("a shorter name")
	}
	if info, err := s.fs().Stat(filepath.Dir(path)); err != nil || !info.IsDir() {
		if dir := filepath.Dir(path); dir != filepath.Clean(s.Dir) {
			return "", wrong("a path in a folder that exists: there is no folder " + dir)
		}
	}
	return path, nil
}
