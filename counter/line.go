package counter

import (
	"bytes"
	"encoding"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"millside/plan/finishing"
	"millside/plan/measure"
)

// appendEvent writes an event, which must be normal, as a line without its checksum.
func AppendEvent(b []byte, line int, e Event) []byte {
	b = strconv.AppendInt(b, int64(line), 10)
	b = append(b, ' ')
	b = e.At.AppendFormat(b, time.RFC3339Nano)
	b = append(b, ' ')
	b = append(b, e.Kind...)
	for _, f := range fieldsOf[e.Kind] {
		if e.missing(f) {
			continue
		}
		b = append(b, ' ')
		b = append(b, f.String()...)
		b = append(b, '=')
		switch f {
		case chainField:
			b = strconv.AppendInt(b, int64(e.Chain), 10)
		case passField:
			b = strconv.AppendInt(b, int64(e.Pass), 10)
		case textField, remarkField:
			b = strconv.AppendQuote(b, e.Text)
		case stepField:
			b = append(b, e.Step...)
		case orderField:
			b = append(b, e.Order.String()...)
		case footField:
			b = append(b, e.Foot.String()...)
		case positionField:
			b = strconv.AppendInt(b, int64(e.Position), 10)
		case whatField:
			b = append(b, e.What...)
		case placeField:
			b = appendPlain(b, e.Place)
		case lineField:
			b = strconv.AppendInt(b, int64(e.Line), 10)
		case linesField:
			b = strconv.AppendInt(b, int64(e.Lines), 10)
		case weightField:
			b = appendPlain(b, e.Weight)
		}
	}
	return b
}

// appendPlain writes a quantity as records hold it: with a decimal point, whatever the weaver's own sign is.
func appendPlain(b []byte, quantity encoding.TextMarshaler) []byte {
	text, _ := quantity.MarshalText() // lengths and masses always have one
	return strconv.AppendQuote(b, string(text))
}

// parseEvent reads a line, less its checksum, that should have a number.
func ParseEvent(body []byte, line int) (Event, error) {
	text := string(body)
	number, rest, _ := strings.Cut(text, " ")
	if number != strconv.Itoa(line) {
		return Event{}, fmt.Errorf("it is numbered %q", measure.Shortened(number))
	}
	at, rest, _ := strings.Cut(rest, " ")
	when, err := time.Parse(time.RFC3339Nano, at)
	if err != nil {
		return Event{}, fmt.Errorf("its time %q can't be read", measure.Shortened(at))
	}
	kind, rest, _ := strings.Cut(rest, " ")
	e := Event{At: when, Kind: Kind(kind)}
	fields, ok := fieldsOf[e.Kind]
	if !ok {
		return Event{}, fmt.Errorf("%q is no kind of event", measure.Shortened(kind))
	}
	for _, f := range fields {
		if rest, err = e.parseField(f, rest); err != nil {
			return Event{}, err
		}
	}
	e = e.Normal()
	var buf [256]byte
	if again := AppendEvent(buf[:0], line, e); !bytes.Equal(again, body) {
		return Event{}, errors.New("it is not written as this program writes it")
	}
	return e, nil
}

// parseField reads one field from the front of a line and gives what is left.
func (e *Event) parseField(f field, rest string) (string, error) {
	value, ok := strings.CutPrefix(rest, f.String()+"=")
	if !ok && f.mayMiss() {
		return rest, nil
	}
	if !ok {
		return "", fmt.Errorf("it has no %s", f)
	}
	text, after, err := cutValue(f, value)
	if err == nil {
		err = e.setField(f, text)
	}
	if err != nil {
		return "", fmt.Errorf("its %s %q can't be read", f, measure.Shortened(value))
	}
	return after, nil
}

// cutValue cuts the value of a field from the front of a line: texts, lengths and weights are quoted, others end
// at a space.
func cutValue(f field, s string) (value, after string, err error) {
	switch f {
	case textField, remarkField, placeField, weightField:
		quoted, err := strconv.QuotedPrefix(s)
		if err != nil {
			return "", "", err
		}
		value, err = strconv.Unquote(quoted)
		return value, strings.TrimPrefix(s[len(quoted):], " "), err
	}
	value, after, _ = strings.Cut(s, " ")
	return value, after, nil
}

// setField fills a field with its value as the file has it.
func (e *Event) setField(f field, value string) error {
	var err error
	switch f {
	case chainField:
		e.Chain, err = strconv.Atoi(value)
	case passField:
		e.Pass, err = strconv.Atoi(value)
	case textField, remarkField:
		e.Text = value
	case stepField:
		e.Step = finishing.StepID(value)
	case orderField:
		err = e.Order.UnmarshalText([]byte(value))
	case positionField:
		e.Position, err = strconv.Atoi(value)
	case whatField:
		e.What = What(value)
	case placeField:
		e.HasPlace = true
		e.Place, err = measure.ParseLength(value)
	case lineField:
		e.Line, err = strconv.Atoi(value)
	case linesField:
		e.Lines, err = strconv.Atoi(value)
	case weightField:
		e.Weight, err = measure.ParseMass(value)
	case footField:
		err = e.Foot.UnmarshalText([]byte(value))
	}
	return err
}
