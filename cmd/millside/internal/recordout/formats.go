package recordout

import "millside/cmd/millside/internal/schema"

// Formats lists the structures that this package prints for programs.
func Formats() []schema.Format {
	return []schema.Format{{Name: listFormat, Value: listJSON{}}, {Name: showFormat, Value: showJSON{}}}
}
