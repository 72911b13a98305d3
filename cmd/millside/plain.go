package main

import (
	"errors"
	"fmt"
	"os"
	"os/signal"
	"strings"
	"syscall"

	"millside/cmd/millside/internal/asked"
	"millside/cmd/millside/internal/plain"
	"millside/cmd/millside/internal/prose"
	"millside/cmd/millside/internal/recordout"
	"millside/cmd/millside/internal/voice"
	"millside/counter/disk"
	"millside/counter/journal"
	"millside/counter/session"
	"millside/tui"
	"millside/tui/keys"

	"github.com/spf13/cobra"
)

const plainHelp = `--plain winds line by line, without the full screen: for a screen reader, a very small
terminal, or another program. In a terminal each key works as on the full screen, and a
colon begins a word; from a pipe an empty line means that the pass is laid, and 'help'
lists the words that may stand in its place. At the end of the input the winding
is paused.`

const sayHelp = `--say runs a command of your own at every step, such as one that speaks: without a
shell, with a few words as its last argument, one at a time. A newer step ends the
command that still says an older one, and the last one ends with the program. Blanks
part its words; what stands between two ' or two " is kept as it is.`

// plainMode winds a record line by line, or key by key in a terminal, until the winder leaves, the input ends or a
// signal comes. In each case the record is left paused.
func (a *app) plainMode(path string) (err error) {
	store, err := a.store()
	if err != nil {
		return err
	}
	rec, err := journal.Open(store.FS, path)
	if errors.Is(err, disk.ErrNoLocks) && a.goesOnAlone() {
		rec, err = journal.Open(disk.WithoutLocks(store.FS), path)
	}
	if err != nil {
		return recordout.HelpDamaged(err, path)
	}
	defer func() { err = errors.Join(savedBeside(rec, err), rec.Close()) }()
	defer a.hush()
	open := openingOf(rec, !a.terminal(a.in))
	own, _ := a.settings(a.errOut)
	t := plain.New(rec, open, keys.Default().WithOwn(own.Keys))
	t.Mend = func(way session.Remedy) (plain.Record, session.Opening, error) {
		next, err := mended(rec, way)
		if err != nil {
			return nil, open, err
		}
		rec = next
		return rec, openingOf(rec, open.Piped), nil
	}
	if !open.Piped && a.terminal(a.tty) {
		if restore, ok := plain.KeyByKey(a.in); ok {
			defer restore()
			return a.talk(t, plain.Keys(a.in, a.now), true)
		}
	}
	return a.talk(t, plain.Lines(a.in, a.now), false)
}

// goesOnAlone asks in a terminal whether to wind where there are no locks. From a pipe nobody can answer: there the
// option says it.
func (a *app) goesOnAlone() bool {
	if !a.terminal(a.in) || !a.terminal(a.tty) {
		return false
	}
	ask := session.AskAlone()
	for _, text := range append([]string{ask.Title}, ask.Words...) {
		fmt.Fprintln(a.out, text)
	}
	fmt.Fprintf(a.out, "Type %s to go on, or only Enter to leave.\n", ask.Answer)
	if a.out.Flush() != nil {
		return false
	}
	var line [64]byte // a terminal gives one line at a time
	n, err := a.in.Read(line[:])
	return err == nil && strings.EqualFold(strings.TrimSpace(string(line[:n])), ask.Answer)
}

// openingOf is a record as it was opened, for a conversation.
func openingOf(rec *journal.Record, piped bool) session.Opening {
	return session.Opening{State: rec.State(), All: rec.All(), Torn: rec.Torn(), Lost: rec.Lost().Lines, Piped: piped}
}

// mended is the record to go on with where one can't be written: read anew, or saved beside.
func mended(rec *journal.Record, way session.Remedy) (*journal.Record, error) {
	if way == session.TryAgain {
		return rec.Reopen()
	}
	next, err := rec.SaveBeside()
	if err == nil {
		_ = rec.Close() // it takes nothing more
	}
	return next, err
}

