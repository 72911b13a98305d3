// Package sheetout writes the studio sheet of package plan in its formats: text, Markdown, HTML and JSON. What
// stands on a sheet is decided there; here it is only formatted.
package sheetout
