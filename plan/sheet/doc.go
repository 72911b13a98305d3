// Package sheet makes the studio sheet of a project: everything that hangs on the wall, from one source, so
// that text, Markdown, JSON and HTML show the same figures. [New] makes it, formatters only write it.
package sheet
