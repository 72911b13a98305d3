package asked

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"millside/cmd/millside/internal/prose"
	"millside/plan"
	"millside/plan/athand"
	"millside/plan/measure"
	"millside/plan/stripe"
	"millside/plan/stripe/schedule"
	"millside/plan/wind"

	"github.com/spf13/cobra"
)

// StripesLong is what the help of the commands that plan a warp tells about stripes.
const StripesLong = `

Stripes: --stripes says the colours from end 1 to the last, which gives the ends
too. Parts stand with commas between them:
  12 red                        twelve ends of red; red alone is one end
  3 times (4 red, 2 white)      what is in the brackets, three times
  3 times balanced (...)        the same, and its first part once more
  mirror (...)                  what is in the brackets, then the same backwards
  point (...)                   as mirror, with its last part once in the middle
  back (...)                    what is in the brackets, backwards
  where red is #b03a2e          at the very end: how a colour looks; a name known on
                                the web, such as navy or sea green, is drawn so anyway
  4 "8/2 navy"                  a name with figures or other signs stands in quotes
--draft takes the warp from a draft in the open format WIF instead: its threads, its
colours, the shaft of each thread, and the title as the name. A draft of one colour,
or of none, makes a plain warp. --ends repeats and cuts the draft to that number, and
so does the width of a cloth; --draft-times 1 keeps it as it is.
An order that is printed from right to left is written as it is printed, with
--stripes-from right. End 1 is on the left, seen by the weaver at the loom;
--thread-1 says on which side the draft's thread 1 is. The sett that the
draft gives is shown, never taken over.

The warp is cut into passes and set-ups of the paddle by the time that the hands take:
passes, halts at the pegs, ends cut off and tied on, packages threaded, as the
--minutes options say it. Told are the gap to what no schedule can be below, and what
other ways to wind the same warp would take; --way winds one of them. Unless
--packages-of says otherwise there are as many packages of each colour as are wanted.`

// StripeAsk is what the flags say about the stripes.
type StripeAsk struct {
	text, draft, packages string
	from                  plan.WrittenFrom
	use                   *DraftAsk
	read                  *DraftFile // the draft, once it is read
	ask                   stripe.Ask
	way                   wayValue
	halts                 int
}

// Striped is a striped warp as it was planned, for what a plan of it says. It is nil for a plain one.
type Striped struct {
	*stripe.Plan
	Draft *DraftFile // nil where the stripes were typed
	// Paddles is what other paddles would give, Change a small change of the order that winds far faster, nil
	// where none was found: quick figures, there once TryOthers was called.
	Paddles []stripe.OtherPaddle
	Change  *stripe.Change
}

// TryOthers works out what other paddles would give, those at hand among them, and whether a small change of the
// order winds far faster. It takes about as long as planning the stripes.
func (s *Striped) TryOthers(ctx context.Context, hand athand.AtHand) {
	names := map[int]string{}
	for _, paddle := range hand.Paddles {
		if names[paddle.Positions] == "" {
			names[paddle.Positions] = paddle.Name
		}
	}
	s.Paddles, s.Change = s.OtherPaddles(ctx, names), s.SmallerChange(ctx)
}

// StripeFlags adds the flags for stripes.
func StripeFlags(cmd *cobra.Command) *StripeAsk {
	a := &StripeAsk{}
	About(cmd.Flags(), "Stripes", func() { a.flags(cmd) })
	return a
}

