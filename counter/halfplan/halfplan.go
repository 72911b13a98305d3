package halfplan

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"millside/plan"
	"millside/plan/measure"
)

// Plan is a half-filled plan.
type Plan struct {
	// Path is the file that it is kept in; "" where it isn't kept yet.
	Path string
	// Kept is when it was written last.
	Kept time.Time
	// Of is the name of the file of the record whose plan is being changed; "" in a plan for a new warp.
	Of string
	// At is the name of the field that was being filled in, Texts what stands in the fields, by their names in the
	// table of fields.
	At    string
	Texts map[string]string
	// Spec is what the fields come to, as far as they can be read.
	Spec plan.Spec
	// Err says why the file can't be read; then only Path and Kept are known.
	Err error
}

// format names the structure of the file; a file with another is a newer program's.
const format = "millside-half-filled-1"

// written is what stands in the file.
type written struct {
	Format string            `json:"format"` // format
	Kept   time.Time         `json:"kept"`
	Of     string            `json:"of,omitempty"`
	At     string            `json:"at,omitempty"`
	Fields map[string]string `json:"fields"`
	Spec   plan.Spec         `json:"spec"`
}

// mostBytes is the longest file that is read: several times what the longest texts of all fields take.
const mostBytes = 4 << 20

// text is what stands in the file of a plan.
func (p Plan) text() ([]byte, error) {
	p.Spec.Schedule, p.Spec.Other = nil, nil // they are worked out anew
	data, err := json.MarshalIndent(written{format, p.Kept.UTC().Truncate(time.Second), p.Of, p.At, p.Texts, p.Spec},
		"", "\t")
	return append(data, '\n'), err
}

// parse reads a file.
func parse(data []byte) (Plan, error) {
	if len(data) > mostBytes {
		return Plan{}, fmt.Errorf("it is longer than %d MiB", mostBytes>>20)
	}
	var w struct {
		Format string `json:"format"`
	}
	if err := json.Unmarshal(data, &w); err != nil {
		return Plan{}, fmt.Errorf("it is no half-filled plan: %w", err)
	}
	if w.Format != format {
		return Plan{}, fmt.Errorf("its format is %q, and this program knows %q", measure.Shortened(w.Format), format)
	}
	var all written
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(&all); err != nil {
		return Plan{}, err
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return Plan{}, errors.New("something stands behind its end")
	}
	p := Plan{Kept: all.Kept, Of: measure.Clean(all.Of), At: all.At, Texts: map[string]string{}, Spec: all.Spec}
	for name, text := range all.Fields {
		p.Texts[name] = cleanLines(text)
	}
	return p, nil
}

// cleanLines is [measure.Clean] for a text of several lines.
func cleanLines(text string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = measure.Clean(lines[i])
	}
	return strings.Join(lines, "\n")
}

// Name is the name that the plan has so far; "" for none.
func (p Plan) Name() string {
	if text, ok := p.Texts["name"]; ok {
		return strings.TrimSpace(measure.Clean(text))
	}
	return measure.Clean(p.Spec.Name)
}
