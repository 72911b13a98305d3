package settings

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"millside/cmd/millside/internal/files"
	"millside/cmd/millside/internal/locale"
	"millside/cmd/millside/internal/prose"
	"millside/tui"
)

// LoadSettings reads the settings at a path, "" for none, and gives the way to keep changed ones, which keeps
// the file whole. What can't be read is told, and winding goes on without it.
func LoadSettings(path string, ways locale.Ways, errOut io.Writer,
	writeFile func(path string, replace bool, write func(io.Writer) error) error) (tui.Settings,
	func(tui.Settings) error) {
	none := tui.Settings{LocaleUnits: ways.Units, LocaleComma: ways.Comma}
	if path == "" {
		return none, nil
	}
	keep := func(s tui.Settings) error {
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			return fmt.Errorf("making the folder for settings: %w", err)
		}
		old, err := files.Read(path, maxConfig) // as it is now: another window or an editor may have written it
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("reading the settings: %w", err)
		}
		text := s.Into(string(old))
		return writeFile(path, true, func(w io.Writer) error { _, err := io.WriteString(w, text); return err })
	}
	text, err := files.Read(path, maxConfig)
	if errors.Is(err, fs.ErrNotExist) {
		return none, keep
	}
	var s tui.Settings
	if err == nil {
		s, err = tui.ParseSettings(string(text))
	}
	if err != nil {
		for line := range strings.SplitSeq(err.Error(), "\n") {
			fmt.Fprintf(errOut, "millside: reading %s: %s; left out\n", prose.Clean(path), prose.Clean(line))
		}
	}
	s.LocaleUnits, s.LocaleComma = ways.Units, ways.Comma
	return s, keep
}

// maxConfig bounds a settings file.
const maxConfig = 64 << 10
