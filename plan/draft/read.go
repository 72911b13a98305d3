package draft

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"millside/plan/measure"
)

// Limits of single values.
const (
	maxTitle  = 200 // characters
	maxDigits = 9
	maxShafts = 1000
	maxList   = 100 // numbers with commas between them; what is behind is left out
)

// Read reads a draft of at most MaxBytes bytes, MaxLines lines and measure.MaxEnds warp threads. The
// error is a [*measure.FieldError] if it is larger, if it isn't a WIF draft, or if it doesn't say how
// many warp threads there are; everything else that is wrong with it is a warning.
func Read(data []byte) (*Draft, error) {
	text, err := decode(data)
	if err != nil {
		return nil, err
	}
	r := &reader{Draft: &Draft{}}
	if r.sections, err = split(text, &r.warnings); err != nil {
		return nil, err
	}
	if err := r.threads(); err != nil {
		return nil, err
	}
	r.version()
	r.contents()
	r.title()
	r.Shafts = r.count("WEAVING", "shafts")
	r.Treadles = r.count("WEAVING", "treadles")
	r.colours()
	r.weft()
	r.palette()
	r.threading()
	r.spacing()
	r.Warnings = r.warnings.all()
	return r.Draft, nil
}

type reader struct {
	*Draft
	warnings
	sections map[string]*section // the known ones; nil for those that the draft doesn't have
}

// threads reads the number of warp threads.
func (r *reader) threads() error {
	warp := r.sections["WARP"]
	if warp == nil {
		return refuse("no [WARP]", "a draft with a section [WARP] that says how many Threads there are")
	}
	v, line := warp.number("threads")
	n, ok := whole(v)
	if !ok || n < 1 || n > measure.MaxEnds {
		if line == 0 {
			line = warp.line
		}
		return &measure.FieldError{
			Field: fmt.Sprintf("draft, [WARP], line %d, Threads", line), Value: shorten(v),
			Want: fmt.Sprintf("1 to %d", measure.MaxEnds),
		}
	}
	r.Draft.Threads = n
	return nil
}

func shorten(s string) string {
	if len(s) > maxQuoted {
		return strings.ToValidUTF8(s[:maxQuoted], "") + "..."
	}
	return s
}

// whole reads a whole number from 0 of at most maxDigits figures.
func whole(s string) (int, bool) {
	if s == "" || len(s) > maxDigits || strings.Trim(s, "0123456789") != "" {
		return 0, false
	}
	n, err := strconv.Atoi(s)
	return n, err == nil
}

// count reads a count that may be left out.
func (r *reader) count(name, key string) int {
	v, line := r.sections[name].number(key)
	if line == 0 {
		return 0
	}
	n, ok := whole(v)
	if !ok || n > maxShafts {
		r.add(name, line, "%s of %s is left out; 0 to %d would do", key, quote(v), maxShafts)
		return 0
	}
	return n
}

// version warns of another version of the standard.
func (r *reader) version() {
	if v, line := r.sections["WIF"].number("version"); line > 0 && v != "1.1" {
		r.add("WIF", line, "version %s is read as 1.1", quote(v))
	}
}

// contents compares the list of sections with those that are there, and trusts these.
func (r *reader) contents() {
	list := r.sections["CONTENTS"]
	if list == nil {
		return
	}
	for _, name := range known {
		if name == "WIF" || name == "CONTENTS" {
			continue
		}
		v, line := list.number(strings.ToLower(name))
		listed, ok := truth(v)
		switch there := r.sections[name] != nil; {
		case line > 0 && !ok:
			r.add("CONTENTS", line, "%s is neither true nor false and is left out", quote(v))
		case listed && !there:
			r.add("CONTENTS", line, "[%s] is named, but isn't there", name)
		case !listed && there:
			r.add(name, r.sections[name].line, "the section isn't named in [CONTENTS], but is read")
		}
	}
}

// truth reads a truth word; no word at all is false.
func truth(s string) (value, ok bool) {
	switch strings.ToLower(s) {
	case "true", "on", "yes", "1":
		return true, true
	case "false", "off", "no", "0":
		return false, true
	}
	return false, false
}

// title reads the title, which is text: no sign in it begins a comment.
func (r *reader) title() {
	v, line := r.sections["TEXT"].get("title")
	kept := 0
	r.Title = strings.Map(func(c rune) rune {
		if kept == maxTitle || !unicode.IsPrint(c) {
			return -1
		}
		kept++
		return c
	}, v)
	if r.Title != v {
		r.add("TEXT", line, "the title is cut to %d characters that can be shown", kept)
	}
}

// eachThread goes through the lines of a section that has one for each of the threads that another section
// names, and gives the thread from 0, the value without a comment, and the line. Lines that count from 0
// are taken as counted from 1.
func (r *reader) eachThread(name, of string, threads int, give func(thread int, value string, line int)) {
	s := r.sections[name]
	if s == nil {
		return
	}
	first := 1
	if _, line := s.get("0"); line > 0 {
		if _, last := s.get(strconv.Itoa(threads)); last == 0 {
			first = 0
			r.add(name, line, "the lines count the threads from 0; they are taken as 1 to %d", threads)
		}
	}
	for _, key := range s.order {
		v, line := s.number(key)
		thread, ok := whole(key)
		switch {
		case !ok:
			r.add(name, line, "%s is no number of a thread and is left out", quote(key))
		case thread < first || thread-first >= threads:
			r.addOnce(name, line, fmt.Sprintf("this is no thread of the %d that [%s] names, and is left out", threads,
				of))
		case v == "":
			r.addOnce(name, line, "the value is blank; the line is left out")
		default:
			give(thread-first, v, line)
		}
	}
}

// threading reads the shafts of each thread.
func (r *reader) threading() {
	if r.sections["THREADING"] == nil {
		return
	}
	r.Threading = make([][]int, r.Threads)
	r.eachThread("THREADING", "WARP", r.Threads, func(thread int, value string, line int) {
		var shafts []int
		for _, f := range fields(value) {
			n, ok := whole(f)
			if !ok || n > maxShafts {
				r.add("THREADING", line, "%s is no shaft; the thread is taken as not threaded", quote(f))
				return
			}
			if n > r.Shafts && r.Shafts > 0 {
				r.addOnce("THREADING", line,
					fmt.Sprintf("the shaft is above the %d that [WEAVING] names; it is kept", r.Shafts))
			}
			if n > 0 && !slices.Contains(shafts, n) {
				shafts = append(shafts, n)
			}
		}
		r.Threading[thread] = shafts
	})
}

// fields cuts a list at its commas, into one piece at least; a comma at its end is no matter.
func fields(value string) []string {
	list := strings.Split(strings.TrimRight(value, ", \t"), ",")
	for i := range list {
		list[i] = strings.TrimSpace(list[i])
	}
	return list[:min(len(list), maxList)]
}
