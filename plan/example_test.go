package plan_test

import (
	"fmt"

	"millside/plan"
	"millside/plan/measure"
)

func ExampleNew() {
	spec := plan.DefaultSpec()
	spec.Name, spec.Ends, spec.Group = "sea-blue tea towels", 396, 10
	p, err := plan.New(spec)
	if err != nil {
		fmt.Println(err)
		return
	}
	c := p.Chains[0]
	fmt.Println(p.Passes(), "passes, stopping", c.Finish())
	fmt.Println(p.Path.Length.In(measure.Yards, 2), "in", p.Path.Turns(), "turns")
	last := c.Passes[len(c.Passes)-1]
	fmt.Println("the last pass carries positions", last.Carried)
	fmt.Println("pass 2 makes", c.Passes[1].FirstOpening, "first, over peg", c.Passes[1].FirstPeg())
	// Output:
	// 40 passes, stopping at the lease
	// 5 yd in 2.5 turns
	// the last pass carries positions 1 to 6
	// pass 2 makes slots up first, over peg B
}

func ExampleParseLength() {
	for _, text := range []string{"7 1/2 yd", "6,4 m", "1,200 yd"} {
		l, err := measure.ParseLength(text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(l.In(measure.Inches, 2))
	}
	// Output:
	// 270 in
	// 251.97 in
	// "1,200 yd" won't do; give no comma before three digits: it could part thousands or decimals; write 1200 or 1.2
}
