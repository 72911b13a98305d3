package journal

import (
	"errors"
	"fmt"

	"millside/plan/measure"
)

// What can stop a record from being opened or added to. They come wrapped; ask with [errors.Is].
var (
	// ErrLocked means that another window or program has the record open for winding.
	ErrLocked = errors.New("this warp is being wound in another window")
	// ErrReadOnly means that the record was opened by [OpenReadOnly] and takes no events.
	ErrReadOnly = errors.New("the record was opened to look at only")
	// ErrFailed means that an earlier write or sync failed: nothing more is taken until the record is
	// opened anew. The cause is wrapped too.
	ErrFailed = errors.New("the record could not be written; nothing is counted until it is opened again")
	// ErrReplaced means that the file at the record's path is no longer the one that was wound: it was
	// removed, replaced, cut or written to by another program. What was counted is in memory: see [Record.SaveBeside].
	ErrReplaced = errors.New("the file of the record is not as this window left it")
	// ErrNewer means that the record has a version of the format that this program doesn't know.
	ErrNewer = errors.New("this record was written by a newer Millside")
	// ErrFull means that a line or a record would pass its limit; the record can still be used.
	ErrFull = errors.New("the record is full")
	// ErrNotPlain means that the path names a folder, a pipe or a device and not a plain file.
	ErrNotPlain = errors.New("not a plain file")
	// ErrClosed means that the record has been closed.
	ErrClosed = errors.New("the record is closed")
)

// DamageError says where a record is damaged. The file is left as it is; see [Salvage].
type DamageError struct {
	// Path is the record's file.
	Path string
	// Line is the number of the first line that is wrong, from 1.
	Line int
	// Why says in plain words what is wrong with it.
	Why string
	// After is the number of lines that follow it. What they hold can't be proved.
	After int
}

// Error names the file, the line and what is wrong.
func (e *DamageError) Error() string {
	text := fmt.Sprintf("%s is damaged at line %d: %s", e.Path, e.Line, e.Why)
	if e.Line > 1 && e.After > 0 {
		text += fmt.Sprintf("; %s after it can't be read either", measure.Counted(e.After, "line", "lines"))
	}
	return text
}
