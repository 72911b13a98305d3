package journal

import (
	"errors"
	"path/filepath"
	"time"

	"millside/counter"
	"millside/plan/field"
	"millside/plan/measure"
	"millside/plan/pair"
)

// Join says in a record with which other warp its own goes, and how both lie, at any time; [counter.Apart] says with
// none. Errors are those of [Open] and of [Record.Append].
func (s Store) Join(path, text string, at time.Time) error {
	r, err := Open(s.fs(), path)
	if err != nil {
		return err
	}
	if now := r.State().Plan.Spec.GoesWith; now != text && (text != counter.Apart || now != "") {
		_, err = r.Append(counter.Event{At: at, Kind: counter.Joined, Text: text})
	}
	return errors.Join(err, r.Close())
}

// KeepTogether says in the records of a ground and of a second with which other each goes, and what was said of both.
// They lie in one folder. Each record is whole at any moment; what is said in one of them alone is said again. Errors
// are those of [Store.Join], and a [*measure.FieldError] for what can't be kept.
func (s Store) KeepTogether(ground, second string, said map[*field.Field]string, at time.Time) error {
	paths := [2]string{ground, second}
	var names, files [2]string
	for w, path := range paths {
		sum := s.Summarize(path)
		if sum.Err != nil {
			return sum.Err
		}
		names[w], files[w] = sum.Name, filepath.Base(path)
	}
	if filepath.Dir(ground) != filepath.Dir(second) || files[0] == files[1] {
		return &measure.FieldError{Field: "second", Value: second, Want: "another record in the folder of the ground's"}
	}
	kept, err := pair.Keeps(names, files, said)
	if err != nil {
		return err
	}
	var errs []error
	for w, path := range paths {
		errs = append(errs, s.Join(path, kept[w].String(), at))
	}
	return errors.Join(errs...)
}