func (a *StripeAsk) flags(cmd *cobra.Command) {
	f := cmd.Flags()
	f.StringVar(&a.text, "stripes", "", "the colours from end 1 to the last, a `text` such as \"8 white, 21 times "+
		"(4 red, 14 white), 20 red\"; - reads it from standard input")
	Words(cmd, "stripes-from", &a.from, "where the order that you write begins; in print that is mostly on the right",
		"end 1", "left", "right")
	f.StringVar(&a.draft, "draft", "", "`file` of a draft in the format WIF that gives the warp; - is the standard "+
		"input")
	a.use = DraftFlags(cmd)
	f.BoolVar(&a.ask.Limits.FinishAtLease, "finish-at-lease", false, "an even number of passes only")
	f.StringVar(&a.packages, "packages-of", "",
		"packages at hand, a `list` such as \"red 2, white 4\"; of others there are enough")
	f.Var(sizesValue{&a.ask.Limits.Sizes}, "group-sizes",
		"the ends that a pass may carry, such as \"10, 12\"; any, where it isn't given")
	f.IntVar(&a.halts, "most-halts", 0, "the most halts that you put up with, a `number`; any, where it isn't given")
	f.IntVar(&a.ask.Limits.Effort, "effort", 1, "how long to search, a `number` of times the usual, 1 to 100")
	f.Var(&a.way, "way", "the way to wind, one of those that the plan lists: "+strings.Join(wayNames(), ", "))
	_ = cmd.RegisterFlagCompletionFunc("way", cobra.FixedCompletions(wayNames(), cobra.ShellCompDirectiveNoFileComp))
}

// given says whether there are stripes.
func (a *StripeAsk) given() bool { return a.text != "" || a.draft != "" }

// Fill cuts the stripes into passes and fills them into the spec. It is nil where there are none.
func (a *StripeAsk) Fill(cmd *cobra.Command, errOut io.Writer, spec *plan.Spec) (*Striped, error) {
	if err := a.check(cmd); err != nil {
		return nil, Usage(cmd, err)
	}
	if !a.given() {
		return nil, nil
	}
	made := &Striped{}
	order, err := a.order(cmd, errOut, spec)
	if err != nil || len(order.Parts) == 0 {
		return nil, err
	}
	made.Draft = a.read
	if err := a.agree(cmd, order, *spec); err != nil {
		return nil, Usage(cmd, err)
	}
	if a.packages != "" {
		if a.ask.Limits.Packages, err = parsePackages(a.packages, order.Colours); err != nil {
			return nil, Usage(cmd, measure.InField(err, "--packages-of"))
		}
	}
	if cmd.Flags().Changed("most-halts") {
		a.ask.Limits.MostHalts = &a.halts
	}
	a.ask.Way, a.ask.Cheapest = a.way.way, a.way.cheapest
	if made.Plan, err = stripe.ForPlan(cmd.Context(), *spec, a.ask, nil); err != nil {
		return nil, Usage(cmd, inStripeFlags(err))
	}
	*spec = made.Spec
	return made, nil
}

// check refuses flags that make no sense together.
func (a *StripeAsk) check(cmd *cobra.Command) error {
	changed := cmd.Flags().Changed
	if changed("stripes") && changed("draft") {
		return errors.New("--stripes and --draft both give the stripes; give one of them")
	}
	if changed("draft") && a.draft == "" {
		return &measure.FieldError{Field: "--draft", Value: "", Want: "the path of a draft"}
	}
	if changed("stripes") && a.text == "" {
		_, err := stripe.Parse("")
		return pointAt(err, "")
	}
	if i := slices.IndexFunc(draftFlagNames, changed); i >= 0 && !changed("draft") {
		return fmt.Errorf("--%s is about a draft; give --draft too", draftFlagNames[i])
	}
	if changed("draft-times") && changed("ends") {
		return errors.New("--draft-times and --ends both say how often the draft is laid; give one of them")
	}
	if n := a.ask.Limits.Effort; n < 1 || n > schedule.MaxEffort {
		return &measure.FieldError{Field: "--effort", Value: strconv.Itoa(n),
			Want: fmt.Sprintf("1 to %d", schedule.MaxEffort)}
	}
	if changed("stripes-from") && !changed("stripes") {
		return errors.New("--stripes-from is about stripes that you write; give --stripes too")
	}
	if i := slices.IndexFunc(stripedFlags, changed); i >= 0 && !a.given() {
		return fmt.Errorf("--%s is about stripes; give --stripes or --draft too", stripedFlags[i])
	}
	return nil
}

