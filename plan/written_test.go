package plan

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"
)

// What the weaver decides is kept as JSON and read back to the same, zero values too.
func TestWrittenAndReadBack(t *testing.T) {
	y := yarn(t, Worsted, 28, 2)
	for _, v := range []any{
		&ClothWidth{Finished: 20 * Inch, Shrinkage: 75_000, DrawIn: OnePercent, Fibre: WoolFibre, Sett: sett(t, "40/3 an inch"), Doubled: 4, Floating: 2, Repeat: 24, Balance: 7, Group: 10, Units: Metric},
		&ClothLength{Piece: Metre, Pieces: 3, TakeUp: 8 * OnePercent, TakeUpOf: TakeUpOfCloth, Waste: Yard, Fibre: SilkFibre},
		&Weft{Width: Metre, Woven: 3 * Metre, Picks: sett(t, "80 in 10 cm"), Yarn: y},
		&Cone{Position: 3, Colour: "red", Yarn: y, Gross: Pound, Tube: Ounce, FromPass: 2, ToPass: 9},
		&Raddle{Space: Inch / 2, Spaces: 60},
		&Extras{PerPass: Inch, PerChain: Yard},
		&struct {
			Reed Reed
			Side Side
		}{reed(t, "60 Stockport").WithWidth(Metre), RightSide},
		&ClothWidth{}, &ClothLength{}, &Weft{}, &Cone{}, &struct{ Reed Reed }{},
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
		if err := json.Unmarshal([]byte(bad), new(ClothWidth)); err == nil {
			t.Errorf("%s is no error", bad)
		}
	}
	for _, bad := range []string{`{"yarn":"2/8 cotton"}`, `{"gross":"heavy"}`} {
		if err := json.Unmarshal([]byte(bad), new(Cone)); err == nil {
			t.Errorf("%s is no error", bad)
		}
	}
	if err := json.Unmarshal([]byte(`{"take_up_of":"both"}`), new(ClothLength)); err == nil {
		t.Error("a share of both is no error")
	}
	var s struct{ Side Side }
	if err := json.Unmarshal([]byte(`{"Side":"top"}`), &s); err == nil || !strings.Contains(err.Error(), "left") {
		t.Errorf("a third side: %v", err)
	}
}
