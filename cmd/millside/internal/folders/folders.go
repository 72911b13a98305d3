// Package folders says where a system keeps what belongs to a user: records are data, settings are
// configuration. On Windows both are under %AppData%, elsewhere where the XDG Base Directory Specification
// (version 0.8) has them.
package folders

import (
	"errors"
	"path/filepath"
	"regexp"
	"strings"
)

// System is what the folders depend on.
type System struct {
	// OS is the system, as runtime.GOOS names it.
	OS string
	// Env looks a variable up, as os.Getenv does.
	Env func(string) string
}

// Records is the folder for records: the one given, else $MILLSIDE_RECORDS, else that of the system. It is
// an error if there is none.
func (s System) Records(given string) (string, error) {
	if given != "" {
		return given, nil
	}
	if dir := s.Env("MILLSIDE_RECORDS"); dir != "" {
		return dir, nil
	}
	if dir := s.home("XDG_DATA_HOME", ".local", "share"); dir != "" {
		return s.join(dir, "millside"), nil
	}
	return "", errors.New("there is no home folder to keep records in: name a folder with --records, or set " +
		"MILLSIDE_RECORDS")
}

// Config is the path of a file of the weaver's own settings; "" where there is no home folder.
func (s System) Config(name string) string {
	if dir := s.home("XDG_CONFIG_HOME", ".config"); dir != "" {
		return s.join(dir, "millside", name)
	}
	return ""
}

// home is the folder that a variable names, else that of the system: a folder below the user's home, or
// %AppData%. Relative values are passed over, as the specification asks ("Basics").
func (s System) home(variable string, below ...string) string {
	if dir := s.Env(variable); s.absolute(dir) {
		return dir
	}
	if dir := s.Env("APPDATA"); s.OS == "windows" && s.absolute(dir) {
		return dir
	}
	for _, v := range []string{"HOME", "USERPROFILE"} {
		if dir := s.Env(v); s.absolute(dir) {
			return s.join(append([]string{dir}, below...)...)
		}
	}
	return ""
}

// windowsPath is an absolute path on Windows: with a drive, or of a share.
var windowsPath = regexp.MustCompile(`^(?:[A-Za-z]:[\\/]|\\\\)`)

func (s System) absolute(dir string) bool {
	if s.OS == "windows" {
		return windowsPath.MatchString(dir)
	}
	return strings.HasPrefix(dir, "/")
}

// join joins parts of a path as the system does.
func (s System) join(parts ...string) string {
	if s.OS == "windows" {
		return strings.Join(parts, `\`)
	}
	return filepath.ToSlash(filepath.Join(parts...))
}
