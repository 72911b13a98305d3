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
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/stripe"
	"millside/plan/wind"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
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

// StripeAsk is what the flags say about the stripes beyond what stands in a plan.
type StripeAsk struct {
	text, draft string
	use         *DraftAsk
	read        *DraftFile // the draft, once it is read
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
	s.Paddles, s.Change = s.OtherPaddles(ctx, hand.PaddleNames()), s.SmallerChange(ctx)
}

// value is the flag's value for what stands in no plan but leads to one: the stripes, which may come from standard
// input, and the draft. It is nil for another field.
func (a *StripeAsk) value(f *field.Field) pflag.Value {
	switch f {
	case field.StripesOf:
		return textFlag{&a.text, f.Value}
	case field.Draft:
		return textFlag{&a.draft, f.Value}
	}
	return a.use.value(f)
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
	ask, err := stripe.AskOf(*spec, order.Colours)
	if err != nil {
		return nil, NamedFlags(cmd, err)
	}
	if made.Plan, err = stripe.ForPlan(cmd.Context(), *spec, ask, nil); err != nil {
		return nil, NamedFlags(cmd, err)
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
	if i := slices.IndexFunc(draftFields, func(f *field.Field) bool { return changed(f.Flag) }); i >= 0 &&
		!changed("draft") {
		return fmt.Errorf("--%s is about a draft; give --draft too", draftFields[i].Flag)
	}
	if changed("draft-times") && changed("ends") && !a.use.use.EdgeRest {
		return errors.New("--draft-times and --ends both say how often the draft is laid; give one of them, or " +
			"--draft-edge rest too")
	}
	if changed(field.StripesFrom.Flag) && !changed("stripes") {
		return fmt.Errorf("--%s is about stripes that you write; give --stripes too", field.StripesFrom.Flag)
	}
	if changed(field.StripesLaid.Flag) && !a.given() {
		return fmt.Errorf("--%s is about stripes; give --stripes or --draft too", field.StripesLaid.Flag)
	}
	if changed(field.StripesLaid.Flag) && !changed("ends") && !changed(field.FinishedWidth.Flag) {
		return laidNeeds()
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
		if err != nil {
			return order, Usage(cmd, pointAt(err, a.text))
		}
		spec.Stripes = order.String()
		if err := a.agree(cmd, order, *spec); err != nil {
			return order, Usage(cmd, err)
		}
		_, order, err = stripe.Written(*spec)
		return order, NamedFlags(cmd, err)
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
		return stripe.Order{}, InDraftFlags(cmd, err)
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
	return w.Order, Usage(cmd, a.agree(cmd, w.Order, *spec))
}

// onlyStriped refuses the flags that are about stripes where the draft makes a plain warp.
func (a *StripeAsk) onlyStriped(cmd *cobra.Command) error {
	if i := slices.IndexFunc(stripedFlags, cmd.Flags().Changed); i >= 0 {
		return fmt.Errorf("--%s is about stripes, and the draft makes a warp of one colour", stripedFlags[i])
	}
	return nil
}

// stripedFlags lists the flags that say how stripes are wound.
var stripedFlags = []string{field.FinishAtLease.Flag, field.PackagesOf.Flag, field.GroupSizes.Flag,
	field.MostHalts.Flag,
	field.Effort.Flag, field.Way.Flag}

// Draft is the draft that was read, nil where there was none.
func (a *StripeAsk) Draft() *DraftFile { return a.read }

// agree refuses what doesn't go with the stripes.
func (a *StripeAsk) agree(cmd *cobra.Command, order stripe.Order, spec plan.Spec) error {
	n := order.Size()
	if a.draft == "" && cmd.Flags().Changed("ends") && spec.Ends != n && spec.Asked.Laid.How == wind.AsWritten {
		return &measure.FieldError{Field: "--ends", Value: strconv.Itoa(spec.Ends),
			Want: fmt.Sprintf("%d, the ends of the stripes; or --%s repeated, whole-repeats or cut", n,
				field.StripesLaid.Flag)}
	}
	if cmd.Flags().Changed("group") {
		return errors.New("--group: with stripes the passes carry what suits the colours; --group-sizes says which " +
			"numbers of ends they may carry")
	}
	if cmd.Flags().Changed(field.Packages.Flag) {
		return fmt.Errorf("--%s: with stripes say how many packages of each colour there are, such as --%s \"%s\"",
			field.Packages.Flag, field.PackagesOf.Flag, "red 2, white 4")
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
