package main

import (
	"cmp"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"millside/counter"
	"millside/counter/journal"
	"millside/counter/session/pencil"
	"millside/plan"
	"millside/plan/project"
	"millside/plan/times"
)

// written are the examples' ends from end 1 on, written out by hand: a letter an end.
var written = map[string]string{
	"check": strings.Repeat("kkkkwwww", 4) + "kkkk",
	"mirrored": "rrrwbbwwwwwww" +
		"wwwwwwwbbwrrr",
	"three by two":      "rrwwbb" + "rrwwbb" + "rrwwbb",
	"pin in the middle": "nnnnnnnn" + "wwwwwwwwwwwwwwwwwwwww" + "rrr" + "wwwwwwwwwwwwwwwwwwwww" + "nnnnnnnn",
	"end by end":        "rwbrgwbgrw",
	"red ground":        "rrrr" + "wwbrrrrr" + "wwbrrrrr" + "wwbrrrrr" + "rrrr",
	"towel borders": "wwwwwwwwwwwwwwwwwwwwwwww" + "bbbbwwww" + "bbbbwwww" + strings.Repeat("wwwwwwwwww", 6) +
		"wwwwbbbb" + "wwwwbbbb" + "wwwwwwwwwwwwwwwwwwwwwwww",
	"blanket of six": strings.Repeat("rrrr"+"bb"+"gggg"+"oo"+"yyyy"+"ww", 4),
	"scarf": "iiiiiiiiiiii" + "cc" + "iiiiii" + "tttt" + "cc" + "iiiiiiiii" + // which stands once
		"cc" + "tttt" + "iiiiii" + "cc" + "iiiiiiiiiiii",
	"log cabin": strings.Repeat("sasasasasa"+"s"+"asasasasas"+"a", 3),
}

// letters are the colours of those letters.
var letters = map[rune]string{'k': "black", 'w': "white", 'r': "red", 'b': "blue", 'n': "navy", 'g': "green",
	'o': "gold", 'y': "grey", 'i': "indigo", 'c': "cream", 't': "rust", 's': "slate", 'a': "sand"}

// threads are the draft's threads that make the ends from the left, as the example's options ask for them: counted from
// 1. Of an added end the thread is that whose shafts it has; its colour is that of the outermost thread, which in these
// drafts has the same.
var threads = map[string][]int{
	"towel.wif": slices.Repeat(span(1, 24), 3), // thread 1 on the left, the others' on the right
	"runner.wif": slices.Concat([]int{40, 39, 40, 39}, slices.Repeat(span(40, 1), 2),
		[]int{2, 1, 2, 1}),
	"throw.wif":   span(50, 1),
	"curtain.wif": append(slices.Repeat(span(37, 1), 4), 37, 36), // 150 of 37 are 4 times and 2
}

// span counts from a number to another, up or down.
func span(from, to int) []int {
	var list []int
	for n := from; n != to; n += cmp.Compare(to, from) {
		list = append(list, n)
	}
	return append(list, to)
}

// asked is the colour of every end from end 1 on, and its shaft where the example is a draft, read here from its file.
func (e example) asked(t *testing.T) (colours, shafts []string) {
	t.Helper()
	if e.draft == "" {
		for _, letter := range written[e.name] {
			colours = append(colours, letters[letter])
		}
		return colours, nil
	}
	file := readSections(t, filepath.Join("testdata", "examples", e.draft))
	for _, n := range threads[e.draft] {
		thread := strconv.Itoa(n)
		index := cmp.Or(file["WARP COLORS"][thread], file["WARP"]["Color"])
		for i, flag := range e.flags {
			if name, ok := strings.CutPrefix(flag, index+"="); ok && e.flags[i-1] == "--name-colour" {
				colours = append(colours, name)
			}
		}
		shafts = append(shafts, file["THREADING"][thread])
	}
	return colours, shafts
}

// readSections reads the lines of a draft: a table of names for each section.
func readSections(t *testing.T, name string) map[string]map[string]string {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	all, section := map[string]map[string]string{}, ""
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSpace(line)
		if strings.HasPrefix(line, "[") {
			section = strings.Trim(line, "[]")
			all[section] = map[string]string{}
		} else if key, value, ok := strings.Cut(line, "="); ok {
			all[section][key] = value
		}
	}
	return all
}

var shaftTold = regexp.MustCompile(`, (shaft (\d+)|through no heddle)`)

// wound winds the example that was saved under a name by its pages alone, with paper and pencil: on some passes an end
// breaks or has a knot, on some a package runs out. The colours are those that were asked for, each knot is where the
// hand-over says, and goes through the shaft that the draft has for its thread. Each hand lays a return pass its own
// way round.
func (e example) wound(t *testing.T, dir, name, way string) {
	t.Helper()
	list, err := journal.Store{Dir: dir, FS: journal.OS()}.List()
	if err != nil {
		t.Fatal(err)
	}
	at := slices.IndexFunc(list, func(s journal.Summary) bool { return s.Name == name })
	if at < 0 {
		t.Fatalf("%s isn't among %d records", name, len(list))
	}
	rec, err := journal.OpenReadOnly(journal.OS(), list[at].Path)
	if err != nil {
		t.Fatal(err)
	}
	colours, shafts := e.asked(t)
	pl := rec.State().Plan
	pr, err := project.Of(pl, times.Pace{})
	if err != nil {
		t.Fatal(err)
	}
	threading, ok := pr.Threaded()
	for i, shaft := range shafts {
		if got := threading.At(i + 1).String(); !ok || got != cmp.Or(shaft, "0") && got != shaft {
			t.Fatalf("%s: end %d is on shaft %q, in the draft on %q", way, i+1, got, shaft)
		}
	}
	for _, mirrored := range []bool{false, true} {
		w := pencil.NewWarp(t, pl, colours, way == chainEach)
		p := pencil.New(t, mirrored, false)
		p.Plain = pl.Spec.Yarn.Colour
		marked := 0
		w.Follow(p, func() bool {
			switch k := w.Laid(); {
			case k%5 == 1:
				w.Mends(p, counter.Broken, k, 1+k%p.Width(k))
			case k%5 == 4:
				w.Mends(p, counter.Knot, k-1, 1+3*k%p.Width(k-1))
			case k%7 == 3:
				w.RunsOut(p, k)
			}
			return false
		})
		w.Check(p, func(end int, words string) {
			marked++
			m := shaftTold.FindStringSubmatch(words)
			if (m != nil) != (shafts != nil) || m != nil && m[2] != shafts[end-1] {
				t.Errorf("%s: %q; the draft has shaft %q", way, words, shafts)
			}
			if !strings.Contains(words, " "+colours[end-1]) && pl.Striped() {
				t.Errorf("%s: %q; ordered was %s", way, words, colours[end-1])
			}
		})
		between := func(c plan.Chain) bool { return len(c.Passes) > 1 }
		if marked == 0 && slices.ContainsFunc(pl.Chains, between) {
			t.Errorf("%s: no end was marked", way)
		}
	}
}
