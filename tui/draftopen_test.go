package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"millside/tui/internal/hand"
)

// A draft is opened from home, what has to be said of it is asked, and its warp stands in the form and is kept.
func TestDraftOnTheScreen(t *testing.T) {
	folder := t.TempDir()
	text := "[WIF]\nVersion=1.1\n[TEXT]\nTitle=Blue edge\n[WARP]\nThreads=12\nColor=2\n[COLOR PALETTE]\nRange=0,255\n" +
		"[COLOR TABLE]\n1=0,0,200\n2=250,250,250\n[WARP COLORS]\n1=1\n2=1\n"
	path := filepath.Join(folder, "edge.wif")
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	b := newBench(t, termenv.Ascii)
	m := drive(b, b.app(), hand.Key("o"))
	m = drive(b, m, tea.KeyMsg{Type: tea.KeyRunes, Paste: true, Runes: []rune("'" + path + "'")}, hand.Key("enter"))
	if v := m.View(); !strings.Contains(v, "Blue edge") {
		t.Fatalf("not opened:\n%s", v)
	}
	m = drive(b, m, hand.Key("ctrl+s"), hand.Key("right"), hand.Key("tab"), hand.Key("b"), hand.Key("ctrl+s"))
	p, ok := m.(app).screen.(planning)
	if !ok {
		t.Fatalf("no form:\n%s", m.View())
	}
	spec := p.Filled().Spec
	if spec.Name != "Blue edge" || !strings.HasPrefix(spec.Stripes, "10 colour-2, 2 b where colour-2 is") {
		t.Errorf("%q: %s", spec.Name, spec.Stripes)
	}
	if m = drive(b, m, hand.Key("esc")); !strings.Contains(m.View(), "half-filled plans (1)") {
		t.Errorf("not kept:\n%s", m.View())
	}
}

func TestReadDraftRefuses(t *testing.T) {
	b, folder := newBench(t, termenv.Ascii), t.TempDir()
	for path, want := range map[string]string{folder: "is a folder", filepath.Join(folder, "no.wif"): "no such file",
		os.DevNull: "is no plain file"} {
		if _, err := readDraft(b.deps.store.FS, path); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", path, err, want)
		}
	}
}
