// Package house holds nothing but the tests of the house: that the arrows between the rooms are those
// drawn in DEVELOPERS.md, and that no room, file or line is too big. The exceptions that still stand are
// named in exceptions_test.go; take one away when you have mended it.
package house
