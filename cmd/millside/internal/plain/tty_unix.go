//go:build unix

package plain

import (
	"os"

	"github.com/charmbracelet/x/term"
	"golang.org/x/sys/unix"
)

// KeyByKey makes a terminal send every key at once and show none by itself; signals such as that of Ctrl-C still come.
// It gives the way back. False means that it can't be done, so that lines have to be read.
func KeyByKey(tty *os.File) (restore func(), ok bool) {
	was, err := term.GetState(tty.Fd())
	if err != nil {
		return nil, false
	}
	now := *was
	now.Lflag &^= unix.ICANON | unix.ECHO
	now.Cc[unix.VMIN], now.Cc[unix.VTIME] = 1, 0
	if err := term.SetState(tty.Fd(), &now); err != nil {
		return nil, false
	}
	return func() { _ = term.SetState(tty.Fd(), was) }, true
}
