package asked

import (
	"errors"

	"millside/plan/field"
	"millside/plan/pair"

	"github.com/spf13/cobra"
)

// TogetherAsk is what the flags say of two warps that go together.
type TogetherAsk struct{ texts map[*field.Field]*string }

// TogetherFlags adds the flags of two warps that go together.
func TogetherFlags(cmd *cobra.Command, ask *TogetherAsk) {
	ask.texts = map[*field.Field]*string{}
	About(cmd.Flags(), "Both warps", func() {
		for _, f := range pair.Fields() {
			text := ""
			ask.texts[f] = &text
			addFlag(cmd, f, textFlag{&text, f.Value})
		}
	})
}

// Ask is what the flags say. The error names them.
func (ask *TogetherAsk) Ask(cmd *cobra.Command) (a pair.Ask, err error) {
	var errs []error
	for _, f := range pair.Fields() {
		errs = append(errs, a.Take(f, *ask.texts[f]))
	}
	return a, TogetherUsage(cmd, errors.Join(errs...))
}

// Texts is what was given, field by field.
func (ask *TogetherAsk) Texts() map[*field.Field]string {
	said := map[*field.Field]string{}
	for f, text := range ask.texts {
		if *text != "" {
			said[f] = *text
		}
	}
	return said
}

// Given says whether anything was.
func (ask *TogetherAsk) Given() bool { return len(ask.Texts()) > 0 }

// TogetherUsage names the flags of the fields of an error.
func TogetherUsage(cmd *cobra.Command, err error) error {
	return NamedBy(cmd, err, func(name string) string {
		for _, f := range pair.Fields() {
			if f.Name == name {
				return f.Flag
			}
		}
		return ""
	})
}
