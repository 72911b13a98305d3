package draftpage

import (
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"millside/plan"
	"millside/plan/draft"
	"millside/plan/measure"
	"millside/tui/keys"
	"millside/tui/look"
)

// Deps is what the page may use.
type Deps struct {
	Styles look.Styles
	Keys   keys.Map
	// Spec is what a new warp begins with.
	Spec plan.Spec
	// List lists a folder, "" the one in which the program was started. It may wait for the disk.
	List func(folder string) ([]Entry, error)
	// Read reads the draft in a file. It may wait for the disk.
	Read func(path string) (*draft.Draft, error)
}

// Entry is a file or a folder in a folder.
type Entry struct {
	Name   string
	Folder bool
}

// Messages from the page to whoever shows it.
type (
	// BackMsg leaves the page without a warp.
	BackMsg struct{}
	// MadeMsg gives the warp that was made of the draft, and the spec with the width that it was made for.
	MadeMsg struct {
		Warp *draft.Warp
		Spec plan.Spec
	}
)

// Answers of the page's own commands.
type (
	listedMsg struct {
		folder  string
		entries []Entry
		err     error
	}
	readMsg struct {
		path  string
		draft *draft.Draft
		err   error
	}
)

// Model is the page: first the file is chosen, then the draft is made into a warp.
type Model struct {
	Deps
	path    textinput.Model
	listed  listedMsg // the folder that was listed last
	chosen  int       // the row that is chosen
	problem string
	waits   bool // the draft is being read
	said    *saying
}

// pathLimit is the longest path that can be typed, in characters.
const pathLimit = 4096

// New is the page with nothing chosen yet, and the command that lists the folder.
func New(d Deps) (Model, tea.Cmd) {
	m := Model{Deps: d, path: look.NewInput(d.Styles, "", pathLimit)}
	m.path.Focus()
	return m, m.list("")
}

// list is the command that lists a folder.
func (m Model) list(folder string) tea.Cmd {
	return func() tea.Msg {
		entries, err := m.List(folder)
		return listedMsg{folder, entries, err}
	}
}

// typed is the path as typed, as its folder and what comes behind it.
func (m Model) typed() (folder, name string) { return filepath.Split(m.path.Value()) }

// isDraft says whether a name is that of a draft.
func isDraft(name string) bool { return strings.EqualFold(filepath.Ext(name), ".wif") }

// rows are the drafts and then the folders whose names begin with what is typed. Hidden ones are shown once a dot is
// typed.
func (m Model) rows() []Entry {
	folder, name := m.typed()
	if m.listed.folder != folder {
		return nil
	}
	var out []Entry
	for _, folders := range []bool{false, true} {
		for _, e := range m.listed.entries {
			hidden := strings.HasPrefix(e.Name, ".") && !strings.HasPrefix(name, ".")
			if e.Folder == folders && !hidden && (e.Folder || isDraft(e.Name)) && begins(e.Name, name) {
				out = append(out, e)
			}
		}
	}
	return out
}

// begins says whether a name begins so, in capitals or not.
func begins(name, with string) bool {
	return strings.HasPrefix(strings.ToLower(name), strings.ToLower(with))
}

// Update takes a key, or what a command brings.
func (m Model) Update(msg tea.Msg) (Model, tea.Cmd) {
	switch msg := msg.(type) {
	case listedMsg:
		if folder, _ := m.typed(); msg.folder == folder {
			m.listed, m.chosen = msg, 0
		}
	case readMsg:
		return m.read(msg), nil
	case tea.KeyMsg:
		if m.said != nil {
			return m.say(msg)
		}
		return m.choose(msg)
	}
	return m, nil
}

// choose takes a key while the file is chosen.
func (m Model) choose(msg tea.KeyMsg) (Model, tea.Cmd) {
	k, rows := m.Keys, m.rows()
	m.problem = ""
	switch {
	case keys.Matches(msg, k.Back):
		return m, send(BackMsg{})
	case m.waits:
		return m, nil
	case keys.Matches(msg, k.NextFile):
		m.chosen = min(m.chosen+1, max(len(rows)-1, 0))
		return m, nil
	case keys.Matches(msg, k.PrevFile):
		m.chosen = max(m.chosen-1, 0)
		return m, nil
	case keys.Matches(msg, k.Complete):
		return m.complete(rows)
	case keys.Matches(msg, k.Keep):
		return m.open(rows)
	}
	was, _ := m.typed()
	before := m.path.Value()
	m.path, _ = look.TypeInto(m.path, msg)
	if m.path.Value() != before {
		m.chosen = 0
	}
	return m.followed(was)
}

// followed lists the folder that is typed, where it is another one than before.
func (m Model) followed(was string) (Model, tea.Cmd) {
	if folder, _ := m.typed(); folder != was {
		return m, m.list(folder)
	}
	return m, nil
}

// with is the page with another name behind the folder.
func (m Model) with(e Entry) (Model, tea.Cmd) {
	folder, _ := m.typed()
	name := e.Name
	if e.Folder {
		name += string(filepath.Separator)
	}
	m.path.SetValue(folder + name)
	m.path.CursorEnd()
	m.chosen = 0
	return m.followed(folder)
}

// complete types what all rows have in common, or the chosen one where that is no more than is typed.
func (m Model) complete(rows []Entry) (Model, tea.Cmd) {
	if len(rows) == 0 {
		return m, nil
	}
	_, name := m.typed()
	common := rows[0].Name
	for _, e := range rows[1:] {
		for !begins(e.Name, common) {
			_, size := utf8.DecodeLastRuneInString(common)
			common = common[:len(common)-size]
		}
	}
	if len(rows) == 1 || len(common) <= len(name) {
		return m.with(rows[m.chosen])
	}
	return m.with(Entry{Name: common})
}

// open opens the row that is chosen, or the file that is typed where there is no such row.
func (m Model) open(rows []Entry) (Model, tea.Cmd) {
	folder, _ := m.typed()
	if m.chosen < len(rows) && !(m.known() && m.chosen == 0) {
		if e := rows[m.chosen]; e.Folder {
			return m.with(e)
		}
		m.path.SetValue(folder + rows[m.chosen].Name)
		m.path.CursorEnd()
	}
	path := strings.TrimSpace(m.path.Value())
	if path == "" {
		m.problem = "type the path of a draft, or of a folder with drafts"
		return m, nil
	}
	m.waits = true
	return m, func() tea.Msg {
		d, err := m.Read(path)
		return readMsg{path, d, err}
	}
}

// known says whether what is typed is a file in the folder.
func (m Model) known() bool {
	folder, name := m.typed()
	return m.listed.folder == folder && slices.ContainsFunc(m.listed.entries, func(e Entry) bool {
		return e.Name == name && !e.Folder
	})
}

// read takes the draft that was read, or says what is wrong with it.
func (m Model) read(msg readMsg) Model {
	m.waits = false
	if msg.err != nil {
		m.problem = measure.Clean(msg.err.Error())
		return m
	}
	said := newSaying(m.Deps, msg.draft)
	m.said = &said
	return m
}

func send(m tea.Msg) tea.Cmd { return func() tea.Msg { return m } }
