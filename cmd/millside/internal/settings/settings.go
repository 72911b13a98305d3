package settings

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"millside/cmd/millside/internal/files"
	"millside/cmd/millside/internal/prose"
	"millside/tui"
)

// ConfigFile is the path of a file of the weaver's own settings: under $XDG_CONFIG_HOME, else under
// ~/.config; "" where there is no home folder. Relative values of $XDG_CONFIG_HOME are ignored, as the XDG
// Base Directory Specification (version 0.8, "Basics") asks.
func ConfigFile(env func(string) string, name string) string {
	if dir := env("XDG_CONFIG_HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, "millside", name)
	}
	if dir := env("HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, ".config", "millside", name)
	}
	return ""
}

// LoadSettings reads the settings, and gives the way to keep changed ones, which keeps the file whole. What
// can't be read is told, and winding goes on without it.
func LoadSettings(env func(string) string, errOut io.Writer, writeFile func(path string, replace bool, write func(io.Writer) error) error) (tui.Settings, func(tui.Settings) error) {
	path := ConfigFile(env, "settings.txt")
	if path == "" {
		return tui.Settings{}, nil
	}
	keep := func(s tui.Settings) error {
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			return fmt.Errorf("making the folder for settings: %w", err)
		}
		return writeFile(path, true, func(w io.Writer) error { _, err := io.WriteString(w, s.String()); return err })
	}
	text, err := files.Read(path, maxConfig)
	if errors.Is(err, fs.ErrNotExist) {
		return tui.Settings{}, keep
	}
	var s tui.Settings
	if err == nil {
		s, err = tui.ParseSettings(string(text))
	}
	if err != nil {
		fmt.Fprintf(errOut, "millside: reading %s: %s; left out\n", prose.Clean(path), prose.Clean(err.Error()))
	}
	return s, keep
}

// maxConfig bounds a settings file.
const maxConfig = 64 << 10
