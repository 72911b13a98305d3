package draft

import (
	"strconv"
	"strings"
	"unicode"

	"millside/plan/field"
	"millside/plan/measure"
)

// Limits of what is read.
const (
	MaxBytes = 4 << 20 // of a draft
	MaxLines = 300_000 // of a draft
)

// known lists the sections that a warp needs; all others are skipped.
var known = []string{
	"WIF", "CONTENTS", "TEXT", "WEAVING", "WARP", "WARP SPACING", "WARP COLORS", "COLOR PALETTE", "COLOR TABLE",
	"THREADING",
	"WEFT", "WEFT COLORS",
}

// section holds the key lines of one section. If a key stands more than once, the last one counts.
type section struct {
	line int // of its header
	keys map[string]entry
	// order lists the keys in the order of their first lines.
	order []string
}

type entry struct {
	value string
	line  int
}

// get is the value of a key, "" if there is none, and its line.
func (s *section) get(key string) (string, int) {
	if s == nil {
		return "", 0
	}
	e := s.keys[key]
	return e.value, e.line
}

// number is the value of a key without a comment.
func (s *section) number(key string) (string, int) {
	v, line := s.get(key)
	return bare(v), line
}

// bare cuts a comment off a value that isn't text.
func bare(value string) string {
	if i := strings.IndexByte(value, ';'); i >= 0 {
		value = value[:i]
	}
	return strings.TrimSpace(value)
}

// refuse is the error for a draft that can't be read at all.
func refuse(value, want string) error {
	return &measure.FieldError{Field: field.Draft.Name, Value: value, Want: want}
}

// split sorts the lines of a draft into the known sections.
func split(text string, w *warnings) (map[string]*section, error) {
	sections := map[string]*section{}
	for _, name := range known {
		sections[name] = nil
	}
	if n := strings.Count(strings.TrimSuffix(text, "\n"), "\n") + 1; n > MaxLines {
		return nil, refuse(strconv.Itoa(n)+" lines", "a draft of at most "+strconv.Itoa(MaxLines)+" lines")
	}
	name, headers, number := "", 0, 0
	var now *section // nil while a section is skipped
	for line := range strings.SplitSeq(text, "\n") {
		number++
		line = strings.TrimSpace(line)
		switch {
		case line == "" || line[0] == ';':
		case line[0] == '[':
			headers++
			name = meantName(header(line, number, w), number, w)
			now = open(sections, name, number, w)
		case headers == 0:
			w.addOnce("", number, "text that belongs to no section is left out")
		case now != nil:
			now.add(name, line, number, w)
		}
	}
	if headers == 0 {
		return nil, refuse("no section", "a WIF draft: text with sections such as [WARP]")
	}
	return sections, nil
}

// header is the name in a section's header, in capitals, with single spaces and nothing that can't be
// shown.
func header(line string, number int, w *warnings) string {
	name, after, closed := strings.Cut(line[1:], "]")
	name = strings.ToUpper(strings.Join(strings.Fields(name), " "))
	name = strings.Map(func(c rune) rune {
		if !unicode.IsPrint(c) {
			return -1
		}
		return c
	}, name[:min(len(name), maxQuoted)])
	if !closed {
		w.add(name, number, "the header has no closing bracket; it is taken as if it had")
	} else if after = bare(after); after != "" {
		w.add(name, number, "%s after the header is left out", quote(after))
	}
	return name
}

// meantName is the known section that a name is meant for, if it is one with a space missing or too many,
// an underscore, or in British spelling; else the name itself.
func meantName(name string, line int, w *warnings) string {
	bare := func(s string) string {
		return strings.NewReplacer(" ", "", "_", "", "-", "", "COLOUR", "COLOR").Replace(s)
	}
	for _, k := range known {
		if name != k && bare(name) == bare(k) {
			w.add(name, line, "the section is read as [%s]", k)
			return k
		}
	}
	return name
}

// open is the section of a name, or nil if it is to be skipped.
func open(sections map[string]*section, name string, line int, w *warnings) *section {
	s, ok := sections[name]
	switch {
	case !ok:
		return nil
	case s != nil:
		w.add(name, line, "the section stands here again; it is read as one with the first, at line %d", s.line)
		return s
	}
	s = &section{line: line, keys: map[string]entry{}}
	sections[name] = s
	return s
}

// add takes in one key line.
func (s *section) add(name, line string, number int, w *warnings) {
	key, value, ok := strings.Cut(line, "=")
	key = strings.ReplaceAll(strings.ToLower(strings.Join(strings.Fields(key), " ")), "colour", "color")
	if !ok || key == "" {
		w.add(name, number, "%s is no key with a value and is left out", quote(line))
		return
	}
	if n, err := strconv.Atoi(key); err == nil {
		key = strconv.Itoa(n) // 007 is 7
	}
	if before, there := s.keys[key]; there {
		w.add(name, number, "%s stands at line %d too; this one counts", quote(key), before.line)
	} else {
		s.order = append(s.order, key)
	}
	s.keys[key] = entry{strings.TrimSpace(value), number}
}
