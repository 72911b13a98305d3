// Package recordout writes records: where a warp stands, and the list of them, as text and as JSON.
package recordout
