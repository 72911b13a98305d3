package prose

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"unicode/utf16"
)

// WriteJSON writes a value for a program to read, and for a person who looks over its shoulder: whatever
// could turn the direction of writing or act on a terminal is escaped, which means the same to a program.
func WriteJSON(w io.Writer, v any) error {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	if err := enc.Encode(v); err != nil {
		return err
	}
	_, err := w.Write(escapeHidden(b.Bytes()))
	return err
}

// escapeHidden escapes the runes that [Clean] takes away. They stand in texts only, since the encoder puts
// nothing else but ASCII and line feeds between them.
func escapeHidden(data []byte) []byte {
	out := make([]byte, 0, len(data))
	for _, r := range string(data) {
		switch {
		case r == '\n' || r < 0x7F || Clean(string(r)) == string(r):
			out = append(out, string(r)...)
		case r > 0xFFFF:
			high, low := utf16.EncodeRune(r)
			out = fmt.Appendf(out, `\u%04x\u%04x`, high, low)
		default:
			out = fmt.Appendf(out, `\u%04x`, r)
		}
	}
	return out
}
