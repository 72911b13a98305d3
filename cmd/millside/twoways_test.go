package main

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"millside/plan"
	"millside/plan/entry"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/tui/form"
	"millside/tui/keys"
	"millside/tui/look"
)

// said is what a weaver says of one field, as text, or as the word to choose.
type said struct {
	field *field.Field
	text  string
}

// fiveProjects are planned by flags and on the form. The draft's project begins with the draft, and says the rest.
var fiveProjects = []struct {
	name  string
	draft string
	says  []said
}{
	{name: "towels", says: []said{{field.Name, "towels"}, {field.FromCloth, "the cloth"}, {field.SettOf, "20 an inch"},
		{field.FinishedWidth, "20 in"}, {field.FinishedLength, "28 in"}, {field.Pieces, "4"}, {field.Fibre, "cotton"},
		{field.Hem, "1 in"}, {field.YarnOf, "8/2 cotton"}, {field.Reed, "10 dents an inch"}}},
	{name: "blanket in three chains", says: []said{{field.Name, "blanket"}, {field.FromCloth, "the cloth"},
		{field.SettOf, "12 an inch"}, {field.FinishedWidth, "40 in"}, {field.FinishedLength, "60 in"},
		{field.Fibre, "wool"}, {field.ChainEnds, "250"}, {field.TakeUp, "0 %"}, {field.Fringe, "5 in"}}},
	{name: "silk scarf in metric", says: []said{{field.Name, "scarf"}, {field.Units, "metric"},
		{field.FromCloth, "the cloth"}, {field.SettOf, "120 in 10 cm"}, {field.FinishedWidth, "30 cm"},
		{field.FinishedLength, "1.8 m"}, {field.Fibre, "silk"}, {field.Dressing, "reed first"},
		{field.Guard, "1.5s"}, {field.MinutesHalt, "0.7"}}},
	{name: "striped blanket in six colours", says: []said{{field.Name, "stripes"}, {field.Length, "6 yd"},
		{field.StripesOf, "4 times (4 red, 2 blue, 4 green, 2 gold, 4 grey, 2 white)"}, {field.Positions, "18"},
		{field.PackagesOf, "red 4, gold 2"}, {field.MostHalts, "40"}, {field.FinishAtLease, "yes"},
		{field.ReturnOrder, "mirrored"}}},
	{name: "stripes repeated to the width of a cloth", says: []said{{field.Name, "runner"},
		{field.FromCloth, "the cloth"}, {field.SettOf, "12 an inch"}, {field.FinishedWidth, "6 in"},
		{field.FinishedLength, "30 in"}, {field.StripesOf, "8 white, 4 red"}, {field.StripesLaid, "repeated"}}},
	{name: "stripes cut to a number of ends", says: []said{{field.StripesOf, "30 times (2 white, 2 red)"},
		{field.StripesLaid, "cut"}, {field.Ends, "50"}}},
	{name: "a draft", draft: "[WARP]\nThreads=8\nColor=1\n[COLOR TABLE]\n1=255,0,0\n2=0,0,255\n[WARP COLORS]\n" +
		"1=1\n2=1\n3=1\n4=1\n5=2\n6=2\n7=2\n8=2\n[WEAVING]\nShafts=4\n[THREADING]\n1=1\n2=2\n" +
		"3=3\n4=4\n5=1\n6=2\n7=3\n8=4\n[TEXT]\nTitle=Shed towel\n",
		says: []said{{field.Length, "4 yd"}, {field.Dyed, "yes"}, {field.TieEvery, "0"}}},
}

// byFlags is the spec that the command line makes of what is said.
func byFlags(t *testing.T, draft string, says []said) plan.Spec {
	t.Helper()
	dir := t.TempDir()
	args := []string{"plan", "--json"}
	if draft != "" {
		path := filepath.Join(dir, "draft.wif")
		if err := os.WriteFile(path, []byte(draft), 0o600); err != nil {
			t.Fatal(err)
		}
		args = append(args, "--draft", path, "--thread-1", "left", "--draft-times", "6")
	}
	for _, s := range says {
		switch {
		case s.field.Value != field.YesNo:
			args = append(args, "--"+s.field.Flag, s.text)
		case s.text == s.field.Words[1]:
			args = append(args, "--"+s.field.Flag)
		}
	}
	code, out, errOut := runIn(dir, args...)
	if code != exitOK {
		t.Fatalf("%q: %d\n%s", args, code, errOut)
	}
	var printed struct {
		Spec plan.Spec `json:"spec"`
	}
	if err := json.Unmarshal([]byte(out), &printed); err != nil {
		t.Fatal(err)
	}
	return printed.Spec
}

// atForm is a form that is filled in by keys.
type atForm struct {
	t     *testing.T
	form  form.Model
	asked tea.Cmd
	begun *plan.Spec
}

func openForm(t *testing.T, spec plan.Spec) *atForm {
	t.Helper()
	f := &atForm{t: t}
	var cmd tea.Cmd
	f.form, cmd = form.New(form.Deps{Styles: look.NewUncoloured(io.Discard), Keys: keys.Default()}, spec).Init()
	f.follow(cmd)
	return f
}

