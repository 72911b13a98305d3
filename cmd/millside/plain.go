package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"

	"millside/counter"
	"millside/tui"
)

const plainHelp = `--plain winds line by line, without the full screen: for a screen reader, a very small
terminal, or another program. An empty line means that the pass is laid; 'help' lists the
words that may be typed instead. At the end of the input the winding is paused.`

const sayHelp = `--say runs a command of your own at every step, such as one that speaks: without a
shell, with the words as its last argument, one at a time and at least a second apart.
Blanks part its words; what stands between two ' or two " is kept as it is.`

// maxTyped is the longest line that is read, in bytes; a note is far shorter.
const maxTyped = 8 << 10

// plainMode winds a record line by line until the winder leaves, the input ends or a signal comes. In each
// case the record is left paused.
func (a *app) plainMode(path string) (err error) {
	store, err := a.store()
	if err != nil {
		return err
	}
	rec, err := counter.Open(store.FS, path)
	if err != nil {
		return helpDamaged(err, path)
	}
	defer func() { err = errors.Join(err, rec.Close()) }()
	defer a.hush()
	return a.talk(newPlain(rec, a.now), typed(a.in))
}

// talk carries a conversation on: lines and signals in, sentences out.
func (a *app) talk(p *plain, lines <-chan string) error {
	ends, wakes := make(chan os.Signal, 1), make(chan os.Signal, 1)
	signal.Notify(ends, syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP, syscall.SIGQUIT)
	notifyWake(wakes)
	defer signal.Stop(ends)
	defer signal.Stop(wakes)
	said, over, err := p.begin(), p.st.Finished, error(nil)
	for {
		if err != nil {
			return err
		}
		if err := a.tell(said); err != nil { // nobody is there to hear it
			_, _, paused := p.leave()
			return errors.Join(err, paused)
		}
		if over {
			return nil
		}
		select {
		case line, more := <-lines:
			if !more {
				said, over, err = p.leave()
				break
			}
			said, over, err = p.take(line)
		case <-wakes:
			said = p.lookAgain()
		case s := <-ends:
			_, _, err = p.leave()
			if s, ok := s.(syscall.Signal); ok && err == nil {
				err = &tui.SignalError{Signal: s}
			}
			return err
		}
	}
}

// tell writes sentences, one a line, and hands them to the voice.
func (a *app) tell(said []string) error {
	for _, s := range said {
		fmt.Fprintln(a.out, clean(s))
	}
	if err := a.out.Flush(); err != nil {
		return fmt.Errorf("writing the answer: %w", err)
	}
	a.voice.say(strings.Join(said, " "))
	a.complain()
	return nil
}

// typed reads lines from an input until it ends. Of a line that is too long only the beginning is given,
// which is no word that is known.
func typed(in io.Reader) <-chan string {
	lines := make(chan string)
	go func() {
		defer close(lines)
		r := bufio.NewReaderSize(in, maxTyped)
		for {
			line, more, err := r.ReadLine()
			if err != nil {
				return
			}
			text := string(line)
			for more && err == nil {
				_, more, err = r.ReadLine()
			}
			lines <- text
		}
	}()
	return lines
}
