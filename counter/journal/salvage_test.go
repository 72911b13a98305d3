package journal

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"testing"
)

func TestSalvage(t *testing.T) {
	p := testPlan(t, 40, 10, 0)
	data := fileOf(t, p, sample())
	hurt := bytes.Replace(data, []byte("undone"), []byte("undine"), 1) // line 6
	tests := []struct {
		name    string
		data    []byte
		events  int
		badLine int
		lost    int
	}{
		{"whole", data, len(sample()), 0, 0},
		{"damaged inside", hurt, 4, 6, 6},
		{"torn", data[:len(data)-12], len(sample()) - 1, len(sample()) + 1, 0},
		{"no line feed at the end", data[:len(data)-1], len(sample()), 0, 0},
		{"NUL tail", append(bytes.Clone(data), 0, 0), len(sample()), len(sample()) + 2, 0},
	}
	for _, tt := range tests {
		from := writeFile(t, tt.data)
		to := from + "-2"
		res, err := Salvage(OS(), from, to, at(99))
		if err != nil || res.Events != tt.events || res.BadLine != tt.badLine || res.Lost != tt.lost ||
			(res.Why != "") != (tt.badLine > 0) {
			t.Errorf("%s: %+v, %v", tt.name, res, err)
		}
		if !bytes.Equal(readBack(t, from), tt.data) {
			t.Errorf("%s: the damaged file was changed", tt.name)
		}
		r, err := Open(OS(), to)
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		added := 0 // the event that tells of the loss
		if tt.lost > 0 {
			added = 1
		}
		if r.State().Events != tt.events+added || r.Torn() != "" || r.State().Missing() != tt.lost {
			t.Errorf("%s: %d events, torn %q", tt.name, r.State().Events, r.Torn())
		}
		_ = r.Close()
		if _, err := Salvage(OS(), from, to, at(99)); !errors.Is(err, fs.ErrExist) {
			t.Errorf("%s: salvaged over a file: %v", tt.name, err)
		}
	}
}

func TestSalvageWithoutAPlan(t *testing.T) {
	from := writeFile(t, []byte("no record\n"))
	_, err := Salvage(OS(), from, from+"-2", at(99))
	var de *DamageError
	if !errors.As(err, &de) || de.Line != 1 {
		t.Errorf("%v", err)
	}
	if _, err := os.Stat(from + "-2"); !errors.Is(err, fs.ErrNotExist) {
		t.Error("a file was made")
	}
}
