package schedule

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"testing"
	"time"
)

func TestSpeed(t *testing.T) {
	if os.Getenv("TRY") == "" {
		t.Skip()
	}
	r := lot{rand.New(rand.NewPCG(7, 8))}
	for k := range 60 {
		positions := 4 + k%9
		colours := r.from(2, 4)
		ends := r.stripes(10, 120, colours)
		start := time.Now()
		f, _ := Make(context.Background(), ends, Limits{Positions: positions}, usual, nil)
		s := f.Taken
		if f.Cheapest != nil {
			s = f.Cheapest
		}
		fmt.Println(len(ends), colours, positions, s.Total, s.Proof.Gap, s.Proof.Least, time.Since(start).Round(time.Millisecond))
	}
}
