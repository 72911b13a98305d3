// Package locale reads from the environment in which units a weaver measures and which decimal sign they write, for
// as long as the settings don't say so. Start from [Of].
package locale

import (
	"slices"
	"strings"

	"millside/plan/measure"
)

// Ways is how a weaver measures and writes numbers.
type Ways struct {
	Units measure.LengthUnitSystem
	// Comma says that numbers are written with a decimal comma.
	Comma bool
	// From is the locale that said so, such as "de_DE.UTF-8"; empty where none did.
	From string
}

// Of reads the locale as POSIX has it (IEEE Std 1003.1-2017, 8.2): LC_ALL goes before the variable of one matter,
// and that before LANG. LC_MEASUREMENT, an extension of the GNU C library, says the units, LC_NUMERIC the decimal
// sign. Without a locale, or in that of the C language, the units are yards and inches with a decimal point, as the
// program's examples are.
func Of(env func(string) string) Ways {
	units, number := first(env, "LC_ALL", "LC_MEASUREMENT", "LANG"), first(env, "LC_ALL", "LC_NUMERIC", "LANG")
	w := Ways{From: units}
	if w.From == "" {
		w.From = number
	}
	if units != "" && !yards(units) {
		w.Units = measure.Metric
	}
	w.Comma = number != "" && comma(number)
	return w
}

// first is the first of the variables that names a locale of people; one that names that of the C language ends the
// search, as it does for the system.
func first(env func(string) string, names ...string) string {
	for _, name := range names {
		switch value := env(name); value {
		case "":
		case "C", "POSIX", "C.UTF-8", "C.utf8":
			return ""
		default:
			return value
		}
	}
	return ""
}

// parts are the language and the territory of a locale: "de" and "AT" of "de_AT.UTF-8@euro"; those of "de-AT" too.
func parts(locale string) (language, territory string) {
	if at := strings.IndexAny(locale, ".@"); at >= 0 {
		locale = locale[:at]
	}
	language, territory, _ = strings.Cut(strings.ReplaceAll(locale, "-", "_"), "_")
	return strings.ToLower(language), strings.ToUpper(territory)
}

// yards says whether cloth is measured in yards and inches where the locale is: in the United States, Liberia and
// Myanmar (Unicode CLDR, supplemental data, measurementSystem; from memory). English without a territory is taken
// for the first.
func yards(locale string) bool {
	language, territory := parts(locale)
	return slices.Contains([]string{"US", "LR", "MM"}, territory) || territory == "" && language == "en"
}

// Languages that are written with a decimal comma, and territories that differ from their language (Unicode CLDR,
// numbers, symbols; from memory).
var (
	commaLanguages = strings.Fields("af az be bg bs ca cs da de el es et eu fi fo fr fur gl hr hu hy id is it ka kk " +
		"kl ky lb lt lv mk nb nl nn no pl pt ro ru se sk sl sq sr sv tk tr tt uk uz vi wo")
	pointTerritories = map[string][]string{"de": {"CH", "LI"}, "it": {"CH"}, "es": {"MX", "US", "PR", "GT", "HN", "NI",
		"PA", "PE", "SV", "DO", "CU"}}
	commaTerritories = map[string][]string{"en": {"ZA"}}
)

// comma says whether the locale writes a decimal comma.
func comma(locale string) bool {
	language, territory := parts(locale)
	if slices.Contains(commaLanguages, language) {
		return !slices.Contains(pointTerritories[language], territory)
	}
	return slices.Contains(commaTerritories[language], territory)
}
