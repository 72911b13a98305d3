package draftpage

import (
	"errors"
	"io"
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/plan"
	"millside/plan/draft"
	"millside/plan/entry"
	"millside/plan/measure"
	"millside/tui/internal/hand"
	"millside/tui/keys"
	"millside/tui/look"
)

// folders are what the tests list, by the folder as it is typed.
var folders = map[string][]Entry{
	"": {{"notes.txt", false}, {"scarves", true}, {"towel.wif", false}, {"towels", true}, {"Twill.WIF", false},
		{".kept.wif", false}},
	"towels/": {{"check.wif", false}},
}

// bench is the page with a folder, and what it gave to whoever shows it.
type bench struct {
	t *testing.T
	Model
	gave []tea.Msg
}

func newBench(t *testing.T, p termenv.Profile) *bench {
	t.Helper()
	m, cmd := New(Deps{Styles: look.NewStyles(io.Discard, p), Keys: keys.Default(),
		Spec: entry.NewSpec(measure.Imperial),
		List: func(folder string) ([]Entry, error) {
			if list, ok := folders[folder]; ok {
				return list, nil
			}
			return nil, errors.New("no such folder")
		},
		Read: func(path string) (*draft.Draft, error) {
			if path != "towel.wif" {
				return nil, errors.New(path + ": no such file")
			}
			data, err := os.ReadFile("testdata/towel.wif")
			if err != nil {
				t.Fatal(err)
			}
			return draft.Read(data)
		}})
	b := &bench{t: t, Model: m}
	b.tell(hand.Collect(cmd)...)
	return b
}

// tell gives the page messages, and what its commands bring.
func (b *bench) tell(msgs ...tea.Msg) {
	for _, msg := range msgs {
		switch msg.(type) {
		case BackMsg, MadeMsg:
			b.gave = append(b.gave, msg)
			continue
		}
		next, cmd := b.Update(msg)
		b.Model = next
		b.tell(hand.Collect(cmd)...)
	}
}

// press presses keys by their names.
func (b *bench) press(names ...string) *bench {
	for _, name := range names {
		b.tell(hand.Key(name))
	}
	return b
}

func (b *bench) letters(text string) *bench {
	for _, k := range hand.Letters(text) {
		b.tell(k)
	}
	return b
}

func TestChoosing(t *testing.T) {
	for name, c := range map[string]struct {
		do    func(b *bench)
		path  string
		shows string // with one space between words
	}{
		"drafts before folders, no other and no hidden files": {func(*bench) {}, "",
			"▸ towel.wif Twill.WIF scarves/ towels/ enter"},
		"hidden ones once a dot is typed": {func(b *bench) { b.letters(".") }, ".", "▸ .kept.wif enter"},
		"what all have in common": {func(b *bench) { b.letters("to").press("tab") }, "towel",
			"▸ towel.wif towels/ enter"},
		"the chosen one": {func(b *bench) { b.letters("towel").press("down", "tab") }, "towels/",
			"▸ check.wif enter"},
		"one alone": {func(b *bench) { b.letters("tw").press("tab") }, "Twill.WIF", "▸ Twill.WIF enter"},
		"into a folder": {func(b *bench) { b.press("down", "down", "down", "enter") }, "towels/",
			"▸ check.wif enter"},
		"and out of it":      {func(b *bench) { b.letters("towels/").press("backspace") }, "towels", "▸ towels/ enter"},
		"no folder":          {func(b *bench) { b.letters("x/") }, "x/", "no such folder"},
		"no file":            {func(b *bench) { b.letters("x.wif").press("enter") }, "x.wif", "! x.wif: no such file"},
		"a name of no draft": {func(b *bench) { b.letters("notes.txt") }, "notes.txt", "enter opens it all the same"},
		"a file of another name": {func(b *bench) { b.letters("notes.txt").press("enter") }, "notes.txt",
			"! notes.txt: no such file"},
		"a key that is a letter": {func(b *bench) { b.letters("kjqo") }, "kjqo",
			"no draft and no folder here begins so"},
		"pasted": {func(b *bench) {
			b.tell(tea.KeyMsg{Type: tea.KeyRunes, Paste: true, Runes: []rune("towels/\n")})
		}, "towels/ ", "draft file: towels/"},
	} {
		t.Run(name, func(t *testing.T) {
			b := newBench(t, termenv.Ascii)
			c.do(b)
			if got := b.path.Value(); got != c.path {
				t.Errorf("%q stands in the field, want %q", got, c.path)
			}
			if v := hand.Flat(b.View(80, 24)); !strings.Contains(v, c.shows) {
				t.Errorf("want %q in %q", c.shows, v)
			}
			if b.press("esc"); len(b.gave) != 1 || b.gave[0] != (BackMsg{}) {
				t.Errorf("esc gives %v", b.gave)
			}
		})
	}
}

