// Package prose writes results for people and for programs: text that is clean and at most 80 columns wide,
// summaries of labelled rows, tables in aligned columns, counts with their nouns, and JSON. What the
// commands and their formats share stands here once.
package prose
