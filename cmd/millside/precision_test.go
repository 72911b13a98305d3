package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// someWarps are plans of many kinds, in both families of units.
var someWarps = [][]string{
	{"plan", "--ends", "396", "--length", "1 yd"},
	{"plan", "--ends", "2000", "--length", "9.75 yd", "--yarn", "8/2 cotton", "--sett", "20 epi", "--raddle", "1/2 in"},
	{"plan", "--ends", "1", "--group", "1", "--length", "2 yd", "--yarn", "3360 ypp"},
	{"plan", "--ends", "473", "--length", "4.51 yd", "--yarn", "1043 yd/lb", "--rise", "3.7 in"},
	{"plan", "--ends", "614", "--group", "8", "--chain-ends", "205", "--length", "6 yd", "--rise", "4 in", "--dyed",
		"--yarn", "2/28 Nm", "--sett", "13 epi", "--reed", "8 dpi", "--raddle", "1 in", "--peg-length", "6 in"},
	{"plan", "--units", "metric", "--finished-width", "37 cm", "--finished-length", "1.83 m", "--pieces", "3", "--sett",
		"12 a cm", "--reed", "60 in 10 cm", "--yarn", "spun silk 30s/2", "--draw-in", "7 %", "--shrinkage-width", "3 %",
		"--shrinkage-length", "3.5 %", "--take-up", "6 %", "--loom-waste", "70 cm", "--picks", "11 a cm", "--doubled",
		"2",
		"--fibre", "silk", "--circumference", "1.7 m", "--peg-step", "33 cm"},
	{"plan", "--finished-width", "17.3 in", "--finished-length", "31 in", "--pieces", "7", "--sett", "17 epi", "--reed",
		"12 dpi", "--yarn", "16/2 linen", "--draw-in", "7.5 %", "--take-up", "9 %", "--loom-waste", "30 in", "--picks",
		"16 ppi", "--fit", "full passes", "--floating", "2"},
	{"plan", "--ends", "30000", "--group", "12", "--length", "99 m", "--yarn", "40/2 cotton", "--units", "metric"},
	{"plan", "--ends", "24", "--length", "7 yd", "--board", "36 in x 10, 18 in", "--minutes-pass", "0.5"},
	{"plan", "--stripes", "8 white, 3 times (4 red, 14 white), 20 red", "--yarn", "10/2 cotton", "--length", "5 yd"},
	{"sett", "1043.262451 yd/lb"}, {"sett", "7/2 Nm", "--units", "metric"},
	{"sett", "25 tex x 2"},
}

var (
	decimals = regexp.MustCompile(`\b[0-9]+\.[0-9]+\b`)
	lengths  = regexp.MustCompile(`(?:^|[^0-9.])[0-9]{5,} (?:yd|m|in|cm|lb|oz|g|kg)\b`)
	ones     = regexp.MustCompile(`(?m)(?:^|[^0-9.,/])1 (?:ends|passes|turns|steps|peg steps|groups|packages|cones|` +
		`chains|halts|cuts|ties|dents|minutes|times|distances|pegs|bouts|positions|` +
		`sections|pieces|heddles|warps|threads|weeks|days|hours)\b`)
	spans = regexp.MustCompile(`\b([0-9.]+ ?[a-z]*) to ([0-9.]+ ?[a-z]*)\b`)
)

// figures is how many figures of a number count.
func figures(number string) int {
	return len(strings.TrimLeft(strings.ReplaceAll(number, ".", ""), "0"))
}

// No figure seems more exact than it is, in whatever is printed of a warp: a number that was reckoned has at most four
// figures, and a number that the weaver gave at most its own. One thing is not written as several.
func TestNoFigureIsTooExact(t *testing.T) {
	long(t)
	kinds := [][]string{{}, {"--passes"}, {"--sheet", "--how", "--date", "none"}, {"--wall", "--date", "none"}}
	for _, warp := range someWarps {
		for _, kind := range kinds {
			if warp[0] == "sett" && len(kind) > 0 {
				continue
			}
			args := append(append([]string{}, warp...), kind...)
			code, out, errOut := runIn(t.TempDir(), args...)
			if code != 0 {
				t.Errorf("%q: %s", args, errOut)
				continue
			}
			checkFigures(t, strings.Join(args, " "), out)
		}
	}
}

// The same holds for what is shown of a record, and of a draft.
func TestNoFigureOfARecordIsTooExact(t *testing.T) {
	alone(t)
	for _, warp := range someWarps {
		if warp[0] == "sett" {
			continue
		}
		dir := t.TempDir()
		for _, args := range [][]string{append(append([]string{}, warp...), "--save", "--name", "one"), {"show", "one"},
			{"list"}, {"sheet", "one", "--how", "--date", "none"}, {"sheet", "one", "--wall", "--date", "none"}} {
			code, out, errOut := runIn(dir, args...)
			if code != 0 {
				t.Errorf("%q: %s", args, errOut)
				continue
			}
			checkFigures(t, strings.Join(append(warp, args...), " "), out)
		}
	}
	const draft = "[WIF]\nVersion=1.1\n[CONTENTS]\nWARP=yes\nTHREADING=yes\n[WEAVING]\nShafts=4\nTreadles=4\n[WARP]\n" +
		"Threads=7\nUnits=Centimeters\nSpacing=0.2119\nColor=1\n[THREADING]\n1=1\n2=2\n3=3\n4=4\n5=1\n6=2\n7=3\n" +
		"[COLOR PALETTE]\nRange=0,255\nEntries=1\n[COLOR TABLE]\n1=20,30,40\n"
	path := filepath.Join(t.TempDir(), "d.wif")
	if err := os.WriteFile(path, []byte(draft), 0o600); err != nil {
		t.Fatal(err)
	}
	code, out, errOut := runIn(t.TempDir(), "draft", path)
	if code != 0 {
		t.Fatal(errOut)
	}
	checkFigures(t, "draft", out)
}

// checkFigures looks for figures that are too exact in a text that the command printed.
func checkFigures(t *testing.T, command, text string) {
	t.Helper()
	for _, number := range decimals.FindAllString(text, -1) {
		if n := figures(number); n > 4 && !strings.Contains(command, number) {
			t.Errorf("%s\nprints %s", command, number)
		}
	}
	for _, number := range lengths.FindAllString(text, -1) {
		digits, _, _ := strings.Cut(strings.TrimLeft(number, " :,;(=x+"), " ")
		if figures(strings.TrimRight(digits, "0")) > 4 {
			t.Errorf("%s\nprints %s", command, number)
		}
	}
	for _, one := range ones.FindAllString(text, -1) {
		t.Errorf("%s\nprints %q", command, one)
	}
	for _, m := range spans.FindAllStringSubmatch(text, -1) {
		if _, err := strconv.ParseFloat(strings.Fields(m[1])[0], 64); err == nil && m[1] == m[2] {
			t.Errorf("%s\nprints %q", command, m[0])
		}
	}
}
