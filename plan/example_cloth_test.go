package plan_test

import (
	"fmt"

	"millside/plan"
)

// Four towels of 20 by 28 inches at 20 ends an inch, from the cloth to the warp.
func Example_fromTheCloth() {
	sett, _ := plan.ParseSett("20 an inch")
	ends, err := plan.ClothWidth{Finished: 20 * plan.Inch, Shrinkage: 10 * plan.OnePercent, DrawIn: 8 * plan.OnePercent, Sett: sett}.Ends()
	if err != nil {
		fmt.Println(err)
		return
	}
	warp, err := plan.ClothLength{Piece: 28 * plan.Inch, Pieces: 4, Hem: plan.Inch, Shrinkage: 10 * plan.OnePercent, TakeUp: 8 * plan.OnePercent, Waste: 30 * plan.Inch}.Warp()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d ends, %s\n", ends.Wanted, warp.Total.In(plan.Yards, 2))
	// Output:
	// 484 ends, 4.86 yd
}
