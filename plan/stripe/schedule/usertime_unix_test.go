//go:build unix

package schedule

import (
	"syscall"
	"time"
)

// userTime is the processor time that the tests have taken so far: on a machine that is busy with other work it
// says more than the clock.
func userTime() time.Duration {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		return 0
	}
	return time.Duration(used.Utime.Nano())
}
