package loom

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func threadingOf(t *testing.T, text string) Threading {
	t.Helper()
	if text == "" {
		return nil
	}
	got, err := ParseThreading(text)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// Own examples, by hand. 22 ends: two floating selvedges, one doubled pair at each edge leave 18 places; 1, 2 and 1
// leave 15 for the repeat of four: three times and three ends more.
func TestThreadedWarp(t *testing.T) {
	for _, c := range []struct {
		begin, repeat, end        string
		ends, doubled, floating   int
		all                       string
		times, over, lacking, out int
		heddles                   []int
	}{
		{"", "1-2-3-4", "", 10, 0, 0, "2 times (1, 2, 3, 4), 1, 2", 2, 2, 0, 0, []int{3, 3, 2, 2}},
		{"1, 2", "1, 2, 3, 4", "1", 22, 1, 2, "1, 2, 3 times (1, 2, 3, 4), 1, 2, 3, 1", 3, 3, 0, 2, []int{6, 5, 4, 3}},
		{"", "1, 2, 3, 4, 0", "", 5, 0, 2, "1, 2, 3, 4, 0", 1, 0, 0, 1, []int{1, 1, 1, 1}}, // end by end, as it is said
		{"1, 2, 3", "", "4", 4, 0, 0, "1, 2, 3, 4", 0, 0, 0, 0, []int{1, 1, 1, 1}},
		{"1, 2, 3", "", "4", 6, 0, 0, "1, 2, 3, 0, 0, 4", 0, 0, -2, 2, []int{1, 1, 1, 1}},
		{"1, 2, 3", "", "4, 4", 4, 0, 0, "1, 2, 3, 4", 0, 0, 1, 0, []int{1, 1, 1, 1}},
	} {
		w := Threaded{Begin: threadingOf(t, c.begin), Repeat: threadingOf(t, c.repeat), End: threadingOf(t, c.end),
			Ends: c.ends, Doubled: c.doubled, Floating: c.floating}
		times, over := w.Repeats()
		if got := w.All().String(); got != c.all || times != c.times || over != c.over || w.Lacking() != c.lacking ||
			w.NoHeddle() != c.out || !slices.Equal(w.Heddles(), c.heddles) {
			t.Errorf("%s | %s | %s: %s, %d and %d, lacking %d, out %d, %v", c.begin, c.repeat, c.end, got, times, over,
				w.Lacking(), w.NoHeddle(), w.Heddles())
		}
	}
}

func TestShaftsOfAnEnd(t *testing.T) {
	w := Threaded{Begin: threadingOf(t, "1, 2"), Repeat: threadingOf(t, "1, 2, 3, 4"), End: threadingOf(t, "1"),
		Ends:    22,
		Doubled: 1, Floating: 2}
	want := []string{"0", "1", "1", "2", "1", "2", "3", "4", "1", "2", "3", "4", "1", "2", "3", "4", "1", "2", "3", "1",
		"1", "0"}
	for i, s := range want {
		if got := w.At(i + 1).String(); got != s {
			t.Errorf("end %d goes through %s, want %s", i+1, got, s)
		}
	}
}

// Every end has the shafts of its place, and each place is that of an end.
func TestThreadedPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := Threaded{Repeat: Threading{{1}, {2}, {3}}, Ends: rapid.IntRange(30, 90).Draw(t, "ends"),
			Doubled: rapid.IntRange(0, 4).Draw(t, "doubled"), Floating: rapid.IntRange(0, 4).Draw(t, "floating"),
			FirstEnd: Side(rapid.IntRange(0, 1).Draw(t, "side"))}
		times := make([]int, w.Places()+1)
		for end := 1; end <= w.Ends; end++ {
			times[w.place(end)]++
		}
		for p, n := range times {
			want := 1
			switch {
			case p == 0:
				want = w.Floating
			case p <= w.Doubled || p > w.Places()-w.Doubled:
				want = 2
			}
			if n != want {
				t.Fatalf("%d ends in place %d of %+v", n, p, w)
			}
		}
	})
}

// Own example, by hand: shaft 1 lacks 60, shaft 4 has 50 to spare and shaft 3 has 5: 50 and 5 are moved, 5 are to be
// added; the fifth shaft isn't there.
func TestWorkOnHeddles(t *testing.T) {
	w := WorkOnHeddles([]int{160, 100, 95, 50, 10}, []int{100, 100, 100, 100})
	if len(w.Moves) != 2 || w.Moves[0].String() != "50 from shaft 4 to shaft 1" ||
		w.Moves[1].String() != "5 from shaft 3 to shaft 1" || !slices.Equal(w.Add, []int{5, 0, 0, 0}) || w.Beyond != 1 {
		t.Errorf("%+v", w)
	}
}

func TestThreadingWithDashes(t *testing.T) {
	if got := threadingOf(t, "2 times (1-2-3-4), 1").String(); got != "2 times (1, 2, 3, 4), 1" {
		t.Errorf("read %s", got)
	}
	for _, text := range []string{"1-4", "1-2-", "1--2"} {
		if got, err := ParseThreading(text); err == nil {
			t.Errorf("%q is read as %s", text, got)
		}
	}
}

// A doubled pair shares a heddle (from memory), also in a threading that names each end by itself. By hand: ends 2 and
// 3, and 8 and 9, are pairs inside one floating selvedge at each edge; the pair 8 and 9 goes through two shafts, as the
// weaver says, and is counted as it stands.
func TestDoubledPairsEndByEnd(t *testing.T) {
	w := Threaded{Repeat: threadingOf(t, "0, 1, 1, 2, 3, 4, 1, 2, 4, 0"), Ends: 10, Doubled: 1, Floating: 2}
	if got := w.Heddles(); !slices.Equal(got, []int{2, 2, 1, 2}) {
		t.Errorf("%v", got)
	}
}
