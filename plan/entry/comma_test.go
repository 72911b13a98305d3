package entry_test

import (
	"bytes"
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"millside/plan"
	"millside/plan/entry"
	"millside/plan/field"
	"millside/plan/figure"
)

// decimals are values of fields with three decimals, which a comma could part from thousands, and others.
var decimals = map[*field.Field]string{field.YarnOf: "cotton 8,125/2", field.Weft: "Nm 28,5/2",
	field.Cones: "250,125 g, 180,5 g", field.Tube: "30,125 g", field.Board: "36,125 in x 10, 18,5 in",
	field.SettOf: "20,125 an inch", field.Picks: "18,5 an inch", field.Reed: "10,125 dents an inch",
	field.Painted: "1,125 yd indigo, 18,5 in", field.Guard: "1,125s", field.Raddle: "1,125 in",
	field.PegLength: "12,125 cm", field.Circumference: "3,125 m", field.PegStep: "20,125 cm", field.Length: "7,125 yd",
	field.DrawIn: "6,125 %"}

// Where the weaver writes a decimal comma, what a field shows has no point, and is read as the same value; what is kept
// has a point all the same.
func TestFieldsWithACommaAreReadAgain(t *testing.T) {
	figure.WriteComma(true)
	defer figure.WriteComma(false)
	for _, e := range entry.All() {
		text := decimals[e.Field]
		switch {
		case text != "":
		case e.Value == field.Span:
			text = "31,125 cm"
		case e.Value == field.Share:
			text = "7,125 %"
		case e.Value == field.Minutes:
			text = "0,125"
		default:
			continue
		}
		s := plan.DefaultSpec()
		if e.Field == field.ReedWidth {
			take(t, field.Reed, &s)
		}
		if err := e.Take(&s, text); err != nil {
			t.Errorf("%s: %v", e.Name, err)
			continue
		}
		shown, again := e.Show(s), s
		if err := e.Take(&again, shown); err != nil || !reflect.DeepEqual(again, s) {
			t.Errorf("%s shows %q of %q, which is read as %q (%v)", e.Name, shown, text, e.Show(again), err)
		}
		if strings.Contains(shown, ".") || !strings.Contains(shown, ",") {
			t.Errorf("%s shows %q of %q", e.Name, shown, text)
		}
		comma, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		figure.WriteComma(false)
		point, err := json.Marshal(s)
		figure.WriteComma(true)
		if err != nil || !bytes.Equal(comma, point) {
			t.Errorf("%s is kept as %s, and with a point as %s", e.Name, comma, point)
		}
	}
}
