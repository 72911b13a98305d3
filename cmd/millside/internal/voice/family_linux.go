package voice

import "syscall"

// endWithUs asks the system to end the command when this program dies, even where it can't end it itself.
func endWithUs(attr *syscall.SysProcAttr) { attr.Pdeathsig = syscall.SIGTERM }
