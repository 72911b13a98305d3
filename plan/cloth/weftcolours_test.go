package cloth

import (
	"strings"
	"testing"

	"millside/plan/internal/measuretest"
	"millside/plan/measure"
)

// Arithmetic: of 600 yd a colour with 2 picks of 3 takes 400 yd, at 3,360 yd/lb (cotton 8/2, S. Ableman 2018)
// 0.1191 lb, rounded up.
func TestWeftByColour(t *testing.T) {
	yarn := measuretest.Yarn(t, measure.Cotton, 8, 2)
	y := WeftYarn{Length: 600 * measure.Yard}
	var err error
	if y.Mass, err = yarn.MassOf(y.Length); err != nil {
		t.Fatal(err)
	}
	rows := y.ByColour([]WeftColour{{"navy", 2}, {"white", 1}}, measure.Imperial)
	if len(rows) != 2 || rows[0].Name != "of it, navy" ||
		!strings.HasPrefix(rows[0].Value.String(), "400 yd, 0.12 lb") ||
		!strings.HasPrefix(rows[1].Value.String(), "200 yd") {
		t.Errorf("%+v", rows)
	}
	if CheckWeftColours([]WeftColour{{"navy", 0}}) == nil || CheckWeftColours([]WeftColour{{"", 1}}) == nil {
		t.Error("what is no colour passes")
	}
}
