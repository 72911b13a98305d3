package counter

import (
	"errors"
	"path/filepath"
)

// DefaultDir is the folder for records: the one given, else $MILLSIDE_RECORDS, else
// $XDG_DATA_HOME/millside, else $HOME/.local/share/millside. Relative values of $XDG_DATA_HOME are
// ignored, as the XDG Base Directory Specification (version 0.8, "Basics") asks; a relative $HOME is
// ignored too. Env looks a variable up, as [os.Getenv] does. It is an error if none of them is set.
func DefaultDir(fromFlag string, env func(string) string) (string, error) {
	if fromFlag != "" {
		return fromFlag, nil
	}
	if dir := env("MILLSIDE_RECORDS"); dir != "" {
		return dir, nil
	}
	if dir := env("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, "millside"), nil
	}
	if dir := env("HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, ".local", "share", "millside"), nil
	}
	return "", errors.New("there is no home folder to keep records in: name a folder, or set MILLSIDE_RECORDS")
}