// follow carries out a command and hands the form what comes of it, as the program would.
func (f *atForm) follow(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.BatchMsg:
		for _, one := range msg {
			f.follow(one)
		}
	case form.BeginMsg:
		f.begun = &msg.Spec
	default:
		next, more := f.form.Update(msg)
		f.form = next
		f.follow(more)
	}
}

// press presses a key faster than what the keys before it asked for is worked out: only what was asked for last is
// carried out, by follow.
func (f *atForm) press(msg tea.KeyMsg) {
	next, cmd := f.form.Update(msg)
	f.form = next
	if cmd != nil {
		f.asked = cmd
	}
}

// at says whether the form stands at a line, and what is in it.
func (f *atForm) at(label string) (string, bool) {
	for line := range strings.SplitSeq(ansi.Strip(f.form.View(300, 100)), "\n") {
		if rest, ok := strings.CutPrefix(line, "  ▸ "+look.Pad(label, 17)+" "); ok {
			return rest, true
		}
		// The text of the stripes stands in a box below its label.
		if rest, ok := strings.CutPrefix(strings.TrimSpace(line), "▸ "+label); ok && (rest == "" || rest[0] == ',') {
			return "", true
		}
	}
	return "", false
}

// fill goes to a field with the key for the next one, and fills it in.
func (f *atForm) fill(s said) {
	f.t.Helper()
	for range 200 {
		if _, ok := f.at(s.field.Label); ok {
			break
		}
		f.press(tea.KeyMsg{Type: tea.KeyTab})
	}
	text, ok := f.at(s.field.Label)
	if !ok {
		f.t.Fatalf("the form has no line %q", s.field.Label)
	}
	if len(s.field.Words) > 0 {
		for range s.field.Words {
			if strings.Contains(text, "◀ "+s.text+" ▶") {
				return
			}
			f.press(tea.KeyMsg{Type: tea.KeyRight})
			text, _ = f.at(s.field.Label)
		}
		f.t.Fatalf("%s can't be %q: %s", s.field.Label, s.text, text)
	}
	f.press(tea.KeyMsg{Type: tea.KeyCtrlU})
	for _, r := range s.text {
		f.press(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
}

// byForm is the spec that the form asks a record for.
func byForm(t *testing.T, begin plan.Spec, says []said) plan.Spec {
	t.Helper()
	f := openForm(t, begin)
	for _, s := range says {
		f.fill(s)
	}
	f.follow(f.asked)
	f.press(tea.KeyMsg{Type: tea.KeyCtrlS})
	f.follow(f.asked)
	if f.begun == nil {
		t.Fatalf("the form doesn't begin:\n%s", ansi.Strip(f.form.View(120, 60)))
	}
	return *f.begun
}

// Five projects come out the same, to the last byte of the plan, whether they are told in flags or typed into the
// form: both assume the same where nothing is said.
func TestFormAndFlagsPlanTheSame(t *testing.T) {
	long(t)
	for _, project := range fiveProjects {
		t.Run(project.name, func(t *testing.T) {
			want := byFlags(t, project.draft, project.says)
			begin := entry.NewSpec(measure.Imperial)
			if project.draft != "" { // the form opens on what the draft gives
				begin = byFlags(t, project.draft, nil)
			}
			got := byForm(t, begin, project.says)
			if a, b := asJSON(t, want), asJSON(t, got); !bytes.Equal(a, b) {
				t.Errorf("by flags:\n%s\non the form:\n%s", a, b)
			}
		})
	}
}

// A cloth told without allowances takes 473 ends and 4.5 yd and more, not the 400 ends and 3.11 yd that nothing lost
// would give; and 0 that is said is 0.
func TestAllowancesOnBoth(t *testing.T) {
	says := fiveProjects[0].says[:6]
	for name, s := range map[string]plan.Spec{"flags": byFlags(t, "", says),
		"form": byForm(t, entry.NewSpec(measure.Imperial), says)} {
		if s.Ends != 473 || s.Length.In(measure.Yards, 2) != "4.51 yd" {
			t.Errorf("by %s %d ends of %s", name, s.Ends, s.Length.In(measure.Yards, 2))
		}
	}
	none := says
	for _, f := range []*field.Field{field.ShrinkageWidth, field.DrawIn, field.ShrinkageLength, field.TakeUp} {
		none = append(none[:len(none):len(none)], said{f, "0 %"})
	}
	none = append(none, said{field.LoomWaste, "0 in"})
	if s := byFlags(t, "", none); s.Ends != 400 || s.Length.In(measure.Yards, 2) != "3.11 yd" {
		t.Errorf("without allowances %d ends of %s", s.Ends, s.Length.In(measure.Yards, 2))
	}
}

// Every flag under a heading of the plan is one of the table, and the table's flags are all there.
func TestFlagsAreOfTheTable(t *testing.T) {
	flags := newApp().planCmd().Flags()
	for f := range field.All() {
		if f.Flag != "" {
			flag := flags.Lookup(f.Flag)
			if flag == nil || flag.Usage != f.Usage() {
				t.Errorf("--%s is not the table's", f.Flag)
			}
		}
	}
}

func asJSON(t *testing.T, s plan.Spec) []byte {
	t.Helper()
	data, err := json.MarshalIndent(s, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	return data
}
