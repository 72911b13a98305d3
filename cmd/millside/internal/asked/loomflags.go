package asked

import (
	"millside/plan"
	"millside/plan/loom"
	"millside/plan/measure"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// yarnFlags adds the flags of the yarn that a warp is wound of.
func yarnFlags(f *pflag.FlagSet, ask *SpecAsk) {
	y := &ask.Spec.Yarn
	f.StringVar(&ask.yarn, "yarn", "", "the yarn's size, such as \"cotton 8/2\", \"worsted 2/28\" or \"3360 "+
		"yd/lb\", or the `name` of a yarn at hand")
	f.StringVar(&y.Colour, "colour", "", "what you call its colour: a `text` of up to 60 characters")
	f.Var(unset(quantityValue{&y.Cones, "weights"}), "cones",
		"what each cone weighs with its tube, such as \"250 g, 200 g\"; the last stands for the rest")
	f.Var(unset(quantityValue{&y.Tube, "weight"}), "tube", "what an empty tube weighs")
	f.Var(unset(countValue{&y.Packages}), "packages", "cones at hand")
	usual := plan.DefaultExtras()
	f.Var(&unsetValue{extraValue{&y.Extras, &y.Extras.PerPass}, usual.PerPass.String()}, "peg-yarn",
		"yarn that each end takes at the end pegs on a pass; 0 in adds nothing")
	f.Var(&unsetValue{extraValue{&y.Extras, &y.Extras.PerTie}, usual.PerTie.String()}, "tails",
		"yarn in the tails of each end that is tied on and cut off again; 0 in adds nothing")
}

// loomFlags adds the flags of the loom that a warp is handed over to.
func loomFlags(cmd *cobra.Command, ask *SpecAsk) {
	f := cmd.Flags()
	l := &ask.Spec.Loom
	f.Var(unset(quantityValue{&l.Sett, "sett"}), "sett", "ends in the reed, such as \"20 an inch\" or \"80 in 10 cm\"")
	f.StringVar(&ask.raddle, "raddle", "", "the raddle's `space` from tooth to tooth, such as \"1/2 in\", or its name")
	f.Var(unset(countValue{&l.Raddle.Spaces}), "raddle-spaces", "how many spaces the raddle has")
	f.BoolVar(&l.SplitGroups, "split-groups", false,
		"let the raddle's teeth part a group, where that spreads the ends more evenly")
	f.StringVar(&ask.reed, "reed", "", "the `reed`, such as \"10 dents an inch\", \"40 in 10 cm\" or \"60 "+
		"Stockport\", or its name")
	f.Var(unset(lengthValue{&ask.reedWidth}), "reed-width", "the reed's usable width")
	f.Var(unset(countValue{&l.EdgeDents}), "edge-dents", "dents at each edge that hold --edge-ends each")
	f.Var(unset(countValue{&l.EdgeEnds}), "edge-ends", "ends in each of these dents")
	f.StringVar(&ask.loom, "loom", "", "the `name` of a loom at hand, in place of --heddles")
	f.Var(unset(threadingValue{&l.Threading}), "threading",
		"the shaft of each end from end 1 on, or a repeat of them, such as \"1, 2, 3, 4\" or \"24 times (1, 2, 3, "+
			"4), 1\"")
	f.Var(unset(heddlesValue{&l.Heddles}), "heddles",
		"the heddles on each shaft, such as \"100, 100, 80, 80\" or \"100 on 4 shafts\"")
	Words(cmd, "first-end", &l.FirstEnd, "side of the loom on which end 1 lies", "left", "right")
}

// extraValue is a part of the extra yarn; the other part stays the usual one until it is said too.
type extraValue struct {
	all *plan.Extras
	of  *measure.Length
}

func (v extraValue) String() string { return "" }
func (v extraValue) Type() string   { return "length" }
func (v extraValue) Set(s string) error {
	length, err := measure.ParseLength(s)
	if err != nil {
		return err
	}
	if !v.all.Given {
		*v.all = plan.DefaultExtras()
		v.all.Given = true
	}
	*v.of = length
	return nil
}

// threadingValue is the shaft of each end, as a weaver writes it.
type threadingValue struct{ of *loom.Threading }

func (v threadingValue) String() string {
	if v.of == nil {
		return ""
	}
	return v.of.String()
}
func (v threadingValue) Type() string { return "shafts" }
func (v threadingValue) Set(s string) (err error) {
	*v.of, err = loom.ParseThreading(s)
	return err
}

// heddlesValue is how many heddles each shaft has.
type heddlesValue struct{ of *[]int }

func (v heddlesValue) String() string { return "" }
func (v heddlesValue) Type() string   { return "numbers" }
func (v heddlesValue) Set(s string) (err error) {
	*v.of, err = loom.ParseHeddles(s)
	return err
}