// order is the stripe order, typed or from the draft; what else the draft says goes into the spec. The order
// is empty where the draft makes a plain warp.
func (a *StripeAsk) order(cmd *cobra.Command, errOut io.Writer, spec *plan.Spec) (stripe.Order, error) {
	if a.draft == "" {
		if a.text == FromPipe {
			text, err := io.ReadAll(io.LimitReader(cmd.InOrStdin(), plan.MaxStripes+1))
			if err != nil {
				return stripe.Order{}, fmt.Errorf("reading the stripes: %w", err)
			}
			a.text = strings.TrimSpace(string(text))
		}
		order, err := stripe.Parse(a.text)
		spec.Stripes, spec.StripesFrom = order.String(), a.from
		return order, Usage(cmd, pointAt(err, a.text))
	}
	d, err := ReadDraft(a.draft, cmd.InOrStdin())
	if err != nil {
		return stripe.Order{}, err
	}
	for _, w := range d.Warnings {
		fmt.Fprintf(errOut, "millside: draft %s: %s\n", prose.Clean(a.draft), prose.Clean(w.String()))
	}
	if err := a.use.Of(d); err != nil {
		return stripe.Order{}, Usage(cmd, err)
	}
	if err := fitDraft(cmd, d, *spec); err != nil {
		return stripe.Order{}, err
	}
	w, err := d.Warp(d.Use.Side)
	if err == nil {
		err = Usage(cmd, d.ask())
	}
	if err != nil {
		return stripe.Order{}, inDraftFlags(cmd, err)
	}
	a.read = d
	threading := spec.Loom.Threading
	*spec = w.Into(*spec, cmd.Flags().Changed("name"))
	if cmd.Flags().Changed("threading") { // the weaver's own
		spec.Loom.Threading = threading
	}
	if w.Plain() {
		return stripe.Order{}, Usage(cmd, a.onlyStriped(cmd))
	}
	return w.Order, nil
}

// onlyStriped refuses the flags that are about stripes where the draft makes a plain warp.
func (a *StripeAsk) onlyStriped(cmd *cobra.Command) error {
	if i := slices.IndexFunc(stripedFlags, cmd.Flags().Changed); i >= 0 {
		return fmt.Errorf("--%s is about stripes, and the draft makes a warp of one colour", stripedFlags[i])
	}
	return nil
}

// stripedFlags lists the flags that say how stripes are wound.
var stripedFlags = []string{"finish-at-lease", "packages-of", "group-sizes", "most-halts", "effort", "way"}

// Draft is the draft that was read, nil where there was none.
func (a *StripeAsk) Draft() *DraftFile { return a.read }

// agree refuses what doesn't go with the stripes.
func (a *StripeAsk) agree(cmd *cobra.Command, order stripe.Order, spec plan.Spec) error {
	n := order.Size()
	if a.draft == "" && cmd.Flags().Changed("ends") && spec.Ends != n {
		return &measure.FieldError{Field: "--ends", Value: strconv.Itoa(spec.Ends),
			Want: fmt.Sprintf("%d, the ends of the stripes, or leave it out", n)}
	}
	if cmd.Flags().Changed("group") {
		return errors.New("--group: with stripes the passes carry what suits the colours; --group-sizes says which " +
			"numbers of ends they may carry")
	}
	if spec.LastPass == wind.FullLast {
		return &measure.FieldError{Field: "--last-pass", Value: spec.LastPass.String(),
			Want: "short: the stripes have no colour for spare ends"}
	}
	if n := len(order.String()); n > plan.MaxStripes {
		field := "--stripes"
		if a.draft != "" {
			field = "--draft"
		}
		return &measure.FieldError{Field: field, Value: fmt.Sprintf("%d characters of notation", n),
			Want: fmt.Sprintf("stripes that take at most %d; what repeats takes less in brackets", plan.MaxStripes)}
	}
	return nil
}

// stripeFlagOf names the flag of each field that the scheduler may refuse. The times are checked when they
// are read.
var stripeFlagOf = map[string]string{
	"finish": "finish-at-lease", "group sizes": "group-sizes", "packages": "packages-of",
	"paddle positions": "positions",
	"most halts":       "most-halts", "way": "way",
}

// inStripeFlags names the flags in what the scheduler refused.
func inStripeFlags(err error) error {
	var all []error
	for _, fe := range measure.FieldErrors(err) {
		named := *fe
		if flag, ok := stripeFlagOf[fe.Field]; ok {
			named.Field = "--" + flag
		}
		all = append(all, &named)
	}
	if len(all) == 0 {
		return err
	}
	return errors.Join(all...)
}
