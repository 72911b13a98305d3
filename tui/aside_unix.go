//go:build unix

package tui

import (
	"os"
	"os/signal"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"
)

// aside puts the program aside and takes it up again: with Ctrl-Z, with SIGTSTP from outside, and after SIGSTOP, which
// no program hears coming. Bubble Tea's own way forgets the mouse and hears of nothing from outside.
type aside struct {
	p    *tea.Program
	ask  chan struct{}
	done chan struct{}
	over chan struct{}
}

// putAside begins to listen. The end function stops it.
func putAside(p *tea.Program) (a *aside, end func()) {
	a = &aside{p: p, ask: make(chan struct{}, 1), done: make(chan struct{}), over: make(chan struct{})}
	go a.listen()
	return a, func() { close(a.done); <-a.over }
}

// suspend asks for what Ctrl-Z does. It returns at once.
func (a *aside) suspend() {
	select {
	case a.ask <- struct{}{}:
	default:
	}
}

func (a *aside) listen() {
	defer close(a.over)
	stops, goes := make(chan os.Signal, 1), make(chan os.Signal, 1)
	signal.Notify(stops, syscall.SIGTSTP)
	signal.Notify(goes, syscall.SIGCONT)
	defer signal.Stop(goes)
	defer signal.Stop(stops)
	for {
		whom := os.Getpid()
		select {
		case <-a.done:
			return
		case <-goes: // after a stop that nobody heard of: what the terminal is like now isn't known
			a.takeUp(a.p.ReleaseTerminal())
			continue
		case <-a.ask:
			whom = 0 // as the key does outside a raw terminal: all that was started with the program
		case <-stops:
		}
		err := a.p.ReleaseTerminal()
		if err == nil {
			stop(whom, goes)
		}
		a.takeUp(err)
	}
}

// stop stops the program, or its whole family, and returns when it goes on. A Go program that once asked to be told of
// SIGTSTP can't let it have its usual effect again; SIGSTOP has the same one.
func stop(whom int, goes chan os.Signal) {
	select { // an older one would let it go on at once
	case <-goes:
	default:
	}
	if syscall.Kill(whom, syscall.SIGSTOP) == nil {
		<-goes
	}
}

// takeUp sets the terminal up again, with the mouse, and has the whole screen drawn.
func (a *aside) takeUp(err error) {
	if err == nil {
		err = a.p.RestoreTerminal()
	}
	if err != nil {
		a.p.Quit() // there is no terminal any more; what was counted is on the disk
		return
	}
	a.p.Send(tea.EnableMouseCellMotion())
	a.p.Send(tea.ClearScreen())
	a.p.Send(tea.ResumeMsg{})
}
