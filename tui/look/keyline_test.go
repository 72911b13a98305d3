package look

import (
	"io"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	"github.com/muesli/termenv"
)

// At every width the keys fit, none is cut, and where some are left out there is a sign.
func TestKeyLines(t *testing.T) {
	s := NewStyles(io.Discard, termenv.Ascii)
	var all []key.Binding
	var texts []string
	for _, k := range []string{"enter open", "/ find", "n new", "w put away", "d delete", "q leave"} {
		name, what, _ := strings.Cut(k, " ")
		all = append(all, key.NewBinding(key.WithKeys(name), key.WithHelp(name, what)))
		texts = append(texts, k)
	}
	for w := 14; w < 100; w++ {
		for rows := 1; rows <= 4; rows++ {
			lines := s.KeyLines(w, rows, all...)
			text := strings.Join(lines, "\n")
			shown := 0
			for _, k := range texts {
				if strings.Contains(text, k) {
					shown++
				}
			}
			for _, l := range lines {
				if Wide(l) > w || len(lines) > rows {
					t.Errorf("%d columns, %d rows:\n%s", w, rows, text)
				}
			}
			if signed := strings.HasSuffix(text, " …"); signed != (shown < len(texts)) {
				t.Errorf("%d columns, %d rows, %d keys shown:\n%s", w, rows, shown, text)
			}
		}
	}
}