// opened is the page with the draft of a towel read: it has 24 threads, of which the last four go through no shaft.
func opened(b *bench) *bench { return b.press("enter") }

// The page goes on only when it is said on which side thread 1 is and what becomes of threads without a shaft.
func TestAsksFirst(t *testing.T) {
	b := opened(newBench(t, termenv.Ascii)).press("ctrl+s")
	if v := hand.Flat(b.View(80, 24)); !strings.Contains(v, "! thread 1 is on: say which first") {
		t.Errorf("the side: %s", v)
	}
	b.press("right", "ctrl+s")
	if v := hand.Flat(b.View(80, 24)); !strings.Contains(v, "! not threaded: say which first") {
		t.Errorf("threads: %s", v)
	}
	if b.press("left", "ctrl+s"); len(b.gave) != 1 {
		t.Fatalf("gave %v", b.gave)
	}
	if w := b.gave[0].(MadeMsg).Warp; w.Ends != 20 {
		t.Errorf("%d ends with four left out", w.Ends)
	}
}

// What is said goes into the warp, whose title names it.
func TestSaid(t *testing.T) {
	b := opened(newBench(t, termenv.Ascii)).press("right", "right", "tab", "right", "tab").letters("navy").
		press("enter").letters("cream").press("down").letters("brick red").press("tab").letters("1-20").press("tab").
		letters("3").press("tab").letters("2").press("ctrl+s")
	if len(b.gave) != 1 {
		t.Fatal(b.View(80, 24))
	}
	spec := b.gave[0].(MadeMsg).Warp.Into(plan.DefaultSpec(), false)
	if spec.Name != "Kitchen towel with a border" || spec.Ends != 64 {
		t.Errorf("%q of %d ends", spec.Name, spec.Ends)
	}
	for _, want := range []string{"navy", "cream", "2 brick red", "navy is #142878"} {
		if !strings.Contains(spec.Stripes, want) {
			t.Errorf("no %q in %s", want, spec.Stripes)
		}
	}
}

func TestSaidWrong(t *testing.T) {
	for name, c := range map[string]struct {
		tabs        int
		text, shows string
	}{
		"a name":             {2, "a\"b", "! give"},
		"names alike":        {3, "colour-1x", "colour-1"},
		"a range":            {5, "20-1", "! give the first and the last thread, such as 1-96"},
		"a range too far":    {5, "1-25", "! give two of 1 to 24, the lower one first"},
		"none":               {6, "0", "! give a whole number from 1 to"},
		"more than there is": {6, "90000", "! give 1 to"},
	} {
		t.Run(name, func(t *testing.T) {
			b := opened(newBench(t, termenv.Ascii))
			for range c.tabs {
				b.press("tab")
			}
			b.letters(c.text)
			if v := hand.Flat(b.View(120, 40)); !strings.Contains(v, c.shows) {
				t.Errorf("want %q in %s", c.shows, v)
			}
			if b.press("ctrl+s"); len(b.gave) > 0 {
				t.Error("a warp is made all the same")
			}
		})
	}
}

