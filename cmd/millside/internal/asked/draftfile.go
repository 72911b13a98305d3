package asked

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"millside/cmd/millside/internal/files"
	"millside/plan/draft"
	"millside/plan/measure"
)

// DraftFile is a draft that was read, and what the weaver said of it.
type DraftFile struct {
	*draft.Draft
	Path string
	Use  draft.Use
	// Wanted says how many ends the width of the cloth takes; "" where none is given.
	Wanted string
	// SideGiven and NotThreadedGiven say that the weaver has said on which side thread 1 is, and what to do
	// with threads that go through no shaft.
	SideGiven, NotThreadedGiven bool
}

// FromPipe is the path that stands for the standard input.
const FromPipe = "-"

// ReadDraft reads a draft from a path, or from in where the path is [FromPipe].
func ReadDraft(path string, in io.Reader) (*DraftFile, error) {
	d, err := readDraft(path, in)
	if len(measure.FieldErrors(err)) > 0 {
		return nil, fmt.Errorf("draft %s: %w", path, err)
	}
	if err != nil {
		return nil, fmt.Errorf("reading the draft: %w", err)
	}
	return &DraftFile{Draft: d, Path: path}, nil
}

// readDraft reads what is piped in, and of all else plain files only, so that it never waits for a device.
func readDraft(path string, in io.Reader) (*draft.Draft, error) {
	if path == FromPipe {
		return draft.From(in)
	}
	// So a shell passes on what another program writes.
	if strings.HasPrefix(path, "/dev/fd/") || strings.HasPrefix(path, "/proc/self/fd/") || path == "/dev/stdin" {
		file, err := os.Open(path)
		if err != nil {
			return nil, err
		}
		defer file.Close()
		return draft.From(file)
	}
	data, err := files.Read(path, draft.MaxBytes)
	if err != nil {
		return nil, err
	}
	return draft.Read(data)
}

// Warp makes a warp of the draft with thread 1 on a side.
func (d *DraftFile) Warp(side draft.Side) (*draft.Warp, error) {
	use := d.Use
	use.Side = side
	w, err := d.Draft.Warp(use)
	if err != nil {
		return nil, fmt.Errorf("draft %s: %w", d.Path, err)
	}
	return w, nil
}

// Sides lists the sides that thread 1 may be on, as far as they make a difference to the stripes.
func (d *DraftFile) Sides() []draft.Side {
	if d.SideGiven || d.Symmetric(d.Use) {
		return []draft.Side{d.Use.Side}
	}
	return []draft.Side{draft.FromRight, draft.FromLeft}
}

// ask is the error where something has to be said about the draft first.
func (d *DraftFile) ask() error {
	if !d.SideGiven && !d.Symmetric(d.Use) {
		return errors.New("on which side is thread 1 of the draft, seen by the weaver at the loom? A draft doesn't " +
			"say, and these stripes " +
			"are not the same from both sides. Give --thread-1 right, which is the commoner, or --thread-1 left; " +
			"'millside draft' shows the stripes in both ways")
	}
	if text := d.NotThreadedText(); text != "" && !d.NotThreadedGiven {
		return errors.New("what about the threads without a shaft? " + text +
			". Give --not-threaded keep, to wind them all the same " +
			"(floating selvedges, say), or --not-threaded leave-out")
	}
	return nil
}
