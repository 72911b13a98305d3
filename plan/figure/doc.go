// Package figure holds what stands in one place of a result until something writes it: words, and between
// them numbers with their units, counts, spans of time, numbers of ends and of passes, colours. A formatter
// goes through a [Cell] and does with each [Figure] what its format wants: keeps a number on one line with its
// unit, paints a colour, gives a program the number. None has to look for numbers in a text.
//
// Start from [Say], which makes a cell as fmt.Sprintf makes a text.
package figure