// The draft is laid to the width of a cloth as the command line lays it, in the same words, and the form goes on with
// that width. Its 24 threads stand in lines of their own for their ends; the width takes 114.
func TestFitsTheWidth(t *testing.T) {
	down := func(b *bench, n int) *bench {
		for range n {
			b.press("tab")
		}
		return b
	}
	for name, c := range map[string]struct {
		do    func(b *bench)
		ends  int // 0 where no warp is made
		shows []string
	}{
		"a number of ends": {func(b *bench) { down(b, 8).letters("60") }, 60,
			[]string{"24 threads 2 times and 12 of them once more, on the right: the other 12 of the last time are " +
				"left out", "laid repeated"}},
		"a width": {func(b *bench) { down(down(b, 9).letters("8 in"), 1).letters("12 an inch") }, 114,
			[]string{"wanted: 114 ends: a finished width of 8 in at 12 an inch; assumed: shrinkage in width 8 %, " +
				"draw-in 8 %",
				"24 threads 4 times and 18 of them once more"}},
		"whole repeats": {func(b *bench) {
			down(down(down(b, 9).letters("8 in"), 1).letters("12 an inch"), 4).press("right")
		}, 96, []string{"laid ◀ whole repeats ▶", "96 ends, 18 fewer than the 114 that are wanted"}},
		"and selvedges": {func(b *bench) {
			down(down(down(down(b, 7).letters("rest"), 2).letters("8 in"), 1).letters("12 an inch"), 4).press("right")
		}, 114, []string{"9 ends added at each side"}},
		"no room": {func(b *bench) { down(down(b, 7).letters("30"), 1).letters("40") }, 0,
			[]string{"! give 61 to 100000, the added ones of both sides among them"}},
		"no sett": {func(b *bench) { down(b, 9).letters("8 in") }, 0, []string{"! give a count and a width"}},
		"both": {func(b *bench) { down(down(b, 8).letters("40"), 1).letters("8 in") }, 0,
			[]string{"! give no ends beside"}},
	} {
		t.Run(name, func(t *testing.T) {
			b := opened(newBench(t, termenv.Ascii)).press("right", "tab", "right", "shift+tab")
			c.do(b)
			v := hand.Flat(b.View(200, 60))
			for _, want := range c.shows {
				if !strings.Contains(v, want) {
					t.Errorf("want %q in %s", want, v)
				}
			}
			b.press("ctrl+s")
			switch {
			case c.ends == 0 && len(b.gave) > 0:
				t.Error("a warp is made all the same")
			case c.ends > 0 && len(b.gave) == 0:
				t.Error("no warp is made")
			case c.ends > 0:
				made := b.gave[0].(MadeMsg)
				if spec := made.Warp.Into(made.Spec, false); spec.Ends != c.ends ||
					spec.Cloth.Used != (name != "a number of ends") {
					t.Errorf("%d ends, cloth %v", spec.Ends, spec.Cloth.Used)
				}
			}
		})
	}
}

// Esc goes back to the files, and then away.
func TestBack(t *testing.T) {
	b := opened(newBench(t, termenv.Ascii)).press("esc")
	if v := hand.Flat(b.View(80, 24)); !strings.Contains(v, "draft file: towel.wif") {
		t.Error(v)
	}
	if b.press("esc"); len(b.gave) != 1 {
		t.Errorf("gave %v", b.gave)
	}
}

// goldens are the pages as golden files show them.
func goldens() []hand.Page {
	page := func(name string, yarns bool, do func(b *bench)) hand.Page {
		return hand.Page{Name: name, Yarns: yarns, Make: func(t *testing.T, p termenv.Profile) func(w, h int) string {
			b := newBench(t, p)
			do(b)
			return b.View
		}}
	}
	return []hand.Page{
		page("files", false, func(*bench) {}),
		page("file-wrong", false, func(b *bench) { b.letters("x.wif").press("enter") }),
		page("draft", true, func(b *bench) { opened(b) }),
		page("draft-named", true, func(b *bench) {
			opened(b).press("right", "tab", "right", "right", "tab").letters("navy").press("tab").letters("cream")
		}),
	}
}

func TestGolden(t *testing.T) { hand.Golden(t, goldens()) }

func TestGoldenYarns(t *testing.T) { hand.GoldenYarns(t, goldens()) }

func TestColourRepeatsThePlainPage(t *testing.T) { hand.ColourRepeats(t, goldens()) }

func TestDecimalComma(t *testing.T) { hand.DecimalComma(t, goldens()) }

func TestPagesFitEverySize(t *testing.T) {
	hand.FitEverySize(t, goldens(), hand.Size{W: 23, H: 9}, hand.Size{W: look.MinWidth, H: look.MinHeight})
}
