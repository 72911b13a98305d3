package locale

import (
	"testing"

	"millside/plan/measure"
)

func TestOf(t *testing.T) {
	metric, yards := measure.Metric, measure.Imperial
	for _, c := range []struct {
		name string
		env  map[string]string
		want Ways
	}{
		{"nothing said", nil, Ways{yards, false, ""}},
		{"the C language", map[string]string{"LANG": "C.UTF-8"}, Ways{yards, false, ""}},
		{"United States", map[string]string{"LANG": "en_US.UTF-8"}, Ways{yards, false, "en_US.UTF-8"}},
		{"Britain", map[string]string{"LANG": "en_GB.UTF-8"}, Ways{metric, false, "en_GB.UTF-8"}},
		{"Germany", map[string]string{"LANG": "de_DE.UTF-8@euro"}, Ways{metric, true, "de_DE.UTF-8@euro"}},
		{"Switzerland", map[string]string{"LANG": "de_CH"}, Ways{metric, false, "de_CH"}},
		{"Mexico", map[string]string{"LANG": "es_MX.UTF-8"}, Ways{metric, false, "es_MX.UTF-8"}},
		{"a language alone", map[string]string{"LANG": "sv"}, Ways{metric, true, "sv"}},
		{"English alone", map[string]string{"LANG": "en"}, Ways{yards, false, "en"}},
		{"as macOS and the web write it", map[string]string{"LANG": "fr-FR"}, Ways{metric, true, "fr-FR"}},
		{"inches in a German session", map[string]string{"LANG": "de_DE.UTF-8", "LC_MEASUREMENT": "en_US.UTF-8"},
			Ways{yards, true, "en_US.UTF-8"}},
		{"points in a German session", map[string]string{"LANG": "de_DE.UTF-8", "LC_NUMERIC": "en_US.UTF-8"},
			Ways{metric, false, "de_DE.UTF-8"}},
		{"one goes before all", map[string]string{"LANG": "de_DE.UTF-8", "LC_MEASUREMENT": "de_DE", "LC_ALL": "C"},
			Ways{yards, false, ""}},
	} {
		if got := Of(func(name string) string { return c.env[name] }); got != c.want {
			t.Errorf("%s: %+v, not %+v", c.name, got, c.want)
		}
	}
}
