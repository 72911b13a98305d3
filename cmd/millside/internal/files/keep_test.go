//go:build unix

package files

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"millside/counter/disk"
	"millside/counter/journal"
	"millside/plan"
)

func text(s string) func(io.Writer) error {
	return func(w io.Writer) error { _, err := io.WriteString(w, s); return err }
}

// A record, a device, a pipe, a folder and what a link points to are never replaced, whatever is asked.
func TestNeverReplaced(t *testing.T) {
	dir := t.TempDir()
	p, err := plan.New(plan.DefaultSpec())
	if err != nil {
		t.Fatal(err)
	}
	record, err := journal.Create(journal.OS(), filepath.Join(dir, "warp.millside"), p)
	if err != nil {
		t.Fatal(err)
	}
	defer record.Close()
	data, err := os.ReadFile(record.Path())
	if err != nil {
		t.Fatal(err)
	}
	name := func(s string) string { return filepath.Join(dir, s) }
	for err := range map[error]bool{
		os.WriteFile(name("warp.txt"), data, 0o600): true, os.WriteFile(name("own.txt"), []byte("mine"), 0o600): true,
		os.WriteFile(name("marked.txt"), append([]byte("\ufeff"), data...), 0o600): true,
		os.Symlink(name("own.txt"), name("link")):                                  true,
		os.Symlink(name("none"), name("dead")):                                     true,
		os.Symlink("/dev/null", name("null")):                                      true,
		syscall.Mkfifo(name("pipe"), 0o600):                                        true,
		os.Mkdir(name("folder"), 0o700):                                            true,
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
	before := listing(t, dir)
	for _, path := range []string{"warp.millside", "new.millside", "warp.txt", "marked.txt", "link", "dead", "null",
		"pipe", "folder"} {
		for _, replace := range []bool{false, true} {
			err := Write(name(path), replace, text("sheet"))
			if err == nil || replace && path != "new.millside" && path != "warp.millside" && !errors.Is(err, ErrKeep) {
				t.Errorf("%s, replace %v: %v", path, replace, err)
			}
		}
	}
	if err := Write("/dev/null", true, text("sheet")); !errors.Is(err, ErrKeep) {
		t.Errorf("a device: %v", err)
	}
	if got := listing(t, dir); got != before {
		t.Errorf("before:\n%s\nafter:\n%s", before, got)
	}
}

// listing tells what is in a folder: names, kinds, sizes.
func listing(t *testing.T, dir string) string {
	t.Helper()
	var b strings.Builder
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		info, err := d.Info()
		if err == nil {
			fmt.Fprintln(&b, path, info.Mode(), info.Size())
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// With and without files that have no name: permissions stay, nothing is left beside, what fails leaves the old file.
func TestPermissionsStay(t *testing.T) {
	for _, named := range []bool{false, true} {
		fsys := disk.OS()
		if named {
			fsys = onlyNamed{fsys}
		}
		Write := func(path string, replace bool, write func(io.Writer) error) error {
			return WriteOn(fsys, path, replace, write)
		}
		dir := t.TempDir()
		path := filepath.Join(dir, "sheet.html")
		if err := Write(path, false, text("one")); err != nil {
			t.Fatal(err)
		}
		for _, mode := range []fs.FileMode{0o640, 0o604, 0o444} {
			if err := os.Chmod(path, mode); err != nil {
				t.Fatal(err)
			}
			if err := Write(path, true, text(fmt.Sprint(mode))); err != nil {
				t.Fatal(err)
			}
			info, err := os.Stat(path)
			got, _ := os.ReadFile(path)
			if err != nil || info.Mode().Perm() != mode || string(got) != fmt.Sprint(mode) {
				t.Errorf("named %v: %v, %q, %v", named, info.Mode(), got, err)
			}
		}
		if err := Write(path, false, text("two")); !errors.Is(err, ErrThere) {
			t.Errorf("named %v: %v", named, err)
		}
		if entries, err := os.ReadDir(dir); err != nil || len(entries) != 1 {
			t.Errorf("named %v: left beside: %v, %v", named, entries, err)
		}
	}
}

// onlyNamed is a file system that knows no files without a name.
type onlyNamed struct{ disk.FS }

func (onlyNamed) Unnamed(string) (disk.File, error) { return nil, errors.ErrUnsupported }

// What a killed program left of any file goes with the next file that is written in the folder; that of a living
// program stays, and so does what somebody else named nearly so.
func TestLeftoversGo(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "sheet[1].txt")
	gone := exec.Command("true")
	if err := gone.Run(); err != nil {
		t.Skip(err)
	}
	dead, living := tempName(filepath.Join(dir, "another.md"), gone.Process.Pid), tempName(path, os.Getppid())
	theirs := []string{living}
	for _, name := range []string{".notes.millside-new", ".1.millside-new", "sheet.1.millside-new",
		".sheet.-1.millside-new"} {
		theirs = append(theirs, filepath.Join(dir, name))
	}
	for _, name := range append(theirs, dead) {
		if err := os.WriteFile(name, nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := Write(path, true, text("sheet")); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(dead); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("of the dead program: %v", err)
	}
	for _, name := range theirs {
		if _, err := os.Stat(name); err != nil {
			t.Errorf("not the dead program's: %v", err)
		}
	}
}

// A pipe without a writer doesn't keep a reader waiting.
func TestReadDoesNotWait(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "pipe")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Read(pipe, 100); err == nil || !strings.Contains(err.Error(), "a pipe and no plain file") {
		t.Errorf("%v", err)
	}
	long := filepath.Join(t.TempDir(), "long")
	if err := os.WriteFile(long, make([]byte, 101), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Read(long, 100); err == nil || !strings.Contains(err.Error(), "longer than 100 bytes") {
		t.Errorf("%v", err)
	}
}
