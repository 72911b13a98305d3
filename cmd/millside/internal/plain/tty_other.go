//go:build !unix

package plain

import "os"

// KeyByKey can't be done on this system: lines are read.
func KeyByKey(*os.File) (restore func(), ok bool) { return nil, false }
