package stripe_test

import (
	"fmt"

	"millside/plan/stripe"
)

// A stripe order, the paddle as it must be threaded for it, and the first passes.
func ExampleMake() {
	order, err := stripe.Parse("5 times (4 red, 2 white), 4 red")
	if err != nil {
		fmt.Println(err)
		return
	}
	ends, err := order.Ends()
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := stripe.Make(ends, stripe.Limits{Positions: 6}, stripe.DefaultWeights())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range s.ChangesBefore(1) {
		fmt.Printf("position %d: %s\n", c.Position, order.Colours[c.To-1].Name)
	}
	for _, p := range s.Passes[4:] {
		fmt.Printf("pass %d, %v: positions %v lay ends %d to %d\n", p.Number, p.Direction, p.Carried, p.First, p.Last)
	}
	fmt.Println(s.Total, s.Proof.Optimal)
	// Output:
	// position 1: red
	// position 2: red
	// position 3: red
	// position 4: red
	// position 5: white
	// position 6: white
	// pass 5, outward: positions 1 to 6 lay ends 25 to 30
	// pass 6, return: positions 1 to 4 lay ends 31 to 34
	// 12m54s true
}

func ExampleParse() {
	_, err := stripe.Parse("8 white, 21 tmes (4 red, 14 white)")
	fmt.Println(err)
	// Output: stripes, line 1, column 13: "tmes" won't do; write times; it would read: 8 white, 21 times (4 red, 14 white) (386 ends)
}
