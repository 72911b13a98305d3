// Package simdisk is a disk for tests that loses what was not synced, in every way that a real one may: it keeps or
// drops each sector of a write by itself, whatever the order in which they were written, tears a sector, and keeps any
// number of the changes of a file's size and of a folder's names, in their order. Any call can be made to fail; after a
// sync that failed, what it should have written is taken for written and is not, as on common systems.
//
// A [Disk] is a file system. [Disk.Images] gives what a power cut at this moment may leave.
package simdisk

import (
	"errors"
	"io/fs"
	"os"
	"path"
	"slices"
	"strings"

	"millside/counter/disk"
)

// Sector is what is written at one stroke, but for the one that is torn, in bytes.
const Sector = 512

// Disk is the simulated disk. It isn't safe for several goroutines.
type Disk struct {
	// After is called after each call, at a moment at which the power may go; nil for nothing.
	After func(call string)
	// Fail says whether a call fails; nil if none does. A write that fails writes its first half.
	Fail func(n int, call string) error

	calls   int
	nextID  int
	seen    map[string]*node // what programs see, by path
	durable map[string]*node // what is on the disk, by path
	pending []nameOp         // changes of names that are not synced
	folders map[string]bool

	noUnnamed, noLinks bool
}

// node is a file, whatever it is called.
type node struct {
	id      int
	seen    []byte
	disk    []byte
	pending []op
	mode    fs.FileMode
	locked  bool
}

// op is a piece of a write within one sector, or a change of size if data is nil.
type op struct {
	off  int
	data []byte
	size int
}

// nameOp is a change in a folder: to becomes a name of the file, from is none any more.
type nameOp struct {
	dir      string
	from, to string
	node     *node
}

// New is an empty disk with one folder.
func New(folder string) *Disk {
	return &Disk{seen: map[string]*node{}, durable: map[string]*node{},
		folders: map[string]bool{path.Clean(folder): true}}
}

// Put puts a file on the disk, synced.
func (d *Disk) Put(name string, data []byte) {
	d.nextID++
	n := &node{id: d.nextID, seen: slices.Clone(data), disk: slices.Clone(data), mode: 0o600}
	d.seen[name], d.durable[name] = n, n
}

// Files is what programs see.
func (d *Disk) Files() map[string][]byte {
	files := map[string][]byte{}
	for name, n := range d.seen {
		files[name] = n.seen
	}
	return files
}

// Calls is the number of calls so far.
func (d *Disk) Calls() int { return d.calls }

// call counts a call that changes something, and says whether it fails.
func (d *Disk) call(what string) error {
	d.calls++
	if d.Fail != nil {
		return d.Fail(d.calls, what)
	}
	return nil
}

func (d *Disk) after(what string) {
	if d.After != nil {
		d.After(what)
	}
}

// OpenFile opens or makes a file.
func (d *Disk) OpenFile(name string, flag int, perm fs.FileMode) (disk.File, error) {
	n, ok := d.seen[name]
	switch {
	case ok && flag&os.O_CREATE != 0 && flag&os.O_EXCL != 0:
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrExist}
	case !ok && flag&os.O_CREATE == 0:
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	case !ok && !d.folders[path.Dir(name)]:
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	if err := d.call("open"); err != nil {
		return nil, &fs.PathError{Op: "open", Path: name, Err: err}
	}
	if !ok {
		d.nextID++
		n = &node{id: d.nextID, mode: perm}
		d.rename("", name, n)
		d.after("make")
	}
	return &file{d: d, n: n, name: name, appends: flag&os.O_APPEND != 0}, nil
}

// rename changes what programs see, and notes what is to be synced.
func (d *Disk) rename(from, to string, n *node) {
	dir := path.Dir(from)
	if to != "" {
		dir = path.Dir(to)
		d.seen[to] = n
	}
	if from != "" {
		delete(d.seen, from)
	}
	d.pending = append(d.pending, nameOp{dir: dir, from: from, to: to, node: n})
}

// Stat describes a file or a folder.
func (d *Disk) Stat(name string) (fs.FileInfo, error) {
	if d.folders[path.Clean(name)] {
		return info{name: path.Base(name), mode: fs.ModeDir | 0o700}, nil
	}
	n, ok := d.seen[name]
	if !ok {
		return nil, &fs.PathError{Op: "stat", Path: name, Err: fs.ErrNotExist}
	}
	return n.info(name), nil
}

