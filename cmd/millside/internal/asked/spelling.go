package asked

import (
	"strings"

	"github.com/spf13/pflag"
)

// spellings puts the American spelling of the words that options use into the British one.
var spellings = strings.NewReplacer("color", "colour", "fiber", "fibre")

// BothSpellings lets an option be written in either spelling: --color is --colour.
func BothSpellings(_ *pflag.FlagSet, name string) pflag.NormalizedName {
	return pflag.NormalizedName(spellings.Replace(name))
}
