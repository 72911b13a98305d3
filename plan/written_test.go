package plan

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"millside/plan/cloth"
	"millside/plan/internal/loomtest"
	"millside/plan/internal/measuretest"
	"millside/plan/loom"
	"millside/plan/measure"
)

// What the weaver decides is kept as JSON and read back to the same, zero values too.
func TestWrittenAndReadBack(t *testing.T) {
	y := measuretest.Yarn(t, measure.Worsted, 28, 2)
	for _, v := range []any{
		&cloth.Width{Finished: 20 * measure.Inch, Shrinkage: 75_000, DrawIn: measure.OnePercent, Fibre: cloth.WoolFibre,
			Sett: measuretest.Sett(t, "40/3 an inch"), Doubled: 4, Floating: 2, Repeat: 24, Balance: 7, Group: 10,
			Units: measure.Metric},
		&cloth.Length{Piece: measure.Metre, Pieces: 3, TakeUp: 8 * measure.OnePercent, TakeUpOf: cloth.TakeUpOfCloth,
			Waste: measure.Yard, Fibre: cloth.SilkFibre},
		&cloth.Weft{Width: measure.Metre, Woven: 3 * measure.Metre, Picks: measuretest.Sett(t, "80 in 10 cm"), Yarn: y},
		&Cone{Position: 3, Colour: "red", Yarn: y, Gross: measure.Pound, Tube: measure.Ounce, FromPass: 2, ToPass: 9},
		&loom.Raddle{Space: measure.Inch / 2, Spaces: 60},
		&Extras{PerPass: measure.Inch, PerTie: measure.Yard},
		&struct {
			Reed loom.Reed
			Side loom.Side
		}{loomtest.Reed(t, "60 Stockport").WithWidth(measure.Metre), loom.RightSide},
		&cloth.Width{}, &cloth.Length{}, &cloth.Weft{}, &Cone{}, &struct{ Reed loom.Reed }{},
	} {
		text, err := json.Marshal(v)
		if err != nil {
			t.Errorf("%+v: %v", v, err)
			continue
		}
		back := reflect.New(reflect.TypeOf(v).Elem()).Interface()
		if err := json.Unmarshal(text, back); err != nil || !reflect.DeepEqual(v, back) {
			t.Errorf("%s is read back as %+v, %v", text, back, err)
		}
	}
}

func TestReadBackRefuses(t *testing.T) {
	for _, bad := range []string{`{"sett":"20"}`, `{"shrinkage":"much"}`, `{"fibre":"nettle"}`, `{"finished":"wide"}`} {
		if err := json.Unmarshal([]byte(bad), new(cloth.Width)); err == nil {
			t.Errorf("%s is no error", bad)
		}
	}
	for _, bad := range []string{`{"yarn":"2/8 cotton"}`, `{"gross":"heavy"}`} {
		if err := json.Unmarshal([]byte(bad), new(Cone)); err == nil {
			t.Errorf("%s is no error", bad)
		}
	}
	if err := json.Unmarshal([]byte(`{"take_up_of":"both"}`), new(cloth.Length)); err == nil {
		t.Error("a share of both is no error")
	}
	var s struct{ Side loom.Side }
	if err := json.Unmarshal([]byte(`{"Side":"top"}`), &s); err == nil || !strings.Contains(err.Error(), "left") {
		t.Errorf("a third side: %v", err)
	}
}
