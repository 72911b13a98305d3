//go:build unix

package main

import (
	"os"
	"os/signal"
	"syscall"
)

// notifyWake tells when the program goes on after it was put aside with Ctrl-Z.
func notifyWake(c chan<- os.Signal) { signal.Notify(c, syscall.SIGCONT) }
