// Command millside plans a warp and keeps the count at the warping mill.
package main

import (
	"context"
	"fmt"
	"os"
	"time"

	"millside/counter"
	"millside/plan"
	"millside/tui"
)

func main() {
	dir, _ := counter.DefaultDir("", os.Getenv)
	o := tui.Options{Store: counter.Store{Dir: dir, FS: counter.OS()}, Now: time.Now, In: os.Stdin, Out: os.Stdout, Practice: plan.DefaultSpec()}
	if len(os.Args) > 1 {
		o.Open = os.Args[1]
	}
	if err := tui.Run(context.Background(), o); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
