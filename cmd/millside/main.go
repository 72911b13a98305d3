// Command millside plans a warp and keeps the count at the warping mill.
//
// This package is the command line only: flags, text and JSON output, exit codes. What is said about a
// warp is asked of package plan, what is said about a half-wound one of package counter, and what needs
// keys and a screen is shown by package tui. One file holds one command. Its options are read by the room
// internal/asked; what it prints is made by pure functions in internal/planout, internal/recordout and
// internal/sheetout, all of which write through internal/prose.
//
// Answers go to standard output, messages to standard error; nothing is coloured, so that an answer can
// be piped, kept and compared. Names that come from records or from the command line are cleaned of
// control characters before a terminal sees them.
package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"runtime"
	"time"

	"millside/cmd/millside/internal/files"
	"millside/cmd/millside/internal/folders"
	"millside/cmd/millside/internal/locale"
	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/records"
	"millside/cmd/millside/internal/settings"
	"millside/cmd/millside/internal/voice"
	"millside/counter"
	"millside/counter/disk"
	"millside/counter/journal"
	"millside/plan"
	"millside/plan/athand"
	"millside/plan/entry"
	"millside/plan/figure"
	"millside/tui"
	"millside/tui/look"

	"github.com/mattn/go-isatty"
	"github.com/spf13/cobra"
)

func main() {
	// A double click on the program's icon should open the home screen, not a lecture on terminals.
	cobra.MousetrapHelpText = ""
	os.Exit(newApp().run(os.Args[1:]))
}

// app is what the commands share: where answers go and where the outer world is asked. Tests put their
// own in its place.
type app struct {
	in, tty *os.File      // the keyboard and the screen
	out     *bufio.Writer // answers; flushed once, so that a full disk is noticed
	errOut  io.Writer     // messages
	env     func(string) string
	now     counter.Clock
	// terminal says whether a file is a terminal.
	terminal func(*os.File) bool
	// fs is the file system that records are on.
	fs journal.FS
	// screen runs the full screen.
	screen func(context.Context, tui.Options) error

	recordsFlag, atHandFlag string
	alone                   bool           // wind without a lock where there are none
	voice                   *voice.Speaker // what --say asks for; nil without it
	// hand is what is at hand, nil until it is asked for; handFaults is what can't be used of its file.
	hand       *athand.AtHand
	handFaults []string
	// folder is the folder of records, nil until it is asked for.
	folder *records.Folder
}

func newApp() *app {
	return &app{
		in: os.Stdin, tty: os.Stdout, out: bufio.NewWriter(os.Stdout), errOut: os.Stderr,
		env: os.Getenv, now: time.Now, screen: tui.Run, fs: journal.OS(),
		terminal: func(f *os.File) bool { return isatty.IsTerminal(f.Fd()) || isatty.IsCygwinTerminal(f.Fd()) },
	}
}

// settings are the weaver's own, with what the system's locale says where they don't, and the way to keep changed
// ones. What can't be read is told to errOut.
func (a *app) settings(errOut io.Writer) (tui.Settings, func(tui.Settings) error) {
	return settings.LoadSettings(a.folders().Config("settings.txt"), locale.Of(a.env), errOut, files.Write)
}

// newSpec is what a new warp begins with: in the weaver's units.
func (a *app) newSpec() plan.Spec {
	own, _ := a.settings(io.Discard) // what is wrong with them is told where they matter more
	return entry.NewSpec(own.NewUnits())
}

// run carries out a command line and gives the exit code.
func (a *app) run(args []string) int {
	own, _ := a.settings(io.Discard)
	figure.WriteComma(own.Comma())
	figure.WriteForProgram(false)
	root := a.root()
	root.SetArgs(args)
	root.SetOut(a.out)
	root.SetErr(a.errOut)
	root.SetIn(a.in)
	err := root.ExecuteContext(context.Background())
	if flush := a.out.Flush(); err == nil && flush != nil {
		err = fmt.Errorf("writing the answer: %w", flush)
	}
	return report(a.errOut, err)
}

// folders says where the system keeps what belongs to a user.
func (a *app) folders() folders.System { return folders.System{OS: runtime.GOOS, Env: a.env} }

// store is the folder of records that the flag, the environment or the default names.
func (a *app) store() (journal.Store, error) {
	dir, err := a.folders().Records(a.recordsFlag)
	if err != nil {
		return journal.Store{}, err
	}
	fsys := a.fs
	if a.alone {
		fsys = disk.WithoutLocks(fsys)
	}
	return journal.Store{Dir: dir, FS: fsys}, nil
}

// records is that folder for the length of a command: each record in it is read once.
func (a *app) records() (*records.Folder, error) {
	if a.folder == nil {
		store, err := a.store()
		if err != nil {
			return nil, err
		}
		a.folder = records.New(store)
	}
	return a.folder, nil
}

// errNoTerminal is what the commands that need a screen say without one. The detail names the command
// that works all the same.
var errNoTerminal = errors.New("this needs a terminal to draw on and to read keys from")

// needTerminal is nil if there is a screen, and otherwise an error that names a way without one.
func (a *app) needTerminal(instead string) error {
	if a.terminal(a.in) && a.terminal(a.tty) {
		if a.env("TERM") == "dumb" {
			return fmt.Errorf("%w: TERM is dumb, so the terminal can't place the cursor; %s", errNoTerminal, instead)
		}
		return nil
	}
	return fmt.Errorf("%w; without one, %s", errNoTerminal, instead)
}

// open runs the full screen. What to show comes from the command, the rest is the same for all.
func (a *app) open(ctx context.Context, o tui.Options) (err error) {
	if o.Store, err = a.store(); err != nil {
		return err
	}
	if a.voice != nil {
		o.Say = a.voice.Say
		defer a.hush()
	}
	hand, err := a.atHand()
	switch {
	case err != nil && a.atHandFlag != "":
		return err
	case err != nil: // a warp can be wound without the file
		fmt.Fprintln(a.errOut, "millside:", prose.Clean(err.Error()))
		a.handFaults = []string{prose.Clean(err.Error())}
	}
	o.AtHand, o.HandFault, o.Pace = hand, a.handFault(), a.ownPace()
	o.Settings, o.SaveSettings = a.settings(a.errOut)
	o.Now, o.In, o.Out, o.Practice = a.now, a.in, a.tty, practiceSpec()
	// https://no-color.org: any value but the empty one. A dumb terminal can't colour.
	o.NoColor = a.env("NO_COLOR") != "" || a.env("TERM") == "dumb"
	o.ASCII = runtime.GOOS != "windows" && !look.HasUTF8(a.env) // Windows has no locale in its environment
	// what was read is not kept for as long as the screen lives
	a.folder = nil
	return a.screen(ctx, o)
}
