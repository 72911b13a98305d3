//go:build !unix

package voice

import "os/exec"

// family does nothing: here the command alone is ended.
func family(*exec.Cmd) {}

func disband(*exec.Cmd) {}
