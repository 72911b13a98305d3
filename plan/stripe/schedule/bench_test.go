package schedule

import (
	"context"
	"fmt"
	"reflect"
	"runtime"
	"testing"
	"time"

	"millside/plan/wind"
)

// cheapest is the cheaper of what was found.
func cheapest(f Found) *Schedule {
	if f.Cheapest != nil {
		return f.Cheapest
	}
	return f.Taken
}

// BenchmarkOrders makes the schedules of the fixed orders: the table in DEVELOPERS.md.
func BenchmarkOrders(b *testing.B) {
	for i, o := range append(orders(), freshOrders()...) {
		if testing.Short() && i%8 != 0 { // enough to see that they run
			continue
		}
		b.Run(fmt.Sprintf("%s on %d", o.name, o.positions), func(b *testing.B) {
			var found Found
			first, used := time.Duration(0), userTime()
			for b.Loop() {
				start := time.Now()
				first = 0
				var err error
				found, err = Make(context.Background(), o.ends, Limits{Positions: o.positions}, usual, func(*Schedule) {
					if first == 0 {
						first = time.Since(start)
					}
				})
				if err != nil {
					b.Fatal(err)
				}
			}
			s := cheapest(found)
			b.ReportMetric((userTime()-used).Seconds()/float64(b.N), "user-s")
			b.ReportMetric(s.Total.Minutes(), "minutes")
			b.ReportMetric(s.Proof.Bound.Minutes(), "bound")
			b.ReportMetric(100*float64(s.Proof.Gap)/float64(s.Total), "%gap")
			b.ReportMetric(float64(found.Taken.Kinds), "kinds")
			b.ReportMetric(float64(first.Milliseconds()), "ms-to-first")
		})
	}
}

// BenchmarkLong makes the schedules of very long warps, with and without a repeat.
func BenchmarkLong(b *testing.B) {
	for _, n := range []int{20_000, 100_000} {
		if testing.Short() && n > 20_000 {
			continue
		}
		plaid := pivot(run(1, 24), run(2, 4), run(3, 2), run(2, 4), run(4, 12), run(5, 1))
		for name, ends := range map[string][]int{"plaid": again(n/len(plaid)+1, plaid)[:n], "dice": dice(n, 6, 15, 6)} {
			b.Run(fmt.Sprintf("%s of %d", name, n), func(b *testing.B) {
				b.ReportAllocs()
				var found Found
				used := userTime()
				for b.Loop() {
					var err error
					if found, err = Make(context.Background(), ends, Limits{Positions: 12}, usual, nil); err != nil {
						b.Fatal(err)
					}
				}
				s := cheapest(found)
				b.ReportMetric((userTime()-used).Seconds()/float64(b.N), "user-s")
				b.ReportMetric(s.Total.Minutes(), "minutes")
				b.ReportMetric(100*float64(s.Proof.Gap)/float64(s.Total), "%gap")
			})
		}
	}
}

// What is found for the fixed orders holds on the model mill, is no worse than what a weaver would do by hand,
// and is the same each time; the bound is below it. A part of them in both return orders.
func TestOrdersHold(t *testing.T) {
	for k, o := range orders() {
		if k%4 != 0 || testing.Short() {
			continue
		}
		l := Limits{Positions: o.positions, ReturnOrder: wind.ReturnOrder(k / 4 % 2), Quick: true}
		found, err := Make(context.Background(), o.ends, l, usual, nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range []*Schedule{found.Taken, cheapest(found)} {
			if why := holds(s, o.ends, l, usual); why != "" {
				t.Fatalf("%s: %s", o.name, why)
			}
			if s.Proof.Bound > s.Total || s.Proof.Gap != s.Total-s.Proof.Bound {
				t.Errorf("%s: %+v of %v", o.name, s.Proof, s.Total)
			}
		}
		for _, w := range []Way{SideBySide, Swapped, OneRepeat} {
			s, err := ByWay(w, o.ends, l, usual)
			if err != nil {
				continue
			}
			if why := holds(s, o.ends, l, usual); why != "" {
				t.Fatalf("%s, %v: %s", o.name, w, why)
			}
			if s.Total < cheapest(found).Total {
				t.Errorf("%s: %v takes %v, less than %v", o.name, w, s.Total, cheapest(found).Total)
			}
		}
		again, err := Make(context.Background(), o.ends, l, usual, nil)
		if err != nil || fmt.Sprint(again.Taken) != fmt.Sprint(found.Taken) {
			t.Errorf("%s: another schedule the second time (%v)", o.name, err)
		}
	}
}

// However many cores there are, and whichever of the searches side by side is the faster, the result is the same: of a
// warp with a twin, whose paddle has too many positions for the exact search, so that all lots are drawn, and of one
// that is searched in pieces and has its bound in pieces.
func TestSameOnAnyMachine(t *testing.T) {
	if testing.Short() {
		t.Skip("searches two orders twice")
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	for _, s := range []struct {
		ends []int
		l    Limits
	}{
		{dice(fewEnds, 4, 9, 3), Limits{Positions: exactPositions + 1}},
		{dice(longBound+manyEnds, 5, 9, 4), Limits{Positions: 6, Figure: true}},
		{dice(longBound+2*boundPiece, 5, 9, 5), Limits{Positions: 6, Quick: true}},
	} {
		var was Found
		for k, cores := range []int{1, 4} {
			runtime.GOMAXPROCS(cores)
			found, err := Make(context.Background(), s.ends, s.l, usual, nil)
			if err != nil {
				t.Fatal(err)
			}
			if k > 0 && !reflect.DeepEqual(found, was) {
				t.Errorf("%d ends: on %d cores %v and %+v, on one %v and %+v", len(s.ends), cores,
					cheapest(found).Total, found.Taken.Proof, cheapest(was).Total, was.Taken.Proof)
			}
			was = found
		}
	}
}

// A search that is broken off gives what it has: at the least the way by hand.
func TestBrokenOff(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	o := orders()[1]
	found, err := Make(ctx, o.ends, Limits{Positions: o.positions}, usual, nil)
	if err != nil {
		t.Fatal(err)
	}
	if why := holds(found.Taken, o.ends, Limits{Positions: o.positions}, usual); why != "" {
		t.Fatal(why)
	}
}
