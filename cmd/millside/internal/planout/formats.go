package planout

import "millside/cmd/millside/internal/schema"

// Formats lists the structures that this package prints for programs.
func Formats() []schema.Format {
	return []schema.Format{{Name: planFormat, Value: planJSON{}}, {Name: DraftFormat, Value: draftJSON{}}, {Name: settFormat, Value: settJSON{}}}
}
