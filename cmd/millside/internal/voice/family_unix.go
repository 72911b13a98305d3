//go:build unix

package voice

import (
	"os/exec"
	"syscall"
)

// family puts a command and whatever it starts into a process group of its own, so that all of it can be ended.
func family(cmd *exec.Cmd) {
	cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	endWithUs(cmd.SysProcAttr)
	cmd.Cancel = func() error { return syscall.Kill(-cmd.Process.Pid, syscall.SIGTERM) }
}

// disband ends what a command has left behind. It has been waited for, but its group lives as long as one of its
// processes does, so its number is not another's. Where none is left there is no group, which is no fault.
func disband(cmd *exec.Cmd) {
	if cmd.Process != nil {
		_ = syscall.Kill(-cmd.Process.Pid, syscall.SIGKILL)
	}
}
