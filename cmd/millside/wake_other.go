//go:build !unix

package main

import "os"

// notifyWake does nothing: this system can't put a program aside.
func notifyWake(chan<- os.Signal) {}
