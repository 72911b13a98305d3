//go:build unix

package files

import (
	"fmt"
	"strings"
	"testing"

	"millside/counter/disk/simdisk"
)

// Wherever the power goes while a sheet is saved, with whatever the disk kept, the file is the old one or the new one,
// whole; once it is said to be saved it is the new one. So it is when any one call fails. Nothing is left beside by a
// program that lives.
func TestEveryCrashPointOfASheet(t *testing.T) {
	const dir, path = "/r", "/r/sheet.txt"
	older, newer := strings.Repeat("older ", 200), strings.Repeat("newer ", 300)
	points, images := 0, 0
	walk := func(t *testing.T, replace, unnamed bool, failing int) (calls int) {
		d := simdisk.New(dir)
		if !unnamed {
			d.NoUnnamed()
		}
		if replace {
			d.Put(path, []byte(older))
		}
		saved := false
		check := func(what string) {
			points++
			d.Images(func(i simdisk.Image) bool {
				images++
				data, there := i[path]
				ok := there && string(data) == newer || !saved &&
					(replace && string(data) == older || !replace && !there)
				if !ok {
					t.Errorf("call %d fails, power cut after %s, saved %v: %.30q, %d bytes", failing, what, saved, data,
						len(data))
				}
				return ok
			})
		}
		d.After = check
		d.Fail = func(n int, _ string) error {
			if n == failing {
				return simdisk.ErrIO
			}
			return nil
		}
		err := WriteOn(d, path, replace, text(newer))
		if err != nil && failing == 0 {
			t.Fatal(err)
		}
		saved = err == nil
		check("the end")
		for name := range d.Files() {
			if name != path && failing == 0 {
				t.Errorf("left behind: %s", name)
			}
		}
		return d.Calls()
	}
	for _, replace := range []bool{false, true} {
		for _, unnamed := range []bool{false, true} {
			t.Run(fmt.Sprintf("replace %v, unnamed %v", replace, unnamed), func(t *testing.T) {
				calls := walk(t, replace, unnamed, 0)
				for n := 1; n <= calls; n++ {
					walk(t, replace, unnamed, n)
				}
			})
		}
	}
	t.Logf("%d crash points, %d states", points, images)
}
