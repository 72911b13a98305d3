// Package draftpage opens a draft on the screen: its file is typed or chosen in a list of its folder, and then the
// weaver says what the draft itself doesn't, and what its colours are called. What it gives is a [MadeMsg].
package draftpage
