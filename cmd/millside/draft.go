package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"slices"

	"millside/plan/draft"
	"millside/plan/stripe"

	"github.com/spf13/cobra"
)

const draftLong = `Reads a weaving draft in the open format WIF (version 1.1) and tells what it says
about the warp: title, threads, shafts, colours, the sett that its spacing comes
to, and the stripes from left to right, as 'millside plan --stripes' takes them.
Nothing is planned and nothing is kept. What can't be read as it stands is told
with its section and line.

A draft doesn't say on which side its thread 1 is. Unless --thread-1 says so, both
ways are shown where they differ.

--json prints one object with "format": "millside-draft-1". Its fields are: file,
title, threads, shafts, treadles (0 where the draft doesn't say), coloured, symmetric,
sett_offered (threads, width, per_inch, per_10_cm, absurd; left out where the draft
doesn't say), stripes (a list: thread_1, notation, colours: letter, name, shade, ends)
and warnings (section, line, text; line 0 is for something that is missing).`

func (a *app) draftCmd() *cobra.Command {
	var (
		asJSON, given bool
		side          draft.Side
	)
	cmd := &cobra.Command{
		Use: "draft FILE [--thread-1 SIDE] [--json]", Short: "tell what a draft says about the warp", Long: draftLong,
		Example: "  millside draft plaid.wif\n  millside draft plaid.wif --thread-1 right\n  millside plan --draft plaid.wif --thread-1 right",
		Args:    args(1, 1, "the path of one draft"),
		RunE: func(_ *cobra.Command, paths []string) error {
			d, err := readDraft(paths[0])
			if err != nil {
				return err
			}
			d.side, d.sideGiven = side, given
			if asJSON {
				out := draftToJSON(d)
				out.Format = draftFormat
				return writeJSON(a.out, out)
			}
			draftText(a.out, d)
			return nil
		},
	}
	threadFlag(cmd, &side, &given)
	cmd.Flags().BoolVar(&asJSON, "json", false, "print for a program to read")
	return cmd
}

// draftFile is a draft that was read, and what the weaver said of it.
type draftFile struct {
	*draft.Draft
	path      string
	side      draft.Side // that thread 1 is on
	sideGiven bool
}

// readDraft reads a draft. No more of the file is read than a draft may have.
func readDraft(path string) (*draftFile, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("reading the draft: %w", err)
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, draft.MaxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("reading the draft: %w", err)
	}
	d, err := draft.Read(data)
	if err != nil {
		return nil, fmt.Errorf("draft %s: %w", path, err)
	}
	return &draftFile{Draft: d, path: path}, nil
}

// symmetric says whether the colours are the same from both sides, so that it doesn't matter on which one
// thread 1 is.
func (d *draftFile) symmetric() bool {
	back := slices.Clone(d.Colours)
	slices.Reverse(back)
	return slices.Equal(back, d.Colours)
}

// stripes is the stripe order from left to right if thread 1 is on a side, what repeats in brackets.
func (d *draftFile) stripes(side draft.Side) (stripe.Order, error) {
	order, err := d.Stripes(side)
	if err != nil {
		return order, fmt.Errorf("draft %s: %w", d.path, err)
	}
	return order.Folded(), nil
}

// sides lists the sides that thread 1 may be on, as far as they make a difference.
func (d *draftFile) sides() []draft.Side {
	if d.sideGiven || d.symmetric() {
		return []draft.Side{d.side}
	}
	return []draft.Side{draft.FromRight, draft.FromLeft}
}

func otherSide(s draft.Side) draft.Side {
	if s == draft.FromLeft {
		return draft.FromRight
	}
	return draft.FromLeft
}

// askSide is the error where it matters on which side thread 1 is.
func (d *draftFile) askSide() error {
	return errors.New("on which side is thread 1 of the draft, seen by the weaver at the loom? A draft doesn't say, and these stripes " +
		"are not the same from both sides. Give --thread-1 right, which is the commoner, or --thread-1 left; " +
		"'millside draft' shows the stripes in both ways")
}
