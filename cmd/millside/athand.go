package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/files"
	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/settings"
	"millside/plan/athand"
	"millside/plan/measure"

	"github.com/spf13/cobra"
)

const atHandLong = `Prints where the file of things at hand is, and what it holds: mills, boards, paddles,
reeds, raddles, looms and yarns, each with a name that 'millside plan' and
'millside new' take in place of its figures, as in --mill "floor mill" or
--yarn "white cotton". A mill, paddle, loom or reed that is the only one in the file is
taken unless you give another value, and it is said that it is assumed.

The file is plain text, one thing a line, and yours to write with any editor.
--write makes it, with an explanation and examples in it, where it is missing; a file
that is there is never changed.

It is the file that --at-hand names, else $MILLSIDE_AT_HAND, else
$XDG_CONFIG_HOME/millside/at-hand.txt, else ~/.config/millside/at-hand.txt.

--json prints for a program to read; 'millside schema millside-at-hand-1'
tells how it is made up.`

func (a *app) atHandCmd() *cobra.Command {
	var write, asJSON bool
	cmd := &cobra.Command{
		Use: "at-hand [--write] [--json]", Short: "show the mills, reeds and yarns that you have", Long: atHandLong,
		Example:           "  millside at-hand --write\n  millside at-hand\n  millside at-hand --json",
		Args:              asked.Args(0, 0, ""),
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE: func(*cobra.Command, []string) error {
			path, err := a.atHandPath()
			if err != nil {
				return err
			}
			made := false
			if write {
				if made, err = writeAtHandTemplate(path); err != nil {
					return err
				}
			}
			hand, found, err := settings.ReadAtHand(path)
			if err != nil && !isFieldError(err) {
				return err
			}
			if asJSON {
				return errors.Join(prose.WriteJSON(a.out, atHandToJSON(path, hand, found, err)), err)
			}
			atHandText(a.out, path, hand, found, made)
			return err
		},
	}
	cmd.Flags().BoolVar(&write, "write", false, "make the file where it is missing")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print for a program to read")
	return cmd
}

func isFieldError(err error) bool { return len(measure.FieldErrors(err)) > 0 }

// atHandPath is the file that the flag, the environment or the default names.
func (a *app) atHandPath() (string, error) {
	if a.atHandFlag != "" {
		return a.atHandFlag, nil
	}
	if path := a.env("MILLSIDE_AT_HAND"); path != "" {
		return path, nil
	}
	if path := a.folders().Config("at-hand.txt"); path != "" {
		return path, nil
	}
	return "", errors.New("there is no home folder for the file of things at hand: name it with --at-hand, or set " +
		"MILLSIDE_AT_HAND")
}

// atHand is what is at hand, for the commands that only take from it. It is read once. A file that is
// missing holds nothing, unless it was named on the command line. What can't be read in it is told and
// left out.
func (a *app) atHand() (athand.AtHand, error) {
	if a.hand == nil {
		hand, err := a.takeInHand()
		if err != nil {
			return hand, err
		}
		a.hand = &hand
	}
	return *a.hand, nil
}

func (a *app) takeInHand() (athand.AtHand, error) {
	path, err := a.atHandPath()
	if err != nil {
		return athand.AtHand{}, nil // without a home folder there is nothing at hand
	}
	hand, found, err := settings.ReadAtHand(path)
	if !found && err == nil && a.atHandFlag != "" {
		return hand, fmt.Errorf("reading the things at hand: there is no file %s; 'millside at-hand --write' makes it",
			path)
	}
	if isFieldError(err) {
		for line := range strings.SplitSeq(err.Error(), "\n") {
			fault := fmt.Sprintf("%s: %s; left out", prose.Clean(path), prose.Clean(line))
			fmt.Fprintln(a.errOut, "millside:", fault)
			a.handFaults = append(a.handFaults, fault)
		}
		err = nil
	}
	return hand, err
}

// handFault is what the full screen tells of the file of things at hand: its first fault, and how many more there are.
// The screen covers what was written before it.
func (a *app) handFault() string {
	switch n := len(a.handFaults) - 1; {
	case n < 0:
		return ""
	case n > 0:
		return fmt.Sprintf("%s; %s: 'millside at-hand' tells them all", a.handFaults[0],
			measure.Counted(n, "more fault", "more faults"))
	}
	return a.handFaults[0]
}

