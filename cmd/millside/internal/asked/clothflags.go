package asked

import (
	"fmt"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"millside/plan"
	"millside/plan/measure"
)

// clothFlags adds the flags of the cloth that a warp is planned from.
func clothFlags(cmd *cobra.Command, ask *SpecAsk) {
	f := cmd.Flags()
	c := &ask.Spec.Cloth
	length := func(l *measure.Length, name, help string) { f.Var(unset(lengthValue{l}), name, help) }
	share := func(p *measure.Percent, name, help string) { f.Var(unset(quantityValue{p, "share"}), name, help) }
	number := func(n *int, name, help string) { f.Var(unset(countValue{n}), name, help) }
	f.BoolVar(&ask.fromCloth, "from-cloth", false,
		"take the ends and the length from the cloth; it is so by itself where its width or length is given")
	length(&c.Width.Finished, "finished-width", "width of the finished cloth")
	length(&c.Length.Piece, "finished-length", "finished length of one piece, without hems and fringes")
	number(&c.Length.Pieces, "pieces", "how many pieces are woven, 1 if not said")
	Words(cmd, "fibre", &c.Width.Fibre, "what the warp is of, for the usual shrinkage", "cotton", "wool", "linen",
		"silk", "other")
	share(&c.Width.DrawIn, "draw-in", "share of the width in the reed that the weft draws in, such as \"8 %\"")
	share(&c.Width.Shrinkage, "shrinkage-width", "share of the width that washing takes")
	share(&c.Length.Shrinkage, "shrinkage-length", "share of the length that washing takes")
	share(&c.Length.TakeUp, "take-up", "share of the length that bending round the weft takes")
	Words(cmd, "take-up-of", &c.Length.TakeUpOf, "what the take-up is a share of", "of the warp", "of the cloth")
	length(&c.Length.Hem, "hem", "finished length that is turned in at each end of each piece")
	length(&c.Length.Fringe, "fringe", "unwoven warp at each end of each piece")
	length(&c.Length.Waste, "loom-waste", "what can't be woven on the loom")
	length(&c.Length.Sample, "sample", "warp for a sample")
	length(&c.Length.Knotting, "knotting-on", "warp that is used to knot it on to an old one")
	number(&c.Width.Repeat, "repeat", "ends in a pattern repeat")
	number(&c.Width.Balance, "balance", "ends after the last repeat that end the pattern as it began")
	number(&c.Width.Doubled, "doubled", "ends at each edge that are drawn double")
	number(&c.Width.Floating, "floating", "floating selvedges, over both edges")
	Words(cmd, "fit", &c.Fit, "which count of ends near the wanted one is taken", "as wanted", "whole repeats",
		"full passes", "both")
	f.Var(unset(quantityValue{&c.Picks, "sett"}), "picks",
		"picks on the loom, such as \"20 an inch\", for an estimate of the weft")
	f.StringVar(&ask.weft, "weft", "", "the weft's size, or the `name` of a yarn at hand; the warp's if not said")
	share(&c.WeftTakeUp, "weft-take-up", "what a pick is longer than the width in the reed, as a share of it")
}

// settleCloth says whether the plan begins at the cloth, and refuses what doesn't go with that.
func (ask *SpecAsk) settleCloth(f *pflag.FlagSet, s *plan.Spec) []error {
	s.Cloth.Used = ask.fromCloth
	if !f.Changed("from-cloth") {
		s.Cloth.Used = f.Changed("finished-width") || f.Changed("finished-length")
	}
	var errs []error
	switch {
	case s.Cloth.Used:
		if !f.Changed("pieces") {
			s.Cloth.Length.Pieces = 1
		}
		s.Ends = plan.DefaultSpec().Ends // the cloth's ends take its place
		for _, name := range []string{"ends", "length"} {
			if f.Changed(name) {
				errs = append(errs, &measure.FieldError{Field: "--" + name, Value: f.Lookup(name).Value.String(),
					Want: fmt.Sprintf("no --%s beside a cloth, from which it follows; or --from-cloth=false", name)})
			}
		}
	case !f.Changed("from-cloth"):
		errs = append(errs, without(f, aboutCloth,
			"a --finished-width and a --finished-length too: it belongs to a cloth")...)
	}
	return errs
}

// without refuses the flags under a heading that were given without what they belong to.
func without(f *pflag.FlagSet, heading, want string, but ...string) []error {
	var errs []error
	f.Visit(func(flag *pflag.Flag) {
		if HeadingOf(flag) != heading {
			return
		}
		for _, name := range but {
			if flag.Name == name {
				return
			}
		}
		errs = append(errs, &measure.FieldError{Field: "--" + flag.Name, Value: flag.Value.String(), Want: want})
	})
	return errs
}
