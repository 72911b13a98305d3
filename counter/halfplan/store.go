package halfplan

import (
	"bytes"
	"cmp"
	"crypto/rand"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"millside/counter/disk"
)

// Folder is the folder of half-filled plans inside that of the records, Extension how their files' names end.
const (
	Folder    = "half-filled"
	Extension = ".plan"
)

// Store is a folder of half-filled plans.
type Store struct {
	// Dir is the folder; it is made when the first plan is kept.
	Dir string
	// FS is the file system; nil is the real one.
	FS disk.FS
}

// In is the store of half-filled plans inside a folder of records, or inside a shelf of it.
func In(records string, fsys disk.FS) Store { return Store{filepath.Join(records, Folder), fsys} }

func (s Store) fs() disk.FS {
	if s.FS == nil {
		return disk.OS()
	}
	return s.FS
}

// Keep writes a plan and gives the path of its file: the one that it has, or a new one. The file holds the plan as it
// was before or as it is now, whole, wherever the power goes.
func (s Store) Keep(p Plan) (string, error) {
	data, err := p.text()
	if err == nil && p.Path == "" {
		p.Path, err = s.newPath(p.Kept)
	}
	if err == nil {
		err = s.put(p.Path, data)
	}
	if err != nil {
		return p.Path, fmt.Errorf("keeping the half-filled plan: %w", err)
	}
	return p.Path, nil
}

func (s Store) put(path string, data []byte) error {
	if err := disk.MakeDir(s.fs(), filepath.Dir(path)); err != nil {
		return err
	}
	return disk.Replace(s.fs(), path, data)
}

// newPath is a path that no other plan has: the time, and something by chance, as two windows may keep one at once.
func (s Store) newPath(now time.Time) (string, error) {
	var chance [4]byte
	if _, err := rand.Read(chance[:]); err != nil {
		return "", err
	}
	name := now.UTC().Format("2006-01-02-1504") + "-" + hex.EncodeToString(chance[:]) + Extension
	return filepath.Join(s.Dir, name), nil
}

// List gives the plans in the folder, the one that was kept last first. One that can't be read is in it with its error.
func (s Store) List() ([]Plan, error) {
	entries, err := s.fs().ReadDir(s.Dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("listing the half-filled plans: %w", err)
	}
	var list []Plan
	for _, entry := range entries {
		if filepath.Ext(entry.Name()) != Extension || strings.HasPrefix(entry.Name(), ".") {
			continue
		}
		path := filepath.Join(s.Dir, entry.Name())
		p, err := s.read(path)
		p.Path, p.Err = path, err
		if info, infoErr := entry.Info(); err != nil && infoErr == nil {
			p.Kept = info.ModTime()
		}
		list = append(list, p)
	}
	slices.SortStableFunc(list, func(a, b Plan) int {
		return cmp.Or(b.Kept.Compare(a.Kept), cmp.Compare(a.Path, b.Path))
	})
	return list, nil
}

// read reads the plan of a file.
func (s Store) read(path string) (Plan, error) {
	data, err := s.bytes(path)
	if err != nil {
		return Plan{}, err
	}
	p, err := parse(data)
	if err != nil {
		return Plan{}, fmt.Errorf("%s can't be read: %w", filepath.Base(path), err)
	}
	return p, nil
}

// bytes reads a plain file.
func (s Store) bytes(path string) ([]byte, error) {
	info, err := s.fs().Stat(path)
	if err == nil && !info.Mode().IsRegular() {
		err = fmt.Errorf("%s is no plain file", filepath.Base(path))
	}
	if err != nil {
		return nil, err
	}
	file, err := s.fs().OpenFile(path, os.O_RDONLY, 0)
	if err != nil {
		return nil, err
	}
	var data bytes.Buffer
	_, err = data.ReadFrom(io.LimitReader(file, mostBytes+1))
	return data.Bytes(), errors.Join(err, file.Close())
}

// MoveTo moves a plan, sound or not, into another store and gives its new path. It stands there on the disk before it
// goes here, so the power may leave both and never none; moved again, there is one.
func (s Store) MoveTo(to Store, path string) (string, error) {
	data, err := s.bytes(path)
	if err == nil && len(data) > mostBytes {
		err = fmt.Errorf("%s is longer than %d MiB", filepath.Base(path), mostBytes>>20)
	}
	var there string
	if err == nil {
		there, err = to.free(filepath.Base(path), data)
	}
	if err == nil {
		err = to.put(there, data)
	}
	if err == nil {
		if err = s.Remove(path); errors.Is(err, disk.ErrHeld) {
			err = errors.Join(err, to.Remove(there)) // it stays where it is, and there only
		}
	}
	if err != nil {
		return "", fmt.Errorf("moving the half-filled plan: %w", err)
	}
	return there, nil
}

// mostVersions is how many versions of a plan a folder may hold.
const mostVersions = 999

// free is a path for a plan that no other stands at: a second version of the name gets -2, and so on. The same bytes
// may stand there already, from before the power went.
func (s Store) free(name string, data []byte) (string, error) {
	base := strings.TrimSuffix(name, Extension)
	for n := 1; n <= mostVersions; n++ {
		path := filepath.Join(s.Dir, name)
		had, err := s.bytes(path)
		if errors.Is(err, fs.ErrNotExist) || err == nil && bytes.Equal(had, data) {
			return path, nil
		}
		if err != nil {
			return "", err
		}
		name = fmt.Sprintf("%s-%d%s", base, n+1, Extension)
	}
	return "", fmt.Errorf("there are too many versions of %s", base)
}

// Remove takes a plan away whose warp was made. One that is gone already is no error.
func (s Store) Remove(path string) error {
	if err := s.fs().Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return s.fs().SyncDir(filepath.Dir(path))
}
