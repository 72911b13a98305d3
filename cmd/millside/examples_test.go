package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"millside/plan/stripe/schedule"
)

// example is an invented order, or a draft in testdata/examples, with its ends as counted by hand.
type example struct {
	name      string
	positions int
	order     string // the stripes; "" where a draft gives them
	draft     string
	flags     []string
	ends      []string // each colour's, in the order in which the colours first appear
}

var examples = []example{
	{name: "check", positions: 8, order: "4 times (4 black, 4 white), 4 black",
		ends: []string{"20 black", "16 white"}},
	{name: "mirrored", positions: 5, order: "mirror (3 red, 1 white, 2 blue, 7 white)",
		ends: []string{"6 red", "16 white", "4 blue"}},
	{name: "three by two", positions: 6, order: "3 times (2 red, 2 white, 2 blue)",
		ends: []string{"6 red", "6 white", "6 blue"}},
	{name: "pin in the middle", positions: 8, order: "8 navy, 21 white, 3 red, 21 white, 8 navy",
		ends: []string{"16 navy", "42 white", "3 red"}},
	{name: "end by end", positions: 4, order: "red, white, blue, red, green, white, blue, green, red, white",
		ends: []string{"3 red", "3 white", "2 blue", "2 green"}},
	{name: "red ground", positions: 6, order: "4 red, 3 times (2 white, 1 blue, 5 red), 4 red",
		ends: []string{"23 red", "6 white", "3 blue"}},
	{name: "towel borders", positions: 12,
		order: "24 white, 2 times (4 blue, 4 white), 60 white, 2 times (4 white, 4 blue), 24 white",
		ends:  []string{"124 white", "16 blue"}},
	{name: "blanket of six", positions: 18, order: "4 times (4 red, 2 blue, 4 green, 2 gold, 4 grey, 2 white)",
		ends: []string{"16 red", "8 blue", "16 green", "8 gold", "16 grey", "8 white"}},
	{name: "scarf", positions: 10, order: "point (12 indigo, 2 cream, 6 indigo, 4 rust, 2 cream, 9 indigo)",
		flags: []string{"--units", "metric", "--length", "2.4 m"}, ends: []string{"45 indigo", "8 cream", "8 rust"}},
	{name: "log cabin", positions: 12,
		order: "3 times (5 times (slate, sand), slate, 5 times (sand, slate), sand)",
		ends:  []string{"33 slate", "33 sand"}},
	{name: "draft of a towel", positions: 10, draft: "towel.wif",
		flags: []string{"--thread-1", "left", "--draft-times", "3", "--name-colour", "1=cream", "--name-colour",
			"2=navy", "--name-colour", "3=brick"},
		ends: []string{"36 cream", "12 navy", "24 brick"}},
	{name: "draft of a runner, crammed", positions: 12, draft: "runner.wif",
		flags: []string{"--thread-1", "right", "--ends", "88", "--draft-edge", "4", "--name-colour", "1=sand",
			"--name-colour", "2=rust"},
		ends: []string{"64 sand", "24 rust"}},
	{name: "draft of a throw", positions: 9, draft: "throw.wif",
		flags: []string{"--not-threaded", "keep", "--name-colour", "1=moss", "--name-colour", "2=gold", "--name-colour",
			"3=brick", "--name-colour", "4=cream", "--name-colour", "5=navy"},
		ends: []string{"18 moss", "8 gold", "16 brick", "4 cream", "4 navy"}},
	{name: "draft of a curtain, plain", positions: 12, draft: "curtain.wif",
		flags: []string{"--ends", "150", "--name-colour", "1=linen"}, ends: []string{"150 linen"}},
}

// examplesTable is where the table of them stands, between two lines of DEVELOPERS.md.
const (
	examplesFile = "../../DEVELOPERS.md"
	tableHead    = "| example | ends | colours | positions | passes | minutes | gap |\n" +
		"| --- | --- | --- | --- | --- | --- | --- |\n"
)

