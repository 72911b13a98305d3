// Package records reads the records of a folder for one command, each of them once: the list is made once,
// and what it has read of a record need not be read again to look at it. What is read for winding is read
// under the record's lock, by package counter, and is kept here as well, so that the list that is made
// afterwards finds it.
//
// A command lives for a moment, so what was read stays true for as long as it is needed. The screens live
// long: they get a store of their own, that keeps nothing.
package records