// atHandText tells where the file is and what it holds.
func atHandText(w io.Writer, path string, h athand.AtHand, found, made bool) {
	prose.PathRow(w, "At hand", path)
	switch {
	case made:
		fmt.Fprintln(w, "\nThe file was made. It holds examples; put in your own figures with any editor.")
	case !found:
		fmt.Fprintln(w, "\nThere is no such file yet; 'millside at-hand --write' makes it.")
	case h.IsEmpty():
		fmt.Fprintln(w, "\nIt names nothing yet.")
	default:
		fmt.Fprintln(w)
		for line := range strings.Lines(h.String()) {
			fmt.Fprintln(w, prose.Wrap(prose.Clean(line), 0))
		}
	}
}

// atHandFormat names the structure below, as sheetFormat does.
const atHandFormat = "millside-at-hand-1"

type atHandJSON struct {
	Format string        `json:"format"` // atHandFormat
	Path   string        `json:"path"`
	Found  bool          `json:"found"`
	Errors []string      `json:"errors,omitempty"`
	AtHand athand.AtHand `json:"at_hand"`
}

func atHandToJSON(path string, h athand.AtHand, found bool, err error) atHandJSON {
	out := atHandJSON{Format: atHandFormat, Path: path, Found: found, AtHand: h}
	for _, fe := range measure.FieldErrors(err) {
		out.Errors = append(out.Errors, fe.Error())
	}
	return out
}

// completeHand offers the names of the things at hand to a shell.
func (a *app) completeHand(names func(athand.AtHand) []string) cobra.CompletionFunc {
	return func(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
		path, err := a.atHandPath()
		if err != nil {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		hand, _, _ := settings.ReadAtHand(path) // what can be read of it will do
		return names(hand), cobra.ShellCompDirectiveNoFileComp
	}
}

// completeNames lets a shell complete the flags that take the name of a thing at hand.
func (a *app) completeNames(cmd *cobra.Command) {
	for flag, names := range map[string]func(athand.AtHand) []string{
		"mill": func(h athand.AtHand) []string {
			return namesOf(h.Mills, func(n athand.NamedMill) string { return n.Name })
		},
		"board": func(h athand.AtHand) []string {
			return namesOf(h.Boards, func(n athand.NamedBoard) string { return n.Name })
		},
		"paddle": func(h athand.AtHand) []string {
			return namesOf(h.Paddles, func(n athand.NamedPaddle) string { return n.Name })
		},
		"reed": func(h athand.AtHand) []string {
			return namesOf(h.Reeds, func(n athand.NamedReed) string { return n.Name })
		},
		"raddle": func(h athand.AtHand) []string {
			return namesOf(h.Raddles, func(n athand.NamedRaddle) string { return n.Name })
		},
		"loom": func(h athand.AtHand) []string {
			return namesOf(h.Looms, func(n athand.NamedLoom) string { return n.Name })
		},
		"yarn": namesOfYarns, "weft": namesOfYarns,
	} {
		_ = cmd.RegisterFlagCompletionFunc(flag, a.completeHand(names)) // fails only for a flag that doesn't exist
	}
}

func namesOfYarns(h athand.AtHand) []string {
	return namesOf(h.Yarns, func(n athand.NamedYarn) string { return n.Name })
}

func namesOf[T any](list []T, name func(T) string) []string {
	var names []string
	for _, t := range list {
		names = append(names, prose.Clean(name(t)))
	}
	return names
}

// writeAtHandTemplate makes the file unless it is there; made says whether it did.
func writeAtHandTemplate(path string) (made bool, err error) {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return false, fmt.Errorf("making the folder: %w", err)
	}
	err = files.Write(path, false, func(w io.Writer) error {
		_,
			err := io.WriteString(w, settings.AtHandTemplate)
		return err
	})
	if errors.Is(err, files.ErrThere) {
		return false, nil
	}
	return err == nil, err
}
