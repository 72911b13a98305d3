package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"millside/counter/disk"
	"millside/counter/halfplan"
	"millside/plan"
	"millside/plan/athand"
	"millside/plan/draft"
	fields "millside/plan/entry"
	"millside/plan/field"
	"millside/tui/draftpage"
	"millside/tui/form"
)

// drafting is the page on which a draft is opened.
type drafting struct{ draftpage.Model }

func (s drafting) update(msg tea.Msg, _ time.Time) (screen, tea.Cmd) {
	next, cmd := s.Update(msg)
	return drafting{next}, cmd
}
func (s drafting) view(w, h int) string { return s.View(w, h) }
func (drafting) typing() bool           { return true }

// goDraftMsg asks for the page of drafts.
type goDraftMsg struct{}

// openDraft shows the page of drafts.
func (a app) openDraft() (tea.Model, tea.Cmd) {
	fsys := a.store.FS
	if fsys == nil {
		fsys = disk.OS()
	}
	page, cmd := draftpage.New(draftpage.Deps{Styles: a.styles, Keys: a.keys, Spec: a.newSpec(),
		List: func(folder string) ([]draftpage.Entry, error) { return listFolder(fsys, folder) },
		Read: func(path string) (*draft.Draft, error) { return readDraft(fsys, path) },
	})
	a.screen = drafting{page}
	return a, cmd
}

// planDraft opens the form with the warp of a draft.
func (a app) planDraft(msg draftpage.MadeMsg) (tea.Model, tea.Cmd) {
	spec := msg.Warp.Into(msg.Spec, false)
	begins := a.newSpec()
	return a.planNew(a.atHand.Assume(spec, func(f *field.Field) bool {
		e, ok := fields.Of(f)
		return ok && e.Show(spec) != e.Show(begins) // the draft says it, or the weaver beside it
	}))
}

// planNew opens the form with a warp that another page has made. It is worth keeping from the start.
func (a app) planNew(spec plan.Spec, assumed []athand.Assumed) (tea.Model, tea.Cmd) {
	next, cmd := a.plan(form.New(a.forForm(assumed...), spec), halfplan.Plan{})
	a = next.(app)
	p := a.screen.(planning)
	p.changes, p.touched = 1, a.now
	a.screen = p
	return a, tea.Batch(cmd, p.keepCmd())
}

// listFolder lists a folder as it is typed. What a link leads to counts.
func listFolder(fsys disk.FS, folder string) ([]draftpage.Entry, error) {
	path, err := typedPath(folder)
	if err != nil {
		return nil, err
	}
	if path == "" {
		path = "."
	}
	list, err := fsys.ReadDir(path)
	if err != nil {
		return nil, fmt.Errorf("the folder can't be listed: %w", err)
	}
	var out []draftpage.Entry
	for _, e := range list {
		is := e.IsDir()
		if e.Type()&os.ModeSymlink != 0 {
			info, err := fsys.Stat(filepath.Join(path, e.Name()))
			is = err == nil && info.IsDir()
		}
		out = append(out, draftpage.Entry{Name: e.Name(), Folder: is})
	}
	return out, nil
}

// readDraft reads the draft in a file as it is typed, and never waits for a pipe or a device.
func readDraft(fsys disk.FS, path string) (*draft.Draft, error) {
	path, err := typedPath(path)
	if err != nil {
		return nil, err
	}
	file, err := fsys.OpenFile(path, os.O_RDONLY, 0)
	if err != nil {
		return nil, fmt.Errorf("reading the draft: %w", err)
	}
	defer file.Close()
	info, err := file.Stat()
	switch {
	case err != nil:
		return nil, fmt.Errorf("reading the draft: %w", err)
	case info.IsDir():
		return nil, fmt.Errorf("%s is a folder; open a draft in it", path)
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("%s is no plain file; the command line takes a draft from a pipe", path)
	}
	return draft.From(file)
}

// typedPath is a path as a weaver types it or drops it on the terminal: in quotation marks, or with ~ for the home
// folder.
func typedPath(path string) (string, error) {
	if n := len(path); n > 1 && strings.ContainsRune(`'"`, rune(path[0])) && path[n-1] == path[0] {
		path = path[1 : n-1]
	}
	if rest, ok := strings.CutPrefix(path, "~"); ok && (rest == "" || os.IsPathSeparator(rest[0])) {
		home, err := os.UserHomeDir()
		if err != nil {
			return "", fmt.Errorf("~: %w", err)
		}
		path = home + rest
	}
	return path, nil
}
