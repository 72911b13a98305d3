package loom

import (
	"encoding/json"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/measure"
)

func TestThreading(t *testing.T) {
	for _, c := range []struct {
		text, plain string
		ends        int
		heddles     []int
	}{
		// A straight draw on four shafts (from memory): a quarter of the ends each, and what is over from
		// shaft 1 on.
		{"1, 2, 3, 4", "1, 2, 3, 4", 402, []int{101, 101, 100, 100}},
		{"24 times (1,2,3,4), 1", "24 times (1, 2, 3, 4), 1", 97, []int{25, 24, 24, 24}},
		{"1, 2, 3, 4, 1, 2, 3, 4", "2 times (1, 2, 3, 4)", 8, []int{2, 2, 2, 2}},
		{"0, 1+3, 2, 0", "0, 1+3, 2, 0", 4, []int{1, 1, 1}},
		{"3 times (2 times (1, 2), 3 times (3, 4))", "3 times (1, 2, 1, 2, 3 times (3, 4))", 30, []int{6, 6, 9, 9}},
	} {
		got, err := ParseThreading(c.text)
		if err != nil || got.String() != c.plain || !slices.Equal(got.Heddles(c.ends), c.heddles) {
			t.Errorf("%s: %s (%v), heddles %v", c.text, got, err, got.Heddles(c.ends))
		}
	}
	for _, text := range []string{"", "1,", "x", "1 2", "-1", "1+1", "0+1", "1001", "2 times 1", "2 times (1",
		"2 times (1))", "100000 times (1, 2)", "1.5"} {
		if got, err := ParseThreading(text); len(measure.FieldErrors(err)) != 1 {
			t.Errorf("%q is read as %v (%v)", text, got, err)
		}
	}
	repeat := Threading{{1}, {2}, nil}
	if got := repeat.At(5); !slices.Equal(got, Shafts{2}) || repeat.Unthreaded(7) != 2 || repeat.At(0) != nil ||
		Threading(nil).At(1) != nil {
		t.Errorf("end 5 is on %v", got)
	}
}

func TestThreadingReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var want Threading
		for range rapid.IntRange(1, 5).Draw(t, "blocks") {
			var block Threading
			for range rapid.IntRange(1, 6).Draw(t, "ends") {
				block = append(block, Shafts(rapid.SliceOfNDistinct(rapid.IntRange(1, 4), 0, 2, rapid.ID[int]).Draw(t,
					"shafts")))
			}
			for range rapid.IntRange(1, 9).Draw(t, "times") {
				want = append(want, block...)
			}
		}
		text, err := json.Marshal(want)
		if err != nil {
			t.Fatal(err)
		}
		var got Threading
		if err := json.Unmarshal(text, &got); err != nil || !slices.EqualFunc(got, want, sameShafts) {
			t.Fatalf("%s is read as %v (%v)", text, got, err)
		}
		total, all := 0, len(want)
		for _, n := range got.Heddles(all) {
			total += n
		}
		for _, s := range want {
			total -= len(s)
		}
		if total != 0 {
			t.Fatalf("%v needs %v", want, got.Heddles(all))
		}
	})
}

func TestHeddles(t *testing.T) {
	for text, want := range map[string][]int{"100, 80,60": {100, 80, 60}, "50 on 4 shafts": {50, 50, 50, 50},
		"7": {7}} {
		if got, err := ParseHeddles(text); err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%q: %v (%v)", text, got, err)
		}
	}
	for _, text := range []string{"", "x", "1,,2", "-1", "50 on 0 shafts"} {
		if got, err := ParseHeddles(text); err == nil {
			t.Errorf("%q is read as %v", text, got)
		}
	}
}

// A threading without any repeat, as long as a warp may be, is written in a moment.
func BenchmarkThreadingWritten(b *testing.B) {
	var t Threading
	x := uint32(1)
	for range 20_000 {
		x = x*1664525 + 1013904223
		t = append(t, Shafts{1 + int(x>>24)%8})
	}
	for b.Loop() {
		_ = t.String()
	}
}