// savedBeside keeps what was counted where the record was moved or replaced while it was wound, and adds to the error
// where it is now.
func savedBeside(rec *journal.Record, err error) error {
	if !errors.Is(err, journal.ErrReplaced) {
		return err
	}
	saved, wrong := rec.SaveBeside()
	if wrong != nil {
		return errors.Join(err, fmt.Errorf("what was counted could not be saved beside it either: %w", wrong))
	}
	return errors.Join(fmt.Errorf("%w; what was counted is saved in %s", err, saved.Path()), saved.Close())
}

// talk carries a conversation on: lines, keys and signals in, sentences out.
func (a *app) talk(t *plain.Talk, typed <-chan plain.Input, keyByKey bool) error {
	ends, wakes, pipes := make(chan os.Signal, 1), make(chan os.Signal, 1), make(chan os.Signal, 1)
	signal.Notify(ends, syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP, syscall.SIGQUIT)
	// an answer that nobody reads is an error, so that the winding is paused first
	signal.Notify(pipes, syscall.SIGPIPE)
	notifyWake(wakes)
	defer signal.Stop(ends)
	defer signal.Stop(wakes)
	defer signal.Stop(pipes)
	r, err := t.Begin(a.now(), keyByKey), error(nil)
	over, echo := false, ""
	for {
		if err := a.tell(r, &echo, t.Echo()); err != nil { // nobody is there to hear it
			_, paused := t.Leave(a.now())
			return errors.Join(err, paused)
		}
		if err != nil || over {
			return err
		}
		open := t.Session().Stage(a.now()) != session.Done
		select {
		case in, more := <-typed:
			switch {
			case !more:
				r, err = t.Leave(a.now())
			case in.Key != "":
				r, err = t.Key(in.Key, in.At)
			case keyByKey:
				r, err = t.Piece(in.Text, in.Ended, in.At)
			default:
				r, err = t.Line(in.Text, in.At)
			}
			// With the last step of a warp the lines have come to their end; a finished one can be opened again.
			over = r.Over || open && !keyByKey && t.Session().Stage(a.now()) == session.Done
		case <-wakes:
			if keyByKey {
				plain.KeyByKey(a.in) // the shell may have set the terminal back
			}
			r = t.Wake(a.now())
		case s := <-ends:
			_, err = t.Leave(a.now())
			if s, ok := s.(syscall.Signal); ok && err == nil {
				err = &tui.SignalError{Signal: s}
			}
			return err
		}
	}
}

// tell writes sentences, one a line, and what is being typed below them, and hands the short form to the voice. Only
// what was typed since is written again.
func (a *app) tell(r session.Reply, echo *string, typed string) error {
	was := *echo
	*echo = typed
	if len(r.Said) > 0 && was != "" {
		fmt.Fprintln(a.out)
		was = ""
	}
	for _, s := range r.Said {
		fmt.Fprintln(a.out, prose.Clean(s))
	}
	switch {
	case len(typed) > len(was) && typed[:len(was)] == was:
		fmt.Fprint(a.out, prose.Clean(typed[len(was):]))
	case typed != was && typed != "": // something was taken out: say the line again
		fmt.Fprint(a.out, "\n"+prose.Clean(typed))
	case typed == "" && was != "":
		fmt.Fprintln(a.out)
	}
	if err := a.out.Flush(); err != nil {
		return fmt.Errorf("writing the answer: %w", err)
	}
	a.voice.Say(r.Short)
	a.complain()
	return nil
}

// sayFlag adds --say to a command that winds. What it names is looked up before the command does anything.
func (a *app) sayFlag(cmd *cobra.Command) {
	var command string
	cmd.Flags().StringVar(&command, "say", "",
		"run a `command` of yours at every step, with the words as its last argument")
	cmd.PreRunE = func(cmd *cobra.Command, _ []string) (err error) {
		if cmd.Flags().Changed("say") {
			a.voice, err = voice.New(command)
		}
		return asked.Usage(cmd, err)
	}
}

// hush ends the voice, if there is one, and tells whether it failed.
func (a *app) hush() {
	a.voice.Close()
	a.complain()
}

// complain tells once that the voice does not work.
func (a *app) complain() {
	if err := a.voice.Problem(); err != nil {
		fmt.Fprintln(a.errOut, "millside:", prose.Clean(err.Error()))
	}
}
