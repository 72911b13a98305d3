// Package entry says how each field of the table of package field stands in a plan: how its value is written, and
// how what a weaver writes becomes a value. Flags and form are two ways to write into the same entries, so that
// what one of them reads or refuses the other reads or refuses in the same words.
package entry
