// Package durability measures what a counted pass costs, side by side with what others would use to keep it: a bare
// write and sync, SQLite (write-ahead log, synchronous FULL) and bbolt. It is a module of its own, so that the program
// depends on none of them. Run it from its folder:
//
//	go test -run Cost -v .
//
// It prints medians over rounds in which each of them writes once, one after the other, on the same disk: a disk that is
// busy in between makes all of them slower alike.
package durability
