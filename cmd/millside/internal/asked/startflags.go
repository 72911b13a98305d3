package asked

import (
	"errors"
	"io"

	"millside/plan"
	"millside/plan/athand"
	"millside/plan/field"
	"millside/plan/start"

	"github.com/spf13/cobra"
)

// StartAsk is what the flags say of a warp of which one thing is to be found.
type StartAsk struct {
	SpecAsk
	stripes *StripeAsk
	texts   map[*field.Field]*string
}

// StartFlags adds the flags of a plan and those of what else a weaver may know.
func StartFlags(cmd *cobra.Command, ask *StartAsk) {
	ask.texts = map[*field.Field]*string{}
	ask.NoEnds = true
	ask.stripes = PlanFlags(cmd, &ask.SpecAsk)
	About(cmd.Flags(), "What you know", func() {
		for _, f := range field.Known() {
			text := ""
			ask.texts[f] = &text
			addFlag(cmd, f, textFlag{&text, f.Value})
		}
	})
}

// Known is what the flags say. The errors name fields.
func (ask *StartAsk) Known(cmd *cobra.Command, errOut io.Writer, atHand func() (athand.AtHand, error)) (start.Known,
	error) {
	f, s := cmd.Flags(), ask.begin()
	hand, err := atHand()
	if err != nil {
		return start.Known{}, err
	}
	if err := errors.Join(ask.take(f, &s, hand)...); err != nil {
		return start.Known{}, err
	}
	if err := ask.stripes.check(cmd); err != nil {
		return start.Known{}, Usage(cmd, err)
	}
	known, err := ask.own()
	if err != nil {
		return known, err
	}
	if ask.stripes.given() {
		if _, err := ask.stripes.order(cmd, errOut, &s); err != nil {
			return known, err
		}
	}
	ask.fill(cmd, &known, s)
	return known, nil
}

// own reads what has no place in a plan.
func (ask *StartAsk) own() (k start.Known, err error) {
	var errs []error
	for _, f := range field.Known() {
		errs = append(errs, k.Take(f, *ask.texts[f]))
	}
	return k, errors.Join(errs...)
}

// fill takes over what was given of the plan's own fields; what has only its usual value isn't known.
func (ask *StartAsk) fill(cmd *cobra.Command, k *start.Known, s plan.Spec) {
	changed := func(f *field.Field) bool { return cmd.Flags().Changed(f.Flag) }
	if changed(field.Ends) {
		k.Ends = s.Ends
	}
	if ask.stripes.draft != "" && s.Stripes == "" { // a draft of one colour
		k.Ends = s.Ends
	}
	if changed(field.Length) {
		k.Length = s.Length
	}
	if changed(field.FinishedWidth) {
		k.FinishedWidth = s.Cloth.Width.Finished
	}
	if changed(field.FinishedLength) {
		k.FinishedLength = s.Cloth.Length.Piece
	}
	if changed(field.Pieces) {
		k.Pieces = s.Cloth.Length.Pieces
	}
	k.GroupSaid, k.Spec = changed(field.Group), s
}
