//go:build unix && !linux

package voice

import "syscall"

// endWithUs does nothing: this system can't be asked to.
func endWithUs(*syscall.SysProcAttr) {}
