package records

import (
	"millside/counter/journal"
)

// Folder is a folder of records as one command sees it.
type Folder struct {
	store  journal.Store // its FS keeps what it reads
	listed bool
	list   []journal.Summary
	err    error
}

// New gives the folder of a store.
func New(store journal.Store) *Folder {
	if store.FS == nil {
		store.FS = journal.OS()
	}
	store.FS = &keeper{FS: store.FS, files: map[string]kept{}}
	return &Folder{store: store}
}

// List is [journal.Store.List], made once.
func (f *Folder) List() ([]journal.Summary, error) {
	if !f.listed {
		f.list, f.err = f.store.List()
		f.listed = true
	}
	return f.list, f.err
}

// mostForPace bounds what is read of other records for the weaver's pace, in bytes: some thousand warps.
const mostForPace = 16 << 20

// Latest is the list if it was made, and otherwise the records that were changed last, as many as are enough for the
// weaver's own pace.
func (f *Folder) Latest() ([]journal.Summary, error) {
	if f.listed {
		return f.list, f.err
	}
	return f.store.Latest(mostForPace)
}

// Find is [journal.Store.Find].
func (f *Folder) Find(nameOrPath string) (string, error) { return f.store.FindIn(nameOrPath, f.List) }

// Look is [journal.OpenReadOnly] at what was read of the record, if it was.
func (f *Folder) Look(path string) (*journal.Record, error) {
	return journal.OpenReadOnly(f.store.FS, path)
}

// Open is [journal.Open]: the record is read under its lock, whatever was read of it before.
func (f *Folder) Open(path string) (*journal.Record, error) { return journal.Open(f.store.FS, path) }
