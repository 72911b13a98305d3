package form

import (
	"reflect"
	"testing"

	"github.com/muesli/termenv"

	"millside/plan"
	"millside/tui/internal/hand"
)

// A form that is filled again is as it was left: what was typed, right or wrong, and the field that it was left at.
func TestRefilled(t *testing.T) {
	d := newBench(t, termenv.Ascii).deps
	m := New(d, plan.DefaultSpec())
	for _, msg := range append(hand.Letters("Blue rug"), hand.Key("tab")) {
		m, _ = m.Update(msg)
	}
	for _, msg := range hand.Letters("39x") {
		m, _ = m.Update(msg)
	}
	again := Refilled(d, m.Filled())
	if !reflect.DeepEqual(again.Filled(), m.Filled()) || again.View(120, 40) != m.View(120, 40) {
		t.Errorf("left as\n%s\nand filled again\n%s", m.View(120, 40), again.View(120, 40))
	}
}
