//go:build !unix

package tui

import tea "github.com/charmbracelet/bubbletea"

// aside does nothing: this system can't put a program aside.
type aside struct{}

func putAside(*tea.Program) (*aside, func()) { return &aside{}, func() {} }

func (*aside) suspend() {}