// Ten orders and four drafts are planned as a weaver does it. What is printed is held against the order as counted
// by hand: the ends of each colour, the passes, the number of every end; and the table of them in DEVELOPERS.md.
// UPDATE_EXAMPLES=1 writes that anew. The short tests plan three of them, and they and those
// under the race detector don't plan them in each way.
func TestExamples(t *testing.T) {
	rows := make([]string, len(examples))
	t.Run("plan", func(t *testing.T) {
		for i, e := range examples {
			if testing.Short() && i != 0 && i != 4 && i != len(examples)-1 {
				continue
			}
			t.Run(e.name, func(t *testing.T) {
				t.Parallel()
				rows[i] = e.planned(t)
			})
		}
	})
	text, err := os.ReadFile(examplesFile)
	if err != nil {
		t.Fatal(err)
	}
	before, after, ok := strings.Cut(string(text), tableHead)
	if !ok {
		t.Fatal("DEVELOPERS.md has no table of examples")
	}
	if os.Getenv("UPDATE_EXAMPLES") != "" && !testing.Short() {
		_, after, _ = strings.Cut(after, "\n\n")
		all := before + tableHead + strings.Join(rows, "") + "\n" + after
		if err := os.WriteFile(examplesFile, []byte(all), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	for _, row := range rows {
		if !strings.Contains(after, row) {
			t.Errorf("the table in DEVELOPERS.md has no row %s(UPDATE_EXAMPLES=1 writes it)", row)
		}
	}
}

// Only what is compared is read.
type examplePlan struct {
	Ends   int `json:"ends_wound"`
	Passes int `json:"passes"`
	Spec   struct {
		Yarn struct {
			Colour string `json:"colour"`
		} `json:"yarn"`
	} `json:"spec"`
	Time struct {
		Text string `json:"text"`
	} `json:"time"`
	Chains []struct {
		Ends   int           `json:"ends"`
		First  int           `json:"first_end"`
		Passes []examplePass `json:"passes"`
	} `json:"chains"`
	Stripes *struct {
		Notation string `json:"notation"`
		Colours  []struct {
			Name string `json:"name"`
			Ends int    `json:"ends"`
		} `json:"colours"`
		Cost struct {
			Passes int `json:"passes"`
		} `json:"cost"`
		Proof struct {
			Bound nanos `json:"bound"`
			Least bool  `json:"least"`
			Gap   nanos `json:"gap"`
		} `json:"proof"`
		Compared []struct {
			Choose   string `json:"choose"`
			Possible bool   `json:"possible"`
		} `json:"compared"`
	} `json:"stripes"`
}

type nanos struct {
	Nanoseconds int64 `json:"nanoseconds"`
}

type examplePass struct {
	First     int      `json:"first_end"`
	Last      int      `json:"last_end"`
	Positions []int    `json:"positions"`
	Mirrored  bool     `json:"mirrored"`
	Colours   []string `json:"colours"`
}

var chainEach = schedule.ChainEach.String()

// planned plans the example, checks all that is printed of it, and gives its row of the table.
func (e example) planned(t *testing.T) string {
	dir := t.TempDir()
	p := e.plan(t, dir, "--name", "example", "--save")
	e.checkSums(t, p, e.sequence(t, dir), "searched")
	e.checkSheets(t, dir, p)
	e.wound(t, dir, "example", "searched")
	if p.Stripes == nil {
		return fmt.Sprintf("| %s | %d | %s | %d | %d | %s | |\n", e.name, p.Ends, strings.Join(e.ends, ", "),
			e.positions, p.Passes, p.Time.Text)
	}
	for _, way := range p.Stripes.Compared {
		if way.Possible && !testing.Short() && !raced {
			saved := e.plan(t, dir, "--way", way.Choose, "--name", way.Choose, "--save")
			e.checkSums(t, saved, e.sequence(t, dir), way.Choose)
			e.wound(t, dir, way.Choose, way.Choose)
		}
	}
	gap := "none, proved"
	if !p.Stripes.Proof.Least {
		gap = fmt.Sprintf("%.1f %%", 100*float64(p.Stripes.Proof.Gap.Nanoseconds)/
			float64(max(p.Stripes.Proof.Bound.Nanoseconds, 1)))
	}
	return fmt.Sprintf("| %s | %d | %s | %d | %d | %s | %s |\n", e.name, p.Ends, strings.Join(e.ends, ", "),
		e.positions, p.Passes, p.Time.Text, gap)
}

// run carries out a command and gives what it prints.
func (e example) run(t *testing.T, dir string, args ...string) string {
	t.Helper()
	code, out, errOut := runIn(dir, args...)
	if code != 0 {
		t.Fatalf("%q: exit code %d, %s", args, code, errOut)
	}
	return out
}

// plan prints the example's plan for a program.
func (e example) plan(t *testing.T, dir string, more ...string) (p examplePlan) {
	t.Helper()
	args := append([]string{"plan", "--json", "--positions", strconv.Itoa(e.positions)}, e.flags...)
	if e.draft != "" {
		args = append(args, "--draft", filepath.Join("testdata", "examples", e.draft))
	} else {
		args = append(args, "--stripes", e.order)
	}
	if err := json.Unmarshal([]byte(e.run(t, dir, append(args, more...)...)), &p); err != nil {
		t.Fatal(err)
	}
	return p
}

var endsRow = regexp.MustCompile(`(?m)^ +(\d+) +(\d+) +(\d+)  [C-Z] (.+)$`)

// sequence is the colour of every end, as the text of the whole plan lists them.
func (e example) sequence(t *testing.T, dir string) []string {
	t.Helper()
	_, table, ok := strings.Cut(e.run(t, dir, "sheet", "example"), "COLOUR OF EVERY END\n")
	if !ok {
		return nil
	}
	var list []string
	for _, m := range endsRow.FindAllStringSubmatch(table, -1) {
		from, _ := strconv.Atoi(m[1])
		to, _ := strconv.Atoi(m[2])
		if n, _ := strconv.Atoi(m[3]); from != len(list)+1 || to-from+1 != n {
			t.Errorf("ends %s to %s are %s", m[1], m[2], m[3])
		}
		list = append(list, slices.Repeat([]string{m[4]}, max(to-from+1, 0))...)
	}
	return list
}

// counted counts the ends of each colour, in the order in which the colours first appear.
func counted(sequence []string) []string {
	var names, out []string
	for _, name := range sequence {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, name := range names {
		n := 0
		for _, end := range sequence {
			if end == name {
				n++
			}
		}
		out = append(out, fmt.Sprintf("%d %s", n, name))
	}
	return out
}

// checkSums compares a plan with the order: the ends of each colour, the passes, and each end by its number. A chain
// for each colour counts its ends as they are wound, all of one colour after those of another.
func (e example) checkSums(t *testing.T, p examplePlan, sequence []string, way string) {
	t.Helper()
	if sequence == nil { // a plain warp
		sequence = slices.Repeat([]string{p.Spec.Yarn.Colour}, p.Ends)
	}
	if got := counted(sequence); !slices.Equal(got, e.ends) {
		t.Errorf("%s: counted by hand %q, listed %q", way, e.ends, got)
	}
	if p.Stripes != nil {
		var told []string
		for _, c := range p.Stripes.Colours {
			told = append(told, fmt.Sprintf("%d %s", c.Ends, c.Name))
		}
		if !slices.Equal(told, e.ends) {
			t.Errorf("%s: counted by hand %q, told %q", way, e.ends, told)
		}
		if p.Stripes.Cost.Passes != p.Passes {
			t.Errorf("%s: %d passes cost, %d planned", way, p.Stripes.Cost.Passes, p.Passes)
		}
	}
	if way == chainEach {
		var wound []string
		for _, of := range e.ends {
			n, name, _ := strings.Cut(of, " ")
			many, _ := strconv.Atoi(n)
			wound = append(wound, slices.Repeat([]string{name}, many)...)
		}
		sequence = wound
	}
	at, passes := 0, 0
	for _, chain := range p.Chains {
		for _, pass := range chain.Passes {
			passes++
			colours := slices.Clone(pass.Colours)
			if colours == nil {
				colours = slices.Repeat([]string{p.Spec.Yarn.Colour}, len(pass.Positions))
			}
			if pass.Mirrored {
				slices.Reverse(colours)
			}
			if pass.First != at+1 || pass.Last != at+len(colours) || len(pass.Positions) != len(colours) ||
				!slices.Equal(colours, sequence[at:min(at+len(colours), len(sequence))]) {
				t.Fatalf("%s: pass %d lays ends %d to %d, %q, behind end %d", way, passes, pass.First, pass.Last,
					colours, at)
			}
			at = pass.Last
		}
	}
	if at != len(sequence) || at != p.Ends || passes != p.Passes {
		t.Errorf("%s: %d passes lay %d ends; planned %d and %d", way, passes, at, p.Passes, p.Ends)
	}
}

var (
	colourRow = regexp.MustCompile(`(?m)^[C-Z] (.+?) +(\d+) ends?, \d+ packages?`)
	wallRow   = regexp.MustCompile(`</svg>[C-Z] (.+?): (\d+) ends?,`)
	wallStep  = regexp.MustCompile(`<span class="ends">(\d+) ends?</span>|<span class="box(?: back)?">\d+</span>`)
)

// checkSheets compares the text of the whole plan and the page of the wall sheet with the order: the ends of each
// colour, a box for each pass, and that the passes lay all ends.
func (e example) checkSheets(t *testing.T, dir string, p examplePlan) {
	t.Helper()
	if p.Stripes == nil {
		return
	}
	text := e.run(t, dir, "sheet", "example")
	page := e.run(t, dir, "sheet", "example", "--wall", "--format", "html")
	for sheet, found := range map[string][][]string{
		"whole plan": colourRow.FindAllStringSubmatch(text, -1), "wall sheet": wallRow.FindAllStringSubmatch(page, -1),
	} {
		var rows []string
		for _, m := range found {
			rows = append(rows, m[2]+" "+m[1])
		}
		if !slices.Equal(rows, e.ends) {
			t.Errorf("%s: counted by hand %q, printed %q", sheet, e.ends, rows)
		}
	}
	step, boxes, ends := 0, 0, 0 // what a step carries stands behind its boxes
	for _, m := range wallStep.FindAllStringSubmatch(page, -1) {
		if m[1] == "" {
			step++
			continue
		}
		carried, _ := strconv.Atoi(m[1])
		boxes, ends, step = boxes+step, ends+step*carried, 0
	}
	if boxes != p.Passes || ends != p.Ends {
		t.Errorf("%d boxes to tick lay %d ends; %d and %d are planned", boxes, ends, p.Passes, p.Ends)
	}
}
