package journal

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"millside/counter"
	"millside/counter/disk"
	"millside/plan"
	"millside/plan/measure"
	"millside/plan/times"
)

// Extension is how the file name of a record in a [Store] ends.
const Extension = ".millside"

// Store is a folder of records.
type Store struct {
	// Dir is the folder; it is made when the first record is.
	Dir string
	// FS is the file system; nil is the real one.
	FS FS
}

func (s Store) fs() FS {
	if s.FS == nil {
		return OS()
	}
	return s.FS
}

// maxSameName is how many records of one name a folder may hold.
const maxSameName = 9999

// Create makes a record for a plan, locked for winding. The folder is made, for its owner only, if it
// is missing. The file is named after the warp, in small letters and with hyphens, and gets -2, -3 and
// so on where the name is taken.
func (s Store) Create(p *plan.Plan) (*Record, error) {
	if p == nil {
		return nil, errors.New("a record needs a plan")
	}
	if err := disk.MakeDir(s.fs(), s.Dir); err != nil {
		return nil, fmt.Errorf("making the folder for records: %w", err)
	}
	base := slug(p.Spec.Name)
	for n := 1; n <= maxSameName; n++ {
		name := base
		if n > 1 {
			name = fmt.Sprintf("%s-%d", base, n)
		}
		r, err := Create(s.fs(), filepath.Join(s.Dir, name+Extension), p)
		if !errors.Is(err, fs.ErrExist) {
			return r, err
		}
	}
	return nil, &measure.FieldError{Field: "name", Value: p.Spec.Name,
		Want: "another name: too many records have this one"}
}

// Summary is one record of a [Store] in a list.
type Summary struct {
	// Path is the record's file; Name the warp's name, or, where the plan can't be read, the
	// file's without whatever could act on a terminal.
	Path, Name string
	// Spec is the plan in force; empty where it can't be read.
	Spec plan.Spec
	// Passes and Laid are over all chains, Ends and Standing too: those of the plan, and those wound.
	Passes, Laid, Ends, Standing int
	// Work is what the hands do at the pegs for the whole warp; with the spec it tells the time that is planned
	// ([plan.Spec.TimeOf]).
	Work times.WorkSum
	// Yarn is the length of all ends that are wound, nothing added for waste.
	Yarn measure.Length
	// Started and Last are the times of the first and the last event; zero if there was none.
	Started, Last time.Time
	// Begun says that anything happened at the mill, Wound that every pass of every chain is laid, Finished that the
	// warp is off the mill.
	Begun, Finished, Wound bool
	// Pace is the pace over all passes of a finished warp, and of the latest ones of another.
	Pace counter.PaceResult
	// Pegs is how long the halts of a finished warp took.
	Pegs times.PegPace
	// Err says why the record can't be opened. The other fields then hold what stands before the
	// damage, as far as it can be read.
	Err error
	// Torn says that the end of the file was cut short and is left out, Lost how much more is missing than a power cut
	// takes.
	Torn bool
	Lost Loss
}

// List describes every record in the folder: unfinished ones first, and those touched last before
// others. A damaged record is listed with its error. A folder that is missing holds no records.
func (s Store) List() ([]Summary, error) {
	entries, err := s.fs().ReadDir(s.Dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("listing the records: %w", err)
	}
	type dated struct {
		Summary
		touched time.Time
	}
	var all []dated
	for _, entry := range entries {
		if filepath.Ext(entry.Name()) != Extension {
			continue
		}
		sum := s.Summarize(filepath.Join(s.Dir, entry.Name()))
		touched := sum.Last
		if info, err := entry.Info(); err == nil && touched.IsZero() {
			touched = info.ModTime()
		}
		all = append(all, dated{sum, touched})
	}
	slices.SortStableFunc(all, func(a, b dated) int {
		if a.Finished != b.Finished {
			if b.Finished {
				return -1
			}
			return 1
		}
		return cmp.Or(b.touched.Compare(a.touched), cmp.Compare(a.Path, b.Path))
	})
	list := make([]Summary, len(all))
	for i, d := range all {
		list[i] = d.Summary
	}
	return list, nil
}

// Summarize looks at one record; what is wrong with it is in its Err.
func (s Store) Summarize(path string) Summary {
	_, got, err := readAt(s.fs(), path)
	sum := Summary{Path: path, Name: measure.Clean(strings.TrimSuffix(filepath.Base(path), Extension)), Err: err,
		Torn: got.torn != "", Lost: got.lost}
	if got.fold == nil {
		return sum
	}
	st := got.state()
	sum.Spec, sum.Name = st.Plan.Spec, st.Plan.Spec.Name
	sum.Passes, sum.Laid = st.Plan.Passes(), st.PassesLaidAll()
	sum.Ends, sum.Standing = st.Plan.EndsWound(), st.EndsStandingAll()
	sum.Work = st.Plan.WorkSum()
	sum.Yarn = st.Plan.Path.Length.Times(sum.Standing)
	sum.Started, sum.Last = st.Started, st.Last
	sum.Begun, sum.Finished, sum.Wound = st.Begun(), st.Finished, sum.Laid == sum.Passes
	if st.Finished {
		sum.Pace = counter.PaceOverall(got.events.all())
		sum.Pegs = counter.PegPace(st.Plan, got.events.all())
	} else {
		sum.Pace = counter.Pace(got.events.all(), 0)
	}
	return sum
}
