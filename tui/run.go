package tui

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"syscall"

	"millside/counter"
	"millside/counter/journal"
	"millside/plan"
	"millside/plan/athand"
	"millside/plan/times"
	"millside/tui/ground"
	"millside/tui/keys"
	"millside/tui/look"
	"millside/tui/mill"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"
)

// Bubble Tea is loaded by now: see package ground.
func init() { ground.Restore() }

// Settings is what a weaver sets once for all warps.
type Settings = mill.Settings

// ParseSettings reads a settings file. See [mill.ParseSettings].
func ParseSettings(text string) (Settings, error) { return mill.ParseSettings(text) }

// Options says how the screens start.
type Options struct {
	// Store is where records are kept.
	Store journal.Store
	// Record is an open record to wind, or to look at, at once; nil opens home. It is closed at the end.
	Record *journal.Record
	// NoLocks is the path of a record to wind whose folder knows no locks: the weaver is asked first. Empty for none.
	NoLocks string
	// List holds the records as home shows them at first, and ListErr why they can't be listed.
	List    []journal.Summary
	ListErr error
	// Spec opens the new-warp form filled with these values; nil doesn't.
	Spec *plan.Spec
	// Assumed is what Spec takes because there is only one of it at hand.
	Assumed []athand.Assumed
	// Edits is the path of a record that isn't begun, whose plan the form changes; "" makes a new warp.
	Edits string
	// Now is the clock.
	Now counter.Clock
	// In and Out are the terminal.
	In, Out *os.File
	// NoColor draws without colour, but bold and reversed.
	NoColor bool
	// ASCII draws with no other characters than those of ASCII.
	ASCII bool
	// Say is told each step as a line of plain text; nil for no one. It returns at once.
	Say func(text string)
	// AtHand is what the weaver has at hand, offered on the form; HandFault is what can't be used of its file and what
	// would do, told on home or on the form, whichever is the first screen. Empty if there is no fault.
	AtHand    athand.AtHand
	HandFault string
	// Settings are the weaver's own, and SaveSettings keeps changed ones; nil doesn't.
	Settings     Settings
	SaveSettings func(Settings) error
	// Pace is the weaver's own pace; the zero value is the published range.
	Pace times.Pace
	// Practice is the warp that the home screen offers for practice.
	Practice plan.Spec
}

// SignalError says that a signal from the system ended the program.
type SignalError struct {
	// Signal is the signal that came.
	Signal syscall.Signal
}

// Error names the signal.
func (e *SignalError) Error() string { return fmt.Sprintf("ended by signal: %s", e.Signal) }

// ErrInterrupted is returned when the weaver leaves with Ctrl-C.
var ErrInterrupted = errors.New("interrupted")

// NotSavedError says that the weaver left while the record could not be written.
type NotSavedError struct {
	// Err says why it could not be.
	Err error
}

// Error says so in a sentence.
func (e *NotSavedError) Error() string {
	return fmt.Sprintf("left while the record could not be written; the last press was not counted: %v", e.Err)
}

// Unwrap gives the reason.
func (e *NotSavedError) Unwrap() error { return e.Err }

// framesPerSecond bounds how often the terminal is drawn. Each frame that differs is drawn within a
// twentieth of a second, and an idle screen costs next to nothing.
const framesPerSecond = 20

// Run shows the screens until the weaver leaves. It returns nil when the weaver left,
// [ErrInterrupted] after Ctrl-C, a [*SignalError] after SIGTERM, SIGHUP, SIGQUIT or SIGINT, and
// any other error when the screens could not be shown.
func Run(ctx context.Context, o Options) error {
	ring := newRinger(func() { _, _ = o.Out.WriteString("\a") })
	defer ring.stop()
	a := newApp(deps{store: o.Store, styles: o.styles(), keys: keys.Default(), sound: ring.sound, practice: o.Practice,
		atHand: o.AtHand, pace: o.Pace, say: o.Say, tick: tea.Tick, settings: o.Settings, save: o.SaveSettings},
		o.Now())
	a = a.started(o)
	var put *aside
	filter := stamp(o.Now)
	p := tea.NewProgram(a, tea.WithContext(ctx), tea.WithInput(o.In), tea.WithOutput(o.Out),
		tea.WithAltScreen(), tea.WithMouseCellMotion(), tea.WithFPS(framesPerSecond), tea.WithoutSignalHandler(),
		tea.WithFilter(func(m tea.Model, msg tea.Msg) tea.Msg {
			if _, ok := msg.(tea.SuspendMsg); ok {
				put.suspend()
				return nil
			}
			return filter(m, msg)
		}))
	put, end := putAside(p)
	caught, stop := quitOnSignal(p)
	final, err := p.Run()
	stop()
	end()
	if last, ok := final.(app); ok {
		if kept := last.keepForm(); err == nil {
			err = kept
		}
		last.close()
		if w, winds := last.screen.(winding); winds && err == nil && w.NotSaved() != nil && !last.interrupted {
			err = &NotSavedError{w.NotSaved()}
		}
		if err == nil && last.interrupted {
			err = ErrInterrupted
		}
	}
	if s := caught(); s != nil {
		return s
	}
	var not *NotSavedError
	if errors.As(err, &not) {
		return err
	}
	if err != nil && !errors.Is(err, ErrInterrupted) {
		return fmt.Errorf("showing the screen: %w", err)
	}
	return err
}

// styles are the looks that the terminal can show.
func (o Options) styles() look.Styles {
	profile := termenv.NewOutput(o.Out).EnvColorProfile()
	s := look.NewStyles(o.Out, profile)
	if look.LightGround(os.Getenv) {
		s = s.OnLight(profile)
	}
	if o.NoColor {
		s = look.NewUncoloured(o.Out)
	}
	s.ASCII = o.ASCII
	return s
}

// quitOnSignal ends the program in good order when the system asks it to: the terminal is set right
// first. Bubble Tea itself would not notice a terminal that was closed.
func quitOnSignal(p *tea.Program) (caught func() error, stop func()) {
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP, syscall.SIGQUIT)
	got := make(chan syscall.Signal, 1)
	done := make(chan struct{})
	go func() {
		select {
		case s := <-signals:
			if s, ok := s.(syscall.Signal); ok {
				got <- s
			}
			p.Quit()
		case <-done:
		}
	}()
	caught = func() error {
		select {
		case s := <-got:
			return &SignalError{Signal: s}
		default:
			return nil
		}
	}
	return caught, func() { signal.Stop(signals); close(done) }
}
