package schema

import "testing"

// What a field's tag says of its meaning stands in the schema, beside a reference too.
func TestMeaningOfAField(t *testing.T) {
	type inner struct {
		Ends int `json:"ends"`
	}
	got := Of("x-1", struct {
		First int   `json:"first_end" about:"counted as wound"`
		In    inner `json:"in" about:"what is in it"`
		Bare  int   `json:"bare"`
	}{})
	properties := got["properties"].(map[string]any)
	for name, want := range map[string]any{"first_end": "counted as wound", "in": "what is in it", "bare": nil} {
		if said := properties[name].(map[string]any)["description"]; said != want {
			t.Errorf("%s: %v, not %v", name, said, want)
		}
	}
}
