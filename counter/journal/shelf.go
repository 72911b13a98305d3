package journal

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"iter"
	"os"
	"path/filepath"
	"strings"

	"millside/counter/disk"
	"millside/plan/measure"
)

// Shelf is a folder inside that of the records for those that are out of the way.
type Shelf string

// The shelves. Nothing is ever taken off them but by [Store.BringBack].
const (
	PutAway Shelf = "put-away"
	Deleted Shelf = "deleted"
)

// On is the store of what lies on a shelf.
func (s Store) On(shelf Shelf) Store {
	s.Dir = filepath.Join(s.Dir, string(shelf))
	return s
}

// Shelve moves a record to a shelf of the folder that it belongs to and gives its new path: what is put away or deleted
// can be brought back. A record that is being wound stays where it is, with [ErrLocked]; a damaged one can be moved.
func (s Store) Shelve(path string, shelf Shelf) (string, error) {
	return s.move(path, Store{Dir: folderOf(path)}.On(shelf).Dir)
}

// BringBack moves a record from a shelf into the folder, and gives its new path. Errors are those of [Store.Shelve].
func (s Store) BringBack(path string) (string, error) { return s.move(path, folderOf(path)) }

// folderOf is the folder of records that a record belongs to, whether it stands in it or on a shelf of it.
func folderOf(path string) string {
	dir := filepath.Dir(path)
	if on := Shelf(filepath.Base(dir)); on == PutAway || on == Deleted {
		return filepath.Dir(dir)
	}
	return dir
}

// move gives a record a name in another folder, and takes the old one away when the new one is on the disk: where
// the power goes between the two, the record has both names and is whole under each. The name gets -2, -3 and so on
// where it is taken. The record is locked meanwhile.
func (s Store) move(path, dir string) (to string, err error) {
	from := filepath.Dir(path)
	if filepath.Clean(from) == filepath.Clean(dir) {
		return "", &measure.FieldError{Field: "record", Value: path, Want: "one that isn't there already"}
	}
	file, err := openPlain(s.fs(), path, os.O_RDWR|os.O_APPEND)
	if err != nil {
		return "", err
	}
	closed := false
	done := func() error {
		if closed {
			return nil
		}
		closed = true
		return file.Close()
	}
	defer func() { err = errors.Join(err, done()) }()
	if err := lock(file, path); err != nil {
		return "", err
	}
	if err := disk.MakeDir(s.fs(), dir); err != nil {
		return "", fmt.Errorf("making the folder: %w", err)
	}
	if to, err = s.secondName(path, dir); err != nil { // as on sticks and some network folders, which know no links
		var copying error
		if to, copying = s.copyOf(file, path, dir); copying != nil {
			return "", fmt.Errorf("moving the record: %w", errors.Join(err, copying))
		}
	}
	if err := s.fs().SyncDir(dir); err != nil {
		return "", fmt.Errorf("moving the record: %w", err)
	}
	err = s.fs().Remove(path)
	if errors.Is(err, disk.ErrHeld) { // by this program itself, or by another one too
		if err = errors.Join(done(), s.fs().Remove(path)); errors.Is(err, disk.ErrHeld) {
			_ = s.fs().Remove(to) // may be held as well: then it has both names until it is moved once more
		}
	}
	if err == nil {
		err = s.fs().SyncDir(from)
	}
	if err != nil {
		return "", fmt.Errorf("moving the record: %w", err)
	}
	return to, nil
}

// errNames means that a folder holds too many records of one name.
var errNames = errors.New("too many records have this name: give it another")

// names goes through the paths that a record may get in a folder, in their order.
func names(path, dir string) iter.Seq[string] {
	base := strings.TrimSuffix(filepath.Base(path), Extension)
	return func(yield func(string) bool) {
		for n := 1; n <= maxSameName; n++ {
			name := base
			if n > 1 {
				name = fmt.Sprintf("%s-%d", base, n)
			}
			if !yield(filepath.Join(dir, name+Extension)) {
				return
			}
		}
	}
}

// secondName gives a record a free name in a folder, or finds the one that it got there before the power went.
func (s Store) secondName(path, dir string) (string, error) {
	for to := range names(path, dir) {
		err := s.fs().Link(path, to)
		if errors.Is(err, fs.ErrExist) && s.one(path, to) {
			return to, nil
		}
		if !errors.Is(err, fs.ErrExist) {
			return to, err
		}
	}
	return "", errNames
}

// copyOf writes a record a second time, synced, under a free name in a folder, or finds the copy that was made there
// before the power went. The name is taken by an empty file first, so that no other program gets it; a power cut may
// leave that file, but the record stands where it was then.
func (s Store) copyOf(file disk.File, path, dir string) (string, error) {
	data, err := whole(file)
	if err != nil {
		return "", err
	}
	for to := range names(path, dir) {
		taken, err := s.fs().OpenFile(to, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
		if errors.Is(err, fs.ErrExist) {
			if s.holds(to, data) {
				return to, nil
			}
			continue
		}
		if err != nil {
			return "", err
		}
		if err = taken.Close(); err == nil {
			err = disk.Replace(s.fs(), to, data)
		}
		if err != nil {
			return "", errors.Join(err, s.fs().Remove(to)) // the record itself is where it was
		}
		return to, nil
	}
	return "", errNames
}

// holds says whether a file holds these bytes and no others.
func (s Store) holds(path string, data []byte) bool {
	file, err := openPlain(s.fs(), path, os.O_RDONLY)
	if err != nil {
		return false
	}
	defer file.Close()
	had, err := whole(file)
	return err == nil && bytes.Equal(had, data)
}

// whole is what an open file holds, from its first byte on.
func whole(file disk.File) ([]byte, error) {
	info, err := file.Stat()
	if err != nil {
		return nil, err
	}
	return io.ReadAll(io.NewSectionReader(file, 0, info.Size()))
}

// one says whether two names are of one file.
func (s Store) one(a, b string) bool {
	first, err := s.fs().Lstat(a)
	if err != nil {
		return false
	}
	second, err := s.fs().Lstat(b)
	return err == nil && s.fs().Same(first, second)
}
