package look

import (
	"io"
	"reflect"
	"testing"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
	"pgregory.net/rapid"
)

// everyStyle lists the styles of a set of looks.
func everyStyle(s Styles) map[string]Style {
	all := map[string]Style{}
	v := reflect.ValueOf(s)
	for i := range v.NumField() {
		if field := v.Type().Field(i); field.IsExported() && field.Type == reflect.TypeFor[Style]() {
			all[field.Name] = v.Field(i).Interface().(Style)
		}
	}
	return all
}

// pieces are parts of lines: plain, drawn, coloured, and whatever else may stand in a name.
var pieces = []string{"a", " ", "10 ends", "─", "█", "▶", "▸", "→", "…", "½", "é", "e\u0301", "▶\ufe0f", "毛", "🧶",
	"\u200d",
	"\t", "\n", "\r", "\x1b[1m", "\x1b[38;5;6m", "\x1b[0m", "\x1b[", "\x1b]0;x\a", "\x1b", "\x7f", "\xff", "✓"}

// A style writes what its lipgloss style writes, byte for byte.
func TestStyleIsThatOfLipgloss(t *testing.T) {
	looks := []Styles{NewStyles(io.Discard, termenv.ANSI), NewStyles(io.Discard, termenv.Ascii),
		NewStyles(io.Discard, termenv.TrueColor), NewUncoloured(io.Discard)}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune("ab é─\t\n毛")), 0, 12, -1).Draw(t, "text")
		for i, s := range looks {
			for name, style := range everyStyle(s) {
				if got, want := style.Render(text), style.Lipgloss().Render(text); got != want {
					t.Fatalf("looks %d, %s: %q, not %q", i, name, got, want)
				}
				faint := style.Lipgloss().Bold(false).Faint(true).Render(text)
				if got := style.behind().Render(text); got != faint {
					t.Fatalf("looks %d, %s left behind: %q, not %q", i, name, got, faint)
				}
			}
		}
	})
	if n := len(everyStyle(looks[0])); n < 14 {
		t.Errorf("only %d styles were looked at", n)
	}
}

// A line is as wide as the terminal library says.
func TestWideAgreesWithTheLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := ""
		for _, p := range rapid.SliceOfN(rapid.SampledFrom(pieces), 0, 9).Draw(t, "pieces") {
			line += p
		}
		if got, want := Wide(line), lipgloss.Width(line); got != want {
			t.Fatalf("%q is %d wide, not %d", line, want, got)
		}
	})
}

const benchLine = "\x1b[1mpass 12\x1b[0m  ━━━━━━━━━━━━━━━━━━━▶  over peg 1, under peg 2 ▐██▌ "

func BenchmarkWide(b *testing.B) {
	b.Run("here", func(b *testing.B) {
		for b.Loop() {
			Wide(benchLine)
		}
	})
	b.Run("library", func(b *testing.B) {
		for b.Loop() {
			lipgloss.Width(benchLine)
		}
	})
}

func BenchmarkRender(b *testing.B) {
	s := NewStyles(io.Discard, termenv.ANSI).Outward
	b.Run("here", func(b *testing.B) {
		for b.Loop() {
			s.Render(benchLine)
		}
	})
	b.Run("library", func(b *testing.B) {
		for b.Loop() {
			s.lip.Render(benchLine)
		}
	})
}
