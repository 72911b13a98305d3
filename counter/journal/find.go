package journal

import (
	"fmt"
	"path/filepath"
	"strings"

	"millside/plan/measure"
)

// maxCandidates is how many records an error names.
const maxCandidates = 10

// Find gives the path of a record by what a weaver typed: a path that exists (anything with a slash or
// with the extension of a record), or the name of a file in the folder, with or without its extension,
// or the name of a warp in it. Small and capital letters are not told apart. A name that fits no
// record or more than one is a [*measure.FieldError] that lists the records to choose from; a file name
// with its extension always fits one at the most.
func (s Store) Find(nameOrPath string) (string, error) { return s.FindIn(nameOrPath, s.List) }

// FindIn is Find for a caller that has listed the records already: it takes list in place of [Store.List],
// and asks for it only if the name is neither a path nor the name of a file with its extension.
func (s Store) FindIn(nameOrPath string, list func() ([]Summary, error)) (string, error) {
	hasSlash := strings.ContainsRune(nameOrPath, '/') || strings.ContainsRune(nameOrPath, filepath.Separator)
	hasExt := strings.HasSuffix(nameOrPath, Extension)
	if hasSlash || hasExt {
		if _, err := s.fs().Stat(nameOrPath); err == nil {
			return nameOrPath, nil
		}
	}
	if hasExt && !hasSlash {
		path := filepath.Join(s.Dir, nameOrPath)
		if _, err := s.fs().Stat(path); err == nil {
			return path, nil
		}
	}
	all, err := list()
	if err != nil {
		return "", err
	}
	var fit []Summary
	for _, sum := range all {
		file := filepath.Base(sum.Path)
		if strings.EqualFold(nameOrPath, strings.TrimSuffix(file, Extension)) ||
			strings.EqualFold(nameOrPath, sum.Name) {
			fit = append(fit, sum)
		}
	}
	wrong := &measure.FieldError{Field: "record", Value: nameOrPath}
	switch {
	case len(fit) == 1:
		return fit[0].Path, nil
	case len(fit) > 1:
		wrong.Want = "one of the files that this name fits: " + candidates(fit)
	case len(all) == 0:
		wrong.Want = "the path of a record; there are none in " + s.Dir
	default:
		wrong.Want = "one of: " + candidates(all)
	}
	return "", wrong
}

// candidates names records by file and warp.
func candidates(list []Summary) string {
	var names []string
	for i, sum := range list {
		if i == maxCandidates {
			names = append(names, fmt.Sprintf("and %d more", len(list)-i))
			break
		}
		names = append(names, fmt.Sprintf("%s (%s)", filepath.Base(sum.Path), sum.Name))
	}
	return strings.Join(names, ", ")
}
