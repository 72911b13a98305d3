package draft

import (
	"bytes"
	"encoding/binary"
	"io"
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// From reads a draft from a file, a pipe or whatever else gives bytes. No more of it is read than a draft
// may have. The error is that of the reader, or that of [Read].
func From(r io.Reader) (*Draft, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return nil, err
	}
	if len(data) > MaxBytes { // how much more isn't known
		return nil, refuse("more than "+strconv.Itoa(MaxBytes)+" bytes", atMostBytes)
	}
	return Read(data)
}

var atMostBytes = "a draft of at most " + strconv.Itoa(MaxBytes) + " bytes"

// decode makes text of a draft's bytes: without a byte order mark, as UTF-16 if it is that, as UTF-8 if it
// is that, else as Latin-1, and with line feeds for all line ends.
func decode(data []byte) (string, error) {
	if len(data) > MaxBytes {
		return "", refuse(strconv.Itoa(len(data))+" bytes", atMostBytes)
	}
	text, ok := fromUTF16(data)
	if !ok {
		data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
		if text = string(data); !utf8.Valid(data) {
			text = fromLatin1(data)
		}
	}
	if strings.ContainsRune(text, 0) {
		return "", refuse("bytes that are no text", "a draft in plain text")
	}
	return strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n"), nil
}

func fromLatin1(data []byte) string {
	var b strings.Builder
	for _, c := range data {
		b.WriteRune(rune(c))
	}
	return b.String()
}

// fromUTF16 makes text of UTF-16, as some editors write it: told by its byte order mark or, since a draft
// begins with an ASCII letter or bracket, by one nil byte of the first two. Half a character at the end is
// left out.
func fromUTF16(data []byte) (string, bool) {
	if len(data) < 2 {
		return "", false
	}
	var order binary.ByteOrder
	switch first := [2]byte(data); {
	case first == [2]byte{0xff, 0xfe}, first[0] != 0 && first[1] == 0:
		order = binary.LittleEndian
	case first == [2]byte{0xfe, 0xff}, first[0] == 0 && first[1] != 0:
		order = binary.BigEndian
	default:
		return "", false
	}
	units := make([]uint16, 0, len(data)/2)
	for ; len(data) >= 2; data = data[2:] {
		units = append(units, order.Uint16(data))
	}
	return strings.TrimPrefix(string(utf16.Decode(units)), "\ufeff"), true
}
