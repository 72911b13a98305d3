package stripe_test

import (
	"context"
	"fmt"

	"millside/plan"
	"millside/plan/stripe"
)

// A stripe order, the paddle as it must be threaded for it, and the last passes.
func ExampleForPlan() {
	spec := plan.DefaultSpec()
	spec.Stripes, spec.Positions = "5 times (4 red, 2 white), 4 red", 6
	made, err := stripe.ForPlan(context.Background(), spec, stripe.Ask{}, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, c := range made.Schedule.SetUps[0] {
		fmt.Printf("position %d: %s\n", i+1, made.Order.Colours[c-1].Name)
	}
	for _, p := range made.Schedule.Passes[4:] {
		fmt.Printf("positions %v lay ends %d to %d\n", p.Carried, p.First, p.Last)
	}
	fmt.Println(made.Schedule.Total, made.Schedule.Proof.Least)
	// Output:
	// position 1: red
	// position 2: red
	// position 3: red
	// position 4: red
	// position 5: white
	// position 6: white
	// positions 1 to 6 lay ends 25 to 30
	// positions 1 to 4 lay ends 31 to 34
	// 12m19.2s true
}

func ExampleParse() {
	_, err := stripe.Parse("8 white, 2 tmes (4 red)")
	fmt.Println(err)
	// Output:
	// stripes, line 1, column 12: "tmes" won't do; write times; it would read: 8 white, 2 times (4 red) (16 ends)
}
