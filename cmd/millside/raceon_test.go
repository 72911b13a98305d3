//go:build race

package main

// The tests run under the race detector: so does the program that they drive.
func init() { raced = true }