// Lstat is Stat: there are no links.
func (d *Disk) Lstat(name string) (fs.FileInfo, error) { return d.Stat(name) }

// NoLinks makes the disk one on which no file can have a second name. As on real ones, a name that is taken is told
// first.
func (d *Disk) NoLinks() { d.noLinks = true }

// Link gives a file a second name.
func (d *Disk) Link(from, to string) error {
	if _, taken := d.seen[to]; d.noLinks && !taken {
		return &fs.PathError{Op: "link", Path: to, Err: errors.ErrUnsupported}
	}
	n, ok := d.seen[from]
	if !ok {
		return &fs.PathError{Op: "link", Path: from, Err: fs.ErrNotExist}
	}
	return d.name(n, to)
}

// NoUnnamed makes the disk one that knows no files without a name.
func (d *Disk) NoUnnamed() { d.noUnnamed = true }

// Unnamed makes a file without a name.
func (d *Disk) Unnamed(dir string) (disk.File, error) {
	if d.noUnnamed {
		return nil, errors.ErrUnsupported
	}
	if err := d.call("open"); err != nil {
		return nil, &fs.PathError{Op: "open", Path: dir, Err: err}
	}
	d.nextID++
	return &file{d: d, n: &node{id: d.nextID, mode: 0o600}, name: dir}, nil
}

// Name gives a file its first name.
func (d *Disk) Name(f disk.File, name string) error { return d.name(f.(*file).n, name) }

func (d *Disk) name(n *node, name string) error {
	if _, taken := d.seen[name]; taken {
		return &fs.PathError{Op: "link", Path: name, Err: fs.ErrExist}
	}
	if err := d.call("link"); err != nil {
		return &fs.PathError{Op: "link", Path: name, Err: err}
	}
	d.rename("", name, n)
	d.after("link")
	return nil
}

// Same says whether two descriptions are of one file.
func (d *Disk) Same(a, b fs.FileInfo) bool { return a.(info).id == b.(info).id }

// Real is the path itself: there are no links.
func (d *Disk) Real(name string) (string, error) { return name, nil }

// ReadDir lists a folder.
func (d *Disk) ReadDir(dir string) ([]fs.DirEntry, error) {
	var list []fs.DirEntry
	for name, n := range d.seen {
		if path.Dir(name) == path.Clean(dir) {
			list = append(list, fs.FileInfoToDirEntry(n.info(name)))
		}
	}
	slices.SortFunc(list, func(a, b fs.DirEntry) int { return strings.Compare(a.Name(), b.Name()) })
	return list, nil
}

// Mkdir makes a folder; it is on the disk at once.
func (d *Disk) Mkdir(name string, _ fs.FileMode) error {
	d.folders[path.Clean(name)] = true
	return nil
}

// Remove takes a name away.
func (d *Disk) Remove(name string) error {
	n, ok := d.seen[name]
	if !ok {
		return &fs.PathError{Op: "remove", Path: name, Err: fs.ErrNotExist}
	}
	if err := d.call("remove"); err != nil {
		return &fs.PathError{Op: "remove", Path: name, Err: err}
	}
	d.rename(name, "", n)
	d.after("remove")
	return nil
}

// Rename gives a file another name.
func (d *Disk) Rename(from, to string) error {
	n, ok := d.seen[from]
	if !ok {
		return &fs.PathError{Op: "rename", Path: from, Err: fs.ErrNotExist}
	}
	if err := d.call("rename"); err != nil {
		return &fs.PathError{Op: "rename", Path: from, Err: err}
	}
	d.rename(from, to, n)
	d.after("rename")
	return nil
}

// SyncDir brings the names of a folder to the disk.
func (d *Disk) SyncDir(dir string) error {
	if err := d.call("sync folder"); err != nil {
		return &fs.PathError{Op: "sync", Path: dir, Err: err}
	}
	var rest []nameOp
	for _, p := range d.pending {
		if p.dir != path.Clean(dir) {
			rest = append(rest, p)
			continue
		}
		p.apply(d.durable)
	}
	d.pending = rest
	d.after("sync folder")
	return nil
}

func (p nameOp) apply(names map[string]*node) {
	if p.from != "" {
		delete(names, p.from)
	}
	if p.to != "" {
		names[p.to] = p.node
	}
}
