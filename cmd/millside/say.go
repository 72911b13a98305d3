package main

import (
	"context"
	"fmt"
	"os/exec"
	"slices"
	"sync"
	"time"

	"github.com/spf13/cobra"

	"millside/plan/measure"
)

const (
	sayApart  = time.Second      // from the start of one command to the start of the next
	sayLimit  = 30 * time.Second // a command that takes longer is ended
	sayFinish = 2 * time.Second  // how long the end of the program waits for the last words
)

// speaker hands texts to a command of the weaver's own, such as one that speaks them. The command is run
// without a shell, with the text as its last argument and nothing on its input; what it writes is thrown
// away. One runs at a time, and they start a second apart at least. A text that comes meanwhile waits, and
// the newest takes the place of one that waits. Nothing here ever keeps the winding waiting.
type speaker struct {
	run   func(text string) error
	after func(time.Duration) <-chan time.Time

	mu      sync.Mutex
	waiting string // the text that comes next; empty if none waits
	failed  error  // the first failure, until it is told
	told    bool   // there was a failure
	closed  bool

	wake chan struct{} // something waits, or the end has come
	done chan struct{} // the last text is said
}

// newSpeaker makes a speaker for a command line, see [splitCommand]. A program that can't be found is
// refused at once.
func newSpeaker(command string) (*speaker, error) {
	words, err := splitCommand(command)
	if err == nil {
		_, err = exec.LookPath(words[0])
	}
	if err != nil {
		return nil, &measure.FieldError{Field: "--say", Value: command, Want: fmt.Sprintf("a command that can be run: %v", err)}
	}
	return startSpeaker(func(text string) error { return runSay(words, text) }, time.After), nil
}

// runSay runs the command for one text.
func runSay(words []string, text string) error {
	ctx, cancel := context.WithTimeout(context.Background(), sayLimit)
	defer cancel()
	args := append(slices.Clone(words[1:]), text)
	if err := exec.CommandContext(ctx, words[0], args...).Run(); err != nil {
		return fmt.Errorf("the command of --say failed, and may say nothing: %w", err)
	}
	return nil
}

// startSpeaker starts the worker. How a text is said and how time goes by come from outside.
func startSpeaker(run func(string) error, after func(time.Duration) <-chan time.Time) *speaker {
	s := &speaker{run: run, after: after, wake: make(chan struct{}, 1), done: make(chan struct{})}
	go s.work()
	return s
}

// say hands a text over and returns at once. Control characters are taken out; an empty text is nothing.
// A nil speaker says nothing.
func (s *speaker) say(text string) {
	text = clean(text)
	if s == nil || text == "" {
		return
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if !s.closed {
		s.waiting = text
		s.nudge()
	}
}

// nudge tells the worker to look. It is held for it if the worker is busy.
func (s *speaker) nudge() {
	select {
	case s.wake <- struct{}{}:
	default:
	}
}

// work says one text after the other until the speaker is closed.
func (s *speaker) work() {
	defer close(s.done)
	for range s.wake {
		text, closed := s.take()
		if text != "" {
			apart := s.after(sayApart)
			s.note(s.run(text))
			if !closed {
				<-apart
			}
		}
		if closed {
			return
		}
	}
}

func (s *speaker) take() (text string, closed bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	text, s.waiting = s.waiting, ""
	return text, s.closed
}

// note keeps the first failure.
func (s *speaker) note(err error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if err != nil && !s.told {
		s.failed, s.told = err, true
	}
}

// problem gives the first failure, once; nil otherwise.
func (s *speaker) problem() error {
	if s == nil {
		return nil
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	err := s.failed
	s.failed = nil
	return err
}

// close takes no more texts, and waits a little for the last one to be said. A command that still runs
// then is left to itself.
func (s *speaker) close() {
	if s == nil {
		return
	}
	s.mu.Lock()
	s.closed = true
	s.nudge()
	s.mu.Unlock()
	select {
	case <-s.done:
	case <-s.after(sayFinish):
	}
}

// sayFlag adds --say to a command that winds. What it names is looked up before the command does anything.
func (a *app) sayFlag(cmd *cobra.Command) {
	var command string
	cmd.Flags().StringVar(&command, "say", "", "run a `command` of yours at every step, with the words as its last argument")
	cmd.PreRunE = func(cmd *cobra.Command, _ []string) (err error) {
		if cmd.Flags().Changed("say") {
			a.voice, err = newSpeaker(command)
		}
		return usage(cmd, err)
	}
}

// hush ends the voice, if there is one, and tells whether it failed.
func (a *app) hush() {
	a.voice.close()
	a.complain()
}

// complain tells once that the voice does not work.
func (a *app) complain() {
	if err := a.voice.problem(); err != nil {
		fmt.Fprintln(a.errOut, "millside:", clean(err.Error()))
	}
}
