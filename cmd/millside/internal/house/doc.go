// Package house holds nothing but the tests of the house: that the arrows between the rooms are those
// drawn in DEVELOPERS.md, and that no room, file or line is too big.
package house
