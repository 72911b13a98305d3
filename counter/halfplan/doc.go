// Package halfplan keeps the plans that a weaver has begun to fill in and of which no warp was made yet: each in a file
// of its own in the folder "half-filled" inside that of the records, written whole or not at all. Such a file holds
// what stands in the fields of the form as it was typed, right or wrong, so that the form can be offered again as it
// was left. It is no record: nothing was wound, and it goes once the warp is made.
package halfplan
