package asked

import (
	"errors"
	"regexp"
	"strings"

	"millside/plan"
	"millside/plan/measure"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// SpecAsk is what the flags of a plan say. The flags write into spec, which holds the values used for
// flags that are not given; what may be the name of a thing at hand is kept as text and found later.
type SpecAsk struct {
	Spec                                                plan.Spec
	mill, board, paddle, reed, raddle, loom, yarn, weft string
	reedWidth                                           measure.Length
	fromCloth                                           bool
}

// The headings that the help puts over the flags.
const (
	aboutWarp  = "The warp"
	aboutMill  = "The mill or the board"
	aboutTimes = "How long your hands take"
	aboutCloth = "The cloth that the warp is for"
	aboutYarn  = "The yarn"
	aboutLoom  = "The loom"
)

// SpecFlags adds a flag for every field of a plan.
func SpecFlags(cmd *cobra.Command, ask *SpecAsk) {
	f := cmd.Flags()
	f.SortFlags = false // in the order in which a weaver decides
	About(f, aboutWarp, func() { warpFlags(cmd, &ask.Spec, &ask.paddle) })
	About(f, aboutMill, func() { millFlags(f, ask) })
	About(f, aboutTimes, func() { timeFlags(cmd, &ask.Spec.Times) })
	About(f, aboutCloth, func() { clothFlags(cmd, ask) })
	About(f, aboutYarn, func() { yarnFlags(f, ask) })
	About(f, aboutLoom, func() { loomFlags(cmd, ask) })
}

// About puts the flags that add adds under a heading of the help.
func About(f *pflag.FlagSet, heading string, add func()) {
	had := map[string]bool{}
	f.VisitAll(func(flag *pflag.Flag) { had[flag.Name] = true })
	add()
	f.VisitAll(func(flag *pflag.Flag) {
		if !had[flag.Name] {
			flag.Annotations = withHeading(flag.Annotations, heading)
		}
	})
}

func warpFlags(cmd *cobra.Command, spec *plan.Spec, paddle *string) {
	f := cmd.Flags()
	f.StringVar(&spec.Name, "name", spec.Name, "what you call the warp: a `text` of 1 to 60 characters")
	f.Var(countValue{&spec.Ends}, "ends", "ends wanted, 1 to 100000")
	f.Var(countValue{&spec.Group}, "group", "ends carried by the paddle on a pass")
	f.Var(countValue{&spec.Positions}, "positions", "holes and slots in the paddle, 1 to 60")
	f.StringVar(paddle, "paddle", "", "the `name` of a paddle at hand, in place of --positions")
	f.Var(lengthValue{&spec.Length}, "length", "length of the warp, such as \"5 yd\", \"7 1/2 yd\" or 6.4m")
	Words(cmd, "hand", &spec.Hand, "which hand leads the paddle", "right", "left")
	Words(cmd, "return-order", &spec.ReturnOrder, "how a return pass lies in the lease", "same", "mirrored")
	Words(cmd, "foot", &spec.Foot, "which position lies at the foot of the peg on an outward pass", "first", "last")
	Words(cmd, "last-pass", &spec.LastPass,
		"the last pass where the group doesn't divide the ends; a full one lays spare ends", "short", "full")
	f.Var(countValue{&spec.ChainEnds}, "chain-ends", "most ends in one chain; 0 for one chain")
	f.Var(countValue{&spec.TieEvery}, "tie-every", "ends from one count tie to the next; 0 for none")
	f.Var(guardValue{&spec.GuardMillis}, "guard", "shortest time between two passes that are counted; 0 for none")
	f.Var(countValue{&spec.RestMinutes}, "rest", "minutes of winding before a reminder to rest the hands; 0 for none")
	f.BoolVar(&spec.Dyed, "dyed", spec.Dyed, "the warp will be dyed, so the ties are loose")
	Words(cmd, "dressing", &spec.Dressing, "what the loom takes first", "raddle first", "reed first")
	Words(cmd, "units", &spec.Units, "units that lengths are shown in", "imperial", "metric")
}

func millFlags(f *pflag.FlagSet, ask *SpecAsk) {
	spec := &ask.Spec
	f.StringVar(&ask.mill, "mill", "", "the `name` of a mill at hand, in place of the figures that follow")
	f.Var(lengthValue{&spec.Mill.Circumference}, "circumference", "once round the mill")
	f.Var(lengthValue{&spec.Mill.PegStep}, "peg-step",
		"from one place for the end pegs to the next, along the mill's round")
	f.Var(lengthValue{&spec.Mill.Rise}, "rise", "how far the warp climbs in one turn")
	f.Var(unset(lengthValue{&spec.Mill.Height}), "mill-height", "how far the warp may climb")
	f.StringVar(&ask.board, "board", "", "wind on a board and not on a mill: its `distances` from peg to peg, such "+
		"as \"36 in x 10, 18 in\", or its name")
	f.Var(unset(lengthValue{&spec.Pegs.Length}), "peg-length", "how much of a peg the warp may cover")
	f.Var(unset(countValue{&spec.Pegs.Layers}), "layers", "layers of yarn that a peg may take, 1 if not said")
}

// Words adds a flag that takes one of a few words, and completes them.
func Words(cmd *cobra.Command, name string, of textValue, help string, choices ...string) {
	cmd.Flags().Var(wordValue{of}, name, help+": "+strings.Join(choices, " or "))
	// The error would say that there is no such flag, or that it is completed already.
	_ = cmd.RegisterFlagCompletionFunc(name, cobra.FixedCompletions(choices, cobra.ShellCompDirectiveNoFileComp))
}

// FlagOf names the flag of each field that a plan may refuse.
var FlagOf = map[string]string{
	"name": "name", "ends": "ends", "group": "group", "paddle positions": "positions", "paddle": "paddle",
	"length": "length",
	"mill":   "mill", "mill circumference": "circumference", "peg step": "peg-step", "rise a turn": "rise",
	"mill height":     "mill-height",
	"ends in a chain": "chain-ends", "count tie every": "tie-every", "guard": "guard",
	"rest every": "rest", "position at the foot": "foot", "minutes a pass": "minutes-pass",
	"minutes of handling": "minutes-handling",
	"minutes a turn":      "minutes-turn", "minutes a halt": "minutes-halt", "minutes to cut off an end": "minutes-cut",
	"minutes to tie on an end": "minutes-tie", "minutes to thread a package": "minutes-thread",
	"minutes more to finish at the far end": "minutes-far",
	"board":                                 "board", "distances on the board": "board", "peg length": "peg-length",
	"layers on a peg": "layers",
	"layers":          "layers", "thread": "yarn",
	"finished width": "finished-width", "finished length": "finished-length", "width in the reed": "finished-width",
	"woven length": "finished-length",
	"pieces":       "pieces", "draw-in": "draw-in", "shrinkage in width": "shrinkage-width",
	"shrinkage in length": "shrinkage-length",
	"take-up":             "take-up", "hem": "hem", "fringe": "fringe", "loom waste": "loom-waste", "sample": "sample",
	"knotting on":    "knotting-on",
	"pattern repeat": "repeat", "balancing part": "balance", "doubled selvedge ends": "doubled",
	"ends before the first repeat": "doubled",
	"floating selvedges":           "floating", "ends to fit": "fit", "picks": "picks", "weft take-up": "weft-take-up",
	"weft": "weft",
	"yarn": "yarn", "colour": "colour", "cones at hand": "packages", "packages": "packages",
	"threading": "threading", "shaft": "threading", "ends in the threading": "threading",
	"shafts with heddles": "heddles", "loom": "loom",
	"sett": "sett", "raddle": "raddle", "raddle space": "raddle", "raddle spaces": "raddle-spaces", "reed": "reed",
	"reed width":     "reed-width",
	"selvedge dents": "edge-dents", "ends in a selvedge dent": "edge-ends", "side of the first end": "first-end",
}

// NumberedFields are fields of which there are several, which share a flag.
var NumberedFields = []struct {
	Field *regexp.Regexp
	Flag  string
}{
	{regexp.MustCompile(`^distance \d+ on the board$`), "board"},
	{regexp.MustCompile(`^cone \d+ weight$`), "cones"},
	{regexp.MustCompile(`^cone \d+ empty tube$`), "tube"},
	{regexp.MustCompile(`^cone \d+ colour$`), "colour"},
	{regexp.MustCompile(`^cone \d+ yarn$`), "yarn"},
}

// FlagFor names the flag of a field, "" where there is none.
func FlagFor(field string, flags map[string]string) string {
	if flag := flags[field]; flag != "" {
		return flag
	}
	for _, n := range NumberedFields {
		if n.Field.MatchString(field) {
			return n.Flag
		}
	}
	return ""
}

// NamedFlags makes a usage error of an error about fields, and names their flags instead. Two fields may
// have one message; it is told once. Another error stays as it is.
func NamedFlags(cmd *cobra.Command, err error, flags map[string]string) error {
	wrong := measure.FieldErrors(err)
	if len(wrong) == 0 {
		return err
	}
	var all []error
	told := map[string]bool{}
	for _, fe := range wrong {
		named := *fe
		if flag := FlagFor(fe.Field, flags); flag != "" {
			named.Field = "--" + flag
		}
		if !told[named.Error()] {
			told[named.Error()] = true
			all = append(all, &named)
		}
	}
	return Usage(cmd, errors.Join(all...))
}
