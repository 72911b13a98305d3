package wind_test

import (
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"millside/plan/measure"
	"millside/plan/wind"
)

func drawPositions(t *rapid.T) wind.Positions {
	return wind.Positions(rapid.Uint64Range(0, 1<<measure.MaxPositions-1).Draw(t, "positions"))
}

// The set agrees with a plain list of its members.
func TestPositionsAgreeWithAList(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, q := drawPositions(t), drawPositions(t)
		var list, less []int
		for pos := 1; pos <= measure.MaxPositions; pos++ {
			if p.Has(pos) {
				list = append(list, pos)
				if !q.Has(pos) {
					less = append(less, pos)
				}
			}
		}
		if got := members(p); !sameInts(got, list) || p.Count() != len(list) {
			t.Fatalf("All gives %v of %d, want %v", got, p.Count(), list)
		}
		if got := members(p.Without(q)); !sameInts(got, less) {
			t.Fatalf("Without gives %v, want %v", got, less)
		}
		if len(list) > 0 && (p.First() != list[0] || p.Last() != list[len(list)-1]) {
			t.Fatalf("first %d, last %d of %v", p.First(), p.Last(), list)
		}
		if got := readPositions(t, p.String()); !sameInts(got, list) {
			t.Fatalf("%v is written %q", list, p.String())
		}
	})
}

func members(p wind.Positions) []int {
	var list []int
	for pos := range p.All() {
		list = append(list, pos)
	}
	return list
}

// readPositions reads "1 to 6, 9" back to a list.
func readPositions(t *rapid.T, s string) []int {
	var list []int
	if s == "" {
		return nil
	}
	for _, part := range strings.Split(s, ", ") {
		from, to, run := strings.Cut(part, " to ")
		if !run {
			to = from
		}
		a, err1 := strconv.Atoi(from)
		b, err2 := strconv.Atoi(to)
		if err1 != nil || err2 != nil || (run && b < a+2) {
			t.Fatalf("can't read %q in %q", part, s)
		}
		for ; a <= b; a++ {
			list = append(list, a)
		}
	}
	return list
}

func sameInts(a, b []int) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

func TestPositionsByHand(t *testing.T) {
	for _, tt := range []struct {
		p    wind.Positions
		want string
	}{
		{0, ""}, {1, "1"}, {3, "1, 2"}, {7, "1 to 3"}, {0b100111111, "1 to 6, 9"}, {0b101, "1, 3"},
		{wind.FirstPositions(60), "1 to 60"}, {wind.FirstPositions(99), "1 to 60"}, {wind.FirstPositions(-1), ""},
	} {
		if got := tt.p.String(); got != tt.want {
			t.Errorf("%b is written %q, want %q", tt.p, got, tt.want)
		}
	}
	var none wind.Positions
	if none.First() != 0 || none.Last() != 0 || none.Has(0) || none.Has(1) || wind.FirstPositions(60).Has(61) {
		t.Error("an empty set has members")
	}
	for pos := range wind.FirstPositions(9).All() {
		if pos == 3 {
			break // going through the set may stop early
		}
	}
}

// Position and end number go one to one on any carried set, mirrored or not.
func TestPassPlacesItsEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		set := drawPositions(t)
		first := rapid.IntRange(1, 1000).Draw(t, "first")
		mirrored := rapid.Bool().Draw(t, "mirrored")
		pass := wind.Pass{Carried: set, Mirrored: mirrored, First: first, Last: first + set.Count() - 1}
		for i, pos := range members(set) {
			end := first + i
			if mirrored {
				end = pass.Last - i
			}
			if pass.EndAt(pos) != end || pass.PositionOf(end) != pos {
				t.Fatalf("position %d: end %d, want %d, which is in position %d", pos, pass.EndAt(pos), end,
					pass.PositionOf(end))
			}
		}
		if pass.EndAt(0) != 0 || pass.PositionOf(first-1) != 0 || pass.PositionOf(pass.Last+1) != 0 {
			t.Fatal("an end where there is none")
		}
	})
}
