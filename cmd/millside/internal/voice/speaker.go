package voice

import (
	"context"
	"errors"
	"fmt"
	"os/exec"
	"runtime"
	"slices"
	"sync"
	"time"

	"millside/plan/measure"
)

const (
	apart  = 300 * time.Millisecond // from the start of one command to the start of the next
	limit  = 30 * time.Second       // a command that takes longer is ended
	finish = 2 * time.Second        // how long the end of the program waits for the last words
	grace  = 500 * time.Millisecond // how long a command may take to end when it is told to
)

// Speaker hands texts to a command. The command is run without a shell, with the text as its last argument and nothing
// on its input; what it writes is thrown away. One runs at a time, and they start a third of a second apart at least. A
// text that comes meanwhile ends the one that is being said; of several that come at once the newest is said. A nil
// Speaker says nothing.
type Speaker struct {
	run   func(ctx context.Context, text string) error
	after func(time.Duration) <-chan time.Time

	mu      sync.Mutex
	waiting string             // the text that comes next; empty if none waits
	stop    context.CancelFunc // ends the command that runs; nil if none does
	failed  error              // the first failure, until it is told
	told    bool               // there was a failure
	closed  bool

	wake chan struct{} // something waits, or the end has come
	quit chan struct{} // the end has come
	done chan struct{} // the last text is said
}

// New makes a speaker for a command line. Blanks part its words; what stands between two ' or between two " is kept as
// it is. A program that can't be found is refused at once, with a [*measure.FieldError].
func New(command string) (*Speaker, error) {
	words, err := splitCommand(command)
	if err == nil {
		_, err = exec.LookPath(words[0])
	}
	if err != nil {
		return nil, &measure.FieldError{Field: "--say", Value: command,
			Want: fmt.Sprintf("a command that can be run: %v", err)}
	}
	return begin(func(ctx context.Context, text string) error { return say(ctx, words, text) }, time.After), nil
}

// say runs the command for one text, until it has said it or is told to stop.
func say(ctx context.Context, words []string, text string) error {
	ctx, cancel := context.WithTimeout(ctx, limit)
	defer cancel()
	cmd := exec.CommandContext(ctx, words[0], append(slices.Clone(words[1:]), text)...)
	cmd.WaitDelay = grace
	family(cmd)
	err := cmd.Run()
	disband(cmd)
	if errors.Is(ctx.Err(), context.Canceled) {
		return ctx.Err()
	}
	if err != nil {
		return fmt.Errorf("the command of --say failed, and may say nothing: %w", err)
	}
	return nil
}

// begin starts the worker. How a text is said and how time goes by come from outside.
func begin(run func(context.Context, string) error, after func(time.Duration) <-chan time.Time) *Speaker {
	s := &Speaker{run: run, after: after, wake: make(chan struct{}, 1), quit: make(chan struct{}),
		done: make(chan struct{})}
	go s.work()
	return s
}

// Say hands a text over and returns at once. Control characters are taken out; an empty text is nothing.
func (s *Speaker) Say(text string) {
	text = measure.Clean(text)
	if s == nil || text == "" {
		return
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.closed {
		return
	}
	s.waiting = text
	if s.stop != nil {
		s.stop()
	}
	s.nudge()
}

// nudge tells the worker to look. It is held for it if the worker is busy.
func (s *Speaker) nudge() {
	select {
	case s.wake <- struct{}{}:
	default:
	}
}

// work says one text after the other until the speaker is closed. It keeps to one thread, since on Linux the command
// ends with the thread that started it.
func (s *Speaker) work() {
	defer close(s.done)
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	for range s.wake {
		text, closed, ctx := s.take()
		if text != "" {
			next := s.after(apart)
			s.note(s.run(ctx, text))
			select {
			case <-next:
			case <-s.quit:
			}
		}
		if closed {
			return
		}
	}
}

// take takes the text that waits, and makes what its command can be ended by.
func (s *Speaker) take() (text string, closed bool, ctx context.Context) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if text, s.waiting = s.waiting, ""; text == "" {
		return "", s.closed, nil
	}
	ctx, s.stop = context.WithCancel(context.Background())
	return text, s.closed, ctx
}

// note keeps the first failure. That a command was ended for a newer text is none.
func (s *Speaker) note(err error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.stop()
	s.stop = nil
	if err != nil && !errors.Is(err, context.Canceled) && !s.told {
		s.failed, s.told = err, true
	}
}

// Problem gives the first failure, once; nil otherwise.
func (s *Speaker) Problem() error {
	if s == nil {
		return nil
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	err := s.failed
	s.failed = nil
	return err
}

// Close takes no more texts, waits a little for the last one to be said, and ends the command that still runs then.
func (s *Speaker) Close() {
	if s == nil {
		return
	}
	s.mu.Lock()
	if !s.closed {
		s.closed = true
		close(s.quit)
	}
	s.nudge()
	s.mu.Unlock()
	select {
	case <-s.done:
		return
	case <-s.after(finish):
	}
	s.mu.Lock()
	s.waiting = ""
	if s.stop != nil {
		s.stop()
	}
	s.mu.Unlock()
	select {
	case <-s.done:
	case <-s.after(2 * grace):
	}
}
