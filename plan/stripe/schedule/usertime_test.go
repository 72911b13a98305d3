//go:build !unix

package schedule

import "time"

// userTime isn't known here.
func userTime() time.Duration { return 0 }
