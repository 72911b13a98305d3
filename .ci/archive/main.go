// Command archive packs a folder into a .tar.gz or a .zip, so that the same folder gives the same bytes
// wherever it is packed: names in order, one time, no owners.
package main

import (
	"archive/tar"
	"archive/zip"
	"compress/gzip"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// packed is the time of every file in an archive.
var packed = time.Date(2026, time.November, 25, 0, 0, 0, 0, time.UTC)

func main() {
	if len(os.Args) != 3 {
		fmt.Fprintln(os.Stderr, "usage: archive FOLDER FILE.tar.gz|FILE.zip")
		os.Exit(2)
	}
	if err := pack(os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintln(os.Stderr, "archive:", err)
		os.Exit(1)
	}
}

// adder adds a file of a name, rights and content to an archive.
type adder func(name string, mode fs.FileMode, data []byte) error

func pack(dir, to string) (err error) {
	out, err := os.Create(to)
	if err != nil {
		return err
	}
	defer func() {
		if closed := out.Close(); err == nil {
			err = closed
		}
	}()
	add, done := zipped(out)
	if strings.HasSuffix(to, ".tar.gz") {
		add, done = tarred(out)
	}
	parent := filepath.Dir(filepath.Clean(dir))
	err = filepath.WalkDir(dir, func(path string, entry fs.DirEntry, err error) error { // in the order of names
		if err != nil || entry.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		name, err := filepath.Rel(parent, path)
		if err != nil {
			return err
		}
		info, err := entry.Info()
		if err != nil {
			return err
		}
		mode := fs.FileMode(0o644)
		if info.Mode()&0o111 != 0 {
			mode = 0o755
		}
		return add(filepath.ToSlash(name), mode, data)
	})
	if err != nil {
		return err
	}
	return done()
}

func tarred(w io.Writer) (adder, func() error) {
	gz := gzip.NewWriter(w)
	t := tar.NewWriter(gz)
	add := func(name string, mode fs.FileMode, data []byte) error {
		if err := t.WriteHeader(&tar.Header{Name: name, Mode: int64(mode), Size: int64(len(data)), ModTime: packed, Format: tar.FormatPAX}); err != nil {
			return err
		}
		_, err := t.Write(data)
		return err
	}
	return add, func() error {
		if err := t.Close(); err != nil {
			return err
		}
		return gz.Close()
	}
}

func zipped(w io.Writer) (adder, func() error) {
	z := zip.NewWriter(w)
	add := func(name string, mode fs.FileMode, data []byte) error {
		h := &zip.FileHeader{Name: name, Method: zip.Deflate, Modified: packed}
		h.SetMode(mode)
		f, err := z.CreateHeader(h)
		if err != nil {
			return err
		}
		_, err = f.Write(data)
		return err
	}
	return add, z.Close
}
