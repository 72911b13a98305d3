package journal

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"
)

// Latest describes the records of the folder that were changed last, the latest first, as [Store.List] does, but reads
// no more than so many bytes of them: one that is longer than what is left is passed over. So it takes no longer in a
// folder that has grown for twenty years.
func (s Store) Latest(most int64) ([]Summary, error) {
	entries, err := s.fs().ReadDir(s.Dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("listing the records: %w", err)
	}
	var infos []fs.FileInfo
	for _, entry := range entries {
		if info, err := entry.Info(); err == nil && filepath.Ext(entry.Name()) == Extension && info.Mode().IsRegular() {
			infos = append(infos, info)
		}
	}
	slices.SortStableFunc(infos, func(a, b fs.FileInfo) int {
		return cmp.Or(b.ModTime().Compare(a.ModTime()), cmp.Compare(a.Name(), b.Name()))
	})
	var list []Summary
	for _, info := range infos {
		if info.Size() > most {
			continue
		}
		most -= info.Size()
		list = append(list, s.Summarize(filepath.Join(s.Dir, info.Name())))
	}
	return list, nil
}
