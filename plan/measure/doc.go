// Package measure holds the quantities that a weaver measures with, below everything else: lengths and
// masses as whole nanometres and nanograms, yarn sizes in the trade's count systems, setts, percentages,
// and how each is read from what a person types and written again. A yard and a metre can't be mixed by
// accident, and what is rounded says which way.
//
// Start from [ParseLength], [ParseMass], [ParseYarn], [ParseSett] and [ParsePercent]. What won't do is a
// [FieldError], which names the field, the value and what would do.
package measure
