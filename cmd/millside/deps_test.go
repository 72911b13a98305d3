package main

import (
	_ "github.com/adrg/xdg"
	_ "github.com/charmbracelet/bubbles/textinput"
	_ "github.com/charmbracelet/bubbletea"
	_ "github.com/charmbracelet/lipgloss"
	_ "github.com/charmbracelet/x/exp/teatest"
	_ "github.com/creack/pty"
	_ "github.com/gofrs/flock"
	_ "github.com/google/go-cmp/cmp"
	_ "github.com/hinshun/vt10x"
	_ "github.com/muesli/termenv"
	_ "github.com/rogpeppe/go-internal/testscript"
	_ "github.com/spf13/cobra"
	_ "github.com/spf13/cobra/doc"
	_ "pgregory.net/rapid"
)
