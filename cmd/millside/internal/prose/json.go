package prose

import (
	"encoding/json"
	"io"
)

// WriteJSON writes a value for a program to read, and for a person who looks over its shoulder.
func WriteJSON(w io.Writer, v any) error {
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(v)
}
