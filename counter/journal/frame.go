package journal

import (
	"bytes"
	"encoding/binary"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"hash/crc32"
	"millside/plan"
	"strconv"
)

// The format of the file; the package comment describes it in full.
const (
	magic     = "millside-record"
	version   = 1
	maxLine   = 1 << 20  // bytes, the line feed included; the first line of a striped warp is long
	maxRecord = 64 << 20 // bytes
	sumLen    = len(" #00000000")
)

var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// seal puts the checksum and the line feed behind a line, and gives the checksum for the next one.
func seal(body []byte, before uint32) ([]byte, uint32) {
	sum := crc32.Update(before, castagnoli, body)
	return fmt.Appendf(body, " #%08x\n", sum), sum
}

// unseal checks the checksum of a line without its line feed, and gives what stands before it.
func unseal(line []byte, before uint32) ([]byte, uint32, error) {
	n := len(line) - sumLen
	if n < 1 || line[n] != ' ' || line[n+1] != '#' {
		return nil, 0, errors.New("it doesn't end in a checksum")
	}
	sum := crc32.Update(before, castagnoli, line[:n])
	var want [8]byte
	hex.Encode(want[:], binary.BigEndian.AppendUint32(nil, sum))
	if !bytes.Equal(line[n+2:], want[:]) {
		return nil, 0, errors.New("its checksum doesn't fit: it was changed, or a line was taken out, put in or moved")
	}
	return line[:n], sum, nil
}

// appendHead writes the first line, without its checksum.
func appendHead(b []byte, s plan.Spec) ([]byte, error) {
	text, err := json.Marshal(s)
	if err != nil {
		return nil, fmt.Errorf("writing the plan: %w", err)
	}
	b = append(b, magic...)
	b = append(b, ' ')
	b = strconv.AppendInt(b, version, 10)
	b = append(b, ' ')
	return append(b, text...), nil
}

// parseHead reads the first line, less its checksum, and works the plan out.
func parseHead(body []byte) (*plan.Plan, error) {
	rest, ok := bytes.CutPrefix(body, []byte(magic+" "))
	number, text, ok2 := bytes.Cut(rest, []byte{' '})
	v, err := strconv.Atoi(string(number))
	if !ok || !ok2 || err != nil || v < 1 || strconv.Itoa(v) != string(number) {
		return nil, errors.New("it is not the first line of a winding record")
	}
	if v > version {
		return nil, fmt.Errorf("%w (format %d; this one knows %d)", ErrNewer, v, version)
	}
	var s plan.Spec
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.DisallowUnknownFields()
	if err := dec.Decode(&s); err != nil {
		return nil, fmt.Errorf("its plan can't be read: %w", err)
	}
	again, err := appendHead(nil, s)
	if err != nil {
		return nil, err
	}
	if !bytes.Equal(again, body) {
		return nil, errors.New("its plan is not written as this program writes it")
	}
	p, err := plan.New(s)
	if err != nil {
		return nil, fmt.Errorf("its plan can't be wound: %w", err)
	}
	return p, nil
}
