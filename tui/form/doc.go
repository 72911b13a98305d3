// Package form is the new-warp page: fields in sections, and beside them what they come to, at each key
// stroke. It works on values only: a schedule of stripes, which may take a second, comes back as a message,
// and a record is asked for with [BeginMsg]. All arithmetic and all reasons in words are plan's.
package form
