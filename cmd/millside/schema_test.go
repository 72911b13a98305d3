package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"millside/counter/journal"
	"millside/plan"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// compiled is the schema of a format, closed: a field that it doesn't name is refused, so that no field is
// printed that isn't published.
func compiled(t *testing.T, name string) *jsonschema.Schema {
	t.Helper()
	for _, f := range formats() {
		if f.Name != name {
			continue
		}
		data, err := json.Marshal(f.Schema())
		if err != nil {
			t.Fatal(err)
		}
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		closeObjects(doc)
		c := jsonschema.NewCompiler()
		if err := c.AddResource("urn:test", doc); err != nil {
			t.Fatal(err)
		}
		return c.MustCompile("urn:test")
	}
	t.Fatalf("there is no schema of %q", name)
	return nil
}

func closeObjects(v any) {
	switch v := v.(type) {
	case map[string]any:
		delete(v, "$id")
		if v["properties"] != nil {
			v["additionalProperties"] = false
		}
		for _, inner := range v {
			closeObjects(inner)
		}
	case []any:
		for _, inner := range v {
			closeObjects(inner)
		}
	}
}

// recordOf makes a record of so many ends in chains of at most 50.
func recordOf(t *testing.T, dir, name string, ends int) *journal.Record {
	t.Helper()
	s := plan.DefaultSpec()
	s.Name, s.Ends, s.ChainEnds = name, ends, 50
	p, err := plan.New(s)
	if err != nil {
		t.Fatal(err)
	}
	record, err := journal.Store{Dir: dir, FS: journal.OS()}.Create(p)
	if err != nil {
		t.Fatal(err)
	}
	if err := record.Close(); err != nil {
		t.Fatal(err)
	}
	return record
}

// Whatever is printed for a program is as its published schema says, and holds no field beside.
func TestJSONIsAsPublished(t *testing.T) {
	alone(t)
	dir := t.TempDir()
	recordOf(t, dir, "pile", 45)
	record := recordOf(t, dir, "tea towels", 90)
	if err := writeEvents(record.Path(), []string{"laid*2", "seen=mirrored", "laid", "note=a look", "broken=3",
		"recount=2:counted", "laid"}); err != nil {
		t.Fatal(err)
	}
	draft := filepath.Join(dir, "plaid.wif")
	if err := os.WriteFile(draft, []byte("[WARP]\nThreads=8\nSpacing=0.05\nUnits=Inches\n[WARP "+
		"COLORS]\n1=1\n2=2\n3=1\n4=2\n5=1\n6=1\n7=2\n8=2\n[COLOR TABLE]\n1=255,0,0\n2=0,0,255\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	const stripes = "8 white, 3 times (4 red, 8 white) where red is #b03a2e"
	loom := []string{"--sett", "20 an inch", "--raddle", "1/2 in", "--reed", "10 dents an inch", "--yarn", "cotton 8/2",
		"--cones", "1 lb"}
	reeds := filepath.Join(dir, "reeds.txt")
	if err := os.WriteFile(reeds, []byte("reed ten: 10 dents an inch\nreed old: 12 dents an inch, width 30 in\n"),
		0o600); err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, args := range [][]string{
		{"plan", "--ends", "396", "--json"}, {"plan", "--stripes", stripes, "--json"},
		{"plan", "--draft", draft, "--thread-1", "left", "--json"},
		{"plan", "--stripes", stripes, "--way", "chain-each-colour", "--json"},
		append([]string{"plan", "--ends", "396", "--sheet", "--format", "json"}, loom...),
		append([]string{"plan", "--stripes", stripes, "--sheet", "--format", "json", "--passes"}, loom...),
		{"plan", "--ends", "60", "--board", "36 in x 10", "--sheet", "--format", "json"},
		{"plan", "--ends", "614", "--chain-ends", "205", "--wall", "--format", "json"},
		{"plan", "--stripes", stripes, "--wall", "--format", "json", "--date", "2026-11-25"},
		{"plan", "--stripes", stripes, "--way", "chain-each-colour", "--wall", "--format", "json"},
		append([]string{"plan", "--ends", "396", "--json", "--at-hand", reeds}, loom...),
		append([]string{"plan", "--ends", "396", "--sheet", "--format", "json", "--at-hand", reeds}, loom...),
		append([]string{"plan", "--ends", "120", "--name", "ground", "--save", "--json"}, loom...),
		append([]string{"plan", "--ends", "120", "--name", "second", "--save", "--json"}, loom...),
		{"together", "ground", "second", "--format", "json"},
		{"sett", "cotton 8/2", "--json", "--at-hand", reeds},
		{"sett", "cotton 8/2", "--face", "weft-faced", "--weft", "25 tex", "--json"},
		append([]string{"plan", "--ends", "396", "--beam-section", "2 in", "--face", "warp-faced", "--json"}, loom...),
		append([]string{"plan", "--ends", "396", "--beam-section", "2 in", "--face", "warp-faced", "--sheet",
			"--format", "json"}, loom...),
		{"list", "--json"}, {"show", "tea towels", "--json", "--events"}, {"sheet", "tea towels", "--format", "json"},
		{"sett", "cotton 8/2", "--json"}, {"draft", draft, "--json"},
		{"start", "--ends", "40", "--yarn", "cotton 8/2", "--on-hand", "2 of 250 g", "--json"},
		{"together", "tea towels", "pile", "--sett", "40 an inch", "--reed", "10 dents an inch", "--raddle", "1 in",
			"--format", "json"},
		{"at-hand", "--json", "--at-hand", filepath.Join(dir, "none.txt")},
	} {
		code, out, errOut := runIn(dir, args...)
		if code != 0 {
			t.Errorf("%q: exit status %d: %s", args, code, errOut)
			continue
		}
		var head struct{ Format string }
		if err := json.Unmarshal([]byte(out), &head); err != nil {
			t.Errorf("%q: %v", args, err)
			continue
		}
		seen[head.Format] = true
		doc, err := jsonschema.UnmarshalJSON(strings.NewReader(out))
		if err == nil {
			err = compiled(t, head.Format).Validate(doc)
		}
		if err != nil {
			t.Errorf("%q: %v", args, err)
		}
	}
	for _, f := range formats() {
		if !seen[f.Name] {
			t.Errorf("nothing of the format %s was looked at", f.Name)
		}
	}
}
