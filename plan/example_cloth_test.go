package plan_test

import (
	"fmt"

	"millside/plan/cloth"
	"millside/plan/measure"
)

// Four towels of 20 by 28 inches at 20 ends an inch, from the cloth to the warp.
func Example_fromTheCloth() {
	sett, _ := measure.ParseSett("20 an inch")
	ends, err := cloth.Width{Finished: 20 * measure.Inch, Shrinkage: 10 * measure.OnePercent,
		DrawIn: 8 * measure.OnePercent, Sett: sett}.Ends()
	if err != nil {
		fmt.Println(err)
		return
	}
	warp, err := cloth.Length{Piece: 28 * measure.Inch, Pieces: 4, Hem: measure.Inch,
		Shrinkage: 10 * measure.OnePercent, TakeUp: 8 * measure.OnePercent, Waste: 30 * measure.Inch}.Warp()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d ends, %s\n", ends.Wanted, warp.Total.In(measure.Yards, 2))
	// Output:
	// 484 ends, 4.86 yd
}
