package draft_test

import (
	"fmt"
	"strings"

	"millside/plan"
	"millside/plan/draft"
)

// A draft becomes a warp in three steps: it is read, made into a warp as the weaver decides, and put into
// what is to be planned.
func Example() {
	d, err := draft.From(strings.NewReader(`[TEXT]
Title=Gull towels
[WARP]
Threads=6
Color=1
[WARP COLORS]
5=2
6=2
[THREADING]
1=1
2=2
3=3
4=4
5=1
6=2`))
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := d.Warp(draft.Use{Side: draft.FromLeft, Times: 10, Names: map[int]string{1: "bone", 2: "navy"}})
	if err != nil {
		fmt.Println(err)
		return
	}
	spec := w.Into(plan.DefaultSpec(), false)
	fmt.Println(spec.Name, spec.Ends)
	fmt.Println(spec.Stripes)
	fmt.Println(spec.Loom.Threading, spec.Loom.Threading.Heddles(spec.Ends))
	// Output:
	// Gull towels 60
	// 10 times (4 bone, 2 navy)
	// 10 times (1, 2, 3, 4, 1, 2) [20 20 10 10]
}
